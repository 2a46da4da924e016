"""The closed list of lines that count without a verb: weather, eggs, hens on and off, troubles seen.

States behind a crop ("peas up", "X ripe") stand in the verb table; the rest is here. Whatever is not in
this list and has no verb is kept as text.
"""

from __future__ import annotations

import re

from leafmould.notes.clause import Clause
from leafmould.notes.figures import to_number
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import NEGATIONS
from leafmould.values.names import Kind
from leafmould.values.quantities import Amount

NUMBER = r"(?P<number>-?\d+(?:[.,]\d+)?)"
UNIT = r"\s?°?\s?(?P<unit>c|f|celsius|fahrenheit|degrees|deg|below)?\b\.?"
WHEN = r"(?:\s*(?:all day|all night|all week|all morning|all afternoon|most of the day|again|at last|overnight|last night|this morning|today|at dawn|outside|tonight|yesterday|early morning|in the night|at night))*"
NUMBER_2, UNIT_2 = NUMBER.replace("number", "number2"), UNIT.replace("unit", "unit2")
KIND = r"(?:(?:first|last|late|early|light|hard|heavy|ground|air|slight|sharp|killing|another|a|an|the|of|some|bit of|touch of|severe|big|huge)\s)*"
COLD = re.compile(
    rf"{KIND}(?P<what>frost|freeze|frosty)(?:ed)?(?:\s(?:of|to|down to|at))?[\s,:(]*(?:{NUMBER}{UNIT})?\)?{WHEN}(?:[,;\s]+{NUMBER_2}{UNIT_2})?{WHEN}\s*[.!]*",
    re.IGNORECASE,
)
RAIN = re.compile(
    rf"{KIND}(?P<what>rain(?:fall|ed)?|snow(?:fall|ed)?|hail(?:ed|storm)?|rain gauge)[\s,:]*(?:(?P<number>\d+(?:[.,/]\d+)?)\s?(?P<unit>mm|cm|in|inch|inches|\"|l)?)?{WHEN}\s*[.!]*",
    re.IGNORECASE,
)
RAIN_AFTER = re.compile(
    rf"(?P<number>\d+(?:[.,/]\d+)?)\s?(?P<unit>mm|cm|in|inch|inches|\")\s?(?:of\s|in the\s)?(?P<what>rain|snow|hail)(?:fall)?(?:\sgauge)?(?:\sin the (?:rain\s)?gauge)?{WHEN}\s*[.!]*",
    re.IGNORECASE,
)
DEGREES = re.compile(
    rf"(?P<what>min(?:imum)?|max(?:imum)?|low|high|temp(?:erature)?|lowest|highest)?(?:\sof)?[\s:]*{NUMBER}\s?°?\s?(?P<unit>c|f|celsius|degrees)?\b(?P<night>{WHEN})\s*[.!]*",
    re.IGNORECASE,
)
MIN_MAX = re.compile(
    r"(?:min|low)[\s:]*(-?\d+(?:[.,]\d+)?)\s?°?\s?[cf]?[\s,/;]+(?:max|high)[\s:]*(-?\d+(?:[.,]\d+)?)\s?°?\s?(?P<unit>[cf])?\s*",
    re.IGNORECASE,
)


class Weather:
    """A line that is weather and nothing else."""

    __slots__ = ("end", "readings", "subject")

    def __init__(self, subject: str, readings: tuple[tuple[str, Amount], ...], end: int) -> None:
        self.subject, self.readings, self.end = subject, readings, end


def read_weather(typed: Typed, units: str, start: int) -> Weather | None:
    """Weather from character `start` to the end of its clause."""
    first = typed.words[0] if typed.count else ""
    if not (first.isdigit() or first in WEATHER_FIRST):
        return None
    plain = typed.plain[start:]
    if (m := MIN_MAX.match(plain)) and _ends(plain, m.end()):
        unit = _degrees(m["unit"], units)
        return Weather(
            "temperature", (("low", _amount(m[1], unit)), ("high", _amount(m[2], unit))), start + m.end()
        )
    if (m := COLD.match(plain)) and _ends(plain, m.end()):
        return Weather("frost", _frost(m, units), start + m.end())
    for form in (RAIN, RAIN_AFTER):
        if (m := form.match(plain)) and _ends(plain, m.end()):
            what = next(w for w in ("rain", "snow", "hail") if w in m["what"].lower())
            unit = {"inch": "in", "inches": "in", '"': "in", None: "mm" if units == "metric" else "in"}.get(
                m["unit"], m["unit"] or "mm"
            )
            readings = ((what, _amount(m["number"], unit)),) if m["number"] else ()
            return Weather(what, readings, start + m.end())
    if (
        (m := DEGREES.match(plain))
        and _ends(plain, m.end())
        and (m["what"] or m["unit"] or "°" in m[0] or (m["number"][0] == "-" and m["night"]))
    ):
        what = (m["what"] or "temperature").lower()
        name = (
            "low"
            if what.startswith(("min", "low"))
            else "high"
            if what.startswith(("max", "high"))
            else "temperature"
        )
        return Weather(
            "temperature", ((name, _amount(m["number"], _degrees(m["unit"], units))),), start + m.end()
        )
    return None


