"""What is measured rather than counted: pH, temperatures, spacing, depth, prices.

Steps of the walk over a clause.
"""

from __future__ import annotations

import re

from leafmould.notes.amounts import Read, read_amount
from leafmould.notes.day_words import word_at
from leafmould.notes.walk import Walk, add_place
from leafmould.notes.words import nouns
from leafmould.values.problems import Level
from leafmould.values.quantities import Amount

PRICE = re.compile(
    r"(?:[£$€]\s?\d+(?:[.,]\d\d?)?|\d+(?:[.,]\d\d)?\s?(?:[£€$]|p\b|pence|euros?|pounds?(?= each|$)|dollars?|bucks?\b|eur\b|gbp\b|usd\b|chf\b|kr\b|quid))(?:\s?(?:each|ea\b|a (?:pack(?:et)?|kilo|kg|lb|pound|dozen|bag|jar|box|bunch|punnet|pop)|per (?:pack(?:et)?|kilo|kg|lb|dozen|bag|jar|box)|/(?:kg|lb|doz(?:en)?)|the lot|in all|altogether))?|\d+[.,]\d\d(?![\w.,])(?!\s?(?:kg|g|m|l|cm|lb|oz)\b)(?:\s(?:each|the lot|a pack(?:et)?))?",
    re.IGNORECASE,
)


CURRENCY = re.compile(
    r"[£$€]|(?:\b|(?<=\d))(?:p|pence|euros?|pounds?|dollars?|bucks?|eur|gbp|usd|chf|kr|quid)\b", re.IGNORECASE
)


SPACING_WORDS = frozenset({"apart", "spacing", "between", "centre", "center", "space", "spaced", "gap", "oc"})


DEPTH_WORDS = frozenset(
    {"deep", "high", "tall", "wide", "across", "thick", "pot", "depth", "down", "hole", "trench", "drill", "furrow", "ridge"}
)  # fmt: skip
ROW_GAPS = frozenset({"mm", "cm", "in", "ft"})
""" "27in rows": how far apart rows are; "3 m rows" are long."""


def take_reading(walk: Walk) -> bool:
    """pH, a temperature, rain: numbers that are measured, not counted."""
    i, word = walk.i, walk.word(walk.i)
    if word == "ph" or (word == "p" and walk.word(i + 1) == "h"):
        j = i + 1 if word == "ph" else i + 2
        beds: list[tuple[int, int]] = []
        while walk.word(j) in PH_LINKS or (j < walk.end and walk.bed_at(j)[0]):
            size = 0 if walk.word(j) in PH_LINKS else walk.bed_at(j)[0]
            beds += [(j, size)] if size else []
            j += size or 1
        read = _number_at(walk, j)
        if read is None:
            return False
        for spot, size in beds:
            bed = walk.bed_at(spot)[1]
            if bed is not None:
                add_place(walk, walk.named(bed, spot, spot + size), "at", spot, spot + size)
        _keep_reading(walk, "pH", read, j if beds else i, "")
        return True
    if walk.verb.name == "tested soil" and word in (
        "nitrogen",
        "n",
        "p",
        "k",
        "phosphoru",
        "phosphorus",
        "potassium",
        "magnesium",
        "organic",
        "om",
        "calcium",
        "salinity",
    ):
        j = i + 2 if walk.word(i + 1) == "matter" else i + 1
        read = _number_at(walk, j)
        if read is None:
            return False
        _keep_reading(
            walk,
            walk.typed.written(i, j),
            read,
            i,
            "ppm" if walk.word(read.end) == "ppm" else read.amount.unit,
        )
        return True
    return False


PH_LINKS = frozenset(
    {
        "of",
        "is",
        "was",
        "at",
        "now",
        "about",
        "around",
        "came",
        "out",
        "in",
        "the",
        "read",
        "reads",
        "tested",
        "down",
        "up",
        "reading",
        "for",
    }
)


def _number_at(walk: Walk, j: int) -> Read | None:
    return read_amount(walk.typed, j, walk.decimal) if walk.typed.is_number(j) and j < walk.end else None


def _keep_reading(walk: Walk, name: str, read: Read, i: int, unit: str) -> None:
    amount = read.amount
    unit = unit if unit != "piece" else ""
    end = read.end + (walk.word(read.end) == "ppm")
    value = Amount(
        written=amount.written, low=amount.low, high=amount.high, unit=unit, is_about=amount.is_about
    )
    walk.draft.readings.append((name, value))
    walk.span("reading", i, end)
    walk.i = end


