"""Whom something went to: a person, the gate, the hens. Asked by `senses` for verbs that mean what stands beside them."""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.conditions import has_crop
from leafmould.notes.put_where import takes_them
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES, FILLERS, PLACE_OPENERS, REMARK_OPENERS
from leafmould.notes.words.verbs import PLAIN
from leafmould.values.names import Kind


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


PEOPLE = _words(
    """mum mom mam mother ma dad father pa nan nana nans gran grans granny grandma grandad grandpa auntie aunt uncle sister brother
    daughter son cousin niece nephew neighbour neighbor friend mate vicar church chapel school nursery office work bank shop pub cafe
    restaurant market fair sale fete club hospital hostel shelter everyone everybody family colleague boss postman postie milkman
    teacher doctor nurse wife husband stall barman bloke lady couple kid grandkid people folk plot raffle charity mil inlaw
    crew team lad lass minister priest librarian sanctuary pantry larder"""
) - {"pantry", "larder"}


GATES = _words("gate step doorstep stall honesty porch wall roadside kerb curb verge desk")


TOWARDS = frozenset({"to", "round", "over", "at", "for", "by", "on", "onto", "outside", "in", "into"})


HANDING = frozenset({("sent",), ("slipped",), ("lent",), ("posted",)})


def is_given(typed: Typed, clause: Clause) -> bool:
    """ "took 3 courgettes round to Mum's", "left a bag at the gate", "dropped some off at number 12"."""
    if clause.form in HANDING and _is_person(typed, clause, clause.verb_end - 1):
        return True
    return any(
        typed.words[i] in TOWARDS and _is_person(typed, clause, i)
        for i in range(clause.verb_end, min(typed.stops[clause.verb_end - 1], clause.end) - 1)
    )


def _is_person(typed: Typed, clause: Clause, i: int) -> bool:
    j = i + 1
    while j < clause.end and (
        typed.words[j] in ARTICLES
        or typed.words[j] in ("some", "next", "me")
        or (
            j + 1 < clause.end
            and typed.words[j + 1] in GATES
            and "'" in typed.plain[typed.starts[j] : typed.ends[j]]
        )
    ):
        j += 1  # "on Harriet's wall"
    if j >= clause.end or typed.breaks[j] or typed.kind(j, Kind.BED)[0]:
        return False
    if j + 1 < clause.end and typed.words[j + 1] in ("sale", "swap", "fair") and not typed.breaks[j + 1]:
        return _leads_to(typed, i)  # "to the plant sale"
    word, lead = typed.words[j], typed.words[i]
    if word == "door" and typed.words[j - 1] == "next":
        return True
    if word in GATES:
        return lead in ("at", "by", "on", "outside", "onto")
    if lead in ("on", "onto"):
        return word in PEOPLE
    if word in PEOPLE or word == "number":
        return lead != "in" and not (lead in ("for", "with") and word in ("work", "sale", "shop", "market"))
    if lead == "for" and clause.first_word in SET_BY and typed.capital(j) and word not in FEASTS:
        return _may_be_a_name(typed, j)
    is_last = (
        j + 1 >= clause.end
        or typed.breaks[j + 1]
        or i < clause.verb_end
        or typed.words[j + 1] in ("with", "and", "s", "today")
    )
    return is_last and (lead in ("to", "round", "over") or i < clause.verb_end) and _may_be_a_name(typed, j)


SET_BY = _words("left bagged boxed put kept")
FEASTS = _words(
    "christmas xmas easter sunday saturday monday tuesday wednesday thursday friday thanksgiving halloween"
)


def _leads_to(typed: Typed, i: int) -> bool:
    return typed.words[i] in ("to", "for", "at")


def _may_be_a_name(typed: Typed, j: int) -> bool:
    """A word nobody knows, where a person may stand: with a capital or without."""
    word = typed.words[j]
    return word.isalpha() and not typed.names(j)[0] and word not in NO_NAMES and (word,) not in PLAIN


NO_NAMES = (
    nouns.PLACE_NOUNS | nouns.SOON_PLACES | nouns.COUNT_NOUNS | nouns.SELDOM_VARIETY | nouns.TROUBLES | nouns.COVERS | nouns.MULCHES
    | nouns.SUPPORTS | FILLERS | PLACE_OPENERS.keys() | REMARK_OPENERS | frozenset(nouns.UNITS) | frozenset(nouns.NUMBERS) | frozenset(nouns.LONGEST_VAGUE)
    | _words("fence death floor side end nothing seed bits mush pieces floor bin heap tip dump harden bed rest top make keep finish ripen dry gin vodka brandy rum whisky vinegar brine salt syrup steep soak ferment cure pickle wine jam")
)  # fmt: skip


def to_animals(typed: Typed, clause: Clause) -> bool:
    """ "threw the outer leaves to the hens"."""
    words = typed.words
    if clause.last_word == "to":
        return not nouns.HENS.isdisjoint(words[clause.verb_end : clause.verb_end + 2])
    return any(
        words[i] in ("to", "for") and nouns.HENS & set(words[i + 1 : min(i + 3, clause.end)])
        for i in range(clause.verb_end, min(clause.end, typed.stops[clause.verb_end - 1]) - 1)
    )


def has_other_doer(typed: Typed, clause: Clause) -> bool:
    """ "Jean dropped off 6 leek plants": perhaps to us."""
    before = [w for w in typed.words[clause.start : clause.verb_start] if w not in ARTICLES]
    return (
        clause.start == 0
        and 0 < len(before) <= 3
        and not {"i", "we", "then", "and", "also", "today", "just"} & set(before)
        and not typed.names(clause.start)[0]
        and not before[0].isdigit()
        and not is_given(typed, clause)
    )


def is_thief(typed: Typed, clause: Clause) -> bool:
    return bool(
        {"somebody", "someone", "thief", "thieves", "burglar", "dog", "cat", "they", "toddler"}
        & set(typed.words[clause.start : clause.verb_start])
    )


def is_done_by_another(typed: Typed, clause: Clause) -> bool:
    """ "Mr Hobday had half a row of my beetroot"."""
    before = typed.words[clause.start : clause.verb_start]
    return before[:1] in (["mr"], ["mrs"], ["miss"], ["neighbour"], ["vicar"], ["mum"], ["nan"]) and has_crop(
        typed, clause
    )


def is_let_have(typed: Typed, clause: Clause) -> bool:
    """ "let next door have the spare leeks"."""
    words = typed.words[clause.verb_end : clause.end]
    return "have" in words[1:4] and takes_them(typed, clause)


def is_given_of_it(typed: Typed, clause: Clause) -> bool:
    """ "… and gave a sack to the church", "3 spare ones went to Mum": of what stands before."""
    has_one = has_crop(typed, clause) or any(
        typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] or i in typed.quotes for i in range(clause.verb_start)
    )
    if not has_one:
        return False
    return is_given(typed, clause) or (
        clause.last_word == "to" and _is_person(typed, clause, clause.verb_end - 1)
    )
