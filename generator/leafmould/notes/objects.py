"""Free words as a verb's object: what was seen, treated with, collected, put on, fed.

Runs before the walk over a clause; takes the words right behind (or before) the verb where the verb
takes an object that is no crop.
"""

from __future__ import annotations

from leafmould.notes.amounts import read_amount
from leafmould.notes.clause import Clause
from leafmould.notes.details import free_words
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES, CLAUSE_JOINS, FILLERS, PLACE_OPENERS
from leafmould.notes.words.verbs import FAMILY_ANY, PAST
from leafmould.values.names import Kind

STUFFS = (
    nouns.COVERS
    | nouns.MULCHES
    | nouns.MANURES
    | nouns.LIMES
    | nouns.FEEDS
    | nouns.SUPPORTS
    | nouns.PELLETS
    | nouns.TREATMENTS
)
WITH_STUFF = STUFFS | nouns.THINGS | {"water"}
""" "soapy water": goes on with the stuff before it."""
SPREADS = frozenset(
    {
        "put",
        "laid",
        "spread",
        "added",
        "applied",
        "gave",
        "took",
        "removed",
        "took off",
        "put up",
        "put down",
        "put out",
        "dug",
        "dug in",
        "put on",
        "topped up",
        "forked in",
        "turned in",
        "worked in",
        "took out",
        "sprinkled",
        "scattered",
        "sprayed",
        "pegged",
        "pegged down",
        "dusted",
        "painted",
        "brushed",
        "dug under",
        "turned under",
    }
)


NOT_SPREAD = frozenset({"fed", "closed", "shut", "opened", "vented", "propped"})
SPREAD_BY = frozenset(
    {"covered", "uncovered", "netted", "mulched", "manured", "limed", "fed", "treated", "staked"}
)
STUFF_VERBS = frozenset({("put",), ("took",), ("spread",), ("pulled",), ("threw",), ("chucked",)})


OBJECT_VERBS = frozenset(
    {"penned", "let out", "collected", "pinched out", "saw", "released", "opened", "fed animals", "bought", "used", "put up", "dug in"}
)  # fmt: skip
OBJECT_FORMS = frozenset({"laid", *(form.split()[0] for form in SPREADS), *(form for (form,) in STUFF_VERBS)})
"""Verbs that may have an object of free words, and the first words of forms that may."""


def take_object(walk: Walk, clause: Clause) -> None:
    """Set the subject from free words beside the verb, and mark them used."""
    walk.end = clause.end
    is_named = walk.verb.name in OBJECT_VERBS or clause.subject == "eggs"
    is_spread = (
        clause.form in FAMILY_ANY and clause.first_word not in NOT_SPREAD and walk.verb.name in SPREAD_BY
    )
    if not is_named and not is_spread and (not clause.form or clause.first_word not in OBJECT_FORMS):
        return
    i = clause.verb_end
    form = " ".join(clause.form)
    if walk.verb.name in ("penned", "let out"):
        walk.draft.subject = "hens"
        _first(walk, clause, nouns.HENS, "hens")
    elif clause.form == ("laid",) and walk.verb.name == "collected":
        walk.draft.subject = "eggs"
        _first(walk, clause, nouns.HENS, "hens")
    elif clause.subject == "honey":
        return
    elif clause.subject == "eggs" or walk.verb.name == "collected":
        walk.draft.subject = (
            _first(walk, clause, nouns.EGGS, "eggs")
            or _first(walk, clause, nouns.HONEY, "honey")
            or _first(walk, clause, frozenset({"cocoon"}), "cocoons")
            or ("honey" if clause.first_word in ("extracted", "spun", "robbed") else None)
            or ("eggs" if clause.subject == "eggs" else None)
            or _words(walk, i)
        )
    elif walk.verb.name == "pinched out":
        _suckers(walk, i)
    elif (
        walk.verb.name == "saw"
        and not clause.subject
        and clause.form in FAMILY_ANY
        and _is_damage(walk, clause)
    ):
        _seen_before(walk, clause)
    elif (
        walk.verb.name == "saw"
        and not clause.subject
        and clause.form in FAMILY_ANY
        and walk.word(clause.verb_end) == "by"
    ):
        _seen_by(walk, clause)
    elif walk.verb.name == "saw" and not clause.subject:
        _seen(walk, clause)
    elif walk.verb.name == "released" and "nematode" in walk.typed.words[clause.start : clause.end]:
        walk.draft.subject = _first(walk, clause, frozenset({"nematode"}), "nematodes")
    elif walk.verb.name == "fed animals" and clause.subject == "bees":
        return
    elif walk.verb.name in ("released", "opened", "fed animals"):
        walk.draft.subject = _named_thing(walk, clause) or _words(
            walk, clause.verb_start + 1 if walk.verb.name == "fed animals" else i
        )
    elif clause.form == ("paid",):
        return
    elif walk.verb.name in ("bought", "used", "put up") and i < clause.end:
        _goods(walk, i)
    elif clause.form[:1] in STUFF_VERBS and "crop!" not in walk.verb.slots:
        _spread(walk, clause.verb_start + 1)
    elif walk.verb.name in ("gave away", "picked", "stored", "put up", "used", "composted"):
        return
    elif form in SPREADS or walk.verb.name == "dug in" or is_spread:
        _spread(walk, i)


