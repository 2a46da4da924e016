"""What stands before a verb, or right behind it, and turns its meaning: who took it, green manure, seeds, water.

Each function looks at the words of one clause; `about` lists them under the names `senses` asks by.
"""

from __future__ import annotations

from itertools import pairwise

from leafmould.notes.clause import Clause
from leafmould.notes.conditions import has_crop, names_any, roots
from leafmould.notes.draft import Draft
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES, SUBJECTS
from leafmould.notes.words.verbs import Verb
from leafmould.values.names import Kind, fold_word


def _words(text: str) -> frozenset[str]:
    return frozenset(fold_word(word) for word in text.split())


LOST_THINGS = _words(
    "trowel knife glove secateurs spade phone key ring coin ball toy watch penny penknife dibber spectacles glasses hat mug bone"
    " label tag nail marble horseshoe pottery crockery clay-pipe plate bottle spanner hammer pliers shears hoe trug"
)
"""What turns up in a bed and is no crop, pest or state."""
TAKERS = _words(
    "foodbank neighbour neighbor neighbours neighbors school church shelter mum mother dad sister brother daughter son friend friends pub cafe restaurant shop chef vicar gran nan aunt uncle"
)
GREENS = _words(
    "phacelia mustard clover vetch rye oats oat tare tares buckwheat lupin lupins fenugreek ryegrass"
)
NOT_NAMES = _words(
    "then also finally just today yesterday eventually only frost wind rain storm hail someone somebody something finally even it which that this"
)
NOT_SOWN = _words("compost heap hen chicken chook goat bin")
WATERED_WITH = _words("hose soaker drip dripper can sprinkler water watering butt irrigation")


def is_taker_first(typed: Typed, clause: Clause) -> bool:
    """ "Foodbank took 8 kg chard": given away."""
    before = typed.words[clause.start : clause.verb_start]
    first = next((word for word in before if word not in ARTICLES), "")
    is_bank = before[-2:] == ["food", "bank"]
    if len(before) == 1 and not clause.start and clause.form == ("took",) and has_crop(typed, clause):
        is_named = (
            typed.capital(0) and not typed.names(0)[0] and first not in SUBJECTS | nouns.TROUBLES | nouns.HENS
        )
        if is_named and first.isalpha() and first not in NOT_NAMES:
            return True  # "Declan took two lettuces"
    return (first in TAKERS or is_bank) and not typed.breaks[clause.verb_start]


def is_hens_lay(typed: Typed, clause: Clause) -> bool:
    """ "hens gave 4 eggs", "the girls gave us five"; not "gave the hens the old lettuces"."""
    before, behind = typed.words[clause.start : clause.verb_start], typed.words[clause.verb_end : clause.end]
    return not nouns.HENS.isdisjoint(before) and "egg" in behind


def is_somebody_first(typed: Typed, clause: Clause) -> bool:
    """ "Ellie had a bucket of plums": perhaps given to her, perhaps picked by her."""
    first, i = typed.words[0], clause.verb_end
    if clause.start or clause.verb_start != 1 or i >= clause.end or typed.breaks[i]:
        return False
    is_name = (
        typed.capital(0)
        and typed.vocabulary.at(typed.words, 0)[0] == 0
        and first.isalpha()
        and len(first) > 2
    )
    if not is_name or first in NO_PERSON or first.endswith("ing"):
        return False
    return typed.words[i] in nouns.NUMBERS or typed.words[i] in ("some", "half", "all") or typed.is_number(i)


NO_PERSON = (
    SUBJECTS | NOT_NAMES | nouns.TROUBLES | nouns.HENS | nouns.SELDOM_VARIETY | nouns.COUNT_NOUNS | nouns.PLACE_NOUNS | nouns.PRODUCTS
    | frozenset(nouns.NUMBERS) | _words("tree trees plants bush everyone everybody nobody what who finally have havent lunch breakfast")
)  # fmt: skip


