"""Deeds as they are misspelt: "pickt", "chuckt", "pickeld", "wattered". Each form means one deed and nothing else.

Part of the first table. The forms are made from the table of verbs by the slips that are made most: a letter dropped
or doubled before "-ed", two neighbours swapped, "-t" for "-ed". Which slips those are is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from leafmould.notes.words import nouns
from leafmould.notes.words.verbs import LONGEST_PAST, LONGEST_PLAIN, LONGEST_STATE
from leafmould.values.names import fold_word

SHORTEST = 6
HARD_ENDS = ("k", "p", "s", "sh", "ch", "x", "f")
"""Behind these "-ed" is spoken "t"."""
REAL_WORDS = """striped planed hoped barred scared stared bared caped taped moped tried dyed died died's tiled filed piled titled coped roped robed
    cloned trailed trialed posed loped wiped raked baked slated salted lapsed cased based raised risen diced iced paced
    kept swept slept wept crept lept leapt spelt burnt learnt dreamt spilt spoilt"""
REAL = frozenset(REAL_WORDS.split())
"""Words of their own, however near they come to a deed."""


def _slips(verb: str) -> Iterator[str]:
    """ "picked": pickd, pickde, pickt, pciked; "pulled": puled; "weeded": weedded."""
    stem = verb[:-2]
    yield stem + "d"
    yield stem + "de"
    if stem.endswith(HARD_ENDS):
        yield stem + "t"
    if stem[-1] == stem[-2]:
        yield stem[:-1] + "ed"
    else:
        yield stem + stem[-1] + "ed"
    for i in range(1, len(verb) - 1):
        yield verb[:i] + verb[i + 1] + verb[i] + verb[i + 2 :]


def _misspelt() -> dict[str, str]:
    starts = LONGEST_PAST.keys() | LONGEST_PLAIN.keys() | LONGEST_STATE.keys()
    taken = {*starts, *nouns.COUNT_NOUNS, *nouns.UNITS, *nouns.SELDOM_VARIETY, *nouns.TROUBLES, *REAL}
    found: dict[str, set[str]] = {}
    for verb in starts:
        if len(verb) >= SHORTEST and verb.endswith("ed") and verb.isascii():
            for slip in map(fold_word, _slips(verb)):
                found.setdefault(slip, set()).add(verb)
    return {slip: min(verbs) for slip, verbs in found.items() if len(verbs) == 1 and slip not in taken}


MISSPELT = _misspelt() | {
    "egs": "egg", "bukit": "bucket", "buckit": "bucket", "buket": "bucket", "trugg": "trug", "chutny": "chutney", "chutnee": "chutney", "freezr": "freezer",
    "plantid": "planted", "pickid": "picked", "choped": "chopped", "layd": "laid", "payed": "paid", "dugg": "dug", "duged": "dug", "cuted": "cut", "gived": "gave", "gav": "gave", "throwed": "threw", "froozen": "frozen",
    "frose": "froze", "frozed": "froze", "giv": "gave", "hunny": "honey", "huny": "honey", "jamed": "jammed", "jame": "jam", "buyed": "bought", "bort": "bought", "brort": "brought", "tuk": "took", "pikt": "picked", "piked": "picked", "aet": "ate", "froozed": "froze", "sowwed": "sowed",
}  # fmt: skip
"""Folded slip -> the word that is meant."""