def _suckers(walk: Walk, i: int) -> None:
    """ "pinched out side shoots on tomatoes"."""
    for k in range(i, walk.stop(i)):
        if walk.typed.words[k] in nouns.SUCKERS and not walk.typed.names(k)[0]:
            first = k - (walk.word(k - 1) == "side" and k > i)
            walk.draft.subject = walk.typed.written(first, k + 1)
            walk.span("subject", first, k + 1)
            return


def _first(walk: Walk, clause: Clause, words: frozenset[str], name: str) -> str | None:
    for i in range(clause.start, clause.end):
        if walk.typed.words[i] in words:
            walk.span("subject", i, i + 1)
            return name
    return None


def _words(walk: Walk, i: int) -> str | None:
    i = walk.past_articles(i)
    if i >= walk.end or walk.word(i) in PLACE_OPENERS:
        return None
    read = read_amount(walk.typed, i, walk.decimal)
    if read is not None and read.end < walk.end and not walk.typed.breaks[read.end]:
        i = read.end
    end = free_words(walk, i)
    if end <= i:
        return None
    walk.span("subject", i, end)
    return walk.typed.written(i, end)


def _named_thing(walk: Walk, clause: Clause) -> str | None:
    if walk.verb.name == "fed animals":
        for i in range(clause.start, clause.end):
            if walk.typed.words[i] in nouns.HENS or walk.typed.words[i] in ("bee", "rabbit", "worm"):
                walk.span("subject", i, i + 1)
                return walk.typed.written(i, i + 1)
    return None


def _seen(walk: Walk, clause: Clause) -> None:
    """What was seen: the words to the next "on" or "in"; a crop alone stays a crop."""
    i = walk.past_articles(clause.verb_end)
    if clause.start < clause.verb_start and not (i < walk.end):
        i = clause.start
        walk.end = clause.verb_start
    if i >= walk.end or walk.bed_at(i)[1] is not None:
        walk.end = clause.end
        return
    if walk.word(i) in PLACE_OPENERS and clause.start < clause.verb_start:
        _seen_before(walk, clause)
        walk.end = clause.end
        return
    end = free_words(walk, i)
    read = read_amount(walk.typed, i, walk.decimal)
    begin = (
        read.end if read is not None and not read.has_noun and read.end < end and not read.is_bare_word else i
    )
    begin = walk.past_articles(begin + (walk.word(begin) == "of"))
    words = walk.typed.words[begin:end]
    crop_at = next((k for k in range(begin, end) if walk.typed.kind(k, Kind.CROP, Kind.CROP_GROUP)[0]), None)
    if crop_at is not None and not any(w in nouns.TROUBLES for w in words):
        pieces = [
            w
            for w in words
            if w
            in (
                "self",
                "sown",
                "seeded",
                "volunteer",
                "flower",
                "first",
                "seedling",
                "fruit",
                "ripe",
                "bolted",
                "blossom",
                "bud",
            )
        ]
        for k in range(begin, end):
            if walk.typed.words[k] in pieces:
                walk.span("subject", k, k + 1)
        walk.draft.subject = _crop_state(pieces) or None
        walk.end = clause.end
        return
    if end > begin:
        walk.draft.subject = walk.typed.written(begin, end)
        walk.span("subject", begin, end)
        if read is not None and begin == read.end and read.amount.low is not None:
            walk.draft.item.amounts.append(read.amount)
            walk.draft.item.spans.append(("amount", walk.typed.starts[i], walk.typed.ends[read.end - 1]))
        if clause.verb_end <= i:
            clause.verb_end, clause_start = end, clause.verb_end
            walk.draft.spans.append(
                ("verb", walk.typed.starts[clause.verb_start], walk.typed.ends[clause_start - 1])
            )
    walk.end = clause.end


def _seen_by(walk: Walk, clause: Clause) -> None:
    """ "kale hammered by caterpillars"."""
    words = walk.typed.words
    for k in range(clause.verb_end, walk.stop(clause.verb_end) - 1):
        if words[k] == "by" and words[k + 1] in nouns.TROUBLES:
            walk.draft.subject = walk.typed.written(k + 1, k + 2)
            walk.span("subject", k + 1, k + 2)
            return


