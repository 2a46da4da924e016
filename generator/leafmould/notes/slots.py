"""The walk over one clause: each word goes to a slot, or into the remark.

STEPS is the order in which the readers of slots are asked; the first that takes the word moves the walk
on. What none takes is left over: a remark, without a warning.
"""

from __future__ import annotations

from collections.abc import Callable

from leafmould.notes.amounts import Read, read_amount
from leafmould.notes.clauses import Clause, intention_at
from leafmould.notes.crops import UNKNOWN_WORDS, take_crop, take_quote, take_unknown
from leafmould.notes.details import (
    signed,
    take_batch,
    take_cause,
    take_cover,
    take_date,
    take_everything,
    take_measured,
    take_price,
    take_reading,
    take_source,
    take_stuff,
    take_wait,
    take_with,
)
from leafmould.notes.draft import Item
from leafmould.notes.places import near_place_alone, take_part, take_place_after
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ABOUT,
    ARTICLES,
    FILLERS,
    JOINS,
    PLACE_OPENERS,
    REMARK_OPENERS,
    SUBJECTS,
)
from leafmould.values.names import Kind
from leafmould.values.problems import Level
from leafmould.values.quantities import Amount


def walk_clause(walk: Walk, clause: Clause) -> None:
    """Fill the draft from the words before and behind the clause's verb."""
    walk.skip = clause.particle if clause.particle is not None else -1
    walk.verb_end = clause.verb_end
    walk.is_topic = True
    _over(walk, clause.start, clause.verb_start)
    walk.is_topic = clause.is_state
    if clause.verb_end > clause.verb_start:
        walk.draft.spans.append(
            ("verb", walk.typed.starts[clause.verb_start], walk.typed.ends[clause.verb_end - 1])
        )
    walk.joined = walk.after_comma = walk.was_or = False
    _over(walk, clause.verb_end, clause.end)


def _over(walk: Walk, start: int, end: int) -> None:
    walk.i, walk.end = start, end
    while walk.i < walk.end:
        i = walk.i
        if walk.typed.breaks[i]:
            walk.joined, walk.after_comma = True, not walk.is_topic
        elif (gap := walk.typed.gaps[i]) and ("&" in gap or "+" in gap or "/" in gap):
            walk.joined = True
        if i == walk.skip:
            walk.i = i + 1
            continue
        for step in STEPS:
            if step(walk):
                break
        else:
            walk.draft.leave(i, i + 1, walk.after_comma)
            walk.i = i + 1
            continue


def _take_join(walk: Walk) -> bool:
    word = walk.word(walk.i)
    if word == "or":
        walk.was_or = walk.joined = True
    elif word in JOINS:
        walk.joined = True
    else:
        return False
    if walk.i in walk.typed.quotes or walk.typed.names(walk.i)[0]:
        return False
    walk.i += 1
    return True


def _take_plan(walk: Walk) -> bool:
    """Behind a comma: "need to sow more" is a remark, not a thing done."""
    i = walk.i
    if (
        walk.is_topic
        or not (walk.typed.breaks[i] or walk.typed.words[i - 1] in JOINS)
        or walk.typed.names(i)[0]
    ):
        return False
    if intention_at(walk.typed, i) is None:
        return False
    walk.draft.leave(i, walk.stop(i), True)
    walk.i = walk.stop(i)
    return True


def _take_preposition(walk: Walk) -> bool:
    i = walk.i
    word = walk.word(i)
    if (
        word not in PLACE_OPENERS
        or walk.typed.kind(i, Kind.BED)[0] > 1
        or (word == "of" and walk.typed.kind(i - 1, Kind.MEASURE)[0])
    ):
        return False
    if word == "from" and walk.verb.name == "moved" and walk.draft.origins:
        return False
    if take_place_after(walk, i):
        return True
    if _crop_behind(walk, i):
        return True
    if take_source(walk):
        return True
    if (
        walk.verb.name == "put up"
        and word in ("from", "out", "of")
        and _number_next(walk, i + 1 + (walk.word(i + 1) == "of"))
    ):
        walk.i = i + 1
        return True
    if word in ("at", "to") and walk.typed.is_number(i + 1) and (word == "at" or walk.verb.name == "thinned"):
        walk.i = i + 1
        return True
    if word == "of" or (word in ("to", "up") and walk.is_topic):
        walk.i = i + 1
        return True
    end = _phrase(walk, i)
    walk.draft.leave(i, end, walk.after_comma or not walk.has("object"))
    walk.i = end
    return True


CROP_LEADS = frozenset(
    {
        "on",
        "of",
        "from",
        "to",
        "for",
        "over",
        "around",
        "round",
        "under",
        "off",
        "in",
        "along",
        "down",
        "onto",
        "through",
        "out",
        "at",
        "by",
    }
)