def take_measured(walk: Walk, read: Read) -> bool:
    """An amount that is a temperature, a spacing or a depth: not how much of the crop."""
    amount, i = read.amount, walk.i
    follows = walk.word(read.end)
    if (
        walk.verb.name == "tested soil"
        and amount.unit == "piece"
        and amount.low is not None
        and amount.low <= 14
        and walk.draft.readings
    ):
        first = walk.draft.readings[0]
        if walk.draft.spans[-1][0] == "place":  # "Bed 1 pH 6.8, Bed 2 7.1"
            _keep_reading(walk, first[0], read, i, "")
            return True
        walk.ask(
            Level.QUESTION,
            f'"{first[1].written}" and "{amount.written}" are two readings in one line. Write a line for each place.',
            i,
        )
        _keep_reading(walk, first[0], read, i, "")
        return True
    if follows == "degree" and amount.unit == "piece" and not walk.typed.breaks[read.end]:
        walk.draft.leave(i, read.end + 1, walk.after_comma)  # "43 degrees": of which scale is not said
        walk.i = read.end + 1
        return True
    if amount.unit.startswith("°"):
        _keep_reading(walk, "temperature", signed(walk, read, i), i, amount.unit)
        return True
    said = walk.typed.words[i : read.end]  # "12 x 7 cm pots" are twelve
    is_pot = (
        amount.unit == "pot" and not nouns.UNITS.keys().isdisjoint(said) and sum(map(str.isdigit, said)) < 2
    )
    if walk.verb.name in POTTED and (amount.unit in POT_SIZES or is_pot):
        walk.draft.said.update(range(i, read.end))
        walk.draft.leave(i, read.end, walk.after_comma)  # "potted on the chillies, 2 l": how big the pots are
        walk.i = read.end
        return True
    if walk.has("crop!") and _spacing_both_ways(walk, i):
        return True
    if _hands_apart(walk, read) or _row_gap(walk, read):
        return True
    is_height = amount.unit in ("cm", "mm", "in", "ft", "m") and walk.verb.name in TALL
    if (
        walk.verb.name in TALL
        and nouns.UNITS.get(follows) in ("cm", "in", "ft", "m")
        and amount.unit == "piece"
    ):
        walk.draft.leave(i, read.end + 1, walk.after_comma)  # "hilled it up a couple of inches"
        walk.i = read.end + 1
        return True
    if is_height or (amount.unit in ("cm", "mm") and walk.verb.name == "picked"):
        walk.draft.leave(i, read.end, walk.after_comma)  # "courgette, 10cm": how long it was
        walk.i = read.end
        return True
    gap = _number_at(walk, read.end + 1) if follows == "every" and amount.unit == "piece" else None
    if gap is not None and gap.amount.unit in ("cm", "mm", "in", "ft", "m"):  # "one every 15 cm"
        walk.draft.spacing = walk.typed.written(i, gap.end)
        walk.span("spacing", i, gap.end)
        walk.i = gap.end
        return True
    if amount.unit in ("cm", "mm", "in", "ft") and walk.word(i - 1) == "every" and i > walk.verb_end:
        walk.draft.spacing = walk.typed.written(i - 1, read.end)
        walk.span("spacing", i - 1, read.end)
        walk.i = read.end
        return True
    if amount.unit in ("cm", "mm", "in", "ft", "yd", "m") or (amount.unit == "piece" and follows == "x"):
        j = read.end
        if follows == "x" and (second := _number_at(walk, j + 1)) is not None:
            j, follows = second.end, walk.word(second.end)
        before = walk.word(i - 1)
        if (
            follows in SPACING_WORDS
            or _is_gap_alone(walk, amount, read.end)
            or (
                walk.verb.name == "thinned"
                and amount.unit in ("mm", "cm", "in")
                and follows not in ("of", "row")
            )
            or (
                (before in ("at", "spaced", "spacing", "to") or walk.typed.gaps[i].endswith("@"))
                and (walk.has("crop!") or walk.verb.name == "thinned")
                and amount.unit != "m"
            )
        ):
            end = j + (follows in SPACING_WORDS)
            end += walk.word(end) in ("plant", "row", "them", "each") and walk.word(end - 1) == "between"
            _keep_spacing(walk, i, end)
            return True
        if follows in DEPTH_WORDS:
            walk.draft.leave(i, j + 1, walk.after_comma)
            walk.i = j + 1
            return True
    return False


def _hands_apart(walk: Walk, read: Read) -> bool:
    """ "four fingers apart", "a hand's breadth apart": measured with what is at hand."""
    end, stop = read.end, walk.stop(walk.i)
    near = walk.typed.words[end : min(end + 3, stop)]
    if "apart" not in near or read.amount.unit not in ("piece", "hand", "plant", "cane"):
        return False
    j = end + near.index("apart") + 1
    if any(walk.typed.names(k)[0] for k in range(end, j)):
        return False  # "12 leeks apart"
    _keep_spacing(walk, walk.i, j)
    return True


def _row_gap(walk: Walk, read: Read) -> bool:
    """ "15 in apart, 27 in rows"."""
    if (
        read.amount.unit not in ROW_GAPS
        or walk.word(read.end) != "row"
        or not walk.has("crop!")
        or not walk.typed.written(read.end, read.end + 1).endswith("s")
    ):
        return False
    _keep_spacing(walk, walk.i, read.end + 1)
    return True


