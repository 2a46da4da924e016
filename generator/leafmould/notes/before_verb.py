"""What stands before the first verb and is none of its business: "peas 1 kg, beans finished", "garlic in bed 2, muck spread on bed 3".

Asked once the verbs of a line are found. What stands there becomes a clause of its own, with a question, since no verb names it.
"""

from __future__ import annotations

from leafmould.notes.bare import amount_alone
from leafmould.notes.clause import Clause
from leafmould.notes.in_or_out import in_or_out
from leafmould.notes.lists_in_short import comes_off_a_bed
from leafmould.notes.senses import action_of
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import PLACE_OPENERS
from leafmould.values.names import Kind

CROPS = (Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)
ENDED = frozenset({"finished", "saw", "lost", "cleared"})
SPREAD = frozenset({"manured", "mulched", "limed", "fed", "covered", "netted", "treated"})
CARE = frozenset({"watered", "staked", "tied in", "pinched out", "weeded"})
STUFF = nouns.MANURES | nouns.MULCHES | nouns.LIMES | nouns.FEEDS


def with_unnamed_before(typed: Typed, clauses: list[Clause]) -> tuple[list[Clause], str | None]:
    """The clauses, with one for what stands before the first of them; and what to ask of it, where it is not sure."""
    first = clauses[0] if clauses else None
    if first is None or first.start or first.is_denied or first.verb_start <= typed.stops[0]:
        return clauses, None
    begin = next((i for i in range(first.verb_start, 0, -1) if typed.breaks[i]), 0)
    if not begin or not _names(typed, 0, begin):
        return clauses, None
    verb, found = action_of(typed, first)[0], None
    if verb in ENDED and _is_picking_before(typed, begin, first, verb):
        found = Clause(0, 0, 0, begin, (), "picked")
    elif verb in SPREAD and first.is_laid:
        found = _without_verb(typed, begin)
    elif verb in SPREAD | CARE and begin == first.verb_start and typed.gaps[begin].startswith("."):
        found = _without_verb(typed, begin)
        found = found if found is not None and found.verb in ("planted", "sowed") else None
    elif verb in SPREAD and _is_spread_elsewhere(typed, begin, first):
        told = "planted" if _stands_somewhere(typed, begin) else "picked"
        found = Clause(0, 0, 0, begin, (), told)
    if found is None:
        return clauses, None
    first.start = begin
    is_sure = found.form or (
        found.verb == "picked" and _is_weighed(typed, begin) and comes_off_a_bed(typed, begin)
    )
    asks = f'No action is named for "{typed.written(0, begin)}"; read as "{found.verb}".'
    return [found, *clauses], None if is_sure else asks


def _names(typed: Typed, start: int, end: int) -> bool:
    return any(typed.kind(i, *CROPS)[0] for i in range(start, end))


def _is_weighed(typed: Typed, end: int) -> bool:
    return any(nouns.UNITS.get(w) in nouns.WEIGHTS for w in typed.words[:end])


def _without_verb(typed: Typed, begin: int) -> Clause | None:
    """What the line says before ". Straw on top", as if nothing stood behind it."""
    before = Typed(typed.text[: typed.starts[begin]].rstrip(" ,.;:!-"), typed.vocabulary)
    found = (in_or_out(before) or amount_alone(before)) if before.count == begin else None
    if found is not None:
        found.end = begin
    return found


def _is_picking_before(typed: Typed, begin: int, clause: Clause, verb: str) -> bool:
    """ "peas 1 kg, beans finished"; not "12 leeks, 3 lettuces lost"."""
    if not _names(typed, begin, clause.verb_start):
        return False
    counts = [i for i in range(begin) if _is_count(typed, i)]
    if not counts or nouns.TROUBLES & set(typed.words[:begin]):
        return False
    is_list = any(_is_count(typed, i) for i in range(begin, clause.verb_start))
    return _is_weighed(typed, begin) or not (is_list or (verb == "saw" and not clause.is_state))


def _is_count(typed: Typed, i: int) -> bool:
    """A number that is none of a bed's name."""
    is_bed = any(typed.kind(k, Kind.BED)[0] > i - k for k in range(max(i - 2, 0), i))
    return not is_bed and (
        typed.is_number(i) or (typed.words[i] in nouns.NUMBERS and len(typed.words[i]) > 2)
    )


def _is_spread_elsewhere(typed: Typed, begin: int, clause: Clause) -> bool:
    """ "garlic in bed 2, compost spread on bed 3"; not "garlic, compost spread round it"."""
    before, behind = typed.words[begin : clause.verb_start], range(clause.verb_end, clause.end)
    has_own = any(typed.kind(i, Kind.BED, Kind.PART)[0] for i in behind) or not nouns.PART_ALONE.isdisjoint(
        typed.words[clause.verb_end : clause.verb_end + 4]
    )
    return has_own and not STUFF.isdisjoint(before) and not _names(typed, begin, clause.verb_start)


def _stands_somewhere(typed: Typed, begin: int) -> bool:
    """ "onion sets in Bed 1", "peas along the Arch"; "peas from the Arch" are picked."""
    is_set = not nouns.PLANT_NOUNS.isdisjoint(typed.words[:begin])
    openers = {typed.words[i] for i in range(1, begin) if typed.words[i] in PLACE_OPENERS}
    return is_set or bool(openers - {"from", "off"})
