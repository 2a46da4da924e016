"""What no slot, span or small word of a line took, word by word: deeds, numbers, names and units are told.

The very last look at a line, behind `unread` and `last_look`, which look at whole pieces of a remark. Nothing is read
here. Why a thing was done, weather, feelings, hours of the clock and words of size stay silent.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from leafmould.notes.draft import Asked, Done
from leafmould.notes.last_look import WOOD
from leafmould.notes.typed import Typed
from leafmould.notes.verbless import AT_IT
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ARTICLES,
    BEING,
    CLAUSE_JOINS,
    FILLERS,
    NEGATIONS,
    PLACE_OPENERS,
    REMARK_OPENERS,
    SUBJECTS,
    THIRD_PERSONS,
)
from leafmould.notes.words.quiet import DEEDS, DURATIONS, QUIET, QUIET_PAIRS, SIZE_WORDS, TURNS
from leafmould.notes.words.verbs import PAST
from leafmould.values.names import Kind, fold
from leafmould.values.problems import Level

LONGEST_QUOTED = 9
"""So many words of a remark are quoted; of a longer one, those around what was found."""
KEPT = '" is kept as a remark.'
QUOTED = re.compile(r'"([^"]+)"')


def tell_remainder(done: Sequence[Done], typed: Typed) -> None:
    """A hint for every piece of a remark that holds a deed, a number, a unit or a name, and was not told of yet."""
    if not any(clause.draft.left for clause in done):
        return
    pieces = [(clause, start, end) for clause in done for start, end in _pieces(clause, typed)]
    if not pieces:
        return
    named = {k for d in done for i in d.draft.items for c in i.crops for k in (c.key, *c.of)}
    named |= {p.key for d in done for p in (*d.draft.places, *d.draft.origins, *d.draft.but)}
    told = _words_told(a.message for d in done for a in d.draft.asked)
    for clause, start, end in pieces:
        found = next(
            (i for i in _looked_at(typed, start, end) if _is_more(clause, typed, i, start, end, named)),
            None,
        )
        if found is None or typed.words[found] in told:
            continue
        first, last = _quoted(*_widened(clause, typed, start, end), found)
        clause.draft.ask(Level.HINT, f'"{typed.written(first, last)}{KEPT}', typed.starts[first])
        told.update(typed.words[first:last])


def join_kept(asked: list[Asked]) -> list[Asked]:
    """One sentence for all that is kept as a remark."""
    kept = [a for a in asked if a.level is Level.HINT and a.message.endswith(KEPT) and a.suggestion is None]
    if len(kept) < 2:
        return asked
    kept.sort(key=lambda a: a.column or 0)
    quoted = list(dict.fromkeys(a.message[: -len(KEPT) + 1] for a in kept))
    names = ", ".join(quoted[:-1]) + f" and {quoted[-1]}"
    message = f"{names} are kept as remarks." if len(quoted) > 1 else kept[0].message
    return [Asked(Level.HINT, message, kept[0].column), *(a for a in asked if a not in kept)]


def _words_told(messages: Iterable[str]) -> set[str]:
    return {word for message in messages for quote in QUOTED.findall(message) for word in fold(quote)}


def _pieces(clause: Done, typed: Typed) -> Iterator[tuple[int, int]]:
    """What is left over, cut at breaks and joins."""
    draft = clause.draft
    for first, last, _ in draft.left:
        start = first
        for i in range(first + 1, last + 1):
            if i == last or typed.breaks[i] or typed.words[i] in CLAUSE_JOINS or "&" in typed.gaps[i]:
                if (
                    start not in draft.relative
                    and start not in draft.said
                    and not draft.covers(typed.starts[start], "subject", "verb")
                ):
                    yield start, i
                start = i


def _looked_at(typed: Typed, start: int, end: int) -> range:
    """The words of a piece up to where it says why, when or with what it is compared."""
    begin = start + (typed.words[start] == "for" and not SWAPS.isdisjoint(typed.words))
    stop = next((i for i in range(begin, end) if typed.words[i] in TURNS or typed.words[i] in NEGATIONS), end)
    return range(start, stop)


def _widened(clause: Done, typed: Typed, start: int, end: int) -> tuple[int, int]:
    """A short piece with the small words before it: "low was 4", not its "4"."""
    first = start
    while (
        end - first < 3 and first > 0 and not typed.breaks[first] and not _is_taken(clause, typed, first - 1)
    ):
        first -= 1
    return first, end


def _is_taken(clause: Done, typed: Typed, i: int) -> bool:
    spans = [*clause.draft.spans, *(span for item in clause.draft.items for span in item.spans)]
    return typed.words[i] in CLAUSE_JOINS or any(begin <= typed.starts[i] < stop for _, begin, stop in spans)


def _quoted(start: int, end: int, found: int) -> tuple[int, int]:
    if end - start <= LONGEST_QUOTED:
        return start, end
    first = max(start, found - 2)
    return first, min(end, first + LONGEST_QUOTED)


def _is_more(clause: Done, typed: Typed, i: int, start: int, end: int, named: set[str]) -> bool:
    return (
        (_is_deed(clause, typed, i, start, end) and not _is_said_beside(clause, typed, i, start, end))
        or _is_number(typed, i, start, end)
        or _is_name(clause, typed, i, start, end, named)
        or _is_holder(clause, typed, i, start)
        or _is_proper(clause, typed, i, start, end)
        or _is_called(clause, typed, i, start)
        or _is_exchange(clause, typed, i, start)
        or _is_joined_stranger(clause, typed, i, start, end)
        or _is_stranger_before(clause, typed, i, start, end)
        or _is_place_noun(clause, typed, i, start, end)
    )


def _is_deed(clause: Done, typed: Typed, i: int, start: int, end: int) -> bool:
    word = typed.words[i]
    if word in QUIET or typed.names(i)[0] or not word.isalpha():
        return False
    if word.startswith("un") and word not in DEEDS:
        return False
    if typed.words[start] in THIRD_PERSONS and not BEING.isdisjoint(typed.words[start + 1 : i + 1]):
        return False  # "it had bolted"
    if word.endswith("ed") and _is_done_by_crop(clause, typed, i):
        return False  # "courgettes swamped us"
    behind = "" if typed.breaks[i + 1] else typed.words[i + 1]
    if word == "took" and not DURATIONS.isdisjoint(typed.words[i + 1 : i + 5]):
        return False  # "took an hour"
    if (word, behind) in QUIET_PAIRS or (i + 1 == end and behind and typed.names(i + 1)[0]):
        return False  # "stewed rhubarb"
    if word.endswith("ing") and len(word) > 5:
        return behind != "of" and (i == start or (i == start + 1 and typed.words[start] in CLAUSE_JOINS))
    is_form = (
        word in DEEDS
        or (word,) in PAST
        or (word.endswith("ed") and not word.endswith("eed") and len(word) > 4)
    )
    before = typed.words[i - 1] if i > start else ""
    return is_form and not (before in ARTICLES or before in PLACE_OPENERS or before in DESCRIBING)


def _is_done_by_crop(clause: Done, typed: Typed, i: int) -> bool:
    """Whether a crop stands right before, as who did it: "the sweet peas had sulked"."""
    k = i - 1
    while k >= 0 and (typed.words[k] in BEING or typed.words[k] in FILLERS) and not typed.breaks[k + 1]:
        k -= 1
    crops = (s for item in clause.draft.items for s in item.spans if s[0] == "crop")
    return k >= 0 and not typed.breaks[k + 1] and any(a <= typed.starts[k] < b for _, a, b in crops)


def _is_said_beside(clause: Done, typed: Typed, i: int, start: int, end: int) -> bool:
    """What a pest did, what was thrown away of what was lost, "put them in the Cold frame" where the place is read."""
    word, verb = typed.words[i], clause.verb.name
    return (
        (verb == "saw" and word in AT_IT)
        or (verb in ENDED and word in THROWN)
        or (verb in SPREAD and word in RAKED)
        or (verb == "pruned" and not WOOD.isdisjoint(typed.words[i + 1 : end]))
        or not nouns.TROUBLES.isdisjoint(typed.words[start:i])
        or any(clause.draft.covers(typed.starts[k], "place", "origin") for k in range(i + 1, end))
    )


SPREAD = frozenset({"mulched", "manured", "limed", "fed", "sowed", "resowed"})
RAKED = frozenset({"soaked", "raked", "forked", "hoed", "scratched", "levelled", "firmed", "tamped"})
ENDED = frozenset({"lost", "cleared", "pruned", "weeded", "thinned", "saw", "finished"})
THROWN = frozenset(
    {"binned", "composted", "burnt", "burned", "bagged", "frozen", "done", "finished", "bolted", "spent"}
)
DOERS = frozenset({"it", "them", "they", "she", "he", "you", "and", "one", "some", "all", "then", "later", "also", "had", "has", "have", "was", "were", "been", "out", "up", "off", "down", "back", "half", "rest"})  # fmt: skip
DESCRIBING = nouns.SELDOM_VARIETY - SUBJECTS - DOERS
"""Behind these a word in -ed describes: "a big cracked one"."""


def _is_number(typed: Typed, i: int, start: int, end: int) -> bool:
    word = typed.words[i]
    if not (word.isdigit() or (word in nouns.NUMBERS and word not in ("a", "an", "one", "another"))):
        return word in ("dozen", "quarter") and i > start
    if typed.starts[i] and typed.plain[typed.starts[i] - 1].isalpha():
        return False  # "F1"
    if ":" in typed.gaps[i] or ":" in typed.gaps[i + 1]:
        return False  # "12:30"
    before, behind = (typed.words[i - 1] if i else ""), (typed.words[i + 1] if i + 1 < end else "")
    if before in ("at", "by", "since", "till", "until") and (
        not behind or behind in DURATIONS or behind == "in"
    ):
        return False  # "by 7", "at 5 am"
    if typed.words[start] == "on" and typed.gaps[i + 1] == ".":
        return True  # "on 2.5.": perhaps a day
    first = start + (typed.words[start] in ("it", "them") and start + 1 < end)
    if typed.words[first] in PLACE_OPENERS or typed.words[first] in REMARK_OPENERS:
        return False  # "in 9 cm pots", "after 46 days", "it into three"
    return not (
        behind in DURATIONS
        or behind in ("st", "nd", "rd", "th")
        or SIZE_WORDS & set(typed.words[i + 1 : i + 4])
    )


def _is_holder(clause: Done, typed: Typed, i: int, start: int) -> bool:
    """ "picked salad bag": perhaps a bag of it."""
    word = typed.words[i]
    if clause.verb.name != "picked" or i != start or not i or typed.breaks[i]:
        return False
    crops = (s for item in clause.draft.items for s in item.spans if s[0] == "crop")
    is_one = word in nouns.HOLDERS and word not in nouns.NOT_ALONE
    return is_one and any(a <= typed.starts[i - 1] < b for _, a, b in crops)


def _is_proper(clause: Done, typed: Typed, i: int, start: int, end: int) -> bool:
    """ "peas in, 1 packet Feltham W": perhaps a variety."""
    if (
        clause.verb.name not in RAISED
        or not typed.capital(i)
        or (clause.verb.name != "bought" and any(item.varieties for item in clause.draft.items))
    ):
        return False
    before = typed.gaps[i].strip()
    is_first = i == 0 or before[-1:] in (".", "!", "?", ";", "(") or before.startswith((".", "!", "?"))
    follows = typed.words[i + 1] if i + 1 < end and not typed.breaks[i + 1] else ""
    word = typed.words[i]
    is_person = (
        (i > 0 and typed.words[i - 1] == "with")
        or word in SUBJECTS
        or word in FILLERS
        or word in DURATIONS
        or word in QUIET
        or follows in DOING
    )
    return not is_first and not is_person and len(word) > 2 and word.isalpha() and i - start < 2


def _is_called(clause: Done, typed: Typed, i: int, start: int) -> bool:
    """The York of "took a head of York cabbage", the Bartletts of "half a bushel of Bartletts": perhaps a variety."""
    word, draft = typed.words[i], clause.draft
    if not i or not typed.capital(i) or not word.isalpha() or len(word) < 3 or "'" in typed.written(i, i + 1):
        return False
    gap = typed.gaps[i].strip()
    if (
        gap[-1:] in (".", "!", "?", ";", "(", ":")
        or word in SUBJECTS
        or word in FILLERS
        or word in DURATIONS
        or word in QUIET
    ):
        return False
    if any(v for item in draft.items for v in item.varieties) or clause.verb.name not in OF_PLANTS:
        return False
    crops = [s for item in draft.items for s in item.spans if s[0] == "crop"]
    is_counted = typed.words[i - 1] == "of" or clause.verb.name != "gave away"
    is_before = is_counted and not typed.breaks[i + 1] and any(s[1] == typed.starts[i + 1] for s in crops)
    is_of = typed.words[i - 1] == "of" and not draft.has_crop and not typed.breaks[i]
    return is_before or is_of


OF_PLANTS = frozenset({"picked", "gave away", "stored", "put up", "ate", "used", "potted on", "pricked out", "hardened off", "came up", "lost", "cleared", "saved seed", "thinned"})  # fmt: skip


def _is_exchange(clause: Done, typed: Typed, i: int, start: int) -> bool:
    """ "swapped a dozen eggs for a bag of mandarins": what came for it."""
    if (
        clause.verb.name != "gave away"
        or start != i
        or typed.words[i] != "for"
        or SWAPS.isdisjoint(typed.words)
    ):
        return False
    behind = typed.words[i + 1 : i + 3]
    return any(w.isdigit() or w in nouns.NUMBERS or w in ("some", "half") for w in behind)


SWAPS = frozenset({"swapped", "swapd", "traded", "bartered", "exchanged", "swap"})


RAISED = frozenset({"sowed", "planted", "started", "resowed", "bought"})
DOING = frozenset({"said", "did", "helped", "say", "was", "is", "and", "helping", "supervising"})


def _is_joined_stranger(clause: Done, typed: Typed, i: int, start: int, end: int) -> bool:
    """ "sowed rye and vetch": perhaps a crop nobody knows, joined to one."""
    if not typed.breaks[i + 1] and typed.names(i + 1)[0]:
        return False  # "and perpetual spinach"
    if i != start or i < 2 or typed.words[i - 1] != "and" or end - start > 2 or not typed.words[i].isalpha():
        return False
    word, before = typed.words[i], typed.starts[i - 2]
    crops = (s for item in clause.draft.items for s in item.spans if s[0] in ("crop", "variety"))
    is_plain = (
        word in QUIET
        or word in nouns.SELDOM_VARIETY
        or word in FILLERS
        or word in SUBJECTS
        or word in PLACE_OPENERS
    )
    return not is_plain and not typed.breaks[i] and any(a <= before < b for _, a, b in crops)


def _is_stranger_before(clause: Done, typed: Typed, i: int, start: int, end: int) -> bool:
    """The roses of "sprayed the roses and the beans": perhaps a crop nobody knows."""
    word, j = typed.words[i], end + 1
    if i != start or end - start > 1 or j >= typed.count or typed.words[end] != "and" or not word.isalpha():
        return False
    j += typed.words[j] in ARTICLES
    ends = [stop for slot, _, stop in clause.draft.spans if slot == "verb"]
    before = i - (typed.words[i - 1] in ARTICLES)
    is_object = before > 0 and typed.ends[before - 1] in ends
    is_plain = word in QUIET or word in nouns.SELDOM_VARIETY or word in FILLERS or word in SUBJECTS
    is_plain = is_plain or word in nouns.TROUBLES or word in PLACE_OPENERS or word in nouns.WEEDS
    return is_object and not is_plain and j < typed.count and typed.kind(j, Kind.CROP, Kind.CROP_GROUP)[0] > 0


def _is_place_noun(clause: Done, typed: Typed, i: int, start: int, end: int) -> bool:
    """The bags of "planted up the bags with potatoes": perhaps a bed."""
    is_bare = i == start and end - start == 1 and not typed.breaks[i]
    return (
        is_bare
        and clause.verb.name in RAISED
        and not clause.draft.places
        and typed.words[i] in nouns.PLACE_NOUNS
        and typed.words[i - 1] in ("the", "my", "our", "both")
    )


def _is_name(clause: Done, typed: Typed, i: int, start: int, end: int, named: set[str]) -> bool:
    """A crop that stands alone but for small words, or a bed, of which the line says nothing else."""
    size, known = typed.names(i)
    if (
        not size
        or i + size > end
        or named & {k.key for k in known}
        or named & {o for k in known for o in k.of}
    ):
        return False
    kinds = {k.kind for k in known}
    before = typed.words[i - 1] if i > start else ""
    if typed.words[start] in REMARK_OPENERS or typed.words[start] in QUIET:
        return False
    if Kind.BED in kinds and before == "of":
        return i - start > 2 and typed.words[i - 2] in nouns.PART_ENDS  # "over the cleared end of Bed 3"
    if Kind.BED in kinds:
        return (before in PLACE_OPENERS or before in ARTICLES or typed.capital(i)) and before not in (
            "of",
            "for",
            "by",
        )
    if not kinds & {Kind.CROP, Kind.CROP_GROUP} or typed.words[i] in nouns.PLANT_NOUNS:
        return False
    if clause.draft.has_crop and typed.words[start] in PLACE_OPENERS and size < end - start:
        return False  # "in the gap by the leeks", "to follow the peas"
    behind = typed.words[i + size] if i + size < end else ""
    is_beside = i + size < typed.count and not typed.breaks[i + size] and typed.names(i + size)[0] > 0
    return not is_beside and not behind.isalpha() and before not in PLACE_OPENERS
