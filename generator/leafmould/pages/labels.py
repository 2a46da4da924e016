"""A planting in one line with its plant labels, the same on every page.

Badges come reckoned; here they get a tone, their note, and the thin bar of a wait.
"""

from __future__ import annotations

from functools import lru_cache

from leafmould.garden.model import Planting
from leafmould.pages.addresses import family_anchor
from leafmould.pages.ledger import Ledger, once
from leafmould.pages.page import FamilyMark, Figure, PlantingLine, Tag, Wait
from leafmould.reckon.badges import Badge

TONES = {
    "sown": "growing",
    "started": "growing",
    "planted": "growing",
    "found": "growing",
    "expected": "planned",
    "picking": "ripening",
    "picked": "ripening",
    "ended": "resting",
    "unknown": "resting",
    "wait": "warning",
    "coming up": "planned",
    "look": "warning",
}

BEGINNINGS = frozenset({"sown", "started", "planted", "found", "unknown"})
"""Labels of how it began: behind those of how it goes, and in plainer words."""
URGENCY = {"wait": 0, "look": 0, "picking": 1, "coming up": 2, "expected": 2}
"""What a gardener looks for comes first; what is not here, after it."""


def planting_name(planting: Planting) -> str:
    """How a planting is called: the gardener's word, its varieties quoted, doubt kept as doubt."""
    return _name(planting.words, planting.varieties, planting.is_doubtful)


@lru_cache(maxsize=4096)
def _name(words: tuple[str, ...], varieties: tuple[str, ...], is_doubtful: bool) -> str:
    joined = " or " if is_doubtful else " and "
    crops = joined.join(dict.fromkeys(words)) or "crop not known"
    quoted = joined.join(f"‘{variety}’" for variety in dict.fromkeys(varieties))
    doubt = " (in doubt)" if is_doubtful else ""
    return f"{crops} {quoted}".strip() + doubt


@once
def planting_line(planting: Planting, ledger: Ledger) -> PlantingLine:
    """The line of one planting, with its labels and families."""
    return PlantingLine(
        name=planting_name(planting),
        to=ledger.sections[planting.id],
        bed=ledger.bed_links[planting.bed_now],
        part=planting.part or "",
        number=number_of(planting, ledger),
        families=families_of(planting, ledger),
        tags=tags_of(planting, ledger),
        year=ledger.year_name(ledger.home_year(planting)),
    )


def number_of(planting: Planting, ledger: Ledger) -> Figure | None:
    """How many stand or stood, as far as written."""
    if planting.number is None:
        return None
    return Figure(
        text=f"{planting.number:,}",
        value=str(planting.number),
        to=ledger.to_note(planting.entries[0]) if planting.entries else "",
        is_estimated=planting.number_estimated,
    )


@once
def families_of(planting: Planting, ledger: Ledger) -> tuple[FamilyMark, ...]:
    """The families in a planting, each once; a crop without a known family gives none."""
    return tuple(family_mark(name, ledger) for name in ledger.families_in(planting))


def family_mark(family: str, ledger: Ledger) -> FamilyMark:
    """A family's everyday name and mark; its botanical name where the tables lack it."""
    fact = ledger.reckoned.families.get(family)
    return _mark(family, *((fact.name, fact.mark) if fact else (family, family[:2].capitalize())))


@lru_cache(maxsize=256)
def _mark(family: str, name: str, mark: str) -> FamilyMark:
    return FamilyMark(key=family_anchor(family), name=name, mark=mark)


def tags_of(planting: Planting, ledger: Ledger) -> tuple[Tag, ...]:
    """The labels of a planting, how it goes before how it began, each leading to the note its day was written in."""
    found = sorted(ledger.reckoned.badges.get(planting.id, ()), key=_urgency)
    first = len(found) - sum(1 for badge in found if badge.kind in BEGINNINGS)
    return tuple(
        _tag(badge, planting, ledger, is_plain=first > 0 and place >= first)
        for place, badge in enumerate(found)
    )


def _urgency(badge: Badge) -> int:
    return 9 if badge.kind in BEGINNINGS else URGENCY.get(badge.kind, 3)


def _tag(badge: Badge, planting: Planting, ledger: Ledger, *, is_plain: bool) -> Tag:
    is_failure = badge.kind == "ended" and planting.lost is not None
    value = ""
    if badge.counted_from:
        value = str((ledger.garden.on - badge.counted_from).days)
    return Tag(
        kind=badge.kind,
        tone="warning" if is_failure else TONES.get(badge.kind, "resting"),
        text=badge.text,
        value=value,
        to=ledger.to_note(badge.entry),
        counted_from=badge.counted_from.isoformat() if badge.counted_from else "",
        before=badge.before,
        after=badge.after,
        why=badge.basis or "",
        wait=_wait(planting, ledger) if badge.kind == "expected" else None,
        is_plain=is_plain,
    )


def _wait(planting: Planting, ledger: Ledger) -> Wait | None:
    """How much of the wait is over; None where the count's start is not an exact day."""
    forecast = ledger.reckoned.forecasts.get(planting.id)
    start = planting.start
    if (
        forecast is None
        or forecast.kind == "season"
        or start is None
        or start.day is None
        or start.day >= forecast.latest
    ):
        return None
    whole = (forecast.latest - start.day).days
    gone = min(100, max(0, round(100 * (ledger.garden.on - start.day).days / whole)))
    opens = min(100, max(0, round(100 * (forecast.earliest - start.day).days / whole)))
    return Wait(gone=gone, opens=opens)
