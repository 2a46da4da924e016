"""Days in figures that stand where a fraction or a remark might: "planted 12/4 in Arch", "under lights 3/4".

Asked by the steps of the walk; any other day is read in `day_words`.
"""

from __future__ import annotations

from leafmould.notes.walk import Walk
from leafmould.notes.words.prepositions import PLACE_OPENERS
from leafmould.values.date_words import MONTHS
from leafmould.values.dates import DateWords, scan_date


def led_in_figures(walk: Walk, i: int) -> tuple[DateWords, int] | None:
    """The day of "planted 12/4 in Arch": behind words of sowing a stroke parts a day from its month."""
    typed = walk.typed
    if i + 2 >= walk.end or typed.gaps[i + 1] != "/" or not typed.is_number(i) or not typed.is_number(i + 1):
        return None
    is_led = walk.word(i + 2) in PLACE_OPENERS and walk.word(i + 2) != "of"
    if not is_led or walk.verb.name not in BEGUN or not (i == walk.verb_end or walk.draft.has_crop):
        return None
    return scan_date(typed.plain[: typed.ends[i + 1]], typed.starts[i])


BEGUN = frozenset({"sowed", "planted", "started", "resowed", "pricked out", "potted on"})


def day_in_figures(walk: Walk, i: int) -> bool:
    """Whether a day in figures closes the stretch at word `i`: the "3/4" of "under lights 3/4", "12 June"."""
    typed = walk.typed
    if not typed.is_number(i) or not (typed.gaps[i + 1] == "/" or walk.word(i + 1) in MONTHS):
        return False
    stop = typed.ends[walk.stop(i) - 1]
    found = scan_date(typed.plain[:stop], typed.starts[i])
    return found is not None and found[1] == stop
