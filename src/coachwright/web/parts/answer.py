"""One question of the brief with its field; tells when it is answered."""

from collections.abc import Awaitable, Callable
from dataclasses import dataclass

from nicegui import ui
from nicegui.elements.mixins.text_element import TextElement

from coachwright.actions.briefing import Answer, Driven
from coachwright.web.parts.plain import box, words

Give = Callable[[Answer, str, int], Awaitable[str]]
"""Takes an answer, what was typed and the event it began with; returns what is wrong with it."""

_TRUE = "true"


@dataclass(kw_only=True, slots=True)
class Shown:
    """A question on the page: its field, and what was answered when the field was last filled.

    Attributes
    ----------
    answer, event
        What the person at the field has seen, and after which event.
    """

    field: ui.input | ui.textarea | ui.select | ui.checkbox
    reads: TextElement
    answer: Answer
    event: int

    def update(self, answer: Answer, event: int) -> None:
        """Show what is answered now; what somebody is typing stays, beside what others wrote."""
        if self.typed() != _standing(self.answer) and answer.text != self.answer.text:
            self.reads.set_text(f"meanwhile: {answer.text or 'nothing'}")
            return
        if answer.text != self.answer.text:
            self._set(answer)
        self.answer, self.event = answer, event
        self.reads.set_text(_reads(answer))

    def again(self, answer: Answer, event: int) -> None:
        """Show what is answered now, in place of what was typed."""
        self._set(answer)
        self.answer, self.event = answer, event
        self.reads.set_text(_reads(answer))

    def typed(self) -> str:
        """Return what stands in the field."""
        if isinstance(self.field, ui.checkbox):
            return _TRUE if self.field.value else "false"
        return str(self.field.value or "")

    def _set(self, answer: Answer) -> None:
        if isinstance(self.field, ui.checkbox):
            self.field.value = answer.text == _TRUE
        else:
            self.field.value = answer.text


def create(answer: Answer, event: int, give: Give, looked_at: Callable[[Answer], None]) -> Shown:
    """Show a question; `give` is called when it is answered.

    Parameters
    ----------
    answer
        The question, and what is answered now.
    event
        After which event.
    give
        Keeps it.
    looked_at
        Told when somebody goes to the field.
    """
    with box("answer"):
        field = _field(answer)
        reads = words(_reads(answer), "small quiet reads")
        if answer.drives:
            labels = ", ".join(each.label for each in answer.drives)
            words(f"drives: {labels}", "hidden-words")
        shown = Shown(field=field, reads=reads, answer=answer, event=event)
    field.on("focusin", lambda: looked_at(shown.answer))

    async def given() -> None:
        typed = shown.typed()
        if typed == _standing(shown.answer):
            return
        wrong = await give(shown.answer, typed, shown.event)
        if not isinstance(field, ui.checkbox):
            field.error = wrong or None

    if isinstance(field, ui.checkbox | ui.select):
        field.on_value_change(given)
    else:
        field.on("blur", given)
        if isinstance(field, ui.input):
            field.on("keydown.enter", given)
    return shown


def drives(found: tuple[Driven, ...], into: ui.element, marked: frozenset[str]) -> None:
    """Show what follows from answers: figures and rules, each once; some of them marked."""
    into.clear()
    unlike = {each.name: each for each in found}
    with into:
        if unlike:
            words("drives", "small quiet", tag="dt")
        for each in unlike.values():
            with box("marked" if each.name in marked else "", tag="dd"):
                words(each.label, "small quiet")
                words(each.said, f"small strong {_mark(each.said)}")


def _standing(answer: Answer) -> str:
    """Return what the field holds as long as nobody types."""
    if answer.question.kind == "truth":
        return answer.text or "false"
    return answer.text


def _mark(said: str) -> str:
    return {"broken": "is-broken", "unknown": "is-unknown", "met": "is-met"}.get(said, "")


def _reads(answer: Answer) -> str:
    said = (f"= {answer.reads}" if answer.reads else "", answer.question.hint)
    return "  ".join(each for each in said if each)


def _field(answer: Answer) -> ui.input | ui.textarea | ui.select | ui.checkbox:
    question = answer.question
    if question.kind == "truth":
        return ui.checkbox(question.asks, value=answer.text == _TRUE)
    if answer.choices:
        offered = dict(answer.choices)
        offered.setdefault(answer.text, answer.text or "—")
        made = ui.select(offered, label=question.asks, value=answer.text)
        made.props("outlined dense options-dense")
        return made
    if question.kind in ("long text", "texts"):
        area = ui.textarea(question.asks, value=answer.text)
        area.props("outlined dense autogrow")
        return area
    line = ui.input(question.asks, value=answer.text)
    line.props("outlined dense autocomplete=off")
    if question.kind == "date":
        line.props("type=date stack-label")
    return line
