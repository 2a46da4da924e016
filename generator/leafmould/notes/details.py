"""The details of a clause: dates, spacing, readings, prices, causes, what it was done with.

Each step looks at the word the walk stands on and either takes it (and what belongs to it) or leaves it.
"""

from __future__ import annotations

import re

from leafmould.notes.amounts import Read, read_amount
from leafmould.notes.entries import Named
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import CLAUSE_JOINS, PLACE_OPENERS
from leafmould.values.date_words import MONTHS, SEASONS
from leafmould.values.dates import DateWords, read_date, resolve_date, scan_date
from leafmould.values.names import Kind
from leafmould.values.problems import Level
from leafmould.values.quantities import Amount
from leafmould.values.when import When

DATE_LEADS = frozenset({"on", "since", "from", "around", "in", "by", "at"})
HOUR = re.compile(
    r"\d{1,2}[:.]\d\d(?!\d)\s?(?:am|pm|h|hrs|uhr)?(?![\w])|\d{1,2}\s?(?:am|pm)\b", re.IGNORECASE
)
PRICE = re.compile(
    r"(?:[£$€]\s?\d+(?:[.,]\d\d?)?|\d+(?:[.,]\d\d)?\s?(?:[£€$]|p\b|pence|euros?|pounds?(?= each|$)|dollars?|eur\b|gbp\b|usd\b|chf\b|kr\b|quid))(?:\s(?:each|a pack(?:et)?|per pack(?:et)?|the lot|in all|altogether))?|\d+[.,]\d\d(?![\w.,])(?!\s?(?:kg|g|m|l|cm|lb|oz)\b)(?:\s(?:each|the lot|a pack(?:et)?))?",
    re.IGNORECASE,
)
CURRENCY = re.compile(r"[£$€]|\b(?:p|pence|euros?|pounds?|dollars?|eur|gbp|usd|chf|kr|quid)\b", re.IGNORECASE)
SPACING_WORDS = frozenset({"apart", "spacing", "between", "centre", "center", "space", "spaced", "gap", "oc"})
DEPTH_WORDS = frozenset({"deep", "high", "tall", "wide", "across", "thick", "pot", "depth", "down", "hole"})


def take_date(walk: Walk) -> bool:
    """A date of the clause: behind "on", behind a comma, or closing the clause."""
    i = walk.i
    word = walk.word(i)
    lead = i
    if word in DATE_LEADS or word in ("the", "this", "last", "late", "early", "mid"):
        lead = i + 1 if word in DATE_LEADS else i
        if lead < walk.end and walk.typed.words[lead] == "the" and lead > i:
            lead += 1
    if lead >= walk.end or (walk.typed.is_number(i) and _hour(walk)):
        return walk.i > i
    span = _span_of_days(walk, lead) if word == "from" or walk.typed.is_number(lead) else None
    if span is not None:
        return True
    if _year(walk, i, lead):
        return True
    if walk.verb.name == "tried seed" and SHARE.match(walk.typed.plain, walk.typed.starts[lead]):
        return False
    found = scan_date(walk.typed.plain[: walk.typed.ends[walk.end - 1]], walk.typed.starts[lead])
    if found is None:
        return False
    end = _word_at(walk, found[1], lead)
    if not _fits(walk, found[0], i, lead, end):
        return False
    set_date(walk, found[0], i, end)
    return True


def _hour(walk: Walk) -> bool:
    """A bare hour is a remark: "12:30 picked peas"."""
    m = HOUR.match(walk.typed.plain, walk.typed.starts[walk.i])
    if m is None or ("." in m[0] and not m[0][-1].isalpha()):
        return False
    end = _word_at(walk, m.end(), walk.i)
    walk.draft.leave(walk.i, end, walk.after_comma or walk.is_topic)
    walk.i = end
    return True