def is_got_by_someone(typed: Typed, clause: Clause) -> bool:
    """ "2 kg tayberries. Mum got 300 g", "Sheila had the rest", ", Piet has six": given to her, to him."""
    begin = next((k for k in range(clause.verb_start, clause.start, -1) if typed.breaks[k]), clause.start)
    before = [
        w for w in typed.words[begin : clause.verb_start] if w not in ARTICLES | {"and", "then", "next"}
    ]
    i = clause.verb_end
    if len(before) != 1 or i >= clause.end or typed.breaks[i]:
        return False
    k = clause.verb_start - 1
    is_person = (
        before[0] in TAKERS
        or before[0] == "door"
        or (begin > 0 and typed.capital(k) and before[0] not in SUBJECTS)
    )
    if (
        not is_person
        or (typed.names(k)[0] and before[0] != "tom")
        or before[0] in nouns.TROUBLES | nouns.HENS
        or (clause.form in (("has",), ("gets",), ("takes",), ("took",)) and not begin)
    ):
        return False
    i += typed.words[i] in ARTICLES
    words = typed.words[i : i + 2]
    if typed.names(i)[0] or not NO_SHARE.isdisjoint(words):
        return False  # "Sam took two hours"
    return bool(words) and (
        words[0].isdigit()
        or words[0] in nouns.NUMBERS
        or words[0] in nouns.HOLDERS
        or not SHARES.isdisjoint(words)
    )


NO_SHARE = _words("hour hours minute minutes day days week weeks photo photos go turn look nap cold cough")


SHARES = _words("half rest remainder most some few couple dozen others lot bag box")


def is_over(typed: Typed, clause: Clause) -> bool:
    """ "peas done", "the courgettes have had it"; not "beans 3 kg, labels done", "beans, had it with butter"."""
    i = clause.verb_start - 1
    while i > clause.start and typed.words[i] in BEING_OVER:
        i -= 1
    spots = range(clause.start, i + 1)
    is_behind = any(
        k + typed.kind(k, Kind.CROP, Kind.CROP_GROUP, Kind.BED, Kind.VARIETY)[0] == i + 1 for k in spots
    )
    is_closed = (
        clause.verb_end >= clause.end
        or typed.breaks[clause.verb_end]
        or typed.words[clause.verb_end] not in ("with", "on", "raw")
    )
    return (
        (is_behind or i in typed.quotes)
        and is_closed
        and not any(typed.breaks[i + 1 : clause.verb_start + 1])
    )


BEING_OVER = (
    _words("all are is have has now both finally were was nearly just well and truly here in the") | ARTICLES
)


def is_root_out(typed: Typed, clause: Clause) -> bool:
    """ "tipped out the potato bag", "emptied Tub 1: 2 kg spuds"; not "two lids rusted, tipped them"."""
    words = typed.words[clause.start : clause.end]
    has_holder = not {"out", "bag", "tub", "sack", "pot", "bucket", "bin"}.isdisjoint(words) or any(
        typed.kind(i, Kind.BED)[0] for i in range(clause.start, clause.end)
    )
    return has_holder and roots(typed, clause)


def is_bees_given(typed: Typed, clause: Clause) -> bool:
    """ "hive 1 light, gave 2 l syrup"; not "gave Ann a bottle of syrup"."""
    behind = typed.words[clause.verb_end : clause.end]
    return not nouns.HIVE.isdisjoint(typed.words) and not {"syrup", "fondant", "candy", "pollen"}.isdisjoint(
        behind
    )


BASKETS = _words(
    "bag bucket basket box sack hamper wheelbarrow trug crate bowl punnet colander carrier barrow"
)


def is_bags_full(typed: Typed, clause: Clause) -> bool:
    """ "Lemons: filled 2 green bags", "filled a basket with plums"; not "filled the pots"."""
    is_basket = not BASKETS.isdisjoint(typed.words[clause.verb_end : clause.end])
    return is_basket and has_crop(typed, clause) and not names_any(typed, clause, Kind.BED)


