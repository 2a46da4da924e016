"""How expected pickings turned out, for the terminal: the sums the page shows, and nothing else."""

from __future__ import annotations

from collections.abc import Sequence

from leafmould.reckon.hindsight import Score, Turned, scores
from leafmould.report import JSON_VERSION
from leafmould.values.wording import counted


def forecast_lines(turned: Sequence[Turned]) -> tuple[str, ...]:
    """A line for each kind of expectation."""
    if not turned:
        return ("No planting has both its start and its first picking noted to the day yet.",)
    return tuple(_line(score) for score in scores(turned))


def _line(score: Score) -> str:
    share = f"{100 * score.inside / score.count:.0f}%"
    return (
        f"{score.kind}: {score.inside} of {score.count} picked as expected ({share}); "
        f"ranges {counted(round(score.mean_width), 'day')} wide, "
        f"off the likely day by {counted(round(score.mean_miss), 'day')} on average."
    )


def forecasts_json(turned: Sequence[Turned]) -> dict[str, object]:
    """The sums and every planting, for other programs."""
    return {
        "version": JSON_VERSION,
        "scores": [
            {
                "kind": s.kind,
                "count": s.count,
                "inside": s.inside,
                "mean_width": round(s.mean_width, 1),
                "mean_miss": round(s.mean_miss, 1),
            }
            for s in scores(turned)
        ],
        "plantings": [
            {
                "planting": t.planting.id,
                "begun": t.begun.isoformat(),
                "earliest": t.forecast.earliest.isoformat(),
                "likely": t.forecast.likely.isoformat(),
                "latest": t.forecast.latest.isoformat(),
                "picked": t.picked.isoformat(),
                "kind": t.kind,
            }
            for t in turned
        ],
    }