def _crop_behind(walk: Walk, i: int) -> bool:
    """ "aphids on broad beans", "cuttings from rosemary", "straw under the strawberries"."""
    if (
        walk.draft.has_crop
        or walk.word(i) not in CROP_LEADS
        or (walk.has("crop!")
        and walk.verb.name
        not in ("took cuttings", "saved seed", "divided", "planted", "lost", "put up", "used", "tried seed"))
    ):
        return False
    if walk.word(i) in ("for", "to") and not walk.has("bed"):
        return False
    j = walk.past_articles(i + 1 + (walk.word(i) == "out" and walk.word(i + 1) == "of"))
    while walk.word(j) in nouns.SELDOM_VARIETY and not walk.typed.names(j)[0] and j < walk.stop(j):
        j += 1
    if j >= walk.end or walk.typed.breaks[j]:
        return False
    if (read := read_amount(walk.typed, j, walk.decimal)) is not None and not walk.typed.names(j)[0]:
        j = (
            read.end
            if read.end < walk.end and walk.typed.kind(read.end, Kind.CROP, Kind.CROP_GROUP)[0]
            else j
        )
    if not (walk.typed.kind(j, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0] or j in walk.typed.quotes):
        return False
    walk.i = i + 1
    return True


def _phrase(walk: Walk, i: int) -> int:
    """The end of a phrase no slot wants: "in a block", "to 9 cm pots"."""
    end, stop = i + 1, walk.stop(i + 1) if i + 1 < walk.end else walk.end
    while end < stop:
        word = walk.typed.words[end]
        if (
            (word in PLACE_OPENERS
            and end > i + 1)
            or word in JOINS
            or end == walk.skip
            or end in walk.typed.quotes
        ):
            break
        if end > i + 1 and walk.typed.names(end)[0] and walk.typed.words[end - 1] not in ARTICLES:
            break
        end += 1
    return max(end, i + 1)


def _take_each(walk: Walk) -> bool:
    i, word = walk.i, walk.word(walk.i)
    if word == "each" or (
        word in ("per", "a")
        and walk.word(i + 1) in ("plant", "row", "bed", "tub", "pot")
        and walk.draft.item.amounts
    ):
        walk.draft.is_each = walk.draft.is_each or word == "each"
        if word != "each":
            return False
        walk.span("each", i, i + 1)
        walk.i = i + 1 + (walk.word(i + 1) in ("of", "in"))
        return True
    return False


MIXES = frozenset({"mix", "mixture", "mixed", "blend", "combination"})


def _take_mix(walk: Walk) -> bool:
    i = walk.i
    j = walk.past_articles(i)
    if walk.word(j) in MIXES and not walk.typed.names(j)[0]:
        if walk.word(j + 1) in ("of", "row", "bed", "packet"):
            walk.draft.item.is_mix = True
            walk.i = j + 1 + (walk.word(j + 1) in ("of",))
            return True
        return False
    return False


def _take_amount(walk: Walk) -> bool:
    i = walk.i
    word = walk.word(i)
    if walk.typed.names(i)[0] > 1 or (word in ABOUT and not _number_next(walk, i)):
        return False
    read = read_amount(walk.typed, i, walk.decimal, _bare_unit(walk))
    if read is None or read.end > walk.end:
        return False
    if read.is_bare_word and not _names_follow(walk, read.end):
        return False
    if take_measured(walk, read):
        return True
    if _is_half_of_bed(walk, read):
        return True
    if word in ("some", "last", "final", "many", "few") and not (
        _names_follow(walk, read.end) or read.has_noun
    ):
        return False
    if read.is_bare_word and word in ("a", "an"):
        walk.i = read.end
        return True
    if walk.verb.name == "noted weather" or (walk.is_topic and walk.verb.name == "bought"):
        return False
    place_amount(walk, read, i)
    return True


def _number_next(walk: Walk, i: int) -> bool:
    for j in range(i, min(i + 3, walk.end)):
        if (
            walk.typed.is_number(j)
            or walk.word(j) in nouns.NUMBERS
            or (walk.word(j) in nouns.FRACTION_WORDS
            and len(walk.word(j)) == 1)
            or walk.word(j) in ("half", "all")
        ):
            return True
        if walk.word(j) not in ABOUT:
            return False
    return False


def _bare_unit(walk: Walk) -> str:
    if walk.verb.name == "tried seed":
        return "seed"
    return (
        "hen"
        if walk.verb.name in ("penned", "let out")
        else "egg"
        if walk.verb.name == "collected" and "egg" in walk.typed.words
        else "piece"
    )


def _names_follow(walk: Walk, j: int) -> bool:
    """Whether a crop, a variety or a counted noun stands behind an amount."""
    k, stop = j, walk.stop(j) if j < walk.end else walk.end
    while k < stop:
        if k in walk.typed.quotes or walk.typed.kind(k, Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)[0]:
            return True
        if (walk.word(k) in PLACE_OPENERS and walk.word(k) != "of") or walk.word(k) in REMARK_OPENERS:
            return False
        k += 1
        if k - j > 4:
            return False
    return False


