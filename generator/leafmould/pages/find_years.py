"""What the browser knows of beds and years: what stood where and when, which beds are one, which crops one family.

A part of the index (`find_index`). What is known by its year only stands in no note; here it can be found all the
same. Names are numbers: beds and crops by their place among those of their kind.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from leafmould.facts.tables import families
from leafmould.garden.queries import kin
from leafmould.pages.a_to_z import Name
from leafmould.pages.find_numbers import letters_of, numbers
from leafmould.pages.ledger import Ledger
from leafmould.values.family_words import TRADE_WORDS


def found_years(names: Sequence[Name], ledger: Ledger) -> dict[str, object]:
    """Years of beds, other names of beds that became one another, and families.

    Args:
        names: all that are searched, in their order.
    """
    beds = {page: key for key, page in ledger.bed_pages.items()}
    keys = [beds[name.link.to] for name in names if name.kind == "bed"]
    crops = {name.link.to: place for place, name in enumerate(n for n in names if n.kind == "crop")}
    number = {key: crops[page] for key, page in ledger.crop_pages.items() if page in crops}
    years = sorted({year for key in keys for year in _years(key, ledger)}, reverse=True)
    place = {year: at for at, year in enumerate(years)}
    return {
        "years": [ledger.year_name(year) for year in years],
        "stood": "\n".join("\t".join(_chapters(key, place, number, ledger)) for key in keys),
        "kin": {str(at): words for at, key in enumerate(keys) if (words := _kin(key, ledger))},
        "families": "\n".join(_families(number, ledger)),
    }


def _years(bed: str, ledger: Ledger) -> Iterator[int]:
    return (year for chapter in ledger.bed_chapters[bed] for year in chapter.years)


def _chapters(bed: str, place: Mapping[int, int], number: Mapping[str, int], ledger: Ledger) -> Iterator[str]:
    """Each page of a bed's history: its address unless it is the bed's own, then each year with its crops."""
    for chapter in ledger.bed_chapters[bed]:
        page = "" if chapter.address == ledger.bed_pages[bed] else chapter.address
        told = (_year(bed, year, place[year], number, ledger) for year in chapter.years)
        yield " ".join([page, *filter(None, told)])


def _year(bed: str, year: int, place: int, number: Mapping[str, int], ledger: Ledger) -> str:
    """A year of a bed and what stood in it; "" where nothing is known to have."""
    stood = (crop for planting in ledger.bed_year(bed, year).plantings for crop in planting.crops)
    crops = dict.fromkeys(number[crop] for crop in stood if crop in number)
    return "".join(map(letters_of, (place, *crops))) if crops else ""


def _kin(bed: str, ledger: Ledger) -> str:
    """The names of the beds it came from and of those it became."""
    beds = ledger.garden.beds
    return " ".join(beds[key].name for key in kin(ledger.garden, (bed,)) if key != bed and key in beds)


def _families(number: Mapping[str, int], ledger: Ledger) -> Iterator[str]:
    """Each family here: its words, how it is called, its crops."""
    crops: defaultdict[str, list[int]] = defaultdict(list)
    for key, place in number.items():
        if family := ledger.garden.crops[key].family:
            crops[family].append(place)
    named = {fact.family: fact.name for fact in families().values()}
    for family in sorted(crops):
        words = " ".join([family, *(word for word, other in TRADE_WORDS.items() if other == family)])
        yield f"{words}\t{named.get(family, family)}\t{numbers(sorted(crops[family]))}"
