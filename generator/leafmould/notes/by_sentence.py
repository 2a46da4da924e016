"""What belongs to one sentence of a line and not to the next: "peas from Arch, 1 kg. Beans ready, picked 2 kg."

Asked before later clauses take from earlier ones what they lack (`actions`).
"""

from __future__ import annotations

from dataclasses import replace

from leafmould.notes.draft import Done, Item
from leafmould.notes.typed import Typed

SAID_WHERE = frozenset({"sowed", "resowed", "planted", "started", "moved", "grew"})
"""What puts a crop somewhere: "sowed peas in Arch. Sowed beans too." means the same bed."""

ENDED = frozenset({"finished", "saw", "lost", "cleared"})


def apart_by_sentence(done: list[Done], typed: Typed) -> list[Done]:
    """Two clauses for what is seen of crops in two sentences, each with the places of its own."""
    return [part for clause in done for part in _parts(clause, typed)]


def tells_of_another(before: Done, clause: Done, typed: Typed) -> bool:
    """Whether a clause begins a sentence about another crop: its place need not be the one before's."""
    if clause.verb.name in SAID_WHERE or not before.draft.has_crop_named:
        return False
    if not _keys(clause) or _keys(clause) & _keys(before):
        return False
    if clause.verb.name in ENDED and all(slot != "verb" for slot, _, _ in before.draft.spans):
        return True  # "squash 2 bed 1, courgettes finished"
    end, begin = max(_starts(before), default=0), min(_starts(clause), default=0)
    return any(end <= stop < begin for stop in _sentence_ends(typed))


def _parts(clause: Done, typed: Typed) -> list[Done]:
    draft = clause.draft
    verb = next((start for slot, start, _ in draft.spans if slot == "verb"), 0)
    for stop in _sentence_ends(typed) if clause.verb.name == "saw" and len(draft.items) > 1 else ():
        first = [item for item in draft.items if _end(item) <= stop]
        later = [item for item in draft.items if _end(item) > stop]
        told = [span for span in draft.spans if span[1] < stop]
        placed = [span for span in draft.spans if span[0] in ("place", "part")]
        if first and later and stop < verb and placed and all(span in told for span in placed):
            of_later = replace(
                draft, items=later, places=[], part=None, asked=[], left=[], fates=[],
                spans=[s for s in draft.spans if s not in told],
            )  # fmt: skip
            of_first = replace(draft, items=first, spans=told)
            return [replace(clause, draft=of_first), replace(clause, draft=of_later, is_after_comma=True)]
    return [clause]


def _sentence_ends(typed: Typed) -> list[int]:
    """Where sentences end in the line, but for the last."""
    return [typed.starts[k] - 1 for k in range(1, typed.count) if typed.breaks[k] and "." in typed.gaps[k]]


def _keys(clause: Done) -> set[str]:
    return {key for item in clause.draft.items for crop in item.crops for key in (crop.key, *crop.of)}


def _end(item: Item) -> int:
    return max((start for _, start, _ in item.spans), default=0)


def _starts(clause: Done) -> list[int]:
    own = [start for item in clause.draft.items for _, start, _ in item.spans]
    return own + [start for _, start, _ in clause.draft.spans]