def is_counted_behind(typed: Typed, clause: Clause) -> bool:
    """ "rhubarb pulled, 8 sticks", "carrots pulled: 2 kg": how much of a harvest."""
    i = clause.verb_end
    if i + 1 >= clause.end or not typed.breaks[i] or not typed.is_number(i):
        return False
    words = typed.words[i + 1 : i + 4]
    return any(
        w in nouns.PICK_NOUNS or nouns.UNITS.get(w, "") in nouns.WEIGHTS or w in nouns.HOLDERS for w in words
    )


CURING = _words("dry cure ripen keep store garage shed loft rafters rafter attic cellar kitchen airing beam")


def is_to_cure(typed: Typed, clause: Clause) -> bool:
    """ "64 heads, hung in the garage to cure": what was picked before it."""
    return clause.start > 0 and not CURING.isdisjoint(typed.words[clause.verb_end : clause.end])


STEEPS = _words(
    "gin vodka brandy rum whisky vinegar brine salt syrup steep ferment cure pickle dehydrator demijohn crock kilner"
)


def is_steeped(typed: Typed, clause: Clause) -> bool:
    """ "3 lb damsons put to gin", "put the shallots in brine", "put 2 kg cabbage to ferment"."""
    words = typed.words[clause.verb_end : clause.end]
    return any(a in ("to", "in", "into", "down") and b in STEEPS for a, b in pairwise(words))


def is_seeds_kept(typed: Typed, clause: Clause) -> bool:
    """ "kept the seeds in an envelope"."""
    i = clause.verb_end
    while i < clause.end and typed.words[i] in ARTICLES | {"all", "some"}:
        i += 1
    return typed.words[i : i + 1] == ["seed"] and not typed.breaks[i]


def is_green_sown(typed: Typed, clause: Clause) -> bool:
    """ "phacelia scattered over bed 3", "Top bed down to rye"; not "chucked the mustard on the heap"."""
    words = typed.words[clause.start : clause.end]
    return not GREENS.isdisjoint(words) and NOT_SOWN.isdisjoint(words)


def is_sown_so(typed: Typed, clause: Clause) -> bool:
    """ "coriander & dill in the tub, just scattered"; not "scattered straw under the strawberries"."""
    return has_crop(typed, clause) and SCATTERED.isdisjoint(typed.words[clause.start : clause.end])


SCATTERED = (
    nouns.AMENDMENTS - {"rye", "vetch", "phacelia", "clover", "mustard", "leaf", "green"} | nouns.PELLETS | nouns.HENS | nouns.TROUBLES
    | _words("heap grit sand salt petal petals eggshell eggshells crumb grounds coffee leaves ash net netting hair birds slugs sawdust")
)  # fmt: skip


def is_water_amount(typed: Typed, clause: Clause) -> bool:
    """ "40 litres applied via soaker hose": litres of nothing else are water."""
    words = typed.words[clause.start : clause.end]
    has_volume = any(a.isdigit() and nouns.UNITS.get(b) in ("l", "gallon") for a, b in pairwise(words))
    return has_volume and not WATERED_WITH.isdisjoint(words)


STUFF = nouns.AMENDMENTS | nouns.COVERS | nouns.NETS | nouns.SUPPORTS


def take_stuff_first(draft: Draft, typed: Typed, clause: Clause, verb: Verb) -> None:
    """ "lime 200 g/m2 applied", "fleece removed from the carrots": what it was done with stands before the verb."""
    if draft.subject is not None or clause.subject is not None or "with" not in verb.slots:
        return
    for number, (start, end, after) in enumerate(draft.left):
        stop = min(end, typed.stops[start])
        if (
            start < clause.verb_start
            and stop <= clause.verb_start
            and not STUFF.isdisjoint(typed.words[start:stop])
        ):
            draft.subject = typed.written(start, stop)
            draft.spans.append(("subject", typed.starts[start], typed.ends[stop - 1]))
            draft.left[number : number + 1] = [(stop, end, after)] if stop < end else []
            return
