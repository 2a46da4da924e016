"""Lines of weather: frost, rain, lows and highs, as they are written without a verb or with a small one.

Asked first of every line; what goes on behind a comma is read as a line of its own.
"""

from __future__ import annotations

import re

from leafmould.notes.figures import to_number
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.values.quantities import Amount


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


NUMBER = r"(?P<number>(?:-|minus\s)?\d+(?:[.,]\d+)?|minus\s(?:one|two|three|four|five|six|seven|eight|nine|ten|twelve))"
UNIT = r"\s?°?\s?(?P<unit>c|f|celsius|fahrenheit|degrees|deg|below)?\b\.?"
WHEN = r"(?:\s*(?:all day|all night|all week|all morning|all afternoon|most of the day|again|at last|overnight|last night|this morning|today|at dawn|outside|tonight|yesterday|early morning|in the night|at night))*"
NUMBER_2, UNIT_2 = NUMBER.replace("number", "number2"), UNIT.replace("unit", "unit2")
KIND = r"(?:(?:first|last|late|early|light|hard|heavy|ground|air|slight|sharp|killing|another|a|an|the|of|some|bit of|touch of|severe|big|huge)\s)*"
COLD = re.compile(
    rf"{KIND}(?P<what>frost|freeze|frosty)(?:ed)?(?:\s(?:of|to|down to|at))?[\s,:(!]*(?:{NUMBER}{UNIT})?\)?{WHEN}(?:[,;\s]+{NUMBER_2}{UNIT_2})?{WHEN}\s*[.!]*",
    re.IGNORECASE,
)
RAIN = re.compile(
    rf"{KIND}(?P<what>rain gauge|rain(?:fall|ed)?|snow(?:fall|ed)?|hail(?:ed|storm)?){WHEN}[\s,:]*(?:(?P<number>\d+(?:[.,/]\d+)?)\s?(?P<unit>mm|cm|in|inch|inches|\"|l)?)?{WHEN}\s*[.!]*",
    re.IGNORECASE,
)
RAIN_AFTER = re.compile(
    rf"(?P<number>\d+(?:[.,/]\d+)?|an?(?=\sinch)|half an(?=\sinch)|two(?=\sinch))\s?(?P<unit>mm|cm|in|inch|inches|\")\s?(?:of\s|in the\s)?(?P<what>rain|snow|hail)(?:fall)?(?:\sgauge)?(?:\sin the (?:rain\s)?gauge)?{WHEN}\s*[.!]*",
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


MAX_MIN = re.compile(
    r"(?:max|high)[\s:]*(-?\d+(?:[.,]\d+)?)\s?°?\s?[cf]?[\s,/;]+(?:min|low)[\s:]*(-?\d+(?:[.,]\d+)?)\s?°?\s?(?P<unit>[cf])?\s*",
    re.IGNORECASE,
)


class Weather:
    """A line that is weather and nothing else."""

    __slots__ = ("end", "is_turn", "readings", "subject")

    def __init__(
        self, subject: str, readings: tuple[tuple[str, Amount], ...], end: int, *, is_turn: bool = False
    ) -> None:
        self.subject, self.readings, self.end = subject, readings, end
        self.is_turn = is_turn  # the first frost of an autumn, the last of a spring


def read_weather(typed: Typed, units: str, start: int) -> Weather | None:
    """Weather from character `start` to the end of its clause."""
    first = typed.words[0] if typed.count else ""
    if not (first.isdigit() or first in WEATHER_FIRST):
        return None
    if first in WEATHER_LEADS and (m := LEAD.match(typed.plain, start)):
        start = m.end()
    plain = typed.plain[start:]
    if (m := MIN_MAX.match(plain)) and _ends(plain, m.end()):
        unit = _degrees(m["unit"], units)
        return Weather(
            "temperature", (("low", _amount(m[1], unit)), ("high", _amount(m[2], unit))), start + m.end()
        )
    if (m := MAX_MIN.match(plain)) and _ends(plain, m.end()):
        unit = _degrees(m["unit"], units)
        return Weather(
            "temperature", (("low", _amount(m[2], unit)), ("high", _amount(m[1], unit))), start + m.end()
        )
    if (m := COLD.match(plain)) and _ends(plain, m.end()):
        is_turn = plain[: m.end()].lower().startswith(("first frost", "last frost"))
        return Weather("frost", _frost(m, units), start + m.end(), is_turn=is_turn)
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
        and (m["what"] or m["unit"] or "°" in m[0] or (m["number"][0] in "-mM" and (m["night"] or start)))
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


WEATHER_LEADS = _words(
    "had got get we it woke down temperature temp there hot cold baking scorching freezing roasting fell dropped boiling went"
)
LEAD = re.compile(
    r"(?:(?:we|it|there|temp(?:erature)?)\s)?(?:just\s|only\s)?(?:had|got|was|hit|reached|recorded|measured|woke(?:\sup)?\sto|went|fell|dropped|froze|hot|cold|baking|scorching|freezing|roasting|boiling|down)?"
    r"(?:\sdown)?(?:\sto)?(?:\sa(?:nother)?(?=\s(?:hard|light|ground|sharp|bit|touch|slight|late|frost|low|high|max|min|heavy|proper)))?[\s,]+",
    re.IGNORECASE,
)

WEATHER_FIRST = WEATHER_LEADS | frozenset(
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
        "an",
        "half",
        "two",
        "minus",
    ]
)


MORE = re.compile(r"\s(?:of|in|at|on|by|under|since|over|so no)\s", re.IGNORECASE)
"""Where or since when: more about the weather."""


def _ends(plain: str, end: int) -> bool:
    return (
        MORE.match(plain, end - plain[:end].endswith(" ")) is not None
        or end >= len(plain.rstrip())
        or plain[end] in ",;"
        or plain[:end].rstrip()[-1:] in tuple(",;.!")
    )


def _frost(m: re.Match[str], units: str) -> tuple[tuple[str, Amount], ...]:
    number, unit = m["number"] or m["number2"], m["unit"] or m["unit2"]
    if not number:
        return ()
    if unit and unit.lower() == "below" and number[:1].isdigit():
        number = "-" + number
    return (("temperature", _amount(number, _degrees(unit, units))),)


def _degrees(unit: str | None, units: str) -> str:
    letter = (unit or " ")[0].lower()
    return "°C" if letter == "c" else "°F" if letter == "f" else "°C" if units == "metric" else "°F"


def _amount(number: str, unit: str) -> Amount:
    number = _in_digits(number)
    value = to_number(number.lstrip("-"), "point" if "." in number else "comma")[0] * (
        -1 if number.startswith("-") else 1
    )
    return Amount(written=f"{number.replace('-', '−')} {unit}", low=value, high=value, unit=unit)


def _in_digits(number: str) -> str:
    """ "minus four" as "-4"."""
    word = number.lower().removeprefix("minus").strip()
    sign = "-" if number.lower().startswith("minus") else ""
    return sign + {"half an": "0.5"}.get(word, str(nouns.NUMBERS.get(word, word)))
