"""The walk over one clause: each word goes to a slot, or into the remark.

At each word the steps that may begin there are asked in order; the first that takes the word moves the walk
on. What none takes is left over: a remark, without a warning.
"""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.details import BATCH_NOUNS
from leafmould.notes.steps import BEGIN, DIGITS, INSIDE, REST, STEP_WORDS, TOPIC, may_be, steps_at
from leafmould.notes.varieties import take_quote
from leafmould.notes.walk import Walk, add_place
from leafmould.notes.words.prepositions import JOINS


def walk_clause(walk: Walk, clause: Clause) -> None:
    """Fill the draft from the words before and behind the clause's verb."""
    if clause.particle is not None:
        walk.used = range(clause.particle, clause.particle + 1)
    if clause.relative is not None:
        _pass_relative(walk, clause.relative)
    walk.verb_end = clause.verb_end
    walk.is_topic = True
    over(walk, clause.start, clause.verb_start)
    walk.is_topic = clause.is_state
    if clause.verb_end > clause.verb_start:
        walk.draft.spans.append(
            ("verb", walk.typed.starts[clause.verb_start], walk.typed.ends[clause.verb_end - 1])
        )
    walk.joined = walk.after_comma = walk.was_or = False
    over(walk, clause.verb_end, clause.end)


def _pass_relative(walk: Walk, words: tuple[int, int]) -> None:
    """ "the peas I sowed in Arch have come up": where they stand, and no day and no amount."""
    walk.end = words[1]
    walk.used = walk.draft.relative = range(*words)
    for i in range(*words):
        size, bed = walk.bed_at(i)
        if bed is not None and not walk.draft.places:
            add_place(walk, walk.named(bed, i, i + size), "at", i, i + size)
    walk.draft.leave(*words, False)


def over(walk: Walk, start: int, end: int) -> None:
    """Walk from word to word; each step that takes one moves the walk on."""
    walk.i, walk.end = start, end
    if start >= end:
        return
    typed, verb, used = walk.typed, walk.verb.name, walk.used
    words, breaks, gaps = typed.words, typed.breaks, typed.gaps
    has_batch = not BATCH_NOUNS.isdisjoint(words)
    while (i := walk.i) < walk.end:
        if breaks[i]:
            walk.joined, walk.after_comma = True, not walk.is_topic
        elif (gap := gaps[i]) and ("&" in gap or "+" in gap or "/" in gap):
            walk.joined = True
        if i in used or (verb == "saw" and walk.is_seen(i)):
            walk.i = i + 1
            continue
        if i in typed.quotes and take_quote(walk):
            continue
        spot = TOPIC if walk.is_topic else BEGIN if breaks[i] or words[i - 1] in JOINS else INSIDE
        word = words[i]
        key = word if word in STEP_WORDS else DIGITS if word.isdigit() else REST
        size, known = typed.names(i)
        for step in steps_at(key, size and may_be(known), verb, spot, has_batch):
            if step(walk):
                break
        else:
            walk.draft.leave(i, i + 1, walk.after_comma)
            walk.i = i + 1
