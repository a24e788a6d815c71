"""The assessment as a whole: what is composed, kept and ranked."""

import pytest

from coachwright.assess import HEADLINE, RULES, Stages, assess
from coachwright.errors import UnknownName
from coachwright.model.finding import Outcome, Severity
from tests.support.builds import build, fitting, part


def test_every_discipline_is_composed_under_its_folders_name() -> None:
    found = assess(build())
    for discipline in RULES:
        assert getattr(found, discipline).figures is not None


def test_the_headline_holds_the_named_figures_in_their_order() -> None:
    found = assess(build())
    names = [figure.name for figure in found.headline]
    assert names == [name for name in HEADLINE if name in names]
    assert "weights.total-travelling" in names


def test_findings_stand_worst_first() -> None:
    outcomes = [Outcome.BROKEN, Outcome.UNKNOWN, Outcome.MET, Outcome.NOT_APPLICABLE]
    severities = [Severity.STOP, Severity.CAUTION, Severity.NOTE]
    ranks = [
        (outcomes.index(finding.outcome), severities.index(finding.severity))
        for finding in assess(build()).findings
    ]
    assert ranks == sorted(ranks)


def test_figures_have_names_of_their_own() -> None:
    names = [figure.name for figure in assess(build()).figures]
    assert len(names) == len(set(names))


def test_a_figure_is_found_by_its_name() -> None:
    found = assess(build())
    assert found.figure("weights.total-travelling").unit == "kg"
    with pytest.raises(UnknownName, match="there is no figure"):
        found.figure("weights.total")


def test_an_assessment_kept_equals_one_computed_anew() -> None:
    stages = Stages()
    made = build()
    assert assess(made, stages) == assess(made)
    assert assess(made, stages) == assess(made)


def test_a_new_story_computes_nothing_again_and_a_new_part_does() -> None:
    stages = Stages()
    first = assess(build(), stages)
    told = assess(build({"story": "told differently"}), stages)
    assert told.weights is first.weights
    assert told.build.story == "told differently"
    heavier = assess(
        build({"own_parts": [part("box")], "fittings": [fitting("a", "box")]}), stages
    )
    assert heavier.weights is not first.weights


def test_only_the_newest_results_are_kept() -> None:
    stages = Stages(most=6)
    first = assess(build(), stages)
    assess(build({"brief.travellers.0.mass": "71 kg"}), stages)
    assess(build({"brief.travellers.0.mass": "72 kg"}), stages)
    assert assess(build(), stages).weights is not first.weights


def test_the_summary_says_which_build_it_is() -> None:
    made = build()
    summary = assess(made).summary
    assert summary.digest == made.digest
    assert (summary.name, summary.jurisdiction) == ("Test build", "eu")
