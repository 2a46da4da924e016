"""Some of a harvest that was no good: "2 kg, two forked", "41 bulbs, 4 rejected for rust", "3 cabbages, one to the hens".

Asked for each amount behind a break, once the whole is read. They are of the whole and add nothing to it; what was
thrown away of it is its fate.
"""

from __future__ import annotations

from leafmould.notes.amounts import Read
from leafmould.notes.clause import Clause
from leafmould.notes.draft import Item
from leafmould.notes.entries import Fate
from leafmould.notes.senses import action_of
from leafmould.notes.typed import Typed
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import CLAUSE_JOINS, JOINS
from leafmould.values.names import Kind, fold_word


def _words(text: str) -> frozenset[str]:
    return frozenset(fold_word(word) for word in text.split())


BAD = _words(
    """split forked cracked crackt rotten rotted rotting rot soft mushy bruised bitter maggoty maggot maggots wormy scabby scab canker cankered
    green slugged holed holey mouldy moldy mould bolted bolting nibbled pecked chewed damaged spoiled windfall windfalls spoilt blighted blighty rust rusty squashed squished broken broke
    smashed dud duds unripe overripe forky forking wonky misshapen deformed hollow woody fanged fangs blown sprouting sprouted frosted dead empty reject shell-less shelled
    speared sliced stabbed gone burst bursting blown damp wilted scorched sunburnt shrivelled dry pithy stringy stunted undersized bad dropped leaked leaking leaky
    failed unsealed edible sound fine usable perfect ok okay unsplit keepers"""
)
THROWN = _words(
    "discarded chucked rejected rejects culled dumped tossed trashed ditched thrown compost composted heap binned bin"
)
NOT_KEPT = frozenset({"stored", "put up", "picked", "collected", "used", "saved seed"})
BETWEEN = nouns.SIZES | _words(
    "of them with had was were is are that been badly slightly a bit too very already just fruit bulb root head egg spud one ones total in them all half"
)


def take_no_good(walk: Walk, item: Item, read: Read, i: int) -> bool:
    """Keep what was no good as a remark, what was thrown away as a fate; False if the words tell of neither."""
    typed = walk.typed
    is_rest = read.amount.whole == "the rest"
    if not (item.amounts or is_rest) or not (walk.verb.name in NOT_KEPT or is_rest):
        return False
    if not (typed.breaks[i] or walk.word(i - 1) in JOINS):
        return False
    stop = walk.stop(i)
    words = typed.words[read.end : stop]
    if any(typed.kind(k, Kind.CROP, Kind.CROP_GROUP, Kind.BED)[0] for k in range(read.end, stop)):
        return False
    if not THROWN.isdisjoint(words):
        walk.draft.fates.append(Fate(kind="composted", amount=read.amount))
        walk.draft.spans.append(("fate", typed.starts[i], typed.ends[read.end - 1]))
        walk.draft.said.update(range(read.end, stop))
        walk.draft.leave(read.end, stop, True)
    elif (first := next((w for w in words if w not in BETWEEN), None)) and first in BAD | {"eaten"}:
        walk.draft.said.update(range(i, stop))
        walk.draft.leave(i, stop, True)
    else:
        return False
    walk.i = stop
    return True


def without_no_good(typed: Typed, clauses: list[Clause]) -> list[Clause]:
    """The clauses but for ", two forked", ", 14 split fruits discarded": a count and what became of it is no deed of its own."""
    if MAY_END.isdisjoint(typed.words):
        return clauses
    kept: list[Clause] = []
    for clause in clauses:
        if kept and typed.phrase(clause.verb_end, 1) == ("weight",):
            kept[-1].end = clause.end  # "2 kg peas, podded weight 700 g"
            continue
        if (
            (clause.first_word in ENDS or _is_half_eaten(typed, clause))
            and clause.form not in HANDED_ON
            and _is_count_of(typed, clause)
            and _follows_harvest(typed, kept, clause)
        ):
            if kept:
                kept[-1].end = clause.end
        else:
            kept.append(clause)
    return kept


def _is_half_eaten(typed: Typed, clause: Clause) -> bool:
    """ "6 cobs, 2 half-eaten by badgers"."""
    k = clause.verb_start - 1
    return (
        clause.form in (("eaten",), ("eaten", "by"))
        and typed.words[k : k + 1] == ["half"]
        and k > 0
        and _is_a_count(typed.words[k - 1])
    )


def _is_a_count(word: str) -> bool:
    return word.isdigit() or word in nouns.NUMBERS


def _is_count_of(typed: Typed, clause: Clause) -> bool:
    begin = _begin(typed, clause)
    before = typed.words[begin : clause.verb_start]
    first = next((w for w in before if w not in CLAUSE_JOINS), "")
    if not (first.isdigit() or first in nouns.NUMBERS or first in COUNTS):
        return False
    if any(typed.kind(k, Kind.CROP, Kind.CROP_GROUP, Kind.BED)[0] for k in range(begin, typed.stops[begin])):
        return False
    is_plain = all(
        w.isdigit()
        or w in (PLAIN if clause.first_word in BAD else nouns.NUMBERS)
        or w in COUNTS
        or w in BAD
        or w in BETWEEN
        for w in before
    )
    return is_plain and (
        clause.verb_end >= clause.end
        or typed.breaks[clause.verb_end]
        or typed.words[clause.verb_end] in BEHIND_ENDS
        or clause.last_word == "by"
    )


def _begin(typed: Typed, clause: Clause) -> int:
    """Where the stretch of its verb begins."""
    spots = range(clause.verb_start, clause.start, -1)
    return next((k for k in spots if typed.breaks[k] or typed.words[k - 1] in CLAUSE_JOINS), clause.start)


def _follows_harvest(typed: Typed, kept: list[Clause], clause: Clause) -> bool:
    if kept:
        return action_of(typed, kept[-1])[0] in NOT_KEPT
    begin = _begin(typed, clause)
    is_counted = any(typed.is_number(k) or typed.words[k] in nouns.NUMBERS for k in range(begin))
    return is_counted and clause.first_word not in LOST_WORDS


ENDS = BAD | THROWN
HANDED_ON = frozenset({("dropped", "off"), ("dropped", "round"), ("dropped", "over")})
""" "one bag dropped off to Fergus"."""
PLAIN = frozenset(nouns.NUMBERS) | frozenset(nouns.UNITS) | nouns.HOLDERS
MAY_END = ENDS | {"weight", "eaten"}
COUNTS = frozenset({"half", "some", "few", "most", "several", "couple", "and", "but", "about"})
BEHIND_ENDS = (
    ENDS
    | BETWEEN
    | frozenset({"it", "them", "for", "with", "by", "due", "and", "because", "so", "to", "on", "in", "from"})
)
LOST_WORDS = _words("dead rotted failed gone bolted blown frosted wilted shrivelled")
"""Of what stands in the ground these tell of a loss."""
