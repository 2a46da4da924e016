"""The details of a clause: causes, what it was done with, sources, covers, batches, everything.

Each step looks at the word the walk stands on and either takes it (and what belongs to it) or leaves it.
"""

from __future__ import annotations

import re

from leafmould.notes.amounts import read_amount
from leafmould.notes.day_words import word_at
from leafmould.notes.entries import Named
from leafmould.notes.short_places import beds_called, has_numbered, take_short_place
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    CLAUSE_JOINS,
    PLACE_OPENERS,
)
from leafmould.notes.words.verbs import PAST, PLAIN
from leafmould.values.date_words import MONTHS, SEASONS
from leafmould.values.names import Kind
from leafmould.values.problems import Level


def free_words(walk: Walk, i: int, *, stops_at_crop: bool = False) -> int:
    """The word behind a run of free words: to a break, a known place, a date, or the next verb's join."""
    start = i
    while i < walk.stop(start):
        word = walk.typed.words[i]
        if i in walk.used or (word.isdigit() and i > start and walk.typed.gaps[i][-1:] in ("£", "$", "€")):
            break
        if word in PLACE_OPENERS and i > start and word not in ("of", "for", "up"):
            break
        if stops_at_crop and i > start and walk.typed.kind(i, Kind.BED)[0]:
            break
        if word in CLAUSE_JOINS and ((walk.word(i + 1),) in PAST or walk.word(i + 1) in WORKED):
            break
        if i > start and word in (
            "today",
            "yesterday",
            "each",
            "now",
            "already",
            "again",
            "everywhere",
            "under",
            "tonight",
        ):
            break
        if i > start and word == "this" and walk.word(i + 1) in TIMES_OF_DAY:
            break
        i += 1
    return i


def take_with(walk: Walk) -> bool:
    """ "with straw", "with fleece"; for treatments too."""
    i = walk.i
    if walk.word(i) not in ("with", "using") or not (walk.has("with") or walk.verb.name == "treated"):
        return False
    if _is_somebody(walk, i + 1):
        return False
    end = free_words(walk, i + 1)
    end = next((j for j in range(i + 2, end) if walk.word(j) in WHY), end)
    spots = range(i + 2, end)
    end = next(
        (j for j in spots if walk.bed_at(j)[0] > 1 or _is_amount(walk, j)), end
    )  # "with straw Top bed"
    if end <= i + 1:
        return False
    walk.draft.subject = walk.typed.written(walk.past_articles(i + 1), end)
    walk.span("subject", i + 1, end)
    walk.i = end
    return True


TIMES_OF_DAY = frozenset({"morning", "evening", "afternoon", "week", "weekend"})
WORKED = frozenset({"raked", "hoed", "scratched", "levelled", "firmed", "tickled"})
WHY = frozenset(
    {
        "for",
        "as",
        "because",
        "cos",
        "since",
        "before",
        "after",
        "when",
        "while",
        "until",
        "till",
        "where",
        "so",
    }
)
"""Behind what a bed was covered with: "with fleece as frost was forecast"."""


def _is_amount(walk: Walk, i: int) -> bool:
    """The "4 barrows" of "with compost 4 barrows"."""
    if not walk.typed.is_number(i):
        return False
    read = read_amount(walk.typed, i, walk.decimal)
    return read is not None and read.has_noun


def _is_somebody(walk: Walk, i: int) -> bool:
    """ "weeded Bed 2 with Sam", "watered the tubs with the kids": who helped, and nothing that was put on."""
    j = walk.past_articles(i)
    if walk.word(j) in HELPERS:
        return True
    if not (walk.is_topic or walk.verb.name in BY_HAND) or j > i:
        return False
    is_short = j + 1 >= walk.end or walk.typed.breaks[j + 1] or walk.word(j + 1) in CLAUSE_JOINS
    is_name = walk.typed.capital(j) and walk.word(j).isalpha() and not walk.typed.names(j)[0]
    return is_short and is_name and walk.word(j) not in STUFFS | nouns.TREATMENTS


BY_HAND = frozenset({"weeded", "pruned", "cleared", "earthed up", "dug in"})
HELPERS = frozenset(
    {"kid", "child", "mum", "dad", "mom", "gran", "grandad", "nan", "sister", "brother", "son", "daughter", "wife", "husband", "boy",
     "girl", "grandson", "granddaughter", "neighbour", "neighbor", "friend", "family", "us", "me", "him", "her", "them"}
)  # fmt: skip


