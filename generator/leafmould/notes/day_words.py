"""Dates in a clause: behind "on", behind a comma, at its end; spans, years, bare hours.

Steps of the walk. What a date means is settled in `values.dates`.
"""

from __future__ import annotations

import re
from dataclasses import replace

from leafmould.notes.days_in_figures import led_in_figures
from leafmould.notes.seed_year import YEAR_ALONE, take_seed_year
from leafmould.notes.typed import Typed
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    CLAUSE_JOINS,
    PLACE_OPENERS,
    REMARK_OPENERS,
)
from leafmould.values.date_forms import FIRST_WORDS
from leafmould.values.date_words import MONTHS, SHORT_MONTHS, WEEKDAYS
from leafmould.values.dates import DateWords, read_date, resolve_date, scan_date, written_day
from leafmould.values.day_phrases import (
    ENGLISH_SHORT,
    PHRASE_STARTS,
    SHORT_DAYS,
    day_of_month,
    scan_day,
    short_month,
)
from leafmould.values.names import fold_word
from leafmould.values.problems import Level
from leafmould.values.when import When

WHOSE_WEEKEND = frozenset(
    {
        "holiday",
        "bank",
        "labour",
        "labor",
        "memorial",
        "birthday",
        "anniversary",
        "good",
        "easter",
        "the",
        "long",
    }
)
""" "bank holiday Monday", "Labour weekend": which one is not known here."""
LEFT_OVER = frozenset({"remaining", "left", "leaving", "survived", "ph"})
DATE_LEADS = frozenset({"on", "since", "from", "around", "in", "by", "at", "over"})


HOUR = re.compile(
    r"\d{1,2}[:.]\d\d(?!\d)\s?(?:am|pm|h|hrs|uhr)?(?![\w])|\d{1,2}\s?(?:am|pm)\b", re.IGNORECASE
)


def is_fraction(typed: Typed, i: int) -> bool:
    """ "1/2 bag of beans": no day in February."""
    if i + 2 >= typed.count or typed.gaps[i + 1] != "/" or typed.words[i] not in ("1", "2", "3"):
        return False
    follows = typed.words[i + 2]
    is_half = typed.words[i + 1] in ("2", "3", "4") and not typed.breaks[i + 2]
    is_unit = follows in nouns.UNITS and follows != "in"
    return is_half and (follows in nouns.HOLDERS or is_unit or follows in ("dozen", "bunch"))


def take_date(walk: Walk) -> bool:
    """A date of the clause: behind "on", behind a comma, or closing the clause."""
    i = walk.i
    word = walk.word(i)
    if word in ("until", "till"):
        return _until(walk)
    if word in ("tonight", "today") and i and walk.typed.words[i - 1] in ("of", "for"):
        return False  # "for the soup of tonight"
    if word == "sam" and i + 1 < walk.typed.count and not walk.typed.gaps[i + 1].strip():
        return False  # "Sam weeded Arch": somebody, where "Sam: …" is a Saturday
    lead = i
    if word in DATE_LEADS or word in ("the", "this", "last", "late", "early", "mid"):
        if word == "since" and (walk.word(i - 1) == "first" or walk.verb.name in AT_ONCE):
            return False  # "first since November": when the last was
        lead = i + 1 if word in DATE_LEADS else i
        if lead < walk.end and walk.typed.words[lead] == "the" and lead > i:
            lead += 1
    if lead < walk.end and not _may_be_day(walk, lead):
        return False
    if lead >= walk.end or (walk.typed.is_number(i) and _hour(walk)):
        return walk.i > i
    span = _span_of_days(walk, lead) if word == "from" or walk.typed.is_number(lead) else None
    if span is not None:
        return True
    if take_seed_year(walk, i, lead) or _year(walk, i, lead):
        return True
    if (share := SHARE.match(walk.typed.plain, walk.typed.starts[lead])) and (
        walk.verb.name == "tried seed" or (walk.verb.name in ("came up", "lost") and int(share[1][:9]) > 12)
    ):
        return False
    is_unit = nouns.UNITS.get(walk.word(lead + 2)) is not None and walk.word(lead + 2) != "in"
    if lead == i and walk.typed.gaps[lead + 1] == "/" and is_unit:
        return False  # "1/2 kg"
    if "=" in walk.typed.gaps[lead] or (walk.word(lead - 1) in LEFT_OVER and walk.typed.is_number(lead)):
        return False  # "pH = 6.1", "remaining 4/5"
    if is_fraction(walk.typed, lead):
        return False
    plain, start = walk.typed.plain[: walk.typed.ends[walk.end - 1]], walk.typed.starts[lead]
    found = scan_day(plain, start)
    if found is None and lead > i:
        found = _behind_lead(word, plain, start)
    if found is None and lead == i:
        is_list = walk.verb.name == "collected" and word in SHORT_DAYS  # "eggs 4 mon 5 tue"
        found = _small_weekday(plain, start) if is_list else led_in_figures(walk, i)
    if found is None:
        return False
    end = word_at(walk, found[1], lead)
    if walk.word(end) == "weekend" and not walk.typed.breaks[end] and not found[0].is_bare:
        found = replace(found[0], is_weekend=True), found[1]  # "the 4th of July weekend"
        end += 1
    if not _fits(walk, found[0], i, lead, end):
        return False
    set_date(walk, found[0], i, end)
    return True


