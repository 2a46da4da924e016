"""The data files offered beside the pages: plantings, harvests and, in household builds, problems.

Made from the same garden as the pages, so what they hold has been decided before. They are a contract with
other programs: keys are never renamed, unknown is null, days are ISO, a new meaning raises `version`.
Beds and crops are named as the garden names them; `id` tells plantings apart.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from datetime import date

from leafmould.garden.model import Fate, Garden, Picking, Planting, Season
from leafmould.reckon.forecast import Forecast
from leafmould.report import JSON_VERSION, problem_json
from leafmould.values.problems import Problem, in_file_order
from leafmould.values.quantities import Amount
from leafmould.values.when import When

Json = dict[str, object]

PLANTINGS = "data/plantings.json"
HARVESTS = "data/harvests.json"
PROBLEMS = "data/problems.json"

ITEM = json.JSONEncoder(ensure_ascii=False, allow_nan=False)
"""Writes an item; one for all, since a large garden has tens of thousands."""


def data_files(
    garden: Garden, forecasts: Mapping[str, Forecast], problems: Sequence[Problem] | None
) -> dict[str, bytes]:
    """The data files by name.

    Args:
        forecasts: by planting id; missing where nothing can be said.
        problems: None leaves their file out, as in a public build.
    """
    plantings = [_planting(p, garden, forecasts.get(p.id)) for p in garden.plantings]
    files = {
        PLANTINGS: _file("plantings", garden.on, plantings),
        HARVESTS: _file("pickings", garden.on, [_picking(p, garden) for p in garden.pickings]),
    }
    if problems is not None:
        files[PROBLEMS] = _file("problems", garden.on, [problem_json(p) for p in in_file_order(problems)])
    return files


def _file(key: str, on: date, items: Iterable[Mapping[str, object]]) -> bytes:
    """The envelope, with one item a line so that a change shows as changed lines."""
    lines = ",\n".join([ITEM.encode(item) for item in items])
    listed = f"[\n{lines}\n]" if lines else "[]"
    return f'{{"version": {JSON_VERSION}, "on": "{on.isoformat()}", "{key}": {listed}}}\n'.encode()


def _planting(planting: Planting, garden: Garden, forecast: Forecast | None) -> Json:
    families = _families(planting.crops, garden)
    crops = planting.words or tuple(_crop_name(key, garden) for key in planting.crops)
    return {
        "id": planting.id,
        "bed": _bed_name(planting.bed, garden),
        "bed_now": _bed_name(planting.bed_now, garden),
        "beds": [_bed_name(bed, garden) for bed in planting.beds],
        "part": planting.part,
        "crop": crops[0] if crops else None,
        "crops": list(crops),
        "variety": planting.varieties[0] if planting.varieties else None,
        "varieties": list(planting.varieties),
        "family": families[0] if families else None,
        "families": families,
        "origin": planting.origin,
        "number": planting.number,
        **_dates(planting),
        "expected": _expected(forecast) if planting.is_open else None,
        "picked_g": _number(planting.picked_g),
        "picked": [_amount(amount) for amount in planting.picked],
        "seasons": [_season(season) for season in planting.seasons],
        "group": planting.group,
        "notes": _notes(planting.entries, garden),
    }


def _dates(planting: Planting) -> Json:
    between = planting.started_between
    return {
        "started_on": _day(planting.started),
        "started_between": [day.isoformat() for day in between] if between else None,
        "sown_on": _day(planting.sown),
        "planted_on": _day(planting.planted),
        "found_on": _day(planting.found),
        "start_written": _start_written(planting),
        "first_picked_on": _day(planting.first_picked),
        "last_picked_on": _day(planting.last_picked),
        "cleared_on": _day(planting.cleared),
        "lost_on": _day(planting.lost),
        "ended_on": planting.ended_on.isoformat() if planting.ended_on else None,
        "end_basis": planting.end_basis,
    }


def _start_written(planting: Planting) -> str | None:
    """The start in the note's own words, where it names no single day."""
    if planting.start:
        return None if planting.start.is_exact else planting.start.written
    return None if planting.year is None else str(planting.year)


def _expected(forecast: Forecast | None) -> Json | None:
    if forecast is None:
        return None
    return {
        "earliest": forecast.earliest.isoformat(),
        "likely": forecast.likely.isoformat(),
        "latest": forecast.latest.isoformat(),
        "basis": forecast.basis,
    }


def _season(season: Season) -> Json:
    return {
        "season": season.name,
        "first_picked_on": _day(season.first_picked),
        "last_picked_on": _day(season.last_picked),
        "picked_g": _number(season.picked_g),
    }


def _picking(picking: Picking, garden: Garden) -> Json:
    """A picking; with several amounts of one thing (12 pieces, 1.4 kg) the first as written, and the grams."""
    planting = garden.planting_by_id.get(picking.planting or "")
    words = dict(zip(planting.crops, planting.words, strict=False)) if planting else {}
    crops = [words.get(key) or _crop_name(key, garden) for key in picking.crops]
    amount = picking.amounts[0] if picking.amounts else None
    return {
        "on": _day(picking.when),
        "crop": crops[0] if crops else None,
        "crops": crops,
        "variety": picking.varieties[0] if picking.varieties else None,
        "varieties": list(picking.varieties),
        "planting": picking.planting,
        "bed": _bed_name(picking.bed, garden) if picking.bed else None,
        "amount": _number(amount.value) if amount else None,
        "unit": amount.unit if amount else None,
        "grams": _number(picking.grams),
        "estimated": any(a.is_estimated for a in picking.amounts),
        "fates": [_fate(fate) for fate in picking.fates],
        "note": _notes((picking.entry,), garden)[0],
    }


def _fate(fate: Fate) -> Json:
    amount = fate.amount
    return {
        "fate": fate.kind,
        "amount": _number(amount.value) if amount else None,
        "unit": amount.unit if amount else None,
        "grams": _number(amount.grams) if amount else None,
    }


def _amount(amount: Amount) -> Json:
    return {"amount": _number(amount.value), "unit": amount.unit, "estimated": amount.is_estimated}


def _families(crops: Iterable[str], garden: Garden) -> list[str]:
    """Each family once, in the order of the crops; a crop whose family is not known adds none."""
    known = (garden.crops[key].family for key in crops if key in garden.crops)
    return list(dict.fromkeys(family for family in known if family))


def _notes(entries: Iterable[str], garden: Garden) -> list[str]:
    """The files of these entries, each once."""
    return list(dict.fromkeys(garden.entry_by_id[entry].at.file for entry in entries))


def _bed_name(key: str, garden: Garden) -> str:
    return garden.beds[key].name if key in garden.beds else key


def _crop_name(key: str, garden: Garden) -> str:
    return garden.crops[key].name if key in garden.crops else key


def _day(when: When | None) -> str | None:
    """The day if it is exact; a coarse date is no day."""
    return when.day.isoformat() if when and when.day else None


def _number(value: float | None) -> float | int | None:
    """A number to a thousandth, whole where it is whole."""
    if value is None:
        return None
    short = round(value, 3)
    return int(short) if short == int(short) else short