WEATHER_FIRST = frozenset(
    [
        "frost",
        "frosty",
        "freeze",
        "first",
        "last",
        "late",
        "early",
        "light",
        "hard",
        "heavy",
        "ground",
        "air",
        "slight",
        "sharp",
        "killing",
        "another",
        "a",
        "some",
        "bit",
        "touch",
        "severe",
        "rain",
        "rainfall",
        "rained",
        "snow",
        "snowed",
        "snowfall",
        "hail",
        "hailed",
        "hailstorm",
        "min",
        "minimum",
        "max",
        "maximum",
        "low",
        "high",
        "temp",
        "temperature",
        "lowest",
        "highest",
        "big",
        "huge",
    ]
)


MORE = re.compile(r"\s(?:in|at|on|by|under|since|over)\s", re.IGNORECASE)
"""Where or since when: more about the weather."""


def _ends(plain: str, end: int) -> bool:
    return (
        MORE.match(plain, end - plain[:end].endswith(" ")) is not None
        or end >= len(plain.rstrip())
        or plain[end] in ",;"
        or plain[end - 1] in ",;.!"
    )


def _frost(m: re.Match[str], units: str) -> tuple[tuple[str, Amount], ...]:
    number, unit = m["number"] or m["number2"], m["unit"] or m["unit2"]
    if not number:
        return ()
    if unit and unit.lower() == "below" and not number.startswith("-"):
        number = "-" + number
    return (("temperature", _amount(number, _degrees(unit, units))),)


def _degrees(unit: str | None, units: str) -> str:
    letter = (unit or " ")[0].lower()
    return "°C" if letter == "c" else "°F" if letter == "f" else "°C" if units == "metric" else "°F"


def _amount(number: str, unit: str) -> Amount:
    value = to_number(number.lstrip("-"), "point" if "." in number else "comma")[0] * (
        -1 if number.startswith("-") else 1
    )
    return Amount(written=f"{number.replace('-', '−')} {unit}", low=value, high=value, unit=unit)


def verbless_clause(typed: Typed) -> Clause | None:
    """Eggs, hens and troubles: a clause as if its verb had been written."""
    if MARKS.isdisjoint(typed.words[:8]) or any(w in NEGATIONS for w in typed.words[:3]):
        return None
    return _acidity(typed) or _hens(typed) or _eggs(typed) or _cover(typed) or _troubles(typed)


def _clause(typed: Typed, verb: str, start: int, end: int, subject: str | None = None) -> Clause:
    return Clause(0, start, end, typed.count, tuple(typed.words[start:end]), verb, subject)


def _acidity(typed: Typed) -> Clause | None:
    """ "pH 6.2 in Arch"."""
    if typed.words[0] == "ph" and any(w.isdigit() for w in typed.words):
        return _clause(typed, "tested soil", 0, 0)
    return None


def _hens(typed: Typed) -> Clause | None:
    """ "hens off Top bed", "4 hens on Arch"."""
    i = 0
    while i < min(3, typed.count) and typed.words[i] not in nouns.HENS:
        if not (
            typed.words[i].isdigit()
            or typed.words[i] in ("the", "all", "my", "our")
            or typed.words[i] in nouns.NUMBERS
        ):
            return None
        i += 1
    if i >= typed.count - 1 or typed.words[i] not in nouns.HENS or typed.names(i)[0] > 1:
        return None
    j = i + 1
    while j < typed.count and typed.words[j] in (
        "are",
        "were",
        "now",
        "back",
        "moved",
        "put",
        "was",
        "is",
        "went",
        "all",
        "penned",
        "let",
    ):
        j += 1
    if j >= typed.count:
        return None
    if typed.words[j] in ("off", "out"):
        return _clause(typed, "let out", j, j + 1, "hens")
    if typed.words[j] in ("on", "onto", "in", "into", "to", "at") and any(
        typed.kind(k, Kind.BED)[0] for k in range(j + 1, min(j + 3, typed.count))
    ):
        return _clause(typed, "penned", j, j, "hens")
    return None