AT_ONCE = frozenset(
    {"picked", "collected", "pruned", "weeded", "watered", "fed", "mulched", "thinned", "cleared", "took cuttings"}
)  # fmt: skip
"""What does not go on since a day: "its first trim since March"."""
BEHIND_DAY = frozenset(
    {*MONTHS, *SHORT_MONTHS, *WEEKDAYS, "st", "nd", "rd", "th", "of", "day", "week", "month", "year", "to", "until", "till", "and", "bi",
     "bis", "er", "de", "the", "h", "hr", "hrs", "am", "pm", "uhr", "night", "ago", "au", "al", "days", "weeks", "wk", "wks", "fortnight", "fortnights", "months"}
)  # fmt: skip


def _behind_lead(word: str, plain: str, start: int) -> tuple[DateWords, int] | None:
    """ "on the 4th", "in Feb", "on sat": days because of the word before them."""
    if word == "on":
        return day_of_month(plain, start) or _small_weekday(plain, start)
    return short_month(plain, start) if word in ("in", "since") else None


def _small_weekday(plain: str, start: int) -> tuple[DateWords, int] | None:
    m = SMALL_DAY.match(plain, start)
    return m and (DateWords(written=m[0], weekday=SHORT_DAYS[m[0].lower()]), m.end())


SMALL_DAY = re.compile(rf"(?:{'|'.join(SHORT_DAYS)})(?!\w)", re.IGNORECASE)
DAY_STARTS = FIRST_WORDS | PHRASE_STARTS | frozenset(map(fold_word, FIRST_WORDS | PHRASE_STARTS))
LOOSE_STARTS = frozenset({"a", "the", "some", "few", "couple", "several", "about", "around", "roughly", "nearly", "one", "two", "three", "four", "five", "six", "at", "new", "good", "ash", "twenty", "thirty"})  # fmt: skip
"""Everyday words: they begin a day only where one of these stands close behind."""
DAY_SIGNS = frozenset({*MONTHS, *WEEKDAYS, *ENGLISH_SHORT, "day", "week", "wk", "weekend", "fortnight", "month", "ago", "back", "year", "night", "solstice", "equinox", "eve"})  # fmt: skip


def _may_be_day(walk: Walk, i: int) -> bool:
    """A quick look at a word: "240 g" is no day, "Long border" none either."""
    word = walk.typed.words[i]
    if not word.isdigit():
        if word == "half" and i + 1 >= walk.end:
            return False  # "gave away half"
        if word in LOOSE_STARTS and DAY_SIGNS.isdisjoint(walk.typed.words[i + 1 : i + 5]):
            return False
        return word in DAY_STARTS
    if len(word) >= 4 or walk.typed.gaps[i + 1].strip():
        return not _is_decimal(walk, i)
    follows = walk.typed.words[i + 1] if i + 1 < walk.typed.count else ""
    return follows in BEHIND_DAY or follows.isdigit() or not follows.isascii()


def _is_decimal(walk: Walk, i: int) -> bool:
    """Whether a number goes on behind a point and has a unit: "1.7 kg"."""
    words = walk.typed.words
    return (
        walk.typed.gaps[i + 1] == "."
        and words[i + 1 : i + 2] != []
        and words[i + 1].isdigit()
        and words[i + 2 : i + 3] != []
        and words[i + 2] in WEIGHED
        and not walk.typed.gaps[i + 2]
    )


WEIGHED = frozenset({"g", "kg", "oz", "lb", "ml"})


