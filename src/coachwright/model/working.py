"""How a figure was reached, and the figure itself."""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True, slots=True)
class Given:
    """One number put into a working.

    Attributes
    ----------
    symbol
        As it stands in the expression.
    meaning
        In words.
    value
        In `unit`.
    source
        Where the number comes from: a field of the build, a part, a table or another figure.
    """

    symbol: str
    meaning: str
    value: float
    unit: str
    source: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Working:
    """How a figure was reached, so that a stranger can check it with a pencil.

    Attributes
    ----------
    expression
        The formula in symbols, such as ``"R = Σ m·x / WB"``.
    given
        The numbers put in; each symbol of the expression's right-hand side.
    result
        In `unit`.
    references
        Keys of ``docs/references.toml``.
    note
        Validity, or what is left out.
    """

    expression: str
    given: tuple[Given, ...]
    result: float
    unit: str
    references: tuple[str, ...] = ()
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Figure:
    """One headline figure with its working.

    Attributes
    ----------
    name
        Dotted, such as ``"weights.rear-axle-travelling"``; stable, and used by ``--working``.
    label
        For people.
    value
        In `unit`; None where something needed is missing.
    low, high
        One-sided 95 % bounds in `unit`, where the figure has a tolerance.
    missing
        What is missing where `value` is None.
    """

    name: str
    label: str
    value: float | None
    unit: str
    working: Working | None = None
    low: float | None = None
    high: float | None = None
    missing: str = ""
