"""What is broken or unknown, in a few lines beside the drawing."""

from coachwright.actions.benching import OnBench
from coachwright.model.finding import Finding, Outcome, Severity
from coachwright.papers.wording import spoken
from coachwright.units import worded
from coachwright.web.parts.finding import fitting_of, kind_of, mark
from coachwright.web.parts.plain import box, link, tool, words
from coachwright.web.state import Here, on_change, pick

_MOST = 12


def create(here: Here) -> None:
    """Show the list."""
    with box("shortfindings card", tag="section", label="Findings"):
        words("Findings", tag="h2")
        listed = box("list", tag="ul")

    def draw(work: OnBench) -> None:
        worth = [each for each in work.assessment.findings if _worth_a_look(each)]
        with listed.clear():
            for each in worth[:_MOST]:
                _line(here, each)
            if not worth:
                words(_nothing(work), "quiet", tag="li")
            with box(tag="li"):
                link("All findings with clause and working", f"/build/{work.build_id}/findings")

    on_change(here, draw)


def _nothing(work: OnBench) -> str:
    accepted = work.verdict.accepted
    if not accepted:
        return "No stop and no caution is broken."
    return f"Nothing is open; {accepted} broken and accepted with a reason."


def _worth_a_look(finding: Finding) -> bool:
    if finding.accepted is not None and finding.severity is not Severity.STOP:
        return False
    broken = finding.outcome is Outcome.BROKEN and finding.severity is not Severity.NOTE
    return broken or (finding.outcome is Outcome.UNKNOWN and finding.severity is Severity.STOP)


def _line(here: Here, finding: Finding) -> None:
    build, system = here.work.build, here.system
    about = worded(spoken(build, finding.subject), system)
    title = worded(spoken(build, finding.title), system)
    fitting = fitting_of(build, finding)
    with box("rowline", tag="li"):
        mark(kind_of(finding))
        with box("said"):
            words(title)
            words(about, "quiet small")
        if fitting:
            tool("Show me", lambda: pick(here, fitting), label=f"Show me: {about}")
