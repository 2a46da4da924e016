"""Pickings that no verb names: a crop with its days, and what came off a bed before it was eaten, given or bottled.

Asked once the verbs of a line are found. Each picking becomes a clause, as if its verb had been written.
"""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.senses import action_of
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES, NEGATIONS
from leafmould.values.date_words import MONTHS, WEEKDAYS
from leafmould.values.names import Kind, fold_word

SHORT = frozenset({"mon", "tue", "tues", "wed", "weds", "thu", "thur", "thurs", "fri", "sat", "sun", "yest"})
DAYS = frozenset(map(fold_word, {*WEEKDAYS, *MONTHS, "today", "yesterday", *SHORT})) - {"may", "march"}
SOWN = frozenset({"row", "line", "drill", "packet", "pack", "pkt", "module", "cell", "station", "seed"})
FATES = frozenset({"put up", "gave away", "ate", "stored"})
CROPS = (Kind.CROP, Kind.CROP_GROUP)


def by_days(typed: Typed) -> list[Clause]:
    """ "Courgettes: 3 Tues, 2 today": a picking for each day; none if the line is no such list."""
    if ":" not in typed.plain or DAYS.isdisjoint(typed.words):
        return []
    first = typed.stops[0]
    if first >= typed.count or ":" not in typed.gaps[first] or not _names_crop(typed, 0, first):
        return []
    spots = [i for i in range(first, typed.count) if typed.breaks[i]]
    begins = [
        i for i in spots if _is_counted(typed, i) and not DAYS.isdisjoint(typed.words[i : typed.stops[i]])
    ]
    if len(begins) < 2 or begins[0] != first:
        return []
    verb = "sowed" if not SOWN.isdisjoint(typed.words) else "picked"
    starts, ends = [0, *begins[1:]], [*begins[1:], typed.count]
    return [
        Clause(start, begin, begin, end, (), verb)
        for start, begin, end in zip(starts, begins, ends, strict=True)
    ]


def with_picking_before(typed: Typed, clauses: list[Clause]) -> list[Clause]:
    """ "a bucket of beans off the Arch, Mike canned 11 pints": the picking that is told of first."""
    if not clauses:
        return clauses
    verb, stop = clauses[0], typed.stops[0]
    begin = next((i for i in range(verb.verb_start, -1, -1) if typed.breaks[i]), 0)
    if verb.start or not begin or stop > begin or verb.is_denied or action_of(typed, verb)[0] not in FATES:
        return clauses
    if not _comes_off_a_bed(typed, begin) or not any(_is_counted(typed, i) for i in range(begin)):
        return clauses
    if not NEGATIONS.isdisjoint(typed.words[:begin]) or not _names_crop(typed, 0, begin):
        return clauses
    verb.start = begin
    return [Clause(0, 0, 0, begin, (), "picked"), *clauses]


def _names_crop(typed: Typed, start: int, end: int) -> bool:
    return any(typed.kind(i, *CROPS, Kind.VARIETY)[0] for i in range(start, end))


def _is_counted(typed: Typed, i: int) -> bool:
    word = typed.words[i]
    return word.isdigit() or word in nouns.NUMBERS or word in ("half", "dozen")


def _comes_off_a_bed(typed: Typed, end: int) -> bool:
    for i in range(end - 1):
        if typed.words[i] in ("from", "off"):
            j = i + 1 + (typed.words[i + 1] in ARTICLES)
            if j < end and typed.kind(j, Kind.BED)[0]:
                return True
    return False
