"""People in what was written: who did, helped, gave, got or sold, and where a line names them.

Used by `sight` for what has to be known of all entries, and for each text afterwards. In doubt a word is taken for
a person's and blanked; names of beds, crops and varieties stay.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator

from leafmould.notes.entries import Action, Entry, Named, Sureness
from leafmould.values.names import WORD, fold, fold_word

TELLS_PEOPLE = frozenset(
    {
        "author", "authors", "who", "with", "helper", "helpers", "people", "names", "name", "helped", "help", "company",
        "from", "seller", "sellers", "to", "visitor", "visitors", "guest", "guests", "neighbour", "neighbours",
        "neighbor", "neighbors", "friend", "friends", "family", "person", "persons", "gardener", "gardeners", "donor",
        "giver", "gift", "recipient", "recipients", "by", "whom", "seen", "met", "owner", "owners", "grower", "growers", "tenant",
        "tenants", "keeper", "keepers", "child", "children", "kids",
    }
) - {"seen", "gift"}  # fmt: skip
"""Words of the gardener's own keys whose values name people."""

WORDS_OF_KEY = re.compile(r"[^\W_]+")

CAPITAL = r"[^\W\d_a-z][\w'’.-]*"
SOMEBODY = re.compile(
    rf"\b(?:to|with|by|from|for|and|of)\s+(?:(?!\d)[^\W\d_A-Z][\w'’-]*\s+){{0,3}}?((?:{CAPITAL}\s*)+)"
)
"""Words with a capital where somebody who gave, got or helped is named: "to my neighbour Rosa"."""

AND = re.compile(r",|&|\band\b")
OPENING = re.compile(rf"(?P<who>{CAPITAL}(?:\s+(?:and|&)\s+{CAPITAL})*)(?:\s*:\s*|\s+)$")
IN_BRACKETS = re.compile(
    rf"\(\s*(?:(?:with|by|and)\s+)?(?P<who>{CAPITAL}(?:[\s,&]+(?:and\s+)?{CAPITAL})*)\s*\)\W*$"
)

DID = re.compile(
    rf"(?:^|[.!?]\s+)[\s*+•–—-]*(?P<who>{CAPITAL}(?:\s+(?:and|&)\s+{CAPITAL})*)(?:\s*:\s*|\s+)(?:(?:helped|visited|said|says|phoned)\b"
    r"|(?:watered|weeded|picked|sowed|planted|pruned|dug|mulched|brought|gave|lent|sold|made|built|cleared|harvested|fed|cut|mowed)"
    r"\s+(?:(?:the|an?|all|my|our|his|her|us|me|them|it|some|two|three|everything)\b|[A-Z\d]|(?P<what>[^\W\d_]+)))",
    re.MULTILINE,
)
"""Somebody who did something to something: "Paths weeded in the rain" names nobody."""

GAVE_TO = re.compile(
    r"\b(?:gave|give|given|gifted|donated|sold|lent)\b(?:(?!\bto\b)(?:[^,;.\n()]|[.,](?=\d))){0,80}?\bto\s+"
    r"(?P<who>[^,;.:\n()]+?)(?=\s*(?:[,;.:\n()]|$)|\s+(?:on|for|at|in|this|last|who|because|when|after|before|yesterday"
    r"|today|as|since|but|while|then)\b|\s+and\s+(?:\w+ed\b|then\b|the\s+rest\b))",
    re.IGNORECASE,
)
TOOK = re.compile(
    r"\b(?P<who>[^\W\d_][\w'’-]+)\s+(?:took|takes)\s+(?:half|some|most|all|the\s+rest|a\s+(?:few|bag|box|jar|bunch)|\d)",
    re.IGNORECASE,
)
GAVE_SOMEBODY = re.compile(
    rf"\b(?:[Gg]ave|[Ll]ent|[Ss]old)\s+(?P<who>{CAPITAL}(?:\s+(?:and|&)\s+{CAPITAL})*)"
    r"(?=\s+(?:an?|some|half|the|my|our|both|two|three|four|five|six|\d[\d.,/]*\s?(?:k?g|lbs?|oz|l|[^\W\d_]{2,}s))\b)"
)
""" "gave Rosa 2 kg courgettes"; "gave Tub 1 a feed" names nobody."""
GIVING = ("gave", "give", "gift", "donat", "sold", "lent", "took", "takes")

