"""The state of one walk over a clause: where we are, what may come, and where things are put.

`slots` holds the steps of the walk, `places` and `details` the longer ones. Word numbers throughout.
"""

from __future__ import annotations

from functools import lru_cache

from leafmould.notes.draft import Draft
from leafmould.notes.entries import Named, Sureness
from leafmould.notes.typed import Typed
from leafmould.notes.words.prepositions import ARTICLES
from leafmould.notes.words.verbs import Verb
from leafmould.values.names import Kind, Known
from leafmould.values.problems import Level
from leafmould.values.when import When


class Walk:
    """One clause being read, word by word."""

    __slots__ = (
        "after_comma",
        "base",
        "decimal",
        "draft",
        "end",
        "i",
        "is_southern",
        "is_topic",
        "joined",
        "order",
        "typed",
        "used",
        "verb",
        "verb_end",
        "was_or",
    )

    def __init__(
        self, typed: Typed, verb: Verb, draft: Draft, *, base: When | None, order: str | None,
        decimal: str | None, is_southern: bool,
    ) -> None:  # fmt: skip
        self.typed, self.verb, self.draft, self.base = typed, verb, draft, base
        self.order, self.decimal, self.is_southern = order, decimal, is_southern
        self.i = self.end = self.verb_end = 0
        self.used: range = range(0)  # words already taken: the second half of the verb
        self.is_topic = False
        self.after_comma = self.joined = self.was_or = False

    def is_seen(self, i: int) -> bool:
        """Whether a word is part of what was seen: the squash of "squash bugs on the pumpkins"."""
        if self.verb.name != "saw" or not self.draft.covers(self.typed.starts[i], "subject"):
            return False
        others = (
            j
            for j in range(i + 1, self.typed.count)
            if not self.draft.covers(self.typed.starts[j], "subject")
        )
        return any(self.typed.kind(j, Kind.CROP, Kind.CROP_GROUP)[0] for j in others)

    def has(self, slot: str) -> bool:
        """Whether the verb takes this slot."""
        return slot in self.verb.slots

    def word(self, i: int) -> str:
        """The folded word at `i`, or "" past the end of the clause."""
        return self.typed.words[i] if i < self.end else ""

    def stop(self, i: int) -> int:
        """The first word from `i` on that stands behind a break, or the end."""
        return min(self.typed.stops[i], self.end) if i < self.end else self.end

    def span(self, slot: str, start: int, end: int) -> None:
        """Note where a slot was read, in words."""
        if end > start:
            self.draft.spans.append((slot, self.typed.starts[start], self.typed.ends[end - 1]))

    def ask(self, level: Level, message: str, i: int, suggestion: str | None = None) -> None:
        """Something to tell about the word at `i`."""
        self.draft.ask(level, message, self.typed.starts[min(i, self.typed.count - 1)], suggestion)

    def past_articles(self, i: int) -> int:
        """The next word that is no article."""
        while i < self.end and self.typed.words[i] in ARTICLES and not self.typed.names(i)[0]:
            i += 1
        return i

    def bed_at(self, i: int, *, bare_number: bool = False) -> tuple[int, Known | None]:
        """A known bed that begins at `i`; two beds of one name are asked about."""
        if i >= self.end:
            return 0, None
        size, known = self.typed.kind(i, BED)
        if not size:
            return 0, None
        word = self.typed.words[i]
        is_glued = size == 2 and self.typed.starts[i + 1] == self.typed.ends[i]  # "b2"
        if (
            not (bare_number or is_glued)
            and (len(word) == 1 or word.isdigit())
            and all(
                w.isdigit() or (len(w) == 1 and not self.typed.capital(i))
                for w in self.typed.words[i : i + size]
            )
        ):
            return 0, None
        if len(known) > 1 and len({k.key for k in known}) > 1:
            names = " and ".join(sorted(f'"{k.name}"' for k in known))
            self.ask(
                Level.QUESTION, f'"{self.typed.written(i, i + size)}" may be {names}; read as the first.', i
            )
        return size, known[0]

    def named(self, known: Known, start: int, end: int) -> Named:
        """A known thing as it was written; a "?" behind it makes it doubtful."""
        is_doubtful = self.was_or or "?" in self.typed.gaps[end]
        of = known.of if known.kind in OF_CROPS else ()
        sureness = DOUBTFUL if is_doubtful else KNOWN
        return as_named(known.key, known.name, self.typed.written(start, end), sureness, of)


BED = Kind.BED
OF_CROPS = (Kind.CROP_GROUP, Kind.VARIETY)
KNOWN, DOUBTFUL = Sureness.KNOWN, Sureness.DOUBTFUL


@lru_cache(maxsize=20_000)
def as_named(key: str, name: str, written: str, sureness: Sureness, of: tuple[str, ...]) -> Named:
    """One value for a name, however often it is written: a garden has few names, a journal many lines."""
    return Named(key=key, name=name, written=written, sureness=sureness, of=of)


def add_place(walk: Walk, place: Named, role: str, start: int, end: int) -> None:
    """Put a place where it belongs."""
    is_origin = role == "from" and _is_origin(walk)
    walk.span("origin" if is_origin else "place", start, end)
    target = walk.draft.origins if is_origin else walk.draft.places
    if not target or all(place.key != known.key for known in target):
        target.append(place)
    if target is walk.draft.places and walk.draft.item.crops:
        walk.draft.place_items.append((place, len(walk.draft.items) - 1))


def _is_origin(walk: Walk) -> bool:
    return walk.has("raise") or walk.verb.name in (
        "moved",
        "potted on",
        "pricked out",
        "hardened off",
        "divided",
    )
