"""Feast days and turning points of the year: their names, and the days they fall on.

Read by `date_forms` and settled by `dates`. Only days that are the same wherever the name is used: fixed
days, days counted from Easter, and the solstices and equinoxes. Mother's Day, Labour Day, bank holidays and
the like differ from country to country and are none of these.
"""

from __future__ import annotations

from datetime import date, timedelta

from leafmould.values.half_years import northern_month

FIXED_ROWS = """
1 1 | new years day; new year day; new years
25 1 | burns night; burns day
26 1 | australia day
1 2 | st brigids day; saint brigids day; st brigid day; imbolc
2 2 | candlemas; candlemas day; groundhog day
6 2 | waitangi day
14 2 | valentines day; valentine day; valentines; st valentines day; saint valentines day
1 3 | st davids day; saint davids day
17 3 | st patricks day; saint patricks day; paddys day; st paddys day; st pats day; st patrick day; paddy day; patricks day
25 3 | lady day
23 4 | st georges day; saint georges day
25 4 | anzac day
1 5 | may day; mayday
19 6 | juneteenth
24 6 | st johns day; saint johns day; st john day; midsummer day; midsummers day; st johns
1 7 | canada day
4 7 | fourth of july; july fourth; independence day
14 7 | bastille day
15 7 | st swithins day; st swithuns day
1 8 | lammas; lammas day
29 9 | michaelmas; michaelmas day
31 10 | halloween; hallowe'en; all hallows eve
1 11 | all saints day
5 11 | bonfire night; guy fawkes night; guy fawkes; guy fawkes day
11 11 | armistice day; remembrance day; martinmas
30 11 | st andrews day; saint andrews day
24 12 | christmas eve; xmas eve
25 12 | christmas day; xmas day
26 12 | boxing day; st stephens day; saint stephens day
31 12 | new years eve; hogmanay
"""
"""day month | names. Days as everyday calendars give them (common knowledge, no source)."""

EASTER_ROWS = """
-21 | mothering sunday
-47 | shrove tuesday; pancake day
-46 | ash wednesday
-7 | palm sunday
-3 | maundy thursday
-2 | good friday
-1 | easter saturday; holy saturday; easter eve
0 | easter day; easter sunday
1 | easter monday
39 | ascension day
49 | whit sunday; whitsunday; pentecost
50 | whit monday
"""
"""days behind Easter Sunday | names."""

FIXED = {
    name.strip(): tuple(map(int, days.split()))
    for days, _, names in (row.partition("|") for row in FIXED_ROWS.strip().splitlines())
    for name in names.replace("'", "").split(";")
}
MOVABLE = {
    name.strip(): int(days)
    for days, _, names in (row.partition("|") for row in EASTER_ROWS.strip().splitlines())
    for name in names.split(";")
}
NTH_DAYS = {
    "remembrance sunday": (11, 6, 2), "melbourne cup": (11, 1, 1), "melbourne cup day": (11, 1, 1), "cup day": (11, 1, 1),
    "presidents day": (2, 0, 3), "memorial day": (5, 0, -1), "columbus day": (10, 0, 2),
}  # fmt: skip
"""Month, weekday (0 Monday), which one of the month; days one country alone keeps under the name."""
SPANS = {"easter": (-2, 1), "easter weekend": (-2, 1), "holy week": (-7, -1)}
CHRISTMAS = frozenset({"christmas", "xmas", "christmastime"})
TURNING = {
    "winter solstice": 12, "shortest day": 12, "summer solstice": 6, "longest day": 6,
    "spring equinox": 3, "vernal equinox": 3, "autumn equinox": 9, "autumnal equinox": 9,
}  # fmt: skip
"""The month they fall in north of the equator; in the south it is six months away."""
TURN_DAYS = {3: (19, 21), 6: (20, 22), 9: (21, 24), 12: (20, 23)}
"""The days they fall on from 1900 to 2100 somewhere on earth (from memory)."""

FEASTS = frozenset({*FIXED, *MOVABLE, *NTH_DAYS, *SPANS, *CHRISTMAS, *TURNING})
FEAST_STARTS = frozenset(name.split()[0] for name in FEASTS)
LONGEST_FEAST = max(len(name.split()) for name in FEASTS)


def easter(year: int) -> date:
    """Easter Sunday of the Gregorian calendar.

    Source: the anonymous algorithm of "Nature" (20 April 1876), as given by Jean Meeus, Astronomical
    Algorithms, chapter 8 (from memory; the tests compare it with published dates).
    """
    a, (b, c) = year % 19, divmod(year, 100)
    d, e = divmod(b, 4)
    g = (8 * b + 13) // 25
    h = (19 * a + b - d - g + 15) % 30
    i, k = divmod(c, 4)
    step = (32 + 2 * e + 2 * i - h - k) % 7
    m = (a + 11 * h + 22 * step) // 451
    month, day = divmod(h + step - 7 * m + 114, 31)
    return date(year, month, day + 1)


def feast_days(name: str, year: int, is_southern: bool) -> tuple[date, date]:
    """First and last day of a feast in that year."""
    if (fixed := FIXED.get(name)) is not None:
        day = date(year, fixed[1], fixed[0])
        return day, day
    if name in CHRISTMAS:
        return date(year, 12, 24), date(year, 12, 26)
    if (month := TURNING.get(name)) is not None:
        month = northern_month(month, is_southern=is_southern)
        first, last = TURN_DAYS[month]
        return date(year, month, first), date(year, month, last)
    if (nth := NTH_DAYS.get(name)) is not None:
        day = _nth_day(year, *nth)
        return day, day
    first, last = SPANS.get(name) or (MOVABLE[name], MOVABLE[name])
    sunday = easter(year)
    return sunday + timedelta(days=first), sunday + timedelta(days=last)


def _nth_day(year: int, month: int, weekday: int, which: int) -> date:
    """The so-many-th weekday of a month; the last for -1."""
    if which < 0:
        last = date(year + month // 12, month % 12 + 1, 1) - timedelta(days=1)
        return last - timedelta(days=(last.weekday() - weekday) % 7)
    first = date(year, month, 1)
    return first + timedelta(days=(weekday - first.weekday()) % 7 + 7 * (which - 1))