def _is_half_of_bed(walk: Walk, read: Read) -> bool:
    """ "cleared half of Arch": part of a bed nobody can name."""
    if (
        read.amount.whole not in ("half", "all", "the rest", "some")
        or walk.draft.has_crop
        or not walk.has("bed")
    ):
        return False
    j = walk.past_articles(read.end + (walk.word(read.end) == "of"))
    size, known = walk.bed_at(j)
    if known is None or any(k.kind is not Kind.BED for k in walk.typed.names(j)[1]):
        return False
    from leafmould.notes.places import add_place

    add_place(walk, walk.named(known, j, j + size), "at", j, j + size)
    if read.amount.whole != "all":
        walk.draft.item.amounts.append(read.amount)
        walk.span("amount", walk.i, read.end)
        if walk.verb.name == "cleared":
            walk.ask(
                Level.QUESTION,
                f'Which part of "{known.name}" was cleared? Nothing is ended until it is said.',
                walk.i,
            )
    walk.i = j + size
    return True


def place_amount(walk: Walk, read: Read, i: int) -> None:
    """Give an amount to the item it belongs to: a new one, the one being read, or all of them."""
    draft, item = walk.draft, walk.draft.item
    if walk.typed.gaps[i].endswith("-") and not walk.typed.breaks[i]:
        read = signed(walk, read, i)
    if read.asks:
        walk.ask(Level.QUESTION, read.asks, i)
    end = _past_of(walk, read.end)
    span = ("amount", walk.typed.starts[i], walk.typed.ends[read.end - 1])
    crop_follows = _crop_follows(walk, end)
    variety_follows = not crop_follows and _variety_follows(walk, end)
    walk.i = end
    if walk.word(walk.i) == "each" and not crop_follows:
        draft.is_each = True
        walk.i += 1
    if "/" in read.amount.unit:
        draft.total.append(read.amount)
        draft.spans.append(span)
        return
    if (
        crop_follows
        and item.crops
        and not (walk.verb.name == "put up" and walk.typed.words[i - 1] in ("from", "of", "with", "using"))
    ) or (variety_follows and item.crops and item.amounts):
        item = Item(takes_crop_before=variety_follows)
        draft.items.append(item)
    elif (
        not crop_follows
        and not variety_follows
        and len(draft.items) > 1
        and not any(it.amounts for it in draft.items)
    ):
        draft.total.append(read.amount)
        draft.spans.append(span)
        return
    if any(_same_kind(a, read.amount) for a in item.amounts):
        if draft.is_each or walk.has("larder"):
            pass
        elif item.crops or not crop_follows:
            walk.ask(
                Level.QUESTION,
                f'"{item.amounts[0].written}" and "{read.amount.written}" are two amounts of one thing.',
                i,
            )
    item.amounts.append(read.amount)
    item.spans.append(span)


def _past_of(walk: Walk, j: int) -> int:
    if walk.word(j) == "of" and not walk.typed.breaks[j]:
        bed = walk.bed_at(walk.past_articles(j + 1))[1]
        j = (
            j
            if bed is not None
            and not walk.typed.kind(walk.past_articles(j + 1), Kind.CROP, Kind.CROP_GROUP)[0]
            else j + 1
        )
    return j


def _same_kind(a: Amount, b: Amount) -> bool:
    groups = (nouns.WEIGHTS, nouns.VOLUMES)
    return a.unit == b.unit or any(a.unit in g and b.unit in g for g in groups)


def _crop_follows(walk: Walk, j: int) -> bool:
    """Whether the amount is of a crop that stands behind it, with nothing but describing words between."""
    stop, k = walk.stop(j) if j < walk.end else walk.end, j
    if j < walk.end and walk.typed.breaks[j]:
        return False
    while k < stop and k - j < 5:
        quote = walk.typed.quotes.get(k)
        if quote is not None:
            k = max(quote.last, k + 1)
            continue
        if walk.typed.kind(k, Kind.CROP, Kind.CROP_GROUP)[0]:
            return True
        size = walk.typed.names(k)[0]
        word = walk.word(k)
        if (word in PLACE_OPENERS and word != "of") or (word in JOINS and word != "of") or word in REMARK_OPENERS:
            return False
        k += size or 1
    return False


def _variety_follows(walk: Walk, j: int) -> bool:
    j = walk.past_articles(j)
    return (
        j < walk.end
        and not walk.typed.breaks[j]
        and (j in walk.typed.quotes or bool(walk.typed.kind(j, Kind.VARIETY)[0]))
    )


