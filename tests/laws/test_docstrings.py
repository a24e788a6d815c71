"""What a docstring lists is what the function takes."""

import ast
import re
from collections.abc import Iterator

from tests.support.source import Function, arguments, functions, modules

ORDER = ["Parameters", "Returns", "Yields", "Raises", "Notes", "References", "Examples"]
HEADING = re.compile(r"^(?P<title>[A-Z][A-Za-z]+)\n-{3,}$", re.MULTILINE)


def _sections(docstring: str) -> dict[str, str]:
    parts = HEADING.split(docstring)
    return dict(zip(parts[1::2], parts[2::2], strict=True))


def _documented() -> Iterator[tuple[str, Function, dict[str, str]]]:
    for module in modules():
        for name, function in functions(module.tree):
            sections = _sections(ast.get_docstring(function) or "")
            yield f"{module.path}: {name}", function, sections


def _listed(section: str) -> list[str]:
    lines = [line for line in section.splitlines() if re.match(r"[\w*]", line)]
    return [name.strip(" *") for line in lines for name in line.split(":")[0].split(",")]


def test_a_docstring_lists_the_arguments() -> None:
    stray = [
        f"{place}: {_listed(sections['Parameters'])}"
        for place, function, sections in _documented()
        if "Parameters" in sections
        and _listed(sections["Parameters"]) != [argument.arg for argument in arguments(function)]
    ]
    assert not stray, "list the arguments, in their order:\n" + "\n".join(stray)


def test_sections_stand_in_the_usual_order() -> None:
    stray = [
        f"{place}: {', '.join(sections)}"
        for place, _, sections in _documented()
        if [*sections] != [title for title in ORDER if title in sections]
    ]
    assert not stray, "\n".join(stray)


def test_a_public_function_with_references_gives_its_equation_and_validity() -> None:
    stray = [
        place
        for place, function, sections in _documented()
        if "References" in sections and "Notes" not in sections
        if not function.name.startswith("_")
    ]
    assert not stray, "say equation and validity under Notes:\n" + "\n".join(stray)