def day_closes(walk: Walk, i: int) -> bool:
    """Whether a day stands at word `i` with nothing of its own behind it: the "Tues" of "peas Tues in Arch"."""
    if walk.typed.words[i] not in DAY_STARTS or not _may_be_day(walk, i):
        return False
    found = scan_day(walk.typed.plain, walk.typed.starts[i])
    if found is None or found[0].is_bare:
        return False
    end = word_at(walk, found[1], i)
    behind = walk.word(end)
    return end >= walk.end or walk.typed.breaks[end] or behind in PLACE_OPENERS or behind in REMARK_OPENERS


def _until(walk: Walk) -> bool:
    """ "hens on bed 4 until 3 July"."""
    i = walk.i
    found = scan_date(walk.typed.plain, walk.typed.starts[i + 1]) if i + 1 < walk.end else None
    if found is None or walk.verb.name not in ("penned", "covered", "netted"):
        return False
    words = found[0]
    if words.year is None and walk.base is not None and words.month is not None and words.day is not None:
        begun = walk.base.first
        is_next_year = (words.month, words.day) < (begun.month, begun.day)
        words = replace(words, year=begun.year + is_next_year)
    reading = resolve_date(words, order=walk.order, base=walk.base, is_southern=walk.is_southern)
    walk.draft.until = reading.when
    if reading.fault:
        walk.ask(Level.ERROR, reading.fault, i)
    end = word_at(walk, found[1], i)
    walk.span("until", i, end)
    walk.i = end
    return True


def _hour(walk: Walk) -> bool:
    """A bare hour is a remark: "12:30 picked peas"."""
    m = HOUR.match(walk.typed.plain, walk.typed.starts[walk.i])
    if m is None or ("." in m[0] and not m[0][-1].isalpha()):
        return False
    end = word_at(walk, m.end(), walk.i)
    walk.draft.leave(walk.i, end, walk.after_comma or walk.is_topic)
    walk.i = end
    return True


def _fits(walk: Walk, words: DateWords, i: int, lead: int, end: int) -> bool:
    """Whether a date may stand here, and is not half of a name ("spring onion") or an amount."""
    if (words.weekday is not None or words.near == "weekend") and lead == i and not walk.typed.breaks[i]:
        before = walk.typed.words[i - 1]
        if before in WHOSE_WEEKEND or (words.near and words.written.lower() == "weekend"):
            return False
    named, _ = walk.typed.names(lead)
    if named and (named > end - lead or not (words.day or words.weekday is not None or words.feast)):
        return False
    last = end >= walk.end or walk.typed.breaks[end] or (walk.word(end) in CLAUSE_JOINS)
    if words.is_bare:
        is_led = lead > i or walk.typed.breaks[i] or words.third is not None
        goes_on = walk.word(end) in REMARK_OPENERS or _place_behind(walk, end)
        return is_led and (last or (lead > i and goes_on))
    return (
        lead > i
        or last
        or walk.typed.breaks[i]
        or walk.is_topic
        or walk.word(end) in PLACE_OPENERS
        or walk.word(end) in REMARK_OPENERS
        or words.year is not None
    )


def _place_behind(walk: Walk, end: int) -> bool:
    """ "at the beginning of May in Arch"."""
    return walk.word(end) in PLACE_OPENERS and walk.bed_at(walk.past_articles(end + 1))[1] is not None


def set_date(walk: Walk, words: DateWords, i: int, end: int) -> None:
    """Keep the day of a date, or tell what is wrong with it."""
    reading = resolve_date(words, order=walk.order, base=walk.base, is_southern=walk.is_southern)
    if reading.fault:
        walk.ask(Level.ERROR, reading.fault, i)
    if reading.other is not None and reading.when is not None:
        walk.ask(Level.QUESTION, two_days(words.written, reading.when, reading.other), i)
    if walk.draft.when is None:
        walk.draft.when = reading.when
    elif reading.when is not None and reading.when.first != walk.draft.when.first:
        message = (
            f'"{walk.draft.when.written}" and "{words.written}" are two days in one line; read as the first.'
        )
        walk.ask(Level.QUESTION, f"{message} Write a line for each.", i)
    walk.span("date", i, end)
    walk.i = end


def two_days(written: str, first: When, other: When) -> str:
    """The question an ambiguous date asks."""
    return (
        f'"{written}" may be {written_day(first.first)} or {written_day(other.first)}; read as the first. '
        "Set `dates` in garden.yaml."
    )