SOURCE_VERBS = frozenset(
    {
        "took cuttings",
        "bought",
        "planted",
        "sowed",
        "started",
        "potted on",
        "divided",
        "saved seed",
        "grafted",
        "resowed",
    }
)
"""What is done with something from somewhere: a new name behind "from" is whose it was, no bed."""

NOBODY = frozenset(
    {
        "me", "us", "i", "we", "myself", "ourselve", "hand", "the", "my", "our", "a", "an", "and", "all", "both", "it",
        "they", "he", "she", "you", "them", "him", "her", "his", "their", "this", "that", "which", "who", "everyone",
        "everybody", "nobody", "someone", "compost", "heap", "bin", "pile", "hen", "chicken", "duck", "goose", "geese",
        "bird", "worm", "goat", "pig", "rabbit", "slug", "snail", "pigeon", "blackbird", "mice", "mouse", "bed", "of",
        "animal", "cow", "sheep", "bee", "one", "two", "some", "what", "there", "from", "with", "to", "by",
    }
)  # fmt: skip
"""Folded words that name no person, where one is looked for."""

DOES = frozenset(
    [
        "see",
        "be",
        "get",
        "make",
        "help",
        "keep",
        "try",
        "use",
        "start",
        "go",
        "grow",
        "have",
        "eat",
        "clear",
        "let",
        "do",
        "put",
        "find",
        "wake",
        "stop",
        "dry",
        "clean",
        "fill",
        "mark",
        "hold",
        "cover",
        "test",
        "check",
        "show",
        "say",
        "save",
        "stay",
        "feed",
        "run",
        "work",
        "bring",
        "take",
        "give",
        "come",
        "cut",
    ]
)
"""Folded words behind "to" that tell what for, not to whom: "gave it a shake to see"."""

ALSO_WORDS = frozenset(
    [
        "will",
        "may",
        "mark",
        "grant",
        "drew",
        "pat",
        "dawn",
        "sue",
        "bill",
        "art",
        "frank",
        "rich",
        "rob",
        "jack",
        "penny",
        "bob",
        "gene",
        "ray",
        "guy",
        "dean",
        "earl",
        "grace",
        "hope",
        "faith",
        "joy",
        "june",
        "april",
        "august",
        "summer",
        "autumn",
        "robin",
        "heather",
        "ivy",
        "violet",
        "daisy",
        "iris",
        "lily",
        "olive",
        "poppy",
        "rosemary",
        "basil",
        "ginger",
        "clay",
        "cliff",
        "rusty",
        "sandy",
        "skip",
        "chuck",
        "don",
        "mile",
        "nick",
        "reed",
        "wade",
        "woody",
        "rose",
        "sage",
        "hazel",
        "fern",
        "jade",
        "ruby",
        "pearl",
        "holly",
    ]
)
"""Folded names that are words as well: only with a capital are they people's."""

OPENS_A_LINE = frozenset(
    ["also", "then", "finally", "today", "yesterday", "just", "still", "only", "again", "later", "first", "second", "third", "last", "next", "now", "soon", "once", "even", "nearly", "almost", "mostly", "not", "never", "always", "often", "meanwhile", "afterward", "afterwards", "before", "after", "more", "another", "everything", "have", "has", "had", "been", "got", "done", "did", "note", "morning", "evening", "afternoon", "noon", "night", "midday", "garden", "allotment", "plot", "harvest", "weather", "job", "task", "work", "indoors", "outdoors", "inside", "outside", "out", "in", "up", "there", "here", "some", "most", "many", "few", "several", "good", "new", "old", "big", "small", "both", "either", "sown", "rain", "sun", "wind", "frost", "snow", "heat", "cold", "warm", "dry", "wet", "storm", "finally", "lots", "plus", "so", "and", "but", "or", "yes", "no", "ok"]
)  # fmt: skip
"""Words that may open a line before its verb and are no people."""


