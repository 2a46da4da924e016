"""Numbers a telephone heard as other words: "too rows of peas", "to kilos", "picked ate courgettes".

Runs at the end of reading, for lines that hold such a word right behind a verb. Asked, never guessed.
"""

from __future__ import annotations

from leafmould.notes.draft import Done
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.values.names import Kind
from leafmould.values.problems import Level

HEARD = {
    "too": "two",
    "to": "two",
    "won": "one",
    "for": "four",
    "fore": "four",
    "ate": "eight",
    "tree": "three",
    "tin": "ten",
}
INTO = frozenset({"tray", "module", "cell", "bed", "basket", "container", "plug", "frame", "bag"})
"""Where things are put "to"."""
COUNTED = nouns.COUNT_NOUNS | nouns.WEIGHTS | nouns.VOLUMES


def ask_of_misheard(done: list[Done], typed: Typed) -> None:
    """A question where a number may have been meant."""
    if HEARD.keys().isdisjoint(typed.words):
        return
    _ask_of_beds(done[0], typed)
    for clause in done:
        if clause.verb.name not in (
            "picked",
            "sowed",
            "planted",
            "started",
            "bought",
            "lost",
            "gave away",
            "put up",
        ):
            continue
        ends = {end for slot, _, end in clause.draft.spans if slot == "verb"}
        for i, word in enumerate(typed.words[:-1]):
            number = HEARD.get(word)
            if (
                number
                and i
                and typed.ends[i - 1] in ends
                and not typed.breaks[i]
                and _is_counted(typed, i + 1)
            ):
                written = typed.written(i, i + 2)
                meant = f"{number} {typed.written(i + 1, i + 2)}"
                clause.draft.ask(
                    Level.QUESTION,
                    f'Is "{written}" meant to be "{meant}"? It is not counted.',
                    typed.starts[i],
                )


def _ask_of_beds(clause: Done, typed: Typed) -> None:
    """ "dug the potatoes in bed too": Bed 2, perhaps."""
    for i in range(1, typed.count):
        number = HEARD.get(typed.words[i])
        meant = f"{typed.words[i - 1]} {number}"
        is_end = i + 1 == typed.count or typed.breaks[i + 1]
        known = typed.vocabulary.with_public.get(tuple(meant.split()), ())
        if number and is_end and not typed.breaks[i] and any(k.kind is Kind.BED for k in known):
            written = typed.written(i - 1, i + 1)
            question = f'Is "{written}" meant to be "{meant}"? It is read as no place.'
            clause.draft.ask(Level.QUESTION, question, typed.starts[i - 1])


def _is_counted(typed: Typed, i: int) -> bool:
    word = typed.words[i]
    if typed.kind(i, Kind.BED)[0] or (
        typed.words[i - 1] == "to" and (word in nouns.NOT_ALONE or word in INTO)
    ):
        return False
    is_crop = bool(typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0])
    return not typed.breaks[i] and (
        is_crop or word in COUNTED or word == "dozen" or nouns.UNITS.get(word, "") in COUNTED
    )