def take_stuff(walk: Walk) -> bool:
    """Behind a comma, what it was done with: "fed the tomatoes, comfrey tea"."""
    i = walk.i
    if (
        not (walk.has("with") or walk.verb.name == "treated")
        or walk.draft.subject is not None
        or walk.is_topic
    ):
        return False
    if not walk.typed.breaks[i] or i == walk.verb_end or walk.bed_at(i)[1] is not None:
        return False
    end = free_words(walk, i)
    if not any(walk.typed.words[j] in STUFFS for j in range(i, end)):
        return False
    read = read_amount(walk.typed, i, walk.decimal)
    if read is not None and read.has_noun and read.end < end and read.amount.low is not None:
        walk.draft.total.append(read.amount)
        walk.span("amount", i, read.end)
        i = read.end + (walk.word(read.end) == "of")
    walk.draft.subject = walk.typed.written(i, end)
    walk.span("subject", i, end)
    walk.i = end
    return True


STUFFS = nouns.COVERS | nouns.MULCHES | nouns.MANURES | nouns.LIMES | nouns.FEEDS | nouns.PELLETS


def take_cause(walk: Walk) -> bool:
    """What a loss was due to: "to pigeons", "by frost", ", slugs"."""
    if not walk.has("to") or walk.draft.cause is not None:
        return False
    i = walk.i
    word = walk.word(i)
    verb_asks = i == walk.verb_end and walk.typed.words[i - 1] in ("to", "by")
    if word in ("to", "by", "from", "of") or verb_asks:
        start = i if verb_asks else i + 1
        if walk.bed_at(walk.past_articles(start))[1] is not None or start >= walk.end:
            return False
        if word == "to" and (walk.word(start),) in PLAIN and walk.word(start) not in nouns.TROUBLES:
            return False  # "forgot to cover the bed"
        if word == "of" and (walk.is_topic or walk.typed.names(start)[0]):
            return False
    elif word in ("due", "because", "thanks") or word == "owing":
        start = i + 1 + (walk.word(i + 1) in ("to", "of"))
    elif (
        word in nouns.TROUBLES and (walk.typed.breaks[i] or walk.is_topic) and not walk.typed.names(i)[0]
    ) or (
        walk.typed.breaks[i]
        and any(walk.typed.words[j] in nouns.TROUBLES for j in range(i, walk.stop(i)))
        and not walk.typed.names(i)[0]
    ):
        start = i
    else:
        return False
    end = free_words(walk, start, stops_at_crop=True)
    end += walk.typed.words[end - 1] == "damping" and walk.word(end) == "off"
    if walk.is_topic:
        spots = range(start, walk.stop(start))
        start = next((j for j in spots if walk.typed.words[j] in nouns.TROUBLES), start)
        end = start + 1  # "a sharp frost took the tops"
    if end <= start:
        return False
    walk.draft.cause = walk.typed.written(walk.past_articles(start), end)
    walk.span("cause", start, end)
    walk.i = end
    return True


BATCH_NOUNS = frozenset({"sowing", "batch", "planting"})


def take_batch(walk: Walk) -> bool:
    """ "first sowing", "from the March sowing"."""
    i = walk.i
    if BATCH_NOUNS.isdisjoint(walk.typed.words[i + 1 : i + 5]):
        return False
    j = walk.past_articles(i + 1 if walk.word(i) in ("from", "of") else i)
    word = walk.word(j)
    if walk.word(j + 1) not in BATCH_NOUNS or not (
        word in nouns.ORDINALS
        or word in MONTHS
        or word in SEASONS
        or word in ("early", "late", "main", "april", "may", "last", "latest")
        or word.isdigit()
    ):
        return False
    walk.draft.batch = walk.typed.written(j, j + 2)
    walk.span("batch", j, j + 2)
    walk.i = j + 2
    return True


WAITED_FOR = frozenset({"treated", "fed", "manured"})


WAIT = re.compile(
    r"(?:wait(?:ing)?|leave|no (?:picking|harvest|eating)(?: for)?|don't eat for|do not eat for|withhold(?:ing)?|phi)\s?:?\s?(?:time |period |of )?(\d+)[\s-]?d(?:ays?)?\b|(\d+)[\s-]days? (?:wait|withholding|interval|phi)",
    re.IGNORECASE,
)


DAYS_ALONE = re.compile(r"(\d+)()[\s-]days?(?=\s*(?:$|[,;.)]))", re.IGNORECASE)
""" "treated the tomatoes with copper, 7 days": the wait, most likely; nothing is eaten too early by it."""


def take_wait(walk: Walk) -> bool:
    """Days to wait after a treatment, only if they are written."""
    if walk.verb.name not in WAITED_FOR:
        return False
    m = WAIT.match(walk.typed.plain, walk.typed.starts[walk.i])
    if m is None and walk.verb.name == "treated" and walk.typed.breaks[walk.i]:
        m = DAYS_ALONE.match(walk.typed.plain, walk.typed.starts[walk.i])
        if m is not None:
            walk.ask(Level.QUESTION, f'"{m[0]}" is read as the days to wait before picking. Is it?', walk.i)
    if m is None:
        return False
    walk.draft.wait_days = int((m[1] or m[2] or "")[:6])
    walk.draft.spans.append(("wait", m.start(), m.end()))
    walk.i = word_at(walk, m.end(), walk.i)
    return True


