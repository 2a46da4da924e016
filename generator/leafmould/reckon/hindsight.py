"""Looking backwards: what would have been expected of each planting on the day it began, beside what came.

Each forecast is made as of its planting's own first day, from what was noted before it (`here`), so nothing later can
leak in. Only plantings count whose start and first picking are both noted to the day. Pure.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from leafmould.reckon.forecast import Forecast
from leafmould.reckon.here import KINDS, Turned
from leafmould.reckon.standing import stands


@dataclass(frozen=True, slots=True, kw_only=True)
class Score:
    """How expectations of one kind did."""

    kind: str
    count: int
    inside: int
    mean_width: float  # days from earliest to latest, both counted
    mean_miss: float  # days between the likely day and the picking, either way


WAYS = (
    "published days alone",
    "with the dark months",
    "with warmth and light",
    "with this garden's own record",
)
"""What expectations were reckoned from; the last on top of the best before it."""


def way_scores(turned: Sequence[Turned]) -> tuple[Score, ...]:
    """How each way of reckoning did on the same plantings; crops that stand and wait are no measure of it.

    Warmth is left out where the garden has no table of it.
    """
    judged = [t for t in turned if not stands(t.planting)]
    plain, dark, warm, here = WAYS
    found = {plain: [t.plain for t in judged], dark: [t.forecast for t in judged]}
    if warmed := [t.warm for t in judged if t.warm]:
        found[warm] = warmed
    found[here] = [t.here for t in judged]
    return tuple(_score_of(way, made, judged) for way, made in found.items()) if judged else ()


def scores(turned: Sequence[Turned], *, uses_record: bool) -> tuple[Score, ...]:
    """How expectations did as they are reckoned here, by what they start from; kinds that never were are left out.

    All together last. Crops that stand and wait are no measure here either.

    Args:
        uses_record: whether the garden's own record is weighed in.
    """
    judged = [t for t in turned if not stands(t.planting)]

    def score(kind: str, of: Sequence[Turned]) -> Score:
        return _score_of(kind, [t.here if uses_record else t.base for t in of], of)

    by_kind = [score(kind, [t for t in judged if t.kind == kind]) for kind in KINDS]
    found = [score for score in by_kind if score.count]
    return (*found, *((score("all together", judged),) if len(found) > 1 else ()))


def _score_of(kind: str, forecasts: Sequence[Forecast], turned: Sequence[Turned]) -> Score:
    pairs = [(f, t.picked) for f, t in zip(forecasts, turned, strict=True)]
    return Score(
        kind=kind,
        count=len(pairs),
        inside=sum(f.earliest <= picked <= f.latest for f, picked in pairs),
        mean_width=_mean((f.latest - f.earliest).days + 1 for f, _ in pairs),
        mean_miss=_mean(abs((picked - f.likely).days) for f, picked in pairs),
    )


def _mean(values: Iterable[int]) -> float:
    found = list(values)
    return sum(found) / len(found) if found else 0.0