def _fits(walk: Walk, words: DateWords, i: int, lead: int, end: int) -> bool:
    """Whether a date may stand here, and is not half of a name ("spring onion") or an amount."""
    named, _ = walk.typed.names(lead)
    if named and (named > end - lead or (words.day is None and words.weekday is None)):
        return False
    last = end >= walk.end or walk.typed.breaks[end] or (walk.word(end) in CLAUSE_JOINS)
    if words.day is None and words.weekday is None and words.days_ago is None and words.year is None:
        return (lead > i or walk.typed.breaks[i] or words.third is not None) and last
    return (
        lead > i
        or last
        or walk.typed.breaks[i]
        or walk.is_topic
        or walk.word(end) in PLACE_OPENERS
        or words.year is not None
    )


def set_date(walk: Walk, words: DateWords, i: int, end: int) -> None:
    """Keep the day of a date, or tell what is wrong with it."""
    reading = resolve_date(words, order=walk.order, base=walk.base, is_southern=walk.is_southern)
    if reading.fault:
        walk.ask(Level.ERROR, reading.fault, i)
    if reading.other is not None and reading.when is not None:
        walk.ask(Level.QUESTION, two_days(words.written, reading.when, reading.other), i)
    if walk.draft.when is None:
        walk.draft.when = reading.when
    walk.span("date", i, end)
    walk.i = end


def two_days(written: str, first: When, other: When) -> str:
    """The question an ambiguous date asks."""
    from leafmould.values.dates import written_day

    return (
        f'"{written}" may be {written_day(first.first)} or {written_day(other.first)}; read as the first. '
        "Set `dates` in garden.yaml."
    )


def _year(walk: Walk, i: int, lead: int) -> bool:
    """A year alone: "in 2015", "(2023)", and for what was grew."""
    if not re.fullmatch(r"(?:19|20)\d\d", walk.word(lead)) or walk.typed.names(lead)[0]:
        return False
    if walk.has("larder") and walk.verb.name != "bought":
        if lead + 1 < walk.end and not walk.typed.breaks[lead + 1] and walk.typed.names(lead + 1)[0]:
            walk.draft.crop_year = int(walk.word(lead))
            walk.span("crop year", lead, lead + 1)
            walk.i = lead + 1
            return True
        if walk.word(i) == "from" or "(" in walk.typed.gaps[lead]:
            walk.draft.crop_year = int(walk.word(lead))
            walk.span("crop year", lead, lead + 1)
            walk.i = lead + 1
            return True
        return False
    last = lead + 1 >= walk.end or walk.typed.breaks[lead + 1]
    if not last or (walk.typed.starts[lead] and walk.typed.plain[walk.typed.starts[lead] - 1] in "-./"):
        return False
    if not (lead > i or walk.typed.breaks[i] or walk.verb.name == "grew"):
        return False
    reading = read_date(walk.word(lead), order=walk.order, base=walk.base, is_southern=walk.is_southern)
    if reading is None or reading.when is None:
        return False
    walk.draft.when = walk.draft.when or reading.when
    walk.span("date", i, lead + 1)
    walk.i = lead + 1
    return True


SHARE = re.compile(r"\d+ ?/ ?\d+(?![\d/])")
SPAN = re.compile(r"(\d{1,2})(?:st|nd|rd|th)?\s?(?:to|until|till|-|and)\s?", re.IGNORECASE)


def _span_of_days(walk: Walk, lead: int) -> bool | None:
    """ "from 3 to 20 May", "3-20 May", "from 3 May to 20 May"."""
    plain, start = walk.typed.plain, walk.typed.starts[lead]
    first = scan_date(plain, start)
    m = SPAN.match(plain, start)
    if m is not None and (second := scan_date(plain, m.end())) is not None and second[0].day is not None:
        words, end = second
        first_words = DateWords(
            written=f"{m[1]} {re.sub(r'^[0-9]+(?:st|nd|rd|th)?[ .]*', '', words.written)}",
            year=words.year,
            month=words.month,
            day=int(m[1]),
        )
    elif (
        first is not None
        and (m := re.compile(r"\s?(?:to|until|till|-)\s?").match(plain, first[1])) is not None
    ):
        second = scan_date(plain, m.end())
        if second is None:
            return None
        (words, end), first_words = second, first[0]
    else:
        return None
    _set_span(walk, first_words, words, _word_at(walk, end, lead))
    return True


