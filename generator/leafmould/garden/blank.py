"""Finding names in a text, and leaving words out of it without losing the place of the others.

Used by `visible` alone. Names are found as everywhere: folded, whole words, the longest wins.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from leafmould.values.names import WORD, fold_word

BLANK = "…"
"""What stands for words that were left out."""

Span = tuple[int, int]
Folded = tuple[str, ...]

STEM = 3
"""Letters of a name's first word that survive folding: enough to pass over most texts quickly."""

LEAD_IN = re.compile(
    r"[,;:]?\s*(?:\(\s*)?(?:\b(?:from|by|with|at|for|of|to|via|cost|paid)\s+)*(?:(?:the|my|our|his|her|a|an)\s+)?$",
    re.I,
)
MONEY_BEFORE = re.compile(r"(?:[£$€¥₤]|\b(?:usd|eur|gbp|chf|aud|nzd|cad)\b)\s*$", re.I)
MONEY_AFTER = re.compile(
    r"\s*(?:[£$€¥₤]|\b(?:euros?|dollars?|quid|pence|cents?|p|usd|eur|gbp|chf|aud|nzd|cad)\b)", re.I
)


class Names:
    """Names to be found in texts, and longer ones in which they do not count."""

    def __init__(self, names: Iterable[Folded], shields: Iterable[Folded] = ()) -> None:
        """Take the names, and other names of which some may contain one of ours."""
        self.names = frozenset(form for name in names if name for form in _forms(name))
        self._shields = tuple(shields)
        longer = {s for s in self._shields if any(_holds(s, name) for name in self.names)}
        self.longer = frozenset(longer)
        by_first: dict[str, list[Folded]] = {}
        for name in sorted((self.names | longer), key=lambda n: (-len(n), n)):
            by_first.setdefault(name[0], []).append(name)
        self._by_first = by_first
        self._stems = tuple(sorted({name[0][:STEM] for name in self.names}))

    def and_also(self, names: Iterable[Folded]) -> Names:
        """These names and some more."""
        more = frozenset(names) - self.names
        return Names(self.names | more, self._shields) if more else self

    def __bool__(self) -> bool:
        return bool(self.names)

    def spans(self, text: str, *, capitals: bool = False) -> tuple[Span, ...]:
        """Where the names stand in the text, from left to right.

        Args:
            capitals: count only words written with a capital: people, not plants.
        """
        if not self.names or (text.isascii() and not self._may_stand_in(text.lower())):
            return ()
        words = [(fold_word(m.group()), m.start(), m.end()) for m in WORD.finditer(text)]
        found: list[Span] = []
        at = 0
        while at < len(words):
            name = self._longest(words, at)
            if name in self.names and not (capitals and not text[words[at][1]].isupper()):
                found.append((words[at][1], words[at + len(name) - 1][2]))
            at += max(len(name), 1)
        return tuple(found)

    def are_in(self, text: str | None) -> bool:
        """Whether any of the names stands in the text."""
        return bool(text) and bool(self.spans(text or ""))

    def _may_stand_in(self, lower: str) -> bool:
        return any(stem in lower for stem in self._stems)

    def _longest(self, words: Sequence[tuple[str, int, int]], at: int) -> Folded:
        for name in self._by_first.get(words[at][0], ()):
            if tuple(word for word, _, _ in words[at : at + len(name)]) == name:
                return name
        return ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Shortened:
    """A text with words left out, and where the others went."""

    text: str
    edits: tuple[tuple[int, int, str], ...]  # start, end, what stands there now

    def moved(self, start: int, end: int) -> Span | None:
        """Where a stretch of the old text stands now; None if any of it is gone."""
        if any(a < end and start < b for a, b, _ in self.edits):
            return None
        shift = sum(len(put) - (b - a) for a, b, put in self.edits if b <= start)
        return start + shift, end + shift


def shortened(text: str, blanked: Iterable[Span] = (), cut: Iterable[Span] = ()) -> Shortened:
    """The text with some stretches shown as "…" and others gone together with what leads up to them."""
    edits = [(start, end, BLANK) for start, end in blanked]
    edits += [(*with_lead_in(text, start, end), "") for start, end in cut]
    merged: list[tuple[int, int, str]] = []
    for start, end, put in sorted(edits):
        if merged and start < merged[-1][1]:
            before = merged.pop()
            start, end, put = before[0], max(before[1], end), before[2] and put
        merged.append((start, end, put))
    return Shortened(text=applied(text, merged), edits=tuple(merged))


def applied(text: str, edits: Iterable[tuple[int, int, str]]) -> str:
    """The text with something else in the place of each stretch, given from left to right."""
    out: list[str] = []
    last = 0
    for start, end, put in edits:
        out += [text[last:start], put]
        last = end
    return "".join([*out, text[last:]])


def with_lead_in(text: str, start: int, end: int) -> Span:
    """The stretch with the comma, the "from" and the sign of the money that go with it."""
    if money := MONEY_BEFORE.search(text, 0, start):
        start = money.start()
    if money := MONEY_AFTER.match(text, end):
        end = money.end()
    while end < len(text) and text[end] in "'\"’”)":
        end += 1
    lead = LEAD_IN.search(text[:start].rstrip("'\"‘“"))
    return (lead.start() if lead else start), end


def _forms(name: Folded) -> tuple[Folded, Folded]:
    """The name, and what folding makes of it with an s: Ottilie's is not read as Ottilie."""
    return name, (*name[:-1], fold_word(f"{name[-1]}s"))


def _holds(longer: Folded, name: Folded) -> bool:
    size = len(name)
    return len(longer) > size and any(longer[i : i + size] == name for i in range(len(longer) - size + 1))
