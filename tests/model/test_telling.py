"""A finding's figures: value and limit never look alike where they differ."""

import pytest

from coachwright.model.finding import Finding, Outcome, Severity, Source
from coachwright.model.telling import compared


def _finding(value: float | None, limit: float, unit: str) -> Finding:
    return Finding(
        rule="layout.inside-shell",
        discipline="layout",
        title="A fitting stands within the shell",
        severity=Severity.STOP,
        outcome=Outcome.UNKNOWN if value is None else Outcome.MET,
        subject="",
        value=value,
        limit=limit,
        unit=unit,
        holds="<=",
        margin=None if value is None else limit - value,
        missing="",
        detail="",
        remedy="",
        source=Source(key="a-standard"),
    )


@pytest.mark.parametrize(
    ("value", "limit", "unit", "system", "said"),
    [
        # 1 in is 25.4 mm exactly, so 1 mm is 0.039 in: nothing and 1 mm must not look alike
        (0.0, 1.0, "mm", "us", ("0.00 in", "0.04 in", "0.04 in")),
        (0.0, 1.0, "mm", "metric", ("0 mm", "1 mm", "1 mm")),
        (1850.4, 1850.0, "kg", "metric", ("1,850.4 kg", "1,850.0 kg", "-0.40 kg")),
        (5.0, 5.0, "kg", "metric", ("5.0 kg", "5.0 kg", "0 kg")),
        # a difference of 10 K is 18 degrees Fahrenheit, not 50
        (60.0, 50.0, "degC", "us", ("140 °F", "122 °F", "-18 °F difference")),
        (60.0, 60.0, "degC", "us", ("140 °F", "140 °F", "0 °F difference")),
        (None, 5.0, "W", "metric", ("unknown", "5.0 W", "unknown")),
        # nobody measures a millionth of a millimetre
        (0.0, 1e-6, "mm", "metric", ("0 mm", "0 mm", "0 mm")),
    ],
)
def test_value_and_limit_have_the_digits_that_tell_them_apart(
    value: float | None, limit: float, unit: str, system: str, said: tuple[str, str, str]
) -> None:
    figures = compared(_finding(value, limit, unit), system)
    assert (figures.value, figures.limit, figures.margin) == said