def take_cover(walk: Walk) -> bool:
    """ "under cover", "under fleece"."""
    if walk.word(walk.i) not in ("under", "undercover"):
        return False
    for size in (4, 3, 2, 1):
        if walk.typed.phrase(walk.i, size) in nouns.UNDER_COVER and walk.i + size <= walk.end:
            walk.draft.is_under_cover = True
            walk.span("cover", walk.i, walk.i + size)
            walk.i += size
            return True
    return False


def take_everything(walk: Walk) -> bool:
    """ "everything", "all beds", "everything but leeks"."""
    i, word = walk.i, walk.word(walk.i)
    if (
        word in ("all", "both")
        and walk.has("bed")
        and not walk.draft.has_crop
        and take_short_place(walk, i, "at")
    ):
        return True
    if not (
        walk.has("bed")
        or walk.verb.name
        in ("moved", "thinned", "picked", "lost", "hardened off", "potted on", "planted", "pruned")
    ):
        return False
    if word == "everywhere" and (walk.draft.has_crop or walk.draft.places):
        return False  # "covered the pak choi, flea beetle everywhere"
    if word in ("everything", "everywhere") or (
        word == "all" and walk.word(i + 1) in ("but", "except", "bar")
    ):
        end = i + 1
    elif (
        word in ("all", "every")
        and walk.word(walk.past_articles(i + 1))
        in ("bed", "container", "pot", "tub", "plot", "them", "border")
        and not has_numbered(walk, walk.past_articles(i + 1))
        and not walk.bed_at(walk.past_articles(i + 1))[1]
    ):
        end = walk.past_articles(i + 1) + 1
    elif (
        word == "all"
        and (i + 1 >= walk.end or walk.typed.breaks[i + 1])
        and not walk.draft.has_crop
        and not walk.draft.places
    ):
        end = i + 1
    elif (
        word == "the"
        and walk.word(i + 1) in ("lot", "garden", "whole")
        and (walk.word(i + 1) != "whole" or walk.word(i + 2) in ("garden", "plot", "allotment"))
        and not walk.draft.has_crop
        and walk.has("bed")
        and not (walk.word(i + 1) == "lot" and walk.verb.name == "cleared" and not walk.draft.places)
    ):
        end = i + 2 + (walk.word(i + 1) == "whole")
    else:
        return False
    walk.draft.everything = True
    walk.span("everything", i, end)
    walk.i = end
    take_exceptions(walk)
    return True


def take_exceptions(walk: Walk) -> None:
    i = walk.i
    if (
        walk.word(i) in ("but", "except", "bar", "apart", "excluding", "minus", "save")
        or walk.word(i) == "not"
    ):
        i += 1
    else:
        return
    i += walk.word(i) in ("for", "from")
    first = walk.i
    if walk.typed.is_number(i) or walk.word(i) in nouns.NUMBERS:  # "all but 3 strawberries"
        walk.draft.everything = False
        walk.draft.spans.pop()
        written = walk.typed.written(walk.i - 1, i + 1)
        walk.ask(Level.QUESTION, f'"{written}" is kept as a remark. How many was it?', i)
        walk.draft.leave(walk.i - 1, i + 1, True)
        walk.i = i + 1
        return
    while i < walk.end:
        i = walk.past_articles(i)
        size, known = walk.typed.kind(i, Kind.BED, Kind.CROP, Kind.CROP_GROUP) if i < walk.end else (0, ())
        if not size and i < walk.end and (found := beds_called(walk, i)):
            walk.draft.but += [Named(key=k.key, name=k.name, written=walk.word(i)) for k in found]
            walk.span("but", i, i + 1)
            walk.i = i + 1
            i += 1 + (walk.word(i + 1) in ("and", "or"))
            continue
        if not size:
            break
        walk.draft.but.append(
            Named(
                key=known[0].key, name=known[0].name, written=walk.typed.written(i, i + size), of=known[0].of
            )
        )
        walk.span("but", i, i + size)
        i += size
        walk.i = i
        if walk.word(i) in ("and", "or"):
            i += 1
        elif i < walk.end and "," not in walk.typed.gaps[i] and "&" not in walk.typed.gaps[i]:
            break
    if not walk.draft.but:
        written = walk.typed.written(first, walk.stop(first))
        walk.ask(Level.QUESTION, f'"{written}" is kept as a remark. What was left out?', first)
