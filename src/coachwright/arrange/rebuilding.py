"""A build with some of its fittings moved, taken out or put in, and everything worked out anew."""

from collections.abc import Iterable, Mapping, Sequence

from coachwright.model.build import Build, BuildSheet, Fitted, Fitting
from coachwright.model.part import Part
from coachwright.model.position import Position, Relation
from coachwright.model.positioning import solved_positions


def rebuilt(
    build: Build,
    *,
    changed: Mapping[str, Fitting] | None = None,
    removed: Iterable[str] = (),
    added: Sequence[tuple[Fitting, Part]] = (),
) -> Build:
    """Return a build with other fittings.

    Parameters
    ----------
    build
        The build as it is.
    changed
        Reference name → the fitting as it is to be; same part.
    removed
        Names of fittings that go; nothing that stays may be placed by them (see `let_go`).
    added
        New fittings with their parts.
    """
    gone = frozenset(removed)
    new = changed or {}
    pairs = [
        (new.get(fitted.name, fitted.fitting), fitted.part)
        for fitted in build.fittings
        if fitted.name not in gone
    ]
    pairs.extend(added)
    parts = {part.id: part for _, part in pairs} | {
        layer.part.id: layer.part for layer in build.finishes
    }
    sheet = BuildSheet(
        format=1,
        name=build.name,
        brief=build.brief,
        fittings=tuple(fitting for fitting, _ in pairs),
        finishes=tuple(layer.finish for layer in build.finishes),
    )
    at_mm = solved_positions(sheet, build.vehicle, parts)
    return build.model_copy(
        update={
            "fittings": tuple(
                Fitted(fitting=fitting, part=part, at_mm=at_mm[fitting.name])
                for fitting, part in pairs
            ),
            "waivers": tuple(each for each in build.waivers if each.fitting not in gone),
        }
    )


def let_go(build: Build, removed: Iterable[str]) -> dict[str, Fitting]:
    """Return the fittings that were placed by what is removed, placed by lengths instead.

    Parameters
    ----------
    build
        The build as it is.
    removed
        Names of fittings that go.
    """
    gone = frozenset(removed)
    found = {}
    for fitted in build.fittings:
        held = [_names(position, gone) for position in fitted.fitting.at_mm]
        if fitted.name not in gone and any(held):
            at: tuple[Position, ...] = tuple(
                round(place, 2) if is_held else position
                for is_held, place, position in zip(
                    held, fitted.at_mm, fitted.fitting.at_mm, strict=True
                )
            )
            found[fitted.name] = fitted.fitting.model_copy(update={"at_mm": at})
    return found


def _names(position: Position, names: frozenset[str]) -> bool:
    return isinstance(position, Relation) and position.target in names
