"""Words cut down to what their forms share, so that "sowing" finds "sowed" and "Käfer" is found by "kafer".

A plain rule on folded words, not a grammar: who makes an index of a garden's words asks it here, and the search
in the browser (layouts/script/find.js) holds the same rule for what is typed there.
"""

from __future__ import annotations

from functools import lru_cache

from leafmould.values.names import fold_word

ENDINGS = (("ing", 6), ("ed", 5))
"""Endings of deeds, and how long a word must be to lose them."""

STOP = frozenset(
    [
        "the",
        "and",
        "of",
        "in",
        "on",
        "at",
        "to",
        "is",
        "it",
        "was",
        "a",
        "an",
        "for",
        "with",
        "from",
        "by",
        "as",
        "but",
        "be",
        "not",
        "this",
        "that",
        "are",
        "were",
        "has",
        "had",
        "have",
        "i",
        "we",
        "my",
        "our",
        "or",
        "so",
        "all",
        "there",
        "they",
        "them",
        "their",
        "then",
        "than",
        "its",
        "very",
        "no",
        "up",
        "out",
        "off",
        "into",
        "he",
        "she",
        "you",
        "me",
        "us",
        "his",
        "her",
        "him",
        "your",
        "if",
        "who",
        "which",
        "will",
        "would",
        "could",
        "do",
        "did",
        "does",
        "been",
        "when",
        "where",
        "what",
        "how",
        "because",
        "about",
        "only",
        "just",
        "too",
        "here",
        "now",
    ]
)
"""Words that find nothing: every note has them."""


@lru_cache(maxsize=50_000)
def stem(word: str) -> str:
    """A word without case, accents, plural, and the endings of deeds; "" for what is not worth finding."""
    plain = fold_word(word)
    if len(plain) < 2 or plain in STOP or not plain[0].isalpha():
        return ""
    for ending, least in ENDINGS:
        if plain.endswith(ending) and len(plain) >= least:
            plain = _single(plain.removesuffix(ending))
            break
    return plain[:-1] if len(plain) > 3 and plain.endswith("e") else plain


def _single(word: str) -> str:
    """A word without the doubled letter an ending gave it: "nett" of "netted", but "pull" of "pulled"."""
    return word[:-1] if word[-1] == word[-2] and word[-1] not in "lsz" else word
