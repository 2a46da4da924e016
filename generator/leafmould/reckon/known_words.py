"""The words published figures stand in: labels, units of the garden, ranges over several sources."""

from __future__ import annotations

from collections.abc import Sequence

from leafmould.facts.published import Fact
from leafmould.values.wording import counted, number_words

COMES_UP = "comes up at"

LABELS = {
    "least soil warmth": "Soil to sow in, at least",
    "best soil warmth": "Soil to sow in, best",
    "most soil warmth": "Soil to sow in, at most",
    COMES_UP: "Comes up in",
    "raised indoors": "Raised indoors for",
    "put out from the last frost": "Sown or set out",
    "frost class": "In frost",
    "stands down to": "Stands down to",
    "killed in growth at": "Killed in growth at",
    "killed unprotected at": "Killed without cover at",
    "grows best": "Grows best in months of",
    "grows between": "Grows in months of",
    "depth": "Sown deep",
    "apart in the row": "Apart in the row",
    "between rows": "Between rows",
    "seed for 10 m": "Seed for 10 m of row",
    "seeds in a gram": "Seeds in a gram",
    "seed keeps": "Seed keeps",
    "least that must come up": "Of seed for sale must come up",
    "first harvest": "To the first harvest",
    "warmth counts above": "Warmth counts above",
    "heat to the first harvest": "Heat to the first harvest",
    "from flower to picking": "From flower to picking",
    "from pollination to picking": "From pollination to picking",
    "ready at": "Ready at",
    "picked every": "Picked every",
    "picked for": "Picked for",
    "picked here for": "Picked here for",
    "first crop": "Planted to first crop",
    "good crop": "Planted to good crop",
    "keeps": "In store keeps",
    "kept at": "Stored at",
    "kept in air of": "Stored in air of",
    "soil pH, best": "Soil pH, best",
    "soil pH, grows at": "Soil pH, grows at",
}
"""What a line is called, by its subject, in the order a page shows them."""

DEGREE_DAYS = "degree days"
WEEK = 7


def figure_words(fact: Fact, units: str) -> str:
    """One figure in words: "16–29 °C", "2–3 weeks before the last frost"; the note where no figure is given."""
    if fact.low is None or fact.high is None:
        return fact.note
    return _words(fact.low, fact.high, fact, units)


def range_words(facts: Sequence[Fact], units: str) -> str:
    """The whole range over several sources, one part for each unit they use."""
    if any(fact.low is None for fact in facts):
        return ", ".join(dict.fromkeys(fact.note for fact in facts))
    parts = []
    for unit in dict.fromkeys(fact.unit for fact in facts):
        same = [fact for fact in facts if fact.unit == unit]
        low = min(fact.low for fact in same if fact.low is not None)
        high = max(fact.high for fact in same if fact.high is not None)
        parts.append(_words(low, high, same[0], units))
    return ", or ".join(parts)


def distance_words(cm: float, units: str) -> str:
    """A distance in the garden's units: "15 cm", "6 in"."""
    return f"{_number(_inches(cm))} in" if units == "imperial" else f"{_number(cm)} cm"


def comes_up_words(facts: Sequence[Fact], units: str) -> str:
    """Days by warmth of the soil: "17 days at 10 °C, 6 at 20 °C; not at 0 °C"."""
    by_warmth = sorted((int(fact.subject.removeprefix(COMES_UP).split()[0]), fact) for fact in facts)
    up = [
        f"{fact.low:g}{' days' if not n else ''} at {_warmth(at, units)}"
        for n, (at, fact) in _numbered(by_warmth)
    ]
    never = [_warmth(at, units) for at, fact in by_warmth if not fact.low]
    return "; ".join(filter(None, (", ".join(up), f"not at {' or '.join(never)}" if never else "")))


def _numbered(by_warmth: Sequence[tuple[int, Fact]]) -> enumerate[tuple[int, Fact]]:
    return enumerate([(at, fact) for at, fact in by_warmth if fact.low])


def _words(low: float, high: float, fact: Fact, units: str) -> str:
    if fact.subject == "put out from the last frost":
        return from_frost_words(round(low), round(high))
    if units == "imperial" and fact.unit == "°C":
        return f"{_span(_fahrenheit(low), _fahrenheit(high))} °F"
    if units == "imperial" and fact.unit == DEGREE_DAYS:
        return f"{_span(round(low * 1.8, -1), round(high * 1.8, -1))} {DEGREE_DAYS}"
    if units == "imperial" and fact.unit == "cm":
        return f"{_span(_inches(low), _inches(high))} in"
    if fact.unit in ("days", "weeks", "months", "years"):
        one = fact.unit.removesuffix("s")
        return counted(int(high), one) if low == high == int(high) else f"{_span(low, high)} {fact.unit}"
    if fact.unit == "pH":
        return f"{low:g}" if low == high else f"{low:g}–{high:g}"
    if fact.unit == "seeds":
        return _span(low, high)
    return f"{_span(low, high)}{'' if fact.unit.startswith('%') else ' '}{fact.unit}"


def _span(low: float, high: float) -> str:
    """A range with an en dash; "to" where a minus sign would meet it."""
    if low == high:
        return _number(low)
    return f"{_number(low)} to {_number(high)}" if low < 0 or high < 0 else f"{_number(low)}–{_number(high)}"


def _number(value: float) -> str:
    """Whole from five up, else to a tenth: tables print no finer, only the turning of units does."""
    return number_words(round(value) if abs(value) >= 5 else round(value, 1)).replace("-", "−")


def _warmth(celsius: int, units: str) -> str:
    return f"{_number(_fahrenheit(celsius))} °F" if units == "imperial" else f"{celsius} °C"


def _fahrenheit(celsius: float) -> float:
    return round(celsius * 1.8 + 32)


def _inches(cm: float) -> float:
    """To a quarter inch below a foot, to an inch above, as planting tables print them."""
    inches = cm / 2.54
    return round(inches) if inches >= 12 else round(inches * 4) / 4


def from_frost_words(low: int, high: int, frost: str = "last frost") -> str:
    """Days after an average frost, negative before it, as a gardener says them."""
    if low == high:
        return f"{_time(low)} {_side(low)} the {frost}" if low else f"at the {frost}"
    if high <= 0:
        start = f"from {_time(low)} before the {frost}"
        return f"{start} until then" if high == 0 else f"{_between(-high, -low)} before the {frost}"
    if low >= 0:
        return (
            f"up to {_time(high)} after the {frost}"
            if low == 0
            else f"{_between(low, high)} after the {frost}"
        )
    return f"from {_time(low)} before to {_time(high)} after the {frost}"


def _side(days: int) -> str:
    return "before" if days < 0 else "after"


def _time(days: int) -> str:
    days = abs(days)
    return counted(days // WEEK, "week") if days % WEEK == 0 else counted(days, "day")


def _between(low: int, high: int) -> str:
    if low % WEEK == 0 and high % WEEK == 0:
        return f"{low // WEEK}–{counted(high // WEEK, 'week')}"
    return f"{low}–{counted(high, 'day')}"
