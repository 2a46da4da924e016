"""The page of sources: every source with what is taken from it, and what is common practice, said so."""

from __future__ import annotations

import csv
from datetime import date

from bs4 import BeautifulSoup

from gardens import garden_of
from leafmould.facts.common_practice import common_practice
from leafmould.facts.tables import DATA, sources
from leafmould.reckon.what_is_taken import what_is_taken
from leafmould.render.html import Renderer
from pages_garden import site_of

NOT_PUBLISHED = {"TAXON-COMMON"}
"""Names and families everybody knows: no source, and never shown as one."""


def page() -> BeautifulSoup:
    site = site_of(garden_of("2026-05-01\n- sowed beetroot in Arch", on=date(2026, 7, 15)))
    found = next(page for page in site.pages if page.address == "sources.html")
    return BeautifulSoup(Renderer(site).page(found), "html.parser")


def test_every_source_is_listed_with_what_is_taken_from_it() -> None:
    listed = page().select(".source")
    assert len(listed) == len(sources()) - len(NOT_PUBLISHED)
    assert all("Taken from it: " in section.get_text() for section in listed)


def test_every_source_in_the_tables_gives_something_and_nothing_is_taken_from_elsewhere() -> None:
    assert what_is_taken().keys() == sources().keys() - NOT_PUBLISHED


def test_what_is_taken_is_told_for_this_gardens_crops_first() -> None:
    (longevity,) = page().select("#source-isu-knott")
    assert "Taken from it: seed keeps. Shown for beetroot" in " ".join(longevity.get_text().split())


def test_what_rests_on_no_source_is_told_as_such() -> None:
    text = " ".join(page().get_text().split())
    assert "Common practice, no source: nobody we read has published these" in text
    assert all(custom.words in text for custom in common_practice())


def test_every_table_of_facts_names_a_source_in_each_row_or_says_it_has_none() -> None:
    bare = {
        "common_practice.csv",
        "cultivars.csv",
        "families.csv",
        "sources.csv",
        "usual_days.csv",
        "usual_starts.csv",
    }
    for path in sorted(DATA.rglob("*.csv")):
        rows = list(csv.DictReader(path.read_text(encoding="utf-8").splitlines()))
        assert path.name in bare or "source" in rows[0], path.name
        named = {key for row in rows for key in row.get("source", "").split(";") if key}
        assert named - {"memory"} <= sources().keys(), path.name