def _is_damage(walk: Walk, clause: Clause) -> bool:
    """ "hail shredded the lettuces": who did it stands first."""
    words = walk.typed.words
    return any(words[k] in nouns.TROUBLES for k in range(clause.start, clause.verb_start)) and not any(
        words[k] in nouns.TROUBLES for k in range(clause.verb_end, walk.stop(clause.verb_end))
    )


def _seen_before(walk: Walk, clause: Clause) -> None:
    """ "leek moth found in bed 3", "hedgehog seen in the Herb bank"."""
    begin, end = walk.past_articles(clause.start), clause.verb_start
    while end > begin and walk.typed.words[end - 1] in FILLERS:
        end -= 1
    if begin < end and any(walk.typed.words[k] in nouns.TROUBLES for k in range(begin, end)):
        walk.draft.subject = walk.typed.written(begin, end)
        walk.span("subject", begin, end)


def _crop_state(words: list[str]) -> str:
    if {"self", "volunteer"} & set(words):
        return "self-sown"
    if "flower" in words or "blossom" in words or "bud" in words:
        return "first flower" if "first" in words else "in flower"
    if "fruit" in words:
        return "fruit set"
    if "bolted" in words:
        return "ran to seed"
    return "ripe" if "ripe" in words else "seedlings" if "seedling" in words else ""


def _goods(walk: Walk, i: int) -> None:
    """Bought things that are no crop: "2 bags of compost", "new secateurs"."""
    end = free_words(walk, i)
    words = range(i, end)
    if any(
        walk.typed.kind(k, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0] or k in walk.typed.quotes
        for k in words
    ):
        return
    begin = i
    read = read_amount(walk.typed, i, walk.decimal)
    if read is not None:
        begin = read.end + (walk.word(read.end) == "of")
    while begin < end and walk.typed.words[begin] in ARTICLES:
        begin += 1
    while end > begin and (walk.typed.is_number(end - 1) or walk.typed.words[end - 1] in ("for",)):
        end -= 1
    if end > begin and walk.verb.name == "bought":
        walk.draft.subject = walk.typed.written(begin, end)
        walk.span("subject", begin, end)


def _is_place(walk: Walk, k: int) -> bool:
    size, known = walk.typed.names(k)
    return size > 1 or any(x.kind in (Kind.BED, Kind.PART) for x in known)


def _spread(walk: Walk, i: int) -> None:
    """ "put straw under the strawberries", "took fleece off carrots", "dug in compost"."""
    stop = walk.stop(i)
    spots = range(i, stop)
    stop = next((k for k in spots if walk.typed.words[k] in WITH or _is_next_deed(walk, k)), stop)
    first = next(
        (
            k
            for k in range(i, stop)
            if walk.typed.words[k] in STUFFS and not _is_place(walk, k) and walk.word(k - 2) != "as"
        ),
        None,
    )
    if first is None:
        return
    last = first + 1
    while last < stop and walk.typed.words[last] in WITH_STUFF and not _is_place(walk, last):
        last += 1
    if walk.word(last) == "of" and (of := _stuff_behind(walk, last + 1, stop)):
        first, last = last + 1, of  # "a feed of chicken pellets"
    while first > i and _describes(walk, first - 1):
        first -= 1
    walk.draft.subject = walk.typed.written(first, last)
    walk.span("subject", first, last)


def _stuff_behind(walk: Walk, i: int, stop: int) -> int:
    """The word behind the stuff of "a feed of chicken pellets"; 0 if there is none."""
    found = [
        k for k in range(i, min(i + 3, stop)) if walk.typed.words[k] in STUFFS and not _is_place(walk, k)
    ]
    return found[-1] + 1 if found else 0


WITH = frozenset({"with", "using"})


def _is_next_deed(walk: Walk, k: int) -> bool:
    """The join of "a good soak and rigged netting over the peas"."""
    word = walk.word(k + 1)
    return walk.typed.words[k] in CLAUSE_JOINS and (word.endswith("ed") or (word,) in PAST)


def _describes(walk: Walk, k: int) -> bool:
    """Whether a word belongs to the stuff behind it: "well rotted manure", but not "in the"."""
    word = walk.typed.words[k]
    return not (
        word in ARTICLES or word in nouns.COUNT_NOUNS or word in nouns.UNITS or walk.typed.names(k)[0] or word.isdigit() or word in PLACE_OPENERS or word in FILLERS
        or (word,) in PAST or word in ("put", "took", "spread", "off", "of") or (word,) in STUFF_VERBS
    )  # fmt: skip