def _set_span(walk: Walk, first: DateWords, last: DateWords, end: int) -> None:
    i = walk.i
    until = resolve_date(last, order=walk.order, base=walk.base, is_southern=walk.is_southern)
    begun = resolve_date(first, order=walk.order, base=walk.base, is_southern=walk.is_southern)
    if until.fault or begun.fault:
        walk.ask(Level.ERROR, str(begun.fault or until.fault), i)
    walk.draft.when, walk.draft.until = walk.draft.when or begun.when, until.when
    walk.span("date", i, end)
    walk.i = end


def _word_at(walk: Walk, end: int, i: int) -> int:
    while i < walk.typed.count and walk.typed.starts[i] < end:
        i += 1
    return i


def take_reading(walk: Walk) -> bool:
    """pH, a temperature, rain: numbers that are measured, not counted."""
    i, word = walk.i, walk.word(walk.i)
    if word == "ph" or (word == "p" and walk.word(i + 1) == "h"):
        j = i + 1 if word == "ph" else i + 2
        while walk.word(j) in ("of", "is", "was", "at", "now", "about", "around"):
            j += 1
        read = _number_at(walk, j)
        if read is None:
            return False
        _keep_reading(walk, "pH", read, i, "")
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
    if amount.unit.startswith("°"):
        _keep_reading(walk, "temperature", signed(walk, read, i), i, amount.unit)
        return True
    if amount.unit in ("cm", "mm", "in", "ft", "m") or (amount.unit == "piece" and follows == "x"):
        j = read.end
        if follows == "x" and (second := _number_at(walk, j + 1)) is not None:
            j, follows = second.end, walk.word(second.end)
        before = walk.word(i - 1)
        if follows in SPACING_WORDS or (
            before in ("at", "spaced", "spacing", "to")
            and (walk.has("crop!") or walk.verb.name == "thinned")
            and amount.unit != "m"
        ):
            end = j + (follows in SPACING_WORDS)
            end += walk.word(end) in ("plant", "row", "them", "each") and walk.word(end - 1) == "between"
            walk.draft.spacing = walk.typed.written(i, end)
            walk.span("spacing", i, end)
            walk.i = end
            return True
        if follows in DEPTH_WORDS:
            walk.draft.leave(i, j + 1, walk.after_comma)
            walk.i = j + 1
            return True
    return False


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
    if j >= walk.end or not walk.typed.is_number(j):
        return False
    start = walk.typed.starts[j]
    has_sign = (start > 0 and walk.typed.plain[start - 1 : start] in "£$€") or (
        start > 1 and walk.typed.plain[start - 2] in "£$€"
    )
    if has_sign:
        start = walk.typed.plain.rfind(walk.typed.plain[max(0, start - 2) : start].strip()[-1], 0, start)
    m = PRICE.match(walk.typed.plain, start)
    if m is None:
        return False
    walk.draft.price = walk.typed.text[start : m.end()].strip()
    end = _word_at(walk, m.end(), j)
    walk.draft.spans.append(("price", start, m.end()))
    if not CURRENCY.search(m[0]):
        walk.ask(Level.HINT, f'"{walk.draft.price}" names no currency.', j)
    walk.i = end
    return True


def free_words(walk: Walk, i: int, *, stops_at_crop: bool = False) -> int:
    """The word behind a run of free words: to a break, a known place, a date, or the next verb's join."""
    from leafmould.notes.clauses import PAST

    start = i
    while i < walk.stop(start):
        word = walk.typed.words[i]
        if i == walk.skip:
            break
        if word in PLACE_OPENERS and i > start and word not in ("of", "for", "up"):
            break
        if stops_at_crop and i > start and walk.typed.kind(i, Kind.BED)[0]:
            break
        if word in CLAUSE_JOINS and (walk.word(i + 1),) in PAST:
            break
        if i > start and word in (
            "today",
            "yesterday",
            "each",
            "now",
            "already",
            "again",
            "everywhere",
            "under",
        ):
            break
        i += 1
    return i


