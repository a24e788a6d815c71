"""What a search says of its own result."""

from ortools.sat.python import cp_model

from coachwright.arrange.solving import Proof, Search, solve


def _proof(**fields: object) -> Proof:
    usual = {
        "found": True,
        "impossible": False,
        "value": 90,
        "bound": 100,
        "proven": False,
        "stopped": False,
        "took_s": 1.0,
    }
    return Proof(**(usual | fields))  # type: ignore[arg-type]


def test_the_gap_is_a_share_of_the_bound() -> None:
    assert _proof().gap_frac == 0.1


def test_a_proven_result_has_no_gap() -> None:
    assert _proof(proven=True).gap_frac == 0.0


def test_a_contradiction_is_said_to_be_impossible() -> None:
    model = cp_model.CpModel()
    yes = model.new_bool_var("yes")
    model.add(yes == 1)
    model.add(yes == 0)
    _, proof = solve(model, Search(limit_s=5))
    assert (proof.impossible, proof.found, proof.stopped) == (True, False, False)


def test_better_results_are_told() -> None:
    told: list[int] = []
    model = cp_model.CpModel()
    number = model.new_int_var(0, 50, "n")
    model.maximize(number)
    _, proof = solve(model, Search(limit_s=5), lambda better: told.append(better.value))
    assert proof.proven
    assert proof.value == 50
    assert told[-1] == 50