def people_told(entry: Entry, *, gives: bool = True) -> Iterator[str]:
    """Names written with a capital where somebody is named, whole and one by one.

    Args:
        gives: whether any sign of `GIVING` stands in its words.
    """
    named = [entry.by] if entry.by else []
    for action in entry.actions:
        if action.source:
            named.append(action.source)
        if action.remark:
            named += SOMEBODY.findall(action.remark)
        named += (place.name for place in action.places if is_source(action, place))
        given = _given(action.text) if gives else ()
        named += (name for name in given if name[:1].isupper() or SOMEBODY.search(f"to {name}"))
    for whole in named:
        yield from (name for name in (whole, *AND.split(whole)) if name.strip()[:1].isupper())
        yield from SOMEBODY.findall(f"to {whole}")


def folk_told(entry: Entry) -> Iterator[str]:
    """Names that a key says are people's: theirs in small letters too, and word by word."""
    told = [entry.by] if entry.by else []
    told += [value for key, value in entry.extra if names_people(key)]
    for whole in told:
        for name in AND.split(whole):
            words = [word for word in fold(name) if not word.isdigit()]
            yield " ".join(words)
            yield from words


def openings(entry: Entry, known: Collection[tuple[str, ...]]) -> Iterator[str]:
    """Words with a capital right before a verb, or in brackets at a line's end, that were not understood.

    Args:
        known: folded names of all beds, crops and varieties.
    """
    for m in DID.finditer(entry.body):
        if m["what"] is None or fold(m["what"]) in known:
            yield from (name.strip() for name in AND.split(m["who"]) if name.strip())
    for action in entry.actions:
        if not action.remark:
            continue
        start = min((a for slot, a, _ in action.spans if slot == "verb"), default=0)
        for found in (OPENING.fullmatch(action.text[:start]), IN_BRACKETS.search(action.text)):
            names = [name.strip() for name in AND.split(found["who"]) if name.strip()] if found else []
            if all(name in action.remark for name in names):
                yield from names


def names_people(key: str) -> bool:
    """Whether a key of the gardener's own tells of people."""
    return not TELLS_PEOPLE.isdisjoint(WORDS_OF_KEY.findall(key.casefold()))


def is_source(action: Action, place: Named) -> bool:
    """Whether a new name read as a place is whose it was: "took cuttings of sage from Rosa"."""
    if place.sureness is not Sureness.NEW or action.verb not in SOURCE_VERBS:
        return False
    spans = (start for slot, start, end in action.spans if action.text[start:end] == place.written)
    return any(re.search(r"\bfrom\s+(?:\w+\s+){0,2}$", action.text[:start], re.IGNORECASE) for start in spans)


def spans_in(text: str, told: Collection[tuple[str, ...]]) -> list[tuple[int, int]]:
    """Where a text names who was given something, or took it; `told` are the names of beds and crops."""
    lower = text.lower()
    if not any(sign in lower for sign in GIVING):
        return []
    found = [m.span("who") for pattern in (GAVE_TO, GAVE_SOMEBODY, TOOK) for m in pattern.finditer(text)]
    return [span for span in found if _is_somebody(text[slice(*span)], told)]


def is_a_name(words: tuple[str, ...]) -> bool:
    """Whether folded words can be a person's name."""
    return bool(words) and not NOBODY.issuperset(words) and len("".join(words)) > 1


def _given(text: str) -> Iterator[str]:
    yield from (text[slice(*span)] for span in spans_in(text, ()))


def _is_somebody(who: str, told: Collection[tuple[str, ...]]) -> bool:
    words = tuple(fold_word(m.group()) for m in WORD.finditer(who))
    plain = tuple(word for word in words if word not in ("the", "my", "our", "a", "in", "on"))
    if DOES.intersection(words[:1]):
        return False
    return is_a_name(words) and plain not in told and not any(word.isdigit() for word in words[:1])
