"""Who sold or gave it: "from seed swap", "at the market". A step of the walk over a clause."""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.draft import Draft
from leafmould.notes.typed import Typed
from leafmould.notes.walk import Walk
from leafmould.notes.words.prepositions import ARTICLES, CLAUSE_JOINS
from leafmould.values.dates import scan_date


def take_source(walk: Walk) -> bool:
    """Who sold or gave it: "from seed swap", "at the market"."""
    i = walk.i
    if (
        not walk.has("seller")
        or walk.word(i) not in ("from", "at", "by", "off", "with")
        or walk.draft.source is not None
    ):
        return False
    if walk.verb.name != "bought" and walk.word(i) != "from":
        return False
    start = walk.past_articles(i + 1)
    stop, end = walk.stop(i + 1), start
    while (
        end < stop
        and not (walk.word(end) in ENDS_SOURCE and end > start)
        and not (end > start and walk.typed.is_number(end) and "." in walk.typed.gaps[end + 1])
        and not (end > start and _is_day(walk, end))
        and not (end > start and _is_paid(walk, end))
    ):
        end += 1
    if end == start + 1 and walk.word(start) == "seed":
        return False  # "2 flats from seed"
    if end <= start or walk.word(start) in OWN_SOURCES or walk.typed.is_number(start):
        return False
    walk.draft.source = walk.typed.written(start, end)
    walk.span("source", start, end)
    walk.i = end
    return True


ENDS_SOURCE = frozenset(
    {"for", "at", "in", "on", "to", "into", "till", "until", "because", "as", "while", "before", "after", "so", "since", "but"}
)  # fmt: skip


def _is_paid(walk: Walk, i: int) -> bool:
    """Whether a price stands at word `i`: "from market £8", "from Ann 50p"."""
    if not walk.typed.is_number(i):
        return False
    behind = walk.typed.plain[walk.typed.ends[i] : walk.typed.ends[i] + 1]
    is_named = walk.word(i + 1) in (
        "p",
        "pence",
        "quid",
        "euro",
        "eur",
        "pound",
        "dollar",
        "gbp",
        "usd",
        "chf",
        "kr",
    )
    return any(c in walk.typed.gaps[i] for c in "£$€") or behind in ("£", "$", "€") or is_named


def _is_day(walk: Walk, i: int) -> bool:
    """Whether a date closes the clause at word `i`: "from the seed swap 9 Jan"."""
    found = scan_date(walk.typed.plain, walk.typed.starts[i])
    return (
        found is not None
        and (found[0].month is not None or found[0].weekday is not None)
        and found[1] >= walk.typed.ends[walk.stop(i) - 1]
    )


OWN_SOURCES = frozenset({"last", "own", "store", "saved", "scratch", "inside", "outside", "here", "there"})


def take_giver(draft: Draft, typed: Typed, clause: Clause) -> None:
    """ "Sue gave me 6 leeks": who stands before the verb, and "me" behind it, are said with that."""
    first = clause.start
    while first < clause.verb_start and typed.words[first] in ARTICLES | CLAUSE_JOINS:
        first += 1
    words = typed.words[first : clause.verb_start]
    if draft.source is not None or not 0 < len(words) <= 3 or not all(w.isalpha() for w in words):
        return
    if words[0] in UNNAMED or any(typed.names(i)[0] for i in range(first, clause.verb_start)):
        return
    draft.source = typed.written(first, clause.verb_start)
    draft.spans.append(("source", typed.starts[first], typed.ends[clause.verb_start - 1]))
    behind = clause.verb_end + (typed.words[clause.verb_end : clause.verb_end + 1] in (["me"], ["us"]))
    draft.left = [(a, b, c) for a, b, c in draft.left if not (first <= a and b <= behind)]


UNNAMED = frozenset({"she", "he", "they", "who", "it", "which", "that", "someone", "somebody", "i", "we", "then", "just", "also"})  # fmt: skip
