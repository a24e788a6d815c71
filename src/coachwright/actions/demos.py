"""The demonstration builds that come with the program."""

from dataclasses import dataclass
from functools import cache
from importlib import resources
from importlib.resources.abc import Traversable
from pathlib import Path

from coachwright.errors import UnknownName
from coachwright.store.edits import parsed


@dataclass(frozen=True, kw_only=True, slots=True)
class Demo:
    """One demonstration build: its file's name, what it is called, and its text."""

    id: str
    name: str
    story: str
    text: str


@cache
def demos() -> tuple[Demo, ...]:
    """Return every demonstration build, by the name of its file."""
    files = sorted(
        (file for file in _folder().iterdir() if file.name.endswith(".toml")),
        key=lambda file: file.name,
    )
    return tuple(_demo(file) for file in files)


def demo(demo_id: str) -> Demo:
    """Return one demonstration build.

    Raises
    ------
    UnknownName
        Where there is no such one.
    """
    for each in demos():
        if each.id == demo_id:
            return each
    raise UnknownName("demo", demo_id, [each.id for each in demos()])


def _demo(file: Traversable) -> Demo:
    text = file.read_text(encoding="utf-8")
    data = parsed(text, file.name)
    return Demo(
        id=file.name.removesuffix(".toml"),
        name=str(data["name"]),
        story=" ".join(str(data.get("story", "")).split()),
        text=text,
    )


def _folder() -> Traversable:
    """Return the copies inside the installed package; in a checkout, the folder itself."""
    packaged = resources.files("coachwright") / "demos"
    if packaged.is_dir():
        return packaged
    return Path(__file__).parents[3] / "demos"
