"""Render ``docs/facets.md`` from the facets as they are declared; ``make facets`` writes it."""

import re
from collections.abc import Iterator
from typing import Any

from coachwright.actions.schemas import schema
from coachwright.model.part import FACET_NAMES, Part
from tests.support.source import ROOT

PAGE = ROOT / "docs" / "facets.md"
_INTRO = """\
# Facets

A part is what its facets say: disciplines ask for facets, never for kinds of part. In a part's
file each facet is a table of its own (`[dc_load]`); a part has as many as it needs. `body` is the
one that every part has. This page is rendered from `src/coachwright/model/facets/` by `make
facets`; a law holds it to what is declared there. `coachwright schema part` prints the same for
editors and other programs.

Every physical value is text with its unit. The column *written as* shows an example; any unit of
the same kind may stand there ("24 kg" or "53 lb"). Leave out what you do not know: where a figure
needs it, the rules say *unknown*. Fields in **bold** must stand there.
"""
_KIND = " with its unit; one of "
_HEAD = "| field | written as | where not given | what it is |\n| --- | --- | --- | --- |"


def page() -> str:
    """Return the whole page."""
    part = schema("part")
    records: dict[str, Any] = part["$defs"]
    declared = [Part.model_fields[name].annotation for name in FACET_NAMES]
    names = [_record_name(annotation) for annotation in declared]
    pieces = [_INTRO]
    for facet, name in zip(FACET_NAMES, names, strict=True):
        pieces.append(f"## {facet}\n{_section(records[name])}")
    inner = sorted(set(records) - set(names))
    pieces.append("# Records inside facets\n")
    pieces.extend(f"## {name}\n{_section(records[name])}" for name in inner)
    return "\n".join(pieces)


def _record_name(annotation: Any) -> str:
    """Return the name of the record behind ``Record`` or ``Record | None``."""
    kinds = [kind for kind in getattr(annotation, "__args__", ()) if kind is not type(None)]
    name: str = (kinds[0] if kinds else annotation).__name__
    return name


def _section(record: dict[str, Any]) -> str:
    rows = "\n".join(_rows(record))
    return f"{record['description']}\n\n{_HEAD}\n{rows}\n"


def _rows(record: dict[str, Any]) -> Iterator[str]:
    needed = set(record.get("required", ()))
    for name, entry in record["properties"].items():
        field = f"**{name}**" if name in needed else name
        default = "" if name in needed else _default(entry)
        yield f"| {field} | {_form(entry)} | {default} | {_text(entry)} |"


def _form(entry: dict[str, Any]) -> str:
    for kind in entry.get("anyOf", ()):
        if kind.get("type") != "null":
            return _form(kind)
    if "$ref" in entry:
        name = entry["$ref"].rpartition("/")[2]
        return f"a table, see [{name}](#{name.lower()})"
    if "enum" in entry or "const" in entry:
        words = entry.get("enum", [entry.get("const")])
        return " or ".join(f'`"{word}"`' for word in words)
    if entry.get("type") == "array":
        return _listed(entry)
    if "examples" in entry:
        return f'`"{entry["examples"][0]}"`'
    return {
        "boolean": "`true` or `false`",
        "integer": "a whole number",
        "number": "a number",
        "string": "text",
    }[entry["type"]]


def _listed(entry: dict[str, Any]) -> str:
    if "prefixItems" in entry:
        each = [_form(item).strip("`") for item in entry["prefixItems"]]
        return f"`[{', '.join(each)}]`"
    return f"a list of: {_form(entry['items'])}"


def _default(entry: dict[str, Any]) -> str:
    default = entry.get("default")
    if default is None:
        return "unknown, or none"
    if default in ("", []):
        return "none"
    return f"`{str(default).lower()}`" if isinstance(default, bool) else f"`{default}`"


def _text(entry: dict[str, Any]) -> str:
    """Return the text under the field, without the kind of quantity that the example shows."""
    said = entry.get("description", "")
    before, kind, _ = said.partition(_KIND)
    if kind:
        said = before.rpartition(" (")[0]
    return re.sub(r"``(.*?)``", r"`\1`", " ".join(said.split()))


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
