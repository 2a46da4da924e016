"""The words of the calendar in the languages gardeners write: months, weekdays, seasons, nearness.

Tables only, read by `dates`. Words are folded: lower case, without accents. Names as everyday
dictionaries of each language give them (common practice, no source).
"""

from __future__ import annotations

import unicodedata
from functools import lru_cache


@lru_cache(maxsize=20_000)
def plain(word: str) -> str:
    """A word in lower case without accents; its ending stays as it is."""
    letters = unicodedata.normalize("NFKD", word.casefold())
    return "".join(c for c in letters if not unicodedata.combining(c) and c not in "'’.")


def _numbered(rows: str, first: int) -> dict[str, int]:
    """Words to numbers, one row for each number."""
    lines = rows.strip().splitlines()
    return {word: number for number, line in enumerate(lines, first) for word in line.split()}


MONTHS = _numbered(
    """
    january janvier januar janner enero gennaio januari
    february fevrier februar febrero febbraio februari feber
    march mars marz marzo maart maerz
    april avril abril aprile
    may mai mayo maggio mei
    june juin juni junio giugno
    july juillet juli julio luglio
    august aout agosto augustus
    september septembre septiembre setiembre settembre
    october octobre oktober octubre ottobre
    november novembre noviembre
    december decembre dezember diciembre dicembre
    """,
    1,
)
"""Whole names: English, French, German, Spanish, Italian, Dutch."""

SHORT_MONTHS = _numbered(
    """
    jan janv jan jann ene gen
    feb fevr fev febr
    mar mrz mrt maer
    apr avr abr
    may mag
    jun giu
    jul juil lug jly
    aug ago
    sep sept set sett
    oct okt ott
    nov
    dec dez dic
    """,
    1,
)
"""Short names; alone they are no date."""

WEEKDAYS = _numbered(
    """
    monday lundi montag lunes lunedi maandag
    tuesday mardi dienstag martes martedi dinsdag
    wednesday mercredi mittwoch miercoles mercoledi woensdag
    thursday jeudi donnerstag jueves giovedi donderdag
    friday vendredi freitag viernes venerdi vrijdag
    saturday samedi samstag sonnabend sabado sabato zaterdag
    sunday dimanche sonntag domingo domenica zondag
    """,
    0,
)

SHORT_WEEKDAYS = _numbered(
    """
    mon lun mo ma
    tue tues mar di
    wed weds mer mie mi wo
    thu thur thurs jeu jue gio do
    fri ven vie fr vr
    sat sam sab sa za
    sun dim dom so zo
    """,
    0,
)
"""Short names; alone they count only at the start of a line, before a colon or comma."""

SEASONS = {
    "spring": "spring", "springtime": "spring", "printemps": "spring", "fruhling": "spring",
    "fruhjahr": "spring", "primavera": "spring", "lente": "spring", "voorjaar": "spring",
    "summer": "summer", "summertime": "summer", "ete": "summer", "sommer": "summer",
    "verano": "summer", "estate": "summer", "zomer": "summer",
    "autumn": "autumn", "fall": "autumn", "automne": "autumn", "herbst": "autumn",
    "otono": "autumn", "autunno": "autumn", "herfst": "autumn", "najaar": "autumn",
    "winter": "winter", "wintertime": "winter", "hiver": "winter", "invierno": "winter",
    "inverno": "winter",
}  # fmt: skip

NEEDS_YEAR = frozenset({"fall", "ete", "estate", "lente", "set", "ago"})
"""Words that mean something else as well: a date only with a year."""

THIRDS = {
    "early": "early", "beginning": "early", "start": "early", "debut": "early", "anfang": "early",
    "principios": "early", "inizio": "early", "begin": "early", "vroeg": "early", "fruhe": "early",
    "mid": "mid", "middle": "mid", "mi": "mid", "mitte": "mid", "mediados": "mid", "meta": "mid",
    "half": "mid", "midden": "mid",
    "late": "late", "end": "late", "fin": "late", "ende": "late", "finales": "late", "fines": "late",
    "fine": "late", "eind": "late", "spate": "late",
}  # fmt: skip
"""Days 1–10, 11–20, 21 to the end of a month; the first, second and third month of a season."""

DAYS_AGO = {
    "today": 0, "tonight": 0, "tonite": 0, "aujourdhui": 0, "heute": 0, "hoy": 0, "oggi": 0, "vandaag": 0,
    "this morning": 0, "this arvo": 0, "this aft": 0, "this avo": 0, "this afternoon": 0, "this evening": 0,
    "yesterday": 1, "yest": 1, "yesty": 1, "yestrday": 1, "ystrday": 1, "yestday": 1, "yesturday": 1, "yesterdy": 1, "yesteday": 1, "yestarday": 1, "yesterdays": 1, "ysday": 1,
    "yesterday morning": 1, "yesterday afternoon": 1, "yesterday arvo": 1, "last evening": 1, "yday": 1, "last night": 1, "last nite": 1, "yesterday evening": 1, "gestern": 1, "ayer": 1, "ieri": 1,
    "gisteren": 1, "hier": 1,
    "the day before yesterday": 2, "day before yesterday": 2, "night before last": 2, "the night before last": 2, "vorgestern": 2, "avant hier": 2, "anteayer": 2, "eergisteren": 2,
}  # fmt: skip

SMALL_NUMBERS = {
    "a": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10,
}  # fmt: skip
"""Number words before "days ago" and "weeks ago"."""

ENGLISH_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
