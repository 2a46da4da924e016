"""The last look at the remarks of a line: a second deed, a number, a day, a place, a crop is told in a hint.

Runs behind `unread`, also where something else is asked already. Nothing is read here. Weather, feelings
and what a thing was for stay silent.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from leafmould.notes.draft import Done
from leafmould.notes.nearness import near_name
from leafmould.notes.shares import CONTAINERS
from leafmould.notes.typed import Typed
from leafmould.notes.unread import whole_number
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    BEING,
    CLAUSE_JOINS,
    NEGATIONS,
    NO_DEEDS,
    PLACE_OPENERS,
    REMARK_OPENERS,
    SUBJECTS,
    THIRD_PERSONS,
)
from leafmould.notes.words.verbs import LONGEST_PAST
from leafmould.values.date_words import MONTHS, WEEKDAYS
from leafmould.values.names import Kind
from leafmould.values.problems import Level


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


DEEDS = _words(
    """ate took gave cut put went tied snapped broke died came dug fed froze stewed sold swapped planted sowed
    potted replanted kept hung threw chucked picked pulled lifted cooked roasted boiled pickled wrapped
    binned burnt burned composted moved watered weeded mulched staked netted covered pruned sent dropped brought limed"""
)
"""What people do to plants and harvests, in everyday past forms."""
PURPOSES = frozenset(
    {"can", "could", "will", "would", "should", "that", "they", "itll", "theyll", "ll", "have", "nobody"}
)
ALWAYS_DEEDS = frozenset({"ate", "took", "gave", "threw", "froze", "sold", "went", "sent"})
ENDED = frozenset({"lost", "cleared", "pruned", "weeded", "thinned", "saw", "finished"})
THROWN = frozenset({"binned", "composted", "burnt", "burned"})
WOOD = nouns.CANES | frozenset({"growth", "spur", "sucker", "watershoot", "cankered", "stub", "middle"})
DOERS = SUBJECTS | nouns.HENS | frozenset({"it", "so", "one", "ones", "them", "out", "rest", "lot"})
ORDINAL_ENDS = frozenset({"st", "nd", "rd", "th"})
DAYS = frozenset(
    {
        *WEEKDAYS,
        *MONTHS,
        "yesterday",
        "weekend",
        "mon",
        "tues",
        "weds",
        "thurs",
        "fri",
        "nite",
        "fortnight",
        "eve",
        "holiday",
        "easter",
        "christmas",
    }
) - {"may", "march"}
LAST_DAYS = frozenset({"night", "week", "month", "evening"})
HOURS = frozenset({"am", "pm", "oclock", "o", "clock", "hour", "min", "minute", "degree", "mph", "time", "day", "week", "year", "month", "foot", "ft", "inch", "cm", "m", "left"})  # fmt: skip
SILENT_OPENERS = frozenset({"for", "because", "since", "as", "cos", "where", "which", "like", "hoping", "if"})


def tell_second_things(done: Iterable[Done], typed: Typed) -> None:
    """A hint for every piece of a remark that holds more than a remark, unless a message names it."""
    clauses = list(done)
    if all(not clause.draft.left and clause.verb.name != "fed animals" for clause in clauses):
        return
    named = {k for d in clauses for i in d.draft.items for c in i.crops for k in (c.key, *c.of)}
    places = {p.key for d in clauses for p in (*d.draft.places, *d.draft.origins, *d.draft.but)}
    told = [a.message for d in clauses for a in d.draft.asked]
    for clause in clauses:
        if clause.verb.name == "fed animals" and any(w in ("gave", "given") for w in typed.words):
            _tell_what_animals_got(clause)
        for start, end in _pieces(clause, typed):
            start = whole_number(typed, start)
            written = typed.written(start, end)
            if any(f'"{written}' in m or f'{written}"' in m for m in told):
                continue
            if _holds_more(clause, typed, start, end, named, places):
                told.append(f'"{written}" is kept as a remark.')
                clause.draft.ask(Level.HINT, told[-1], typed.starts[start])


def _tell_what_animals_got(clause: Done) -> None:
    """ "gave the hens the old lettuces from bed 4": the bed may still hold some."""
    crop = next((c.name for item in clause.draft.items for c in item.crops), None)
    if crop is not None:
        hint = f'Fed to animals; this ends no crop. Write "cleared {crop}" if nothing is left of it.'
        clause.draft.ask(Level.HINT, hint)


def _pieces(clause: Done, typed: Typed) -> Iterable[tuple[int, int]]:
    """What is left over, cut at breaks and before "and"."""
    for first, last, _ in clause.draft.left:
        start = first
        for i in range(first + 1, last + 1):
            if i == last or typed.breaks[i] or typed.words[i] in CLAUSE_JOINS:
                if (
                    start not in clause.draft.relative
                    and start not in clause.draft.said
                    and not clause.draft.covers(typed.starts[start], "subject", "verb")
                ):
                    yield start, i
                start = i


def _is_letters(written: str) -> bool:
    """ "GH", "B7": short for a place that is not known here."""
    return 2 <= len(written) <= 3 and written.isupper() and written not in SAID_IN_CAPITALS


SAID_IN_CAPITALS = frozenset(
    {
        "F1",
        "F2",
        "OK",
        "AM",
        "PM",
        "TV",
        "LOL",
        "OMG",
        "XX",
        "XXX",
        "HA",
        "NO",
        "YES",
        "YAY",
        "WOW",
        "FAB",
        "TBC",
    }
)


def _holds_more(clause: Done, typed: Typed, start: int, end: int, named: set[str], places: set[str]) -> bool:
    begin = start + (typed.words[start] in CLAUSE_JOINS and start + 1 < end)
    if _is_letters(typed.written(begin, end)):
        return True
    words = typed.words[begin:end]
    if words[0] == "so" and not PURPOSES.isdisjoint(words):
        return False  # "so the carrots can breathe"
    if words[0] in SILENT_OPENERS or words[0] in NO_DEEDS or NEGATIONS & set(words):
        return False
    if words[:2] == ["put", "them"] and any(
        clause.draft.covers(typed.starts[i], "place") for i in range(begin, end)
    ):
        return False  # "put them in the Cold frame": the place is read
    if words[0] in THIRD_PERSONS and BEING & set(words[:3]):
        return False
    if any(a in ("come", "came") and b in ("up", "out") for a, b in pairwise(words)):
        return True
    if (
        words[0] in ("in", "into")
        and words[1:2]
        and words[1].isdigit()
        and words[2:3]
        and words[2] in CONTAINERS
    ):
        return True  # "in 5 pots"
    if not nouns.TREATMENTS.isdisjoint(words) and clause.verb.name not in ("treated", "released"):
        return True  # "then pyrethrum at dusk"
    first = words[words[0] in ("it", "them") and len(words) > 1]
    is_phrase = first in REMARK_OPENERS or first in PLACE_OPENERS
    return (
        any(_is_deed(typed, i, begin) for i in range(begin, end) if not _is_end(clause, typed, i))
        or _is_day(words)
        or (not is_phrase and any(_is_number(typed, i, end) for i in range(begin, end)))
        or (not named and any(_is_crop(clause, typed, i) for i in range(begin, end)))
        or (not places and any(_is_near_bed(clause, typed, i, end) for i in range(begin, end)))
        or any(_is_other_name(clause, typed, i, begin, places) for i in range(begin, end))
    )


def _is_deed(typed: Typed, i: int, begin: int) -> bool:
    word = typed.words[i]
    if word == "took" and not TIMES.isdisjoint(typed.words[i + 1 : i + 5]):
        return False  # "took an hour"
    if typed.words[i : i + 2] == ["came", "through"]:
        return False  # "it came through fine"
    if word in ("had", "got", "ate", "loved", "enjoyed") and i and typed.words[i - 1] in nouns.HENS:
        return True
    if (
        word in NO_DEEDS
        or typed.names(i)[0]
        or (word not in DEEDS and not (word in LONGEST_PAST and word.endswith("ed")))
    ):
        return False
    before = typed.words[i - 1] if i else ""
    if before in ("i", "we") or (word in DEEDS and typed.words[i + 1 : i + 2] in (["them"], ["it"])):
        return True
    is_joined = typed.breaks[i] or before in CLAUSE_JOINS or before == "n" or "&" in typed.gaps[i]
    is_doing = i == begin and (is_joined or word in ALWAYS_DEEDS)
    return (is_doing and word in DEEDS) or (
        i > begin and (typed.words[i - 1] in DOERS or typed.words[i - 1].isdigit())
    )


TIMES = frozenset(
    {"hour", "minute", "min", "day", "week", "morning", "afternoon", "ages", "forever", "evening"}
)


def _is_end(clause: Done, typed: Typed, i: int) -> bool:
    """ "lost 2 plants to blight, bagged and binned": no second deed."""
    if clause.verb.name == "pruned" and not WOOD.isdisjoint(typed.words[i + 1 : typed.stops[i]]):
        return True  # "pruned the blackcurrants, took out old wood"
    return clause.verb.name in ENDED and typed.words[i] in THROWN


def _is_day(words: list[str]) -> bool:
    if "than" in words:
        return False  # "less than last week"
    if any(
        b in ORDINAL_ENDS and a.isdigit() and "on" in words[max(k - 2, 0) : k]
        for k, (a, b) in enumerate(pairwise(words))
    ):
        return True  # "in on the 21st"
    if DAYS & set(words) or any(
        a == "day" and b in ("after", "before") and not _is_counted(words[max(k - 1, 0)])
        for k, (a, b) in enumerate(pairwise(words))
    ):
        return True
    return any(
        (a in ("last", "this") and b in LAST_DAYS)
        or (b == "day" and a.isalpha() and a not in PLAIN_DAYS and a not in nouns.NUMBERS)
        for a, b in pairwise(words)
    )


def _is_counted(word: str) -> bool:
    """The "eleven" of "eleven days before last year"."""
    return word.isdigit() or (word in nouns.NUMBERS and word not in ("a", "an"))


PLAIN_DAYS = _words(
    """a the all one every each hot cold wet dry warm sunny windy rainy lovely good great nice busy long short
    that this other same next per of by grey dull foggy fine open some few half most several many two three"""
)


def _is_number(typed: Typed, i: int, end: int) -> bool:
    word = typed.words[i]
    if typed.words[i + 1 : i + 2] and typed.words[i + 1] in ORDINAL_ENDS and not typed.gaps[i + 1]:
        return False  # "2nd picking"
    if ":" in typed.gaps[i] or (i + 1 < typed.count and ":" in typed.gaps[i + 1]):
        return False  # "12:30"
    if typed.words[i + 1 : i + 3] == ["in", "the"] and {"morning", "evening"} & set(
        typed.words[i + 3 : i + 4]
    ):
        return False  # "at 7 in the morning"
    if word.isdigit() or (word in nouns.NUMBERS and word not in ("a", "an", "one", "another")):
        follows = typed.words[i + 1] if i + 1 < end else ""
        return follows not in HOURS and follows != ""
    if word == "half":
        return i + 1 < end and not typed.words[i + 1].endswith("ed")
    return word == "bunch" and i > 0 and typed.words[i - 1] == "a"


def _is_other_name(clause: Done, typed: Typed, i: int, begin: int, places: set[str]) -> bool:
    size, known = typed.kind(i, Kind.BED)
    if not size or "place" not in clause.verb.slots:
        return False
    is_led = i > begin and (typed.words[i - 1] in PLACE_OPENERS or typed.words[i - 1] == "the")
    return (is_led or typed.capital(i)) and not places & {k.key for k in known}


def _is_crop(clause: Done, typed: Typed, i: int) -> bool:
    """A crop where no clause of the line has one: "aphids got the lemon in Tub 3"."""
    is_known = typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] > 0
    return is_known and "crop" in clause.verb.slots and typed.words[i - 1] in ("the", "my", "our")


def _is_near_bed(clause: Done, typed: Typed, i: int, end: int) -> bool:
    """A slip of a bed's name behind "from" or "in": "from bcak fence"."""
    if i + 2 >= end or typed.words[i] not in ("in", "on", "from") or "place" not in clause.verb.slots:
        return False
    return near_name(typed.vocabulary, tuple(typed.words[i + 1 : i + 3]), (Kind.BED,)) is not None
