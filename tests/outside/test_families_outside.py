"""Families of crops, against a list the package does not load: note typed, family read off the bed's page."""

from __future__ import annotations

from datetime import date

from gardens import garden_of
from leafmould.facts.tables import CropFact, crop_by_name, crops

LIST = {
    # "Healthy soil for a good harvest", a gardener's page on crop rotation (ke.pedroalmeidavieira.com/1053-…):
    # common members of each family. Older names there are given their present ones below.
    "Apiaceae": "carrot,celery,celeriac,chervil,coriander,dill,fennel,parsley,parsley root,parsnip",
    "Asteraceae": "artichoke,chicory,endive,escarole,Jerusalem artichoke,lettuce,radicchio,tarragon",
    "Brassicaceae": "arugula,broccoli,Brussels sprouts,cabbage,cauliflower,collards,horseradish,kale,kohlrabi,"
    "mustard greens,pak choi,radish,rutabaga,turnip,watercress",
    "Chenopodiaceae": "beetroot,spinach,Swiss chard",
    "Convolvulaceae": "sweet potatoes",
    "Cucurbitaceae": "cucumber,melon,pumpkin,summer squash,watermelon,winter squash,courgette,marrow",
    "Fabaceae": "alfalfa,broad bean,pea",
    "Gramineae": "sweetcorn",
    "Lamiaceae": "basil,marjoram,oregano,sage,rosemary,thyme,lavender",
    "Liliaceae": "asparagus,chives,garlic,leek,onion,spring onions,shallots",
    "Malvaceae": "okra",
    "Solanaceae": "aubergine,potato,tomato,tomatillo",
    "Valerianaceae": "corn salad",
}
PRESENT = {
    # APG IV (2016), from memory: what the older names became.
    "Chenopodiaceae": "Amaranthaceae",
    "Gramineae": "Poaceae",
    "Valerianaceae": "Caprifoliaceae",
    "Liliaceae": "Amaryllidaceae",
}
APART = {"asparagus": "Asparagaceae"}
"""Of the old lily family, but not an onion (APG IV, from memory)."""

PAIRS = {
    name: APART.get(name, PRESENT.get(family, family))
    for family, names in LIST.items()
    for name in names.split(",")
}


def test_the_list_has_more_than_thirty_crops_of_our_tables() -> None:
    known = {fact.key for name in PAIRS if (fact := crop_by_name(name))}
    assert len(known) > 30


def of_kind(name: str) -> list[CropFact]:
    """The crop of a name; several where the name is that of a kind."""
    fact = crop_by_name(name)
    return [fact] if fact else [fact for fact in crops().values() if fact.group == name]


def test_families_agree_with_the_list() -> None:
    found = {name: {fact.family for fact in of_kind(name)} for name in PAIRS}
    assert found == {name: {family} for name, family in PAIRS.items()}


def test_a_note_gives_each_of_them_its_family() -> None:
    lines = "\n".join(f"- planted {name} in Top bed" for name in PAIRS)
    garden = garden_of(f"2026-05-01\n{lines}\n", on=date(2026, 6, 1))
    planted = {p.crops[0]: garden.crops[p.crops[0]].family for p in garden.plantings if p.bed == "top-bed"}
    named = {name: fact.key for name in PAIRS if (fact := crop_by_name(name))}
    assert {key: planted.get(key) for key in named.values()} == {
        key: PAIRS[name] for name, key in named.items()
    }
