"""The line of pages that stand together, at the head of each; and a guest in the garden that is no trouble."""

from __future__ import annotations

from gardens import garden_of
from leafmould.pages import addresses
from leafmould.pages.a_to_z import names_of
from leafmould.pages.site import Site
from leafmould.pages.ways import near
from pages_garden import hand_made, site_of


def told(address: str, site: Site) -> tuple[str, list[tuple[str, str]]]:
    kind, links = near(address, site.ledger)
    return kind, [(link.text, link.to) for link in links]


def test_pages_of_a_kind_lead_to_each_other_and_those_not_there_are_left_out() -> None:
    site = site_of(hand_made())
    crops = [
        ("A to Z", ""),
        ("When to sow", "when-to-sow.html"),
        ("How expectations turned out", "turned-out.html"),
    ]
    assert told(addresses.CROPS, site) == ("Crops", crops)
    families = [("Family by family", "families.html"), ("Rotation", ""), ("Beds by years", "years.html")]
    assert told(addresses.ROTATION, site) == ("Families", families)
    assert told(addresses.SEASONS, site) == (
        "Seasons",
        [("Season by season", ""), ("Notes by date", "by-date/index.html")],
    )
    assert told(addresses.NOW, site) == ("", [])


def test_every_page_has_its_name_from_a_to_z_and_none_is_named_that_is_not_there() -> None:
    site = site_of(hand_made())
    there = {page.address for page in site.pages}
    named = {name.link.to for name in names_of(site.ledger) if name.kind == "page"}
    assert named <= there
    assert {"rotation.html", "when-to-sow.html", "turned-out.html", "sources.html", "data.html"} <= named


def test_a_toad_is_no_trouble_and_a_slug_is() -> None:
    garden = garden_of({"2026-06-01.txt": "saw a toad in Arch\nsaw slugs on pea in Arch\n"})
    assert [name.link.text for name in names_of(site_of(garden).ledger) if name.kind == "trouble"] == [
        "slugs"
    ]
