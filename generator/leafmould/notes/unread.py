"""What was kept as a remark and looks like more: an amount, a crop, a place, another thing done.

The last look at a line, behind everything that reads it. Nothing is read here: what a gardener would miss
on the page of that day is told in a hint, so that nothing is lost in silence.
"""

from __future__ import annotations

from collections.abc import Iterable

from leafmould.notes.amounts import read_amount
from leafmould.notes.draft import Done, Draft
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ARTICLES,
    BEING,
    CLAUSE_JOINS,
    FILLERS,
    NO_DEEDS,
    PLACE_OPENERS,
    REMARK_OPENERS,
    SUBJECTS,
    THIRD_PERSONS,
)
from leafmould.notes.words.verbs import LONGEST_PAST, PAST
from leafmould.values.names import Kind, fold
from leafmould.values.problems import Level

COUNTED = nouns.WEIGHTS | nouns.VOLUMES | nouns.HOLDERS | {"egg"}
OBJECTS = frozenset({"dozen", "about", "some", "all", "half", "rest", "lot", "few"})
KNOWN_WORDS = (
    NO_DEEDS | nouns.SELDOM_VARIETY | nouns.WEEDS | nouns.SUCKERS | FILLERS | nouns.TROUBLES | REMARK_OPENERS
)
THE_BED = frozenset({"row", "bed", "ground", "soil", "patch", "the", "whole", "empty", "bare"})
TOLD = frozenset({"saw", "noted weather", "turned out"})
"""What is seen is told in free words anyway."""


def tell_what_is_left(done: Iterable[Done], typed: Typed) -> None:
    """Hints for what the remarks of a line hold."""
    clauses = list(done)
    if all(_leaves_nothing(clause.draft) for clause in clauses):
        return
    crops = {k for d in clauses for i in d.draft.items for c in i.crops for k in (c.key, *c.of)}
    has_place = any(d.draft.places or d.draft.origins or d.draft.everything for d in clauses)
    for clause in clauses:
        if _names_nothing(clause, typed):
            question = f'What was "{clause.verb.name}"? Neither a crop nor a place is named.'
            clause.draft.ask(Level.QUESTION, question)
        if any(a.level is not Level.HINT for a in clause.draft.asked):
            continue
        found = _stranger(clause, typed) or next(
            (
                (start, end)
                for start, end, _ in _stretches(clause, typed)
                if _is_more(clause, typed, start, end, crops, has_place)
            ),
            None,
        )
        if found is not None:
            found = whole_number(typed, found[0]), found[1]
            written = typed.written(*found)
            clause.draft.ask(Level.HINT, f'"{written}" is kept as a remark.', typed.starts[found[0]])


def _leaves_nothing(draft: Draft) -> bool:
    return not draft.left and bool(draft.places or draft.has_crop)


def whole_number(typed: Typed, start: int) -> int:
    """The word a number begins at: "12.3 g", not its "3 g"."""
    while (
        start > 0
        and typed.is_number(start)
        and typed.is_number(start - 1)
        and typed.gaps[start] in (".", ",")
    ):
        start -= 1
    return start


def _stretches(clause: Done, typed: Typed) -> Iterable[tuple[int, int, bool]]:
    """What is left over, cut where a break or "and" cuts it."""
    for first, last, after in clause.draft.left:
        start = first
        for i in range(first + 1, last + 1):
            if i == last or typed.breaks[i] or typed.words[i] in CLAUSE_JOINS or "&" in typed.gaps[i]:
                if (
                    start not in clause.draft.relative
                    and start not in clause.draft.said
                    and not clause.draft.covers(typed.starts[start], "subject", "verb")
                ):
                    yield start, i, after
                start = i


def _is_more(clause: Done, typed: Typed, start: int, end: int, crops: set[str], has_place: bool) -> bool:
    words = typed.words
    begin = start + (words[start] in CLAUSE_JOINS and start + 1 < end)
    if words[begin] in ("except", "but", "bar") and "bed" in clause.verb.slots and begin + 1 < end:
        return any(w not in KNOWN_WORDS for w in words[begin + 1 : end])
    if (
        words[begin] in REMARK_OPENERS
        or words[begin] in NO_DEEDS
        or (words[begin] in THIRD_PERSONS and BEING & set(words[begin : begin + 3]))
    ):
        return False
    if clause.verb.name == "fed" and nouns.DRINKS & set(words[begin:end]):
        return True
    if _is_done(typed, start, end):
        return True
    if (
        "place" in clause.verb.slots
        and clause.draft.part
        and words[begin] in nouns.PART_ALONE
        and end == begin + 1
    ):
        return True
    if words[begin] == "for" and clause.verb.name == "gave away":
        return any(typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] for i in range(begin, end))
    is_phrase = words[begin] in PLACE_OPENERS or words[begin] == "with"
    for i in range(begin, end):
        kinds = {k.kind for k in typed.names(i)[1]}
        if (
            words[i] not in nouns.PLANT_NOUNS
            and kinds & {Kind.CROP, Kind.CROP_GROUP}
            and not crops & {k.key for k in typed.names(i)[1]}
        ):
            is_counted = i > begin and (
                words[i - 1].isdigit() or words[i - 1] in nouns.NUMBERS or words[i - 1] in nouns.COUNT_NOUNS
            )
            if is_counted or (
                not is_phrase and clause.verb.name not in TOLD and _is_alone(typed, begin, i, end)
            ):
                return True
        if (
            Kind.BED in kinds
            and not has_place
            and "place" in clause.verb.slots
            and typed.names(i)[0] > 0
            and (typed.capital(i) or typed.names(i)[0] > 1)
        ):
            return True
        if not is_phrase and _is_amount(typed, i, end):
            return True
    return False