def _eggs(typed: Typed) -> Clause | None:
    last = next((i for i in range(min(7, typed.stops[0])) if typed.words[i] == "egg"), 0)
    if (
        last > 1
        and typed.words[0].isdigit()
        and all(w.isdigit() or w in nouns.NUMBERS or w in EGG_WORDS for w in typed.words[:last])
    ):
        return _clause(typed, "collected", last + 1, last + 1, "eggs")
    for i in range(min(3, typed.count)):
        if (
            typed.words[i] == "egg"
            and i
            and (
                typed.words[i - 1].isdigit()
                or typed.words[i - 1] in nouns.NUMBERS
                or typed.words[i - 1] == "dozen"
            )
        ):
            return _clause(typed, "collected", i + 1, i + 1, "eggs")
        if i == 0 and typed.words[0] == "egg" and typed.count > 1 and typed.is_number(1):
            return _clause(typed, "collected", 0, 1, "eggs")
    return None


EGG_WORDS = frozenset(
    {"and", "half", "dozen", "more", "big", "small", "brown", "white", "duck", "hen", "quail"}
)


def _troubles(typed: Typed) -> Clause | None:
    """ "aphids on broad beans", "blight in Hoop bed", "carrot fly in Top bed", "blackfly!"."""
    last, i = -1, 0
    while i < min(6, typed.stops[0]):
        word, size = typed.words[i], typed.names(i)[0]
        if word == "cabbage" and typed.words[i + 1 : i + 2] == ["white"]:
            last, i = i + 1, i + 2
            continue
        if (word in nouns.TROUBLES and size <= 1) or (word == "damage" and last >= 0):
            last, i = i, i + 1
        elif (
            size
            and typed.words[i + size : i + size + 1]
            and typed.words[i + size] in nouns.TROUBLES
            and last < 0
        ):
            i += size
        elif word in TROUBLE_PLACES and last >= 0:
            if word not in STANDS_ALONE and not any(typed.names(k)[0] for k in range(i, typed.count)):
                return None
            return _clause(typed, "saw", last + 1, last + 1, typed.written(0, last + 1))
        elif size or (last < 0 and i > 3):
            return None
        else:
            i += 1
    if last >= 0 and last + 1 == typed.stops[0] and last < 3:
        return _clause(typed, "saw", last + 1, last + 1, typed.written(0, last + 1))
    return None


TROUBLE_PLACES = frozenset(
    {"on", "in", "at", "all", "over", "everywhere", "round", "around", "under", "again", "about", "back"}
)
STANDS_ALONE = frozenset({"everywhere", "again", "about", "back", "all"})


def _cover(typed: Typed) -> Clause | None:
    """ "fleece on carrots", "nets off Arch", "manure on Top bed"."""
    i = 0
    while i < min(3, typed.count - 2) and typed.words[i] not in STUFF_VERBS and not typed.names(i)[0]:
        i += 1
    verb = STUFF_VERBS.get(typed.words[i])
    if verb is None or i + 1 >= typed.count or typed.names(i)[0] > 1 or _is_bed(typed, i):
        return None
    while (
        i + 2 < typed.count
        and (typed.words[i + 1] in STUFF_VERBS or typed.words[i + 1] in ("bone", "and"))
        and not typed.names(i + 1)[0]
    ):
        i += 1
    j = i + 1 + (typed.words[i + 1] in ("back", "put", "now", "taken", "is", "came"))
    if j >= typed.count or typed.words[j] not in ("on", "over", "off", "onto", "round", "around", "under"):
        return None
    if j + 1 < typed.count and not any(typed.names(k)[0] for k in range(j + 1, min(j + 6, typed.count))):
        return None
    if typed.words[j] == "off":
        verb = "uncovered"
    elif "slug" in typed.words[:i]:
        verb = "treated"
    return _clause(typed, verb, 0, j, typed.written(0, i + 1))


def _is_bed(typed: Typed, i: int) -> bool:
    return bool(typed.kind(i, Kind.BED)[0])


STUFF_VERBS = {
    **dict.fromkeys(nouns.FEEDS | nouns.PELLETS, "fed"), **dict.fromkeys(nouns.MULCHES - {"leaf"}, "mulched"),
    **dict.fromkeys(nouns.COVERS - nouns.MULCHES, "covered"), **dict.fromkeys(nouns.NETS, "netted"),
    "band": "treated", **dict.fromkeys(nouns.MANURES, "manured"), **dict.fromkeys(nouns.LIMES, "limed"),
}  # fmt: skip
"""What stands on or round a crop or a bed says what was done."""


MARKS = frozenset({"ph", "egg", "cabbage", "damage", *nouns.HENS, *STUFF_VERBS, *nouns.TROUBLES})
"""One of these stands near the beginning of every line that counts without a verb."""


def with_verbless(typed: Typed, found: Clause, clauses: list[Clause]) -> list[Clause]:
    """ "aphids on beans, sprayed them": the verbless form, then the verbs behind the comma."""
    stop = typed.stops[0]
    if not clauses:
        return [found]
    if clauses[0].verb_start < stop:
        return clauses
    found.end = clauses[0].start = max(stop, found.verb_end)
    return [found, *clauses]
