"""The weighbridge: a ticket is entered, its photograph kept, and what the scales said is shown."""

from datetime import UTC, datetime
from functools import partial

from nicegui import events, run, ui

from coachwright.actions import weighing
from coachwright.actions.benching import OnBench
from coachwright.actions.weighing import Answers, Question
from coachwright.errors import BadInput, CoachwrightError
from coachwright.store.attaching import MOST_BYTES
from coachwright.units import worded
from coachwright.web.attached import address
from coachwright.web.parts.plain import box, tool, words
from coachwright.web.state import Here, change, refuse

_KINDS = ".jpg,.jpeg,.png,.webp,.pdf"
_NONE = (
    "This build has no weighbridge ticket yet. Weigh it as it travels and enter the readings: the "
    "figures are then corrected by what the scales said."
)


class Weighbridge:
    """What can be done with a ticket; the rows of the comparison stand in the sheet's table."""

    def __init__(self, here: Here) -> None:
        self.here = here
        with box("card sheetpart", tag="section", label="Weighbridge ticket"):
            words("Weighbridge ticket", tag="h3")
            self.said = box("stack").props("aria-live=polite")
            with box("rowline no-print"):
                self.enter = tool("Enter a ticket", self._form, classes="main").mark("ticket")
                self.away = tool("Take it away", self._take_away).mark("ticket-away")
                upload = ui.upload(
                    on_upload=self._handed_in,
                    on_rejected=self._refused,
                    max_file_size=MOST_BYTES,
                    auto_upload=True,
                )
                upload.props(f'accept="{_KINDS}" no-thumbnails').classes("handing")
                photo = tool("Attach its photograph", None).mark("photograph")
                photo.on(
                    "click", js_handler=f"() => getElement({upload.id}).$refs.qRef.pickFiles()"
                )
            self.photos = box("photographs", tag="ul", label="Photographs of tickets")

    def draw(self, work: OnBench) -> None:
        """Show what the scales said of a build."""
        there = work.build.ticket is not None
        self.enter.set_text("Change the ticket" if there else "Enter a ticket")
        self.away.set_visibility(there)
        self.said.clear()
        with self.said:
            for sentence in weighing.told_by_the_scales(work) or (_NONE,):
                words(worded(sentence, self.here.system), tag="p")
        self._show_photos()

    def _show_photos(self) -> None:
        build_id = self.here.work.build_id
        self.photos.clear()
        with self.photos:
            for kept in weighing.photographs(self.here.bench, build_id):
                to = address(build_id, kept.digest)
                with box(tag="li"), box(tag="a").props(f'href="{to}" target="_blank"'):
                    if kept.media_type.startswith("image/"):
                        picture = box(tag="img").props(f'src="{to}" loading="lazy"')
                        picture.props["alt"] = f"{kept.note}: {kept.name}"
                    words(kept.name, "small")
                    words(f"{kept.note}; {kept.actor}, {kept.at:%Y-%m-%d}", "quiet small")

    # ---------------------------------------------------------------------------------- the form

    def _form(self) -> None:
        begun = weighing.answers(self.here.work, today=datetime.now(UTC).date())
        with ui.dialog() as dialog, ui.card().classes("sheet broad stack"):
            dialog.props["aria-label"] = "Weighbridge ticket"
            _Form(self.here, begun, dialog)
        dialog.on("hide", dialog.delete)
        dialog.open()

    async def _take_away(self) -> None:
        await change(self.here, weighing.taken_away())

    # ------------------------------------------------------------------------------- photographs

    async def _handed_in(self, event: events.UploadEventArguments) -> None:
        await self.keep(await event.file.read(), event.file.name)

    async def keep(self, content: bytes, name: str) -> None:
        """Keep a photograph with the build."""
        here = self.here
        keeping = partial(weighing.attach_photograph, here.bench, here.work, content)
        try:
            await run.io_bound(keeping, name=name, actor=here.actor, at=datetime.now(UTC))
        except CoachwrightError as error:
            refuse(here, str(error))
            return
        self._show_photos()

    def _refused(self) -> None:
        refuse(self.here, f"only pictures and PDF files up to {MOST_BYTES:,} bytes")


class _Form:
    """The readings, and what was aboard."""

    def __init__(self, here: Here, begun: Answers, dialog: ui.dialog) -> None:
        self.here, self.dialog = here, dialog
        self.texts: dict[str, ui.input] = {}
        words("Weighbridge ticket", tag="h2")
        words("Every reading with its unit, as the ticket prints it.", "quiet", tag="p")
        with box("answers"):
            self.day = ui.input("Day of the weighing", value=begun.day)
            self.day.props("outlined dense type=date stack-label").mark("weighed-on")
            self._ask(weighing.READINGS, begun)
        wheels = ui.expansion("Each wheel, where the scale weighs them", value=_has_wheels(begun))
        with wheels, box("answers"):
            self._ask(weighing.WHEELS, begun)
        words("What was aboard", tag="h3")
        with box("answers"):
            self._ask(weighing.TANKS, begun)
        with box("musts", label="Who and what was aboard").props("role=group"):
            self.aboard = {
                name: ui.checkbox(name, value=name in begun.aboard)
                for name in weighing.travellers(here.work)
            }
            self.cargo = ui.checkbox("Cargo and luggage", value=begun.cargo)
        self.wrong = words("", "wrong", tag="p").props("role=alert")
        with box("rowline"):
            tool("Keep the ticket", self._keep, classes="main").mark("keep-ticket")
            tool("Leave it", dialog.close)

    def _ask(self, questions: tuple[Question, ...], begun: Answers) -> None:
        metric, customary = range(2)
        for question in questions:
            line = ui.input(question.label, value=begun.texts[question.id])
            line.props("outlined dense autocomplete=off bottom-slots")
            hint = question.hint[customary if self.here.system == "us" else metric]
            usual = f"; empty: {question.usual}" if question.usual else ""
            line.props["hint"] = f"{hint}{usual}"
            line.mark(question.id.replace(".", "-"))
            self.texts[question.id] = line

    async def _keep(self) -> None:
        given = Answers(
            day=str(self.day.value or ""),
            texts={name: str(line.value or "") for name, line in self.texts.items()},
            aboard=tuple(name for name, each in self.aboard.items() if each.value),
            cargo=bool(self.cargo.value),
        )
        try:
            edits = weighing.entered(given)
        except BadInput as error:
            self.wrong.set_text(" ".join(fault.sentence() for fault in error.faults))
            return
        if await change(self.here, edits):
            self.dialog.close()


def _has_wheels(begun: Answers) -> bool:
    return any(begun.texts[each.id] for each in weighing.WHEELS)