def _year(walk: Walk, i: int, lead: int) -> bool:
    """A year alone: "in 2015", "(2023)", and for what was grew."""
    if not YEAR_ALONE.fullmatch(walk.word(lead)) or walk.typed.names(lead)[0]:
        return False
    if walk.has("larder") and walk.verb.name != "bought":
        if _crop_soon(walk, lead + 1):
            walk.draft.crop_year = int(walk.word(lead))
            walk.span("crop year", lead, lead + 1)
            walk.i = lead + 1
            return True
        if walk.word(i) == "from" or "(" in walk.typed.gaps[lead] or walk.word(lead + 1) in LABELLED:
            walk.draft.crop_year = int(walk.word(lead))
            walk.span("crop year", lead, lead + 1)
            walk.i = lead + 1
            return True
        return False
    if walk.word(i) == "from" and walk.verb.name != "grew":
        return False  # "hen litter from 2022": the year of the litter
    last = lead + 1 >= walk.end or walk.typed.breaks[lead + 1]
    if not last or (walk.typed.starts[lead] and walk.typed.plain[walk.typed.starts[lead] - 1] in "-./"):
        return False
    is_behind_crop = walk.draft.has_crop and not walk.typed.is_number(lead - 1)
    if not (lead > i or walk.typed.breaks[i] or walk.verb.name == "grew" or is_behind_crop):
        return False
    reading = read_date(walk.word(lead), order=walk.order, base=walk.base, is_southern=walk.is_southern)
    if reading is None or reading.when is None:
        return False
    walk.draft.when = walk.draft.when or reading.when
    walk.span("date", i, lead + 1)
    walk.i = lead + 1
    return True


LABELLED = frozenset({"label", "labelled", "vintage", "crop", "harvest", "batch", "stock", "one", "lot"})


def _crop_soon(walk: Walk, i: int) -> bool:
    """ "2023 pickled beetroot": the year is that of the crop."""
    while i < walk.end and not walk.typed.breaks[i]:
        if walk.typed.names(i)[0] or walk.typed.words[i] in nouns.PRODUCTS:
            return True
        if not walk.typed.words[i].endswith("ed") and walk.typed.words[i] not in ("frozen", "dry", "runner"):
            return False
        i += 1
    return False


SHARE = re.compile(r"\d+ ?/ ?(\d+)(?![\d/])")


SPAN = re.compile(r"(\d{1,2})(?:st|nd|rd|th)?\s?(?:to|until|till|-|and)\s?", re.IGNORECASE)


def _span_of_days(walk: Walk, lead: int) -> bool | None:
    """ "from 3 to 20 May", "3-20 May", "from 3 May to 20 May"."""
    plain, start = walk.typed.plain, walk.typed.starts[lead]
    first = scan_date(plain, start)
    m = SPAN.match(plain, start)
    apart = plain if m is None else " " * m.end() + plain[m.end() :]  # the dash is no part of what follows
    if m is not None and (second := scan_date(apart, m.end())) is not None and second[0].day is not None:
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
    _set_span(walk, first_words, words, word_at(walk, end, lead))
    return True


LASTING = frozenset({"penned", "covered", "netted", "let out", "watered", "grew", "uncovered"})
"""What is done from one day to another; anything else was done on some day between."""


def _set_span(walk: Walk, first: DateWords, last: DateWords, end: int) -> None:
    i = walk.i
    begun = resolve_date(first, order=walk.order, base=walk.base, is_southern=walk.is_southern)
    if begun.when is not None and last.year is None and last.month is not None and last.day is not None:
        day = begun.when.first  # the end of a span is the next such day, also in a note written before it
        last = replace(last, year=day.year + ((last.month, last.day) < (day.month, day.day)))
    until = resolve_date(last, order=walk.order, base=walk.base, is_southern=walk.is_southern)
    if until.fault or begun.fault:
        walk.ask(Level.ERROR, str(begun.fault or until.fault), i)
    if walk.verb.name in LASTING or begun.when is None or until.when is None:
        walk.draft.when, walk.draft.until = walk.draft.when or begun.when, until.when
    else:
        written = f"{begun.when.written} to {until.when.written}"
        whole = When(first=begun.when.first, last=until.when.last, written=written)
        walk.draft.when = walk.draft.when or whole
    walk.span("date", i, end)
    walk.i = end


def word_at(walk: Walk, end: int, i: int) -> int:
    while i < walk.typed.count and walk.typed.starts[i] < end:
        i += 1
    return i
