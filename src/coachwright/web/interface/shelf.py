"""The paths of the catalogue: parts and base vehicles, to read."""

from typing import Annotated, Any

from fastapi import APIRouter, Query

from coachwright.actions.benching import Bench
from coachwright.actions.looking import part_rows
from coachwright.web.interface.bodies import PartAnswer


def routes(bench: Bench) -> APIRouter:
    """Return the paths of the catalogue.

    Parameters
    ----------
    bench
        Whose catalogue.
    """
    router = APIRouter()

    @router.get("/parts", summary="Parts that have a facet and hold some words")
    def parts(
        facet: Annotated[str, Query(max_length=60)] = "",
        search: Annotated[str, Query(max_length=200)] = "",
    ) -> tuple[PartAnswer, ...]:
        found = part_rows(bench.catalogue, facet=facet, search=search)
        return tuple(
            PartAnswer(
                id=each.id,
                name=each.name,
                mass_kg=each.mass_kg,
                facets=each.facets,
                prices=each.prices,
                origin=each.origin,
            )
            for each in found
        )

    @router.get("/parts/{part_id}", summary="One part, facet by facet")
    def part(part_id: str) -> dict[str, Any]:
        found = bench.catalogue.part(part_id)
        return found.model_dump(mode="json", by_alias=True, exclude_none=True)

    @router.get("/vehicles", summary="The ids of the base vehicles")
    def vehicles() -> tuple[str, ...]:
        return bench.catalogue.vehicle_ids()

    @router.get("/vehicles/{vehicle_id}", summary="One base vehicle")
    def vehicle(vehicle_id: str) -> dict[str, Any]:
        found = bench.catalogue.vehicle(vehicle_id)
        return found.model_dump(mode="json", by_alias=True, exclude_none=True)

    return router
