"""What the browser knows of beds and years: what stood where and when, which beds are one, which crops one family.

A part of the index (`find_index`). What is known by its year only stands in no note; here it can be found all the
same. Names are numbers: beds and crops by their place among those of their kind. Years are not written, for they follow each
other from the newest back; small letters say how many have nothing, and how many have the same as the one before.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from leafmould.facts.tables import families
from leafmould.garden.queries import kin
from leafmould.pages.a_to_z import Name
from leafmould.pages.find_numbers import Letters
from leafmould.pages.ledger import Ledger
from leafmould.values.family_words import TRADE_WORDS

FAMILY, LATIN, WHOLE = " family", "aceae", "="
"""What names of families end in is not written; one that ends otherwise stands whole behind a sign."""
LONGEST_RUN = 26
"""How many years one small letter can tell."""


def found_years(names: Sequence[Name], ledger: Ledger, letters: Letters) -> dict[str, object]:
    """Years of beds, other names of beds that became one another, and families.

    Args:
        names: all that are searched, in their order.
        letters: how numbers are written.
    """
    beds = {page: key for key, page in ledger.bed_pages.items()}
    keys = [beds[name.link.to] for name in names if name.kind == "bed"]
    crops = {name.link.to: place for place, name in enumerate(n for n in names if n.kind == "crop")}
    number = {key: crops[page] for key, page in ledger.crop_pages.items() if page in crops}
    newest = max((year for key in keys for year in _years(key, ledger)), default=ledger.this_year)
    return {
        "newest": ledger.year_name(newest),
        "stood": "\n".join("\t".join(_chapters(key, newest, number, ledger, letters)) for key in keys),
        "kin": {str(at): kin for at, key in enumerate(keys) if (kin := _kin(key, keys, ledger, letters))},
        "families": "\n".join(_families(number, ledger, letters)),
    }


def _years(bed: str, ledger: Ledger) -> Iterator[int]:
    return (year for chapter in ledger.bed_chapters[bed] for year in chapter.years)


def _chapters(
    bed: str, newest: int, number: Mapping[str, int], ledger: Ledger, letters: Letters
) -> Iterator[str]:
    """Each page of a bed's history: its address unless it is the bed's own, then what stood there year by year."""
    for chapter in ledger.bed_chapters[bed]:
        page = "" if chapter.address == ledger.bed_pages[bed] else chapter.address
        told = {newest - year: _crops(bed, year, number, ledger, letters) for year in chapter.years}
        yield " ".join([page, *years_written({place: some for place, some in told.items() if some})])


def years_written(stood: Mapping[int, str]) -> list[str]:
    """Years back from the newest, and what stood in each: how many have nothing, the crops, how many more have the same."""
    rows: list[tuple[int, str, int]] = []
    at = 0
    for place in sorted(stood):
        if rows and place == at and rows[-1][1] == stood[place]:
            nothing, crops, more = rows.pop()
            rows.append((nothing, crops, more + 1))
        else:
            rows.append((place - at, stood[place], 0))
        at = place + 1
    return [_small(nothing) + crops + _small(more) for nothing, crops, more in rows]


def _small(count: int) -> str:
    """A count in small letters: as many as it takes, the last of them the rest."""
    whole, rest = divmod(count, LONGEST_RUN)
    return "z" * whole + (chr(ord("a") + rest - 1) if rest else "")


def _crops(bed: str, year: int, number: Mapping[str, int], ledger: Ledger, letters: Letters) -> str:
    """What stood in a bed in a year; "" where nothing is known to have."""
    stood = (crop for planting in ledger.bed_year(bed, year).plantings for crop in planting.crops)
    return "".join(map(letters.of, dict.fromkeys(number[crop] for crop in stood if crop in number)))


def _kin(bed: str, keys: Sequence[str], ledger: Ledger, letters: Letters) -> str:
    """The beds it came from and those it became."""
    return letters.numbers(
        sorted(keys.index(key) for key in kin(ledger.garden, (bed,)) if key != bed and key in keys)
    )


def _families(number: Mapping[str, int], ledger: Ledger, letters: Letters) -> Iterator[str]:
    """Each family here: its name in the tables, how it is called, its crops, what it is called in the trade."""
    crops: defaultdict[str, list[int]] = defaultdict(list)
    for key, place in number.items():
        if family := ledger.garden.crops[key].family:
            crops[family].append(place)
    named = {fact.family: fact.name for fact in families().values()}
    for family in sorted(crops):
        trade = " ".join(word for word, other in TRADE_WORDS.items() if other == family)
        called = _short(named.get(family, family), FAMILY)
        row = [_short(family, LATIN), called, letters.numbers(sorted(crops[family])), trade]
        yield "\t".join(row).rstrip("\t")


def _short(name: str, ending: str) -> str:
    return name.removesuffix(ending) if name.endswith(ending) else WHOLE + name