def _keep_spacing(walk: Walk, i: int, end: int) -> None:
    """How far apart; a second such distance stands beside the first."""
    written = walk.typed.written(i, end)
    walk.draft.spacing = f"{walk.draft.spacing}, {written}" if walk.draft.spacing else written
    walk.span("spacing", i, end)
    walk.i = end


def _is_gap_alone(walk: Walk, amount: Amount, end: int) -> bool:
    """ "planted 10 psb, 60 cm": how far apart, where it is said how many."""
    counts = walk.draft.item.amounts
    is_counted = bool(counts) and all(a.count is not None and a.unit not in ("row", "seed") for a in counts)
    is_end = end >= walk.end or walk.typed.breaks[end]
    return is_counted and is_end and walk.verb.name == "planted" and amount.unit in ("cm", "mm", "in")


POTTED = frozenset({"potted on", "pricked out"})
POT_SIZES = frozenset({"l", "cm", "mm", "in", "gallon", "pint", "quart"})
TALL = frozenset({"earthed up", "staked", "tied in", "pinched out", "saw", "came up", "finished"})
"""Beside these a length is how tall something stands."""
BOTH_WAYS = re.compile(
    r"(\d{1,3})\s?(mm|cm|in|inch(?:es)?|\"|')?\s?x\s?(\d{1,3})\s?(mm|cm|in(?!\s)|inch(?:es)?|\"|')?(?:\s(?:apart|spacing|centres|grid))?(?=\s*(?:$|[,;.)]|\s(?:in|on|along)\s))",
    re.IGNORECASE,
)


def _spacing_both_ways(walk: Walk, i: int) -> bool:
    """'12" x 24"', "30 x 60cm", "30x60": how far apart, in the row and between rows."""
    start = walk.typed.starts[i]
    if "x" not in walk.typed.plain[start : start + 12].lower() or not walk.typed.is_number(i):
        return False
    m = BOTH_WAYS.match(walk.typed.plain, start)
    if m is None or not (m[2] or m[4] or min(int(m[1]), int(m[3])) >= 10):
        return False
    end = word_at(walk, m.end(), i)
    walk.draft.spacing = walk.typed.text[start : m.end()].strip()
    walk.draft.spans.append(("spacing", start, m.end()))
    walk.i = end
    return True


def signed(walk: Walk, read: Read, i: int) -> Read:
    """The amount with the minus that stood before it."""
    gap = walk.typed.gaps[i]
    amount = read.amount
    if (
        not gap.endswith("-")
        or amount.low is None
        or amount.high is None
        or (i and walk.typed.is_number(i - 1))
    ):
        return read
    return read._replace(
        amount=Amount(
            written=f"−{amount.written}",
            low=-amount.high,
            high=-amount.low,
            unit=amount.unit,
            is_about=amount.is_about,
        )
    )


def take_price(walk: Walk) -> bool:
    """What was paid: with a sign, or with two decimals behind a comma or "for"."""
    i = walk.i
    j = i + 1 if walk.word(i) in ("for", "at", "cost", "paid", "costing") else i
    j += walk.word(j) in ("about", "only", "just")
    if j >= walk.end or not walk.typed.is_number(j) or not _may_be_paid(walk, j):
        return False
    start = walk.typed.starts[j]
    has_sign = (start > 0 and walk.typed.plain[start - 1 : start] in "£$€") or (
        start > 1 and walk.typed.plain[start - 2] in "£$€"
    )
    if has_sign:
        start = walk.typed.plain.rfind(walk.typed.plain[max(0, start - 2) : start].strip()[-1], 0, start)
    m = PRICE.match(walk.typed.plain, start)
    if m is None or not (CURRENCY.search(m[0]) or walk.verb.name in ("bought", "gave away")):
        return False
    end = word_at(walk, m.end(), j)
    if walk.word(end) in ("short", "over", "under", "down", "off", "less"):
        return False  # "the box was 2 dollars short"
    if walk.draft.price is not None:
        written = walk.typed.text[start : m.end()].strip()
        walk.ask(Level.HINT, f'"{written}" is kept as a remark.', j)  # two goods and their prices
        walk.draft.leave(walk.i, end, walk.after_comma)
        walk.i = end
        return True
    walk.draft.price = walk.typed.text[start : m.end()].strip()
    walk.draft.spans.append(("price", start, m.end()))
    if not CURRENCY.search(m[0]):
        walk.ask(Level.HINT, f'"{walk.draft.price}" names no currency.', j)
    walk.i = end
    return True


def _may_be_paid(walk: Walk, i: int) -> bool:
    """A quick look: a number is no price without a sign or word of money, but where something was bought."""
    plain = walk.typed.plain
    return (
        walk.verb.name in ("bought", "gave away")
        or not MONEY.isdisjoint(walk.typed.words[i + 1 : i + 4])
        or "£" in plain
        or "$" in plain
        or "€" in plain
    )


MONEY = frozenset({"p", "pence", "euro", "pound", "dollar", "buck", "eur", "gbp", "usd", "chf", "kr", "quid"})
