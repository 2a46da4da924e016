"""Words as they are misspelt by the ear: "pickt", "chuckt", "chutny". Each form means one word and nothing else.

Part of the first table. Slips of the finger are mended where a line is read, and told; these are ways to spell.
"""

from __future__ import annotations

from leafmould.notes.words import nouns
from leafmould.notes.words.verbs import LONGEST_PAST, LONGEST_PLAIN, LONGEST_STATE
from leafmould.values.names import fold_word

SHORTEST = 6
HARD_ENDS = ("k", "p", "s", "sh", "ch", "x", "f")
"""Behind these "-ed" is spoken "t"."""
REAL = frozenset(
    [
        "kept",
        "swept",
        "slept",
        "wept",
        "crept",
        "leapt",
        "spelt",
        "burnt",
        "learnt",
        "dreamt",
        "spilt",
        "spoilt",
    ]
)
"""Words of their own, however near they come to a deed."""


def _spoken() -> dict[str, str]:
    """ "pickt", "chuckt": what ends like the sound of it, for every past that does."""
    starts = LONGEST_PAST.keys() | LONGEST_PLAIN.keys() | LONGEST_STATE.keys()
    taken = {*starts, *nouns.COUNT_NOUNS, *nouns.UNITS, *nouns.SELDOM_VARIETY, *nouns.TROUBLES, *REAL}
    pasts = {verb for verb in starts if len(verb) >= SHORTEST and verb.endswith("ed") and verb.isascii()}
    found = {fold_word(f"{verb[:-2]}t"): verb for verb in pasts if verb[:-2].endswith(HARD_ENDS)}
    return {spoken: verb for spoken, verb in found.items() if spoken not in taken}


MISSPELT = _spoken() | {
    "egs": "egg", "bukit": "bucket", "buckit": "bucket", "buket": "bucket", "trugg": "trug", "chutny": "chutney", "chutnee": "chutney", "freezr": "freezer",
    "plantid": "planted", "pickid": "picked", "choped": "chopped", "layd": "laid", "payed": "paid", "dugg": "dug", "duged": "dug", "cuted": "cut", "gived": "gave", "gav": "gave", "throwed": "threw", "froozen": "frozen",
    "frose": "froze", "frozed": "froze", "giv": "gave", "hunny": "honey", "huny": "honey", "jamed": "jammed", "jame": "jam", "buyed": "bought", "bort": "bought", "brort": "brought", "tuk": "took", "pikt": "picked", "piked": "picked", "aet": "ate", "froozed": "froze", "sowwed": "sowed",
}  # fmt: skip
"""Folded slip -> the word that is meant."""
