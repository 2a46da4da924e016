"""What a slot took, though the words beside it say something else: a number that may be none, a crop named in passing.

Runs at the end of reading, beside `remainder`. Nothing is read anew: what is doubtful is used as it was read, and asked.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from leafmould.notes.draft import Done, Span
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ABOUT,
    ARTICLES,
    FILLERS,
    JOINS,
    PLACE_OPENERS,
    REMARK_OPENERS,
    SUBJECTS,
)
from leafmould.values.problems import Level

PLAIN = nouns.SELDOM_VARIETY | FILLERS | JOINS | SUBJECTS | ARTICLES | ABOUT | nouns.COUNT_NOUNS | nouns.SIZES | PLACE_OPENERS.keys() | {"one", "nearly"}  # fmt: skip
"""Words that leave no doubt beside a number."""


def ask_of_doubtful(done: Sequence[Done], typed: Typed) -> None:
    """A question for each bare number, and each crop, that stands among words nobody took."""
    if not any(clause.draft.left for clause in done):
        return
    _ask_of_taken_back(done, typed)
    for clause in done:
        _ask_of_running(clause, typed)
        if clause.verb.name == "saw":
            continue  # "aphids on the kale, about 60 in one evening": of what was seen
        left = {i for start, end, _ in clause.draft.left for i in range(start, end)}
        for start, end in _bare_numbers(clause, typed):
            first, last = _stretch(typed, start)
            last = max(last, end)
            strange = [i for i in range(first, last) if i in left and _is_strange(typed, i)]
            if (clause.fates or clause.draft.fates) and typed.words[end : end + 1] in (
                ["to"],
                ["for"],
                ["in"],
                ["into"],
            ):
                continue  # "1 to Priya": a share
            if clause.verb.name == "gave away" and all(typed.capital(i) for i in strange):
                continue  # "gave Ann 3 courgettes, Tom 2"
            if (
                strange
                and not _has_more(clause, typed, first, last)
                and not _is_told(clause, typed, start, end)
            ):
                number, words = typed.written(start, end), typed.written(first, last)
                question = f'"{number}" of "{words}" is read as how many. Is it?'
                clause.draft.ask(Level.QUESTION, question, typed.starts[start])
                break


def _ask_of_taken_back(done: Sequence[Done], typed: Typed) -> None:
    """ "took up dahlias, no wait, 20 celeriac": whether all of it was done."""
    if TAKING_BACK.isdisjoint(typed.words):
        return
    for i in range(1, typed.count):
        size = 2 if typed.phrase(i, 2) in BACK else 1 if (typed.words[i], "") in BACK else 0
        if size and (typed.breaks[i] or typed.words[i - 1] in LEADING_BACK):
            words = typed.written(i, i + size)
            done[0].draft.ask(
                Level.QUESTION, f'"{words}" takes something back. Is all of this line so?', typed.starts[i]
            )
            return


def _ask_of_running(clause: Done, typed: Typed) -> None:
    """ "picked courgettes, 9 kg to date": what the year has given, perhaps, and is counted for this day."""
    spots = range(1, typed.count - 1)
    at = next((i for i in spots if typed.phrase(i, 2) in (("so", "far"), ("to", "date"))), 0)
    spans = [s for item in clause.draft.items for s in item.spans if s[0] == "amount"]
    if not at or clause.verb.name != "picked" or not spans or spans[-1][2] > typed.starts[at]:
        return
    start, end = spans[-1][1:]
    if not any(sign.isdigit() for sign in typed.plain[start:end]):
        return  # "all there were so far"
    if not any(typed.is_number(i) for i in range(at) if typed.starts[i] >= end):
        question = f'"{typed.plain[start:end]}" is counted for this day. Is it what there was till then?'
        clause.draft.ask(Level.QUESTION, question, start)


LEADING_BACK = frozenset({"no", "oh", "or", "oops", "sorry", "wait", "and", "but"})
BACK = frozenset(
    {
        ("no", "wait"), ("scratch", "that"), ("strike", "that"), ("scrap", "that"), ("no", "sorry"), ("sorry", "no"), ("oops", "no"), ("wait", "no"),
        ("i", "mean"), ("i", "meant"), ("make", "that"), ("make", "it"), ("actually", "it"), ("actually", "no"), ("no", "actually"), ("correction", ""),
        ("was", "it"), ("were", "they"), ("oops", ""), ("whoops", ""),
    }
)  # fmt: skip
TAKING_BACK = frozenset(first for first, _ in BACK) - {"no", "i", "was", "were"} | {
    "wait",
    "sorry",
    "mean",
    "meant",
    "it",
    "they",
}


def _bare_numbers(clause: Done, typed: Typed) -> Iterator[tuple[int, int]]:
    """Amounts that are a number and nothing else, as words."""
    for slot, begin, stop in _spans(clause):
        if slot == "amount" and begin in typed.starts:
            start = end = typed.starts.index(begin)
            while end < typed.count and typed.starts[end] < stop:
                end += 1
            words = [w for w in typed.words[start:end] if w not in ABOUT and w != "x"]
            is_rest = "rest" in words and start > 0 and not typed.breaks[start]
            if is_rest or (words and all(w.isdigit() or (w in nouns.NUMBERS and len(w) > 2) for w in words)):
                yield start, end


def _spans(clause: Done) -> Iterable[Span]:
    return [*clause.draft.spans, *(span for item in clause.draft.items for span in item.spans)]


def _stretch(typed: Typed, i: int) -> tuple[int, int]:
    first = i
    while first > 0 and not typed.breaks[first]:
        first -= 1
    return first, typed.stops[i]


def _is_strange(typed: Typed, i: int) -> bool:
    word = typed.words[i]
    return word not in PLAIN and word not in REMARK_OPENERS and word.isalpha() and len(word) > 1


def _has_more(clause: Done, typed: Typed, first: int, last: int) -> bool:
    """Whether the verb, a crop or a variety stands in the same stretch: then the number is theirs."""
    begin, stop = typed.starts[first], typed.ends[last - 1]
    return any(
        s[0] in ("verb", "fate", "crop", "variety", "subject") and begin <= s[1] < stop
        for s in _spans(clause)
    )


def _is_told(clause: Done, typed: Typed, start: int, end: int) -> bool:
    written = typed.written(start, end)
    return any(f'"{written}' in a.message for a in clause.draft.asked)