def take_with(walk: Walk) -> bool:
    """ "with straw", "with fleece"; for treatments too."""
    i = walk.i
    if walk.word(i) not in ("with", "using") or not (walk.has("with") or walk.verb.name == "treated"):
        return False
    end = free_words(walk, i + 1)
    if end <= i + 1:
        return False
    walk.draft.subject = walk.typed.written(walk.past_articles(i + 1), end)
    walk.span("subject", i + 1, end)
    walk.i = end
    return True


def take_stuff(walk: Walk) -> bool:
    """Behind a comma, what it was done with: "fed the tomatoes, comfrey tea"."""
    i = walk.i
    if not (walk.has("with") or walk.verb.name == "treated") or walk.draft.subject is not None or walk.is_topic:
        return False
    if not walk.typed.breaks[i] or i == walk.verb_end or walk.bed_at(i)[1] is not None:
        return False
    end = free_words(walk, i)
    if not any(walk.typed.words[j] in STUFFS for j in range(i, end)):
        return False
    walk.draft.subject = walk.typed.written(i, end)
    walk.span("subject", i, end)
    walk.i = end
    return True


STUFFS = nouns.COVERS | nouns.MULCHES | nouns.MANURES | nouns.LIMES | nouns.FEEDS | nouns.PELLETS


def take_cause(walk: Walk) -> bool:
    """What a loss was due to: "to pigeons", "by frost", ", slugs"."""
    if not walk.has("to") or walk.draft.cause is not None:
        return False
    i = walk.i
    word = walk.word(i)
    verb_asks = i == walk.verb_end and walk.typed.words[i - 1] in ("to", "by")
    if word in ("to", "by", "from", "of") or verb_asks:
        start = i if verb_asks else i + 1
        if walk.bed_at(walk.past_articles(start))[1] is not None or start >= walk.end:
            return False
        if word == "of" and (walk.is_topic or walk.typed.names(start)[0]):
            return False
    elif word in ("due", "because", "thanks") or word == "owing":
        start = i + 1 + (walk.word(i + 1) in ("to", "of"))
    elif (
        word in nouns.TROUBLES and (walk.typed.breaks[i] or walk.is_topic) and not walk.typed.names(i)[0]
    ) or (
        walk.typed.breaks[i]
        and any(walk.typed.words[j] in nouns.TROUBLES for j in range(i, walk.stop(i)))
        and not walk.typed.names(i)[0]
    ):
        start = i
    else:
        return False
    end = free_words(walk, start, stops_at_crop=True)
    if walk.is_topic:
        end = start + 1
    if end <= start:
        return False
    walk.draft.cause = walk.typed.written(walk.past_articles(start), end)
    walk.span("cause", start, end)
    walk.i = end
    return True


def take_source(walk: Walk) -> bool:
    """Who sold or gave it: "from seed swap", "at the market"."""
    i = walk.i
    if (
        not walk.has("seller")
        or walk.word(i) not in ("from", "at", "by", "off", "with")
        or walk.draft.source is not None
    ):
        return False
    if walk.verb.name != "bought" and walk.word(i) != "from":
        return False
    start = walk.past_articles(i + 1)
    stop, end = walk.stop(i + 1), start
    while (
        end < stop
        and not (walk.word(end) in ("for", "at", "in", "on", "to", "into") and end > start)
        and not (end > start and walk.typed.is_number(end) and "." in walk.typed.gaps[end + 1])
    ):
        end += 1
    if end <= start:
        return False
    walk.draft.source = walk.typed.written(start, end)
    walk.span("source", start, end)
    walk.i = end
    return True


BATCH_NOUNS = frozenset({"sowing", "batch", "planting"})