def _is_alone(typed: Typed, begin: int, i: int, end: int) -> bool:
    """Whether a crop is all a stretch names, but for small words."""
    size = typed.names(i)[0]
    if i + size < typed.count and not typed.breaks[i + size] and typed.names(i + size)[0]:
        return False  # "plum tomatoes"
    return all(w in KNOWN_WORDS or w.isdigit() for w in (*typed.words[begin:i], *typed.words[i + size : end]))


def _is_amount(typed: Typed, i: int, end: int) -> bool:
    word = typed.words[i]
    if not (word.isdigit() or (word in nouns.NUMBERS and word not in ("one", "another")) or word == "half"):
        return False
    read = read_amount(typed, i, None)
    return read is not None and read.end <= end and read.has_noun and read.amount.unit in COUNTED


def _is_done(typed: Typed, start: int, end: int) -> bool:
    """Whether a verb in a past form stands here with a doer or behind "and", and something it was done to."""
    for i in range(start, end):
        if i > start and typed.words[i - 1] not in SUBJECTS and typed.words[i - 1] not in CLAUSE_JOINS:
            continue
        if (i == start and not typed.breaks[i]) or typed.words[i] in NO_DEEDS:
            continue
        for size in range(min(LONGEST_PAST.get(typed.words[i], 0), end - i), 0, -1):
            if tuple(typed.words[i : i + size]) in PAST and typed.names(i)[0] < size:
                behind = range(i + size, end)
                return i > start + 1 or any(
                    typed.words[k] in OBJECTS or typed.words[k].isdigit() or typed.names(k)[0] for k in behind
                )
    return False


def _names_nothing(clause: Done, typed: Typed) -> bool:
    """ "mulched the bushes with bark": done to something nobody knows."""
    draft = clause.draft
    if "bed" not in clause.verb.slots or draft.has_crop or draft.places or draft.origins or draft.everything:
        return False
    if clause.verb.name in ("penned", "let out", "tested soil") or any(
        a.level is Level.QUESTION for a in draft.asked
    ):
        return False
    if any(a.whole for i in draft.items for a in i.amounts):
        return True
    if clause.verb.name == "pinched out" and not draft.left:
        return True  # "side shoots out": of which plants is not said
    if clause.verb.name == "treated" and any(_is_on_stranger(typed, s, e) for s, e, _ in draft.left):
        return True
    return any(
        typed.words[start] not in REMARK_OPENERS
        and typed.words[start] not in PLACE_OPENERS
        and any(w not in KNOWN_WORDS and not w.isdigit() for w in typed.words[start:end])
        and not draft.covers(typed.starts[start], "subject", "verb")
        for start, end, after in draft.left
        if not after
    )


def _is_on_stranger(typed: Typed, start: int, end: int) -> bool:
    """ "sprayed milk on the zucs"; not "soap on blackfly"."""
    at = next((i for i in range(start, end) if typed.words[i] == "on"), end)
    stop = next((i for i in range(at, end) if typed.words[i] in ("for", "against")), end)
    behind = [w for w in typed.words[at + 1 : stop] if w not in ARTICLES]
    is_known = not behind or behind[0] in KNOWN_WORDS
    return not is_known and nouns.TROUBLES.isdisjoint(behind[:3])


def _stranger(clause: Done, typed: Typed) -> tuple[int, int] | None:
    """ "netted brassicas in bed 3": the crop nobody knows, where a bed stands for it."""
    draft = clause.draft
    if "bed" not in clause.verb.slots or not clause.object_left or draft.has_crop:
        return None
    if not (draft.places or draft.everything) and clause.verb.name not in (
        "mulched",
        "fed",
        "covered",
        "netted",
        "treated",
    ):
        return None
    start, end = next(((a, b) for a, b, _ in draft.left if typed.written(a, b) == clause.object_left), (0, 0))
    words = set(fold(clause.object_left))
    if words <= THE_BED:
        return None  # "cleared the peas from Bed 2 and limed the bed"
    if (
        start >= end
        or draft.covers(typed.starts[start], "subject")
        or words <= KNOWN_WORDS | PLACE_OPENERS.keys()
        or typed.words[start] in PLACE_OPENERS.keys() | REMARK_OPENERS
    ):
        return None
    return start, end
