"""How expected pickings turned out, for the terminal: the sums the page shows, and nothing else."""

from __future__ import annotations

from leafmould.reckon.here import Here
from leafmould.reckon.hindsight import Score, scores, way_scores
from leafmould.report import JSON_VERSION
from leafmould.values.wording import counted


def forecast_lines(here: Here) -> tuple[str, ...]:
    """A line for each way of reckoning, then one for each thing they start from."""
    turned = here.turned
    if not turned:
        return ("No planting has both its start and its first picking noted to the day yet.",)
    kinds = [_line(score) for score in scores(turned, uses_record=here.uses_record)]
    ways = [_line(score) for score in way_scores(turned)]
    return (*ways, "", "As reckoned now, by what it starts from:", *kinds)


def _line(score: Score) -> str:
    share = f"{100 * score.inside / score.count:.0f}%"
    return (
        f"{score.kind}: {score.inside} of {score.count} picked as expected ({share}); "
        f"ranges {counted(round(score.mean_width), 'day')} wide, "
        f"off the likely day by {counted(round(score.mean_miss), 'day')} on average."
    )


def forecasts_json(here: Here) -> dict[str, object]:
    """The sums and every planting, for other programs."""
    turned = here.turned
    return {
        "version": JSON_VERSION,
        "scores": [_score(score) for score in scores(turned, uses_record=here.uses_record)],
        "ways": [_score(score) for score in way_scores(turned)],
        "plantings": [
            {
                "planting": t.planting.id,
                "begun": t.begun.isoformat(),
                "earliest": t.forecast.earliest.isoformat(),
                "likely": t.forecast.likely.isoformat(),
                "latest": t.forecast.latest.isoformat(),
                "picked": t.picked.isoformat(),
                "kind": t.kind,
                "here": {
                    "earliest": t.here.earliest.isoformat(),
                    "likely": t.here.likely.isoformat(),
                    "latest": t.here.latest.isoformat(),
                },
            }
            for t in turned
        ],
    }


def _score(score: Score) -> dict[str, object]:
    return {
        "kind": score.kind,
        "count": score.count,
        "inside": score.inside,
        "mean_width": round(score.mean_width, 1),
        "mean_miss": round(score.mean_miss, 1),
    }