def _take_bed(walk: Walk) -> bool:
    """A place without a preposition: "Sowed Boltardy beetroot Long border", "weeded Arch"."""
    i = walk.past_articles(walk.i)
    size, known = walk.bed_at(i)
    if known is None:
        if (
            walk.word(i) == "bed"
            and walk.typed.is_number(i + 1)
            and walk.has("place")
            and not walk.draft.places
        ):
            return _undeclared_number(walk, i)
        return False
    if any(k.kind in (Kind.CROP, Kind.CROP_GROUP) for k in walk.typed.names(i)[1]) and not _bed_not_crop(
        walk, i, size
    ):
        return False
    from leafmould.notes.places import _more_places, _part_behind, add_place

    if (
        walk.verb.name == "moved"
        and not walk.draft.has_crop
        and not walk.draft.origins
        and not walk.is_topic
        and not walk.draft.everything
    ):
        walk.draft.origins.append(walk.named(known, i, i + size))
        walk.span("origin", i, i + size)
        walk.i = i + size
        return True
    add_place(walk, walk.named(known, i, i + size), "at", i, i + size)
    walk.i = i + size
    _part_behind(walk)
    _more_places(walk, "at", walk.typed.words[i])
    return True


def _undeclared_number(walk: Walk, i: int) -> bool:
    from leafmould.notes.entries import Named, Sureness
    from leafmould.values.names import slug

    written = walk.typed.written(i, i + 2)
    walk.draft.places.append(Named(key=slug(written), name=written, written=written, sureness=Sureness.NEW))
    walk.span("place", i, i + 2)
    walk.ask(Level.HINT, f'"{written}" is a new bed.', i)
    walk.i = i + 2
    return True


def _bed_not_crop(walk: Walk, i: int, size: int) -> bool:
    """A name that is both: the bed alone behind a whole-bed verb, or where the crop is already named."""
    if walk.draft.has_crop and not walk.joined:
        return True
    if walk.draft.item.amounts or not walk.has("bed") or walk.draft.places:
        return False
    return not any(walk.typed.kind(j, Kind.BED)[0] for j in range(i + size, walk.end)) and not (
        walk.draft.has_crop or (walk.joined and not walk.after_comma)
    )


def _take_side(walk: Walk) -> bool:
    """ "the north half": a part, if it is one here."""
    return bool(walk.has("place")) and take_part(walk)


def _take_remark(walk: Walk) -> bool:
    """Small words that open a remark: all to the next comma belongs to it."""
    i, word = walk.i, walk.word(walk.i)
    if word == "with" and walk.verb.name in ("sowed", "planted", "started") and walk.draft.has_crop:
        j = walk.past_articles(i + 1)
        size, known = walk.typed.kind(j, Kind.CROP, Kind.CROP_GROUP) if j < walk.end else (0, ())
        if size:
            walk.ask(
                Level.QUESTION,
                f'Was "{known[0].name}" {walk.verb.name} too? Read as yes; join with "and" to make it sure.',
                i,
            )
            walk.joined = True
            walk.i = i + 1
            return True
    if word not in REMARK_OPENERS and not (word == "with" and walk.verb_end < i):
        return False
    end = i + 1
    while end < walk.stop(i) and not (
        walk.word(end) in ("in", "from", "into")
        and walk.bed_at(walk.past_articles(end + 1))[1] is not None
        and not walk.draft.places
    ) and not (walk.word(end) == "with" and (walk.has("with") or walk.verb.name == "treated")):
        end += 1
    walk.draft.leave(i, end, True)
    walk.i = end
    return True


def _take_filler(walk: Walk) -> bool:
    """ "the", "some", "we": words that say nothing here."""
    i, word = walk.i, walk.word(walk.i)
    if walk.is_topic and word in UNKNOWN_WORDS:
        walk.i = i + 1
        return True
    if word in ARTICLES or word in FILLERS or (walk.is_topic and word in SUBJECTS):
        walk.i = i + 1
        return True
    return False


def _take_near_place(walk: Walk) -> bool:
    """Behind crop: a slip of a bed's name, where a bed is missing: "sowed peas Long bordr"."""
    if (
        walk.draft.places
        or walk.is_topic
        or not walk.has("place")
        or (walk.typed.breaks[walk.i]
        and not walk.draft.has_crop)
    ):
        return False
    if not (walk.draft.has_crop or walk.has("bed")) or walk.typed.names(walk.i)[0]:
        return False
    return near_place_alone(walk, walk.i)


STEPS: tuple[Callable[[Walk], bool], ...] = (
    take_quote, _take_join, _take_plan, take_wait, take_batch, take_cover, take_everything, take_cause, take_with, take_stuff, take_price, take_date,
    take_reading, _take_mix, _take_each, _take_side, _take_amount, take_crop, _take_preposition, _take_bed,
    _take_remark, _take_near_place, take_unknown, _take_filler,
)  # fmt: skip
