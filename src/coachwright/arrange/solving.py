"""What every search shares: its limits, its outcome, and one call of the solver."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from ortools.sat.python.cp_model import CpModel, CpSolver

Better = Callable[["Proof"], None]
"""Told of every better result while a search goes on."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Search:
    """How long and how a search may look.

    Attributes
    ----------
    limit_s
        Time after which it gives what it has.
    seed
        Of the solver's chance.
    workers
        Threads; results that are not proven can differ from run to run where there are several.
    """

    limit_s: float
    seed: int = 1
    workers: int = 2


@dataclass(frozen=True, kw_only=True, slots=True)
class Proof:
    """How good a result is.

    Attributes
    ----------
    found
        Whether there is a result at all.
    impossible
        Proven that there is none.
    value, bound
        Of the objective: what was reached, and what no result can pass.
    proven
        Nothing is better.
    stopped
        The user stopped the search before its time was up.
    """

    found: bool
    impossible: bool
    value: int
    bound: int
    proven: bool
    stopped: bool
    took_s: float

    @property
    def gap_frac(self) -> float:
        """Share of the bound that may still be missing; 0 where the result is proven."""
        if self.proven or not self.found:
            return 0.0
        return (self.bound - self.value) / max(1, abs(self.bound))


def solve(
    model: "CpModel", search: Search, on_better: Better | None = None
) -> tuple["CpSolver", Proof]:
    """Solve a model that is to be maximised, or only met.

    Parameters
    ----------
    model
        With all its constraints.
    search
        Limits.
    on_better
        Called on each better result, from the solver's own thread.

    Notes
    -----
    The solver ends on the interrupt key by itself and keeps the best result so far: a result that
    is not proven although time was left was stopped by the user.
    """
    from ortools.sat.python import cp_model  # noqa: PLC0415  # half a second

    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = search.limit_s
    solver.parameters.random_seed = search.seed
    solver.parameters.num_workers = search.workers
    solver.parameters.catch_sigint_signal = True

    class _Watch(cp_model.CpSolverSolutionCallback):
        def on_solution_callback(self) -> None:
            if on_better is not None:
                on_better(
                    Proof(
                        found=True,
                        impossible=False,
                        value=round(self.objective_value),
                        bound=round(self.best_objective_bound),
                        proven=False,
                        stopped=False,
                        took_s=self.wall_time,
                    )
                )

    status = solver.solve(model, _Watch())
    found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    proven = status == cp_model.OPTIMAL
    ended = proven or status == cp_model.INFEASIBLE
    return solver, Proof(
        found=found,
        impossible=status == cp_model.INFEASIBLE,
        value=round(solver.objective_value) if found else 0,
        bound=round(solver.best_objective_bound) if found else 0,
        proven=proven,
        stopped=not ended and solver.wall_time < _WHOLE_FRAC * search.limit_s,
        took_s=solver.wall_time,
    )


_WHOLE_FRAC = 0.9
"""A search that ended without proof before this share of its time was stopped by hand."""