def take_batch(walk: Walk) -> bool:
    """ "first sowing", "from the March sowing"."""
    i = walk.i
    j = walk.past_articles(i + 1 if walk.word(i) in ("from", "of") else i)
    word = walk.word(j)
    if walk.word(j + 1) not in BATCH_NOUNS or not (
        word in nouns.ORDINALS
        or word in MONTHS
        or word in SEASONS
        or word in ("early", "late", "main", "april", "may")
        or word.isdigit()
    ):
        return False
    walk.draft.batch = walk.typed.written(j, j + 2)
    walk.span("batch", j, j + 2)
    walk.i = j + 2
    return True


WAIT = re.compile(
    r"(?:wait(?:ing)?|leave|no (?:picking|harvest|eating)(?: for)?|don't eat for|do not eat for|withhold(?:ing)?|phi)\s?:?\s?(?:time |period |of )?(\d+)[\s-]?d(?:ays?)?\b|(\d+)[\s-]days? (?:wait|withholding|interval|phi)",
    re.IGNORECASE,
)


def take_wait(walk: Walk) -> bool:
    """Days to wait after a treatment, only if they are written."""
    if walk.verb.name not in ("treated", "fed", "manured"):
        return False
    m = WAIT.match(walk.typed.plain, walk.typed.starts[walk.i])
    if m is None:
        return False
    walk.draft.wait_days = int((m[1] or m[2])[:6])
    walk.draft.spans.append(("wait", m.start(), m.end()))
    walk.i = _word_at(walk, m.end(), walk.i)
    return True


def take_cover(walk: Walk) -> bool:
    """ "under cover", "under fleece"."""
    if walk.word(walk.i) not in ("under", "undercover"):
        return False
    for size in (4, 3, 2, 1):
        if walk.typed.phrase(walk.i, size) in nouns.UNDER_COVER and walk.i + size <= walk.end:
            walk.draft.is_under_cover = True
            walk.span("cover", walk.i, walk.i + size)
            walk.i += size
            return True
    return False


def take_everything(walk: Walk) -> bool:
    """ "everything", "all beds", "everything but leeks"."""
    i, word = walk.i, walk.word(walk.i)
    if not (
        walk.has("bed")
        or walk.verb.name in ("moved", "thinned", "picked", "lost", "hardened off", "potted on", "planted")
    ):
        return False
    if word in ("everything", "everywhere"):
        end = i + 1
    elif (
        word in ("all", "every")
        and walk.word(walk.past_articles(i + 1))
        in ("bed", "container", "pot", "tub", "plot", "them", "border")
        and not walk.bed_at(walk.past_articles(i + 1))[1]
    ):
        end = walk.past_articles(i + 1) + 1
    elif (
        word == "all"
        and (i + 1 >= walk.end or walk.typed.breaks[i + 1])
        and not walk.draft.has_crop
        and not walk.draft.places
    ):
        end = i + 1
    elif (
        word == "the"
        and walk.word(i + 1) in ("lot", "garden")
        and not walk.draft.has_crop
        and walk.has("bed")
    ):
        end = i + 2
    else:
        return False
    walk.draft.everything = True
    walk.span("everything", i, end)
    walk.i = end
    _exceptions(walk)
    return True


def _exceptions(walk: Walk) -> None:
    i = walk.i
    if (
        walk.word(i) in ("but", "except", "bar", "apart", "excluding", "minus", "save")
        or walk.word(i) == "not"
    ):
        i += 1
    else:
        return
    i += walk.word(i) in ("for", "from")
    while i < walk.end:
        i = walk.past_articles(i)
        size, known = walk.typed.kind(i, Kind.BED, Kind.CROP, Kind.CROP_GROUP) if i < walk.end else (0, ())
        if not size:
            break
        walk.draft.but.append(
            Named(
                key=known[0].key, name=known[0].name, written=walk.typed.written(i, i + size), of=known[0].of
            )
        )
        walk.span("but", i, i + size)
        i += size
        walk.i = i
        if walk.word(i) in ("and", "or"):
            i += 1
        elif i < walk.end and "," not in walk.typed.gaps[i] and "&" not in walk.typed.gaps[i]:
            break
