"""The tables of facts: every row sourced, every everyday name known, and checks against lists not loaded."""

from __future__ import annotations

import csv
from statistics import mean
from typing import get_args

import pytest

from leafmould.facts.tables import (
    DATA,
    CountsFrom,
    CropFact,
    GrownAs,
    StartsAs,
    crop_by_name,
    crops,
    cultivars,
    days_facts,
    days_of_varieties,
    families,
    sources,
    usual_days,
    variety_days,
)
from leafmould.values.names import fold, slug

SET_ASIDE = {"OKSU-6004", "MSSTATE-VEG", "ISU-RADISH"}
"""Sources kept out of the package, so that a check against them is a check."""

SORTS = {"vegetable", "herb", "small fruit", "fruit tree", "green manure", "companion flower"}


def every_name() -> dict[tuple[str, ...], CropFact]:
    return {fold(name): fact for fact in crops().values() for name in (fact.name, *fact.also)}


def test_at_least_170_everyday_names_lead_to_a_crop_with_a_family_and_how_it_is_grown() -> None:
    known = {words: fact for words, fact in every_name().items() if fact.family}
    assert len(known) >= 170
    assert all(fact.grown_as in get_args(GrownAs) for fact in known.values())


def test_no_name_means_two_crops() -> None:
    written = [(fold(name), fact.key) for fact in crops().values() for name in (fact.name, *fact.also)]
    assert sorted(words for words, _ in written) == sorted({words for words, _ in written})


def test_display_names_have_no_comma_and_keys_are_made_from_them() -> None:
    assert [fact.name for fact in crops().values() if "," in fact.name] == []
    assert [key for key, fact in crops().items() if key != slug(fact.name)] == []
    assert [name for fact in crops().values() for name in fact.also if "," in name] == []


def test_every_row_of_the_crop_table_is_whole() -> None:
    for fact in crops().values():
        assert fact.sort in SORTS, fact.key
        assert fact.starts_as in get_args(StartsAs), fact.key
        assert fact.family is None or fact.family in families(), fact.key
        assert fact.broader is None or fact.broader in crops(), fact.key
        assert fact.source in sources(), fact.key
        assert not (fact.seen and fact.source == "TAXON-COMMON"), fact.key


def test_only_mixtures_and_mushrooms_have_no_family() -> None:
    without = [key for key, fact in crops().items() if fact.family is None]
    assert without == ["green-manure", "microgreens", "mushroom", "salad-leaves"]


def test_every_family_has_a_name_and_a_mark_of_its_own() -> None:
    marks = [fact.mark.lower() for fact in families().values()]
    assert len(set(marks)) == len(marks) and all(len(mark) == 2 for mark in marks)
    assert len({fact.name for fact in families().values()}) == len(families())
    assert {fact.family for fact in crops().values() if fact.family} == set(families())


@pytest.mark.parametrize("table", ["days.csv", "variety_days.csv"])
def test_every_published_figure_has_a_source_and_a_known_crop(table: str) -> None:
    with (DATA / table).open(encoding="utf-8", newline="") as lines:
        for row in csv.DictReader(lines):
            assert row["crop"] in crops(), row
            assert row["source"] in sources(), row
            assert row["source"] not in SET_ASIDE, row
            assert row["counts_from"] in get_args(CountsFrom), row
            assert 5 <= int(row["low"]) <= int(row["high"]) <= 200, row


def test_usual_days_are_wide_and_only_where_nothing_serves_from_that_start() -> None:
    with (DATA / "usual_days.csv").open(encoding="utf-8", newline="") as lines:
        rows = list(csv.DictReader(lines))
    for row in rows:
        assert row["crop"] in crops(), row
        assert row["season"] in ("", "spring", "autumn", "before winter"), row
        assert int(row["high"]) - int(row["low"]) >= 15, row
        printed = {fact.counts_from for fact in days_facts(row["crop"])}
        assert row["counts_from"] not in printed or row["season"] in ("autumn", "before winter"), row


def test_crops_grown_from_seed_or_sets_for_eating_have_days_of_some_kind() -> None:
    """The list of those without is short and known: second-year herbs, and two that are picked as they come."""
    without = [
        key
        for key, fact in crops().items()
        if fact.sort in ("vegetable", "herb")
        and fact.grown_as != "perennial"
        and not (days_facts(key) or days_of_varieties(key) or usual_days(key))
    ]
    assert without == ["angelica", "caraway", "clary-sage", "ice-plant-leaf", "mushroom"]


@pytest.mark.parametrize(
    ("written", "key"),
    [
        ("sweet corn", "sweet-corn"), ("sweetcorn", "sweet-corn"), ("corn on the cob", "sweet-corn"),
        ("spring onions", "spring-onion"), ("scallions", "spring-onion"), ("runner beans", "runner-bean"),
        ("chard", "chard"), ("Swiss chard", "chard"), ("swede", "swede"), ("rutabaga", "swede"),
        ("neeps", "swede"), ("toms", "tomato"), ("Tomatoes", "tomato"), ("spuds", "potato"),
        ("courgettes", "summer-squash"), ("zucchini", "summer-squash"), ("patty pan", "summer-squash"),
        ("marrow", "summer-squash"), ("aubergine", "aubergine"), ("eggplants", "aubergine"),
        ("beets", "beetroot"), ("beetroot", "beetroot"), ("arugula", "rocket"), ("rocket", "rocket"),
        ("calabrese", "broccoli"), ("broccoli", "broccoli"),
        ("sprouting broccoli", "purple-sprouting-broccoli"),
        ("purple sprouting", "purple-sprouting-broccoli"), ("fava beans", "broad-bean"),
        ("mangetout", "pea"), ("sugar snaps", "pea"), ("snow peas", "pea"), ("black-eyed peas", "cowpea"),
        ("dwarf beans", "french-bean"), ("pole beans", "french-bean"), ("wax beans", "french-bean"),
        ("perpetual spinach", "perpetual-spinach"), ("mooli", "daikon"), ("cilantro", "coriander"),
        ("cape gooseberries", "cape-gooseberry"), ("ground cherries", "ground-cherry"),
        ("lamb’s lettuce", "corn-salad"), ("cavolo nero", "kale"), ("brussels sprouts", "brussels-sprouts"),
        ("sprouts", "brussels-sprouts"), ("onion sets", "onion"), ("elephant garlic", "elephant-garlic"),
        ("wild garlic", "wild-garlic"), ("Egyptian onions", "egyptian-onion"), ("leeks", "leek"),
        ("cime di rapa", "cime-di-rapa"), ("komatsuna", "komatsuna"), ("tatsoi", "tatsoi"),
        ("agretti", "agretti"), ("samphire", "samphire"), ("celtuce", "celtuce"), ("radicchio", "radicchio"),
        ("loganberries", "loganberry"), ("tayberries", "tayberry"), ("white currants", "whitecurrant"),
        ("damsons", "damson"), ("greengages", "greengage"), ("nectarines", "nectarine"),
        ("cobnuts", "hazelnut"), ("winter rye", "rye"), ("grazing rye", "rye"), ("tares", "common-vetch"),
        ("field beans", "field-bean"), ("caliente mustard", "caliente-mustard"), ("sweet pea", "sweet-pea"),
        ("sweet potatoes", "sweet-potato"), ("chillies", "chilli-pepper"), ("chiles", "chilli-pepper"),
        ("bell peppers", "sweet-pepper"), ("cantaloupe", "melon"), ("water melon", "watermelon"),
    ],
)  # fmt: skip
def test_everyday_names_on_both_sides_of_the_atlantic(written: str, key: str) -> None:
    fact = crop_by_name(written)
    assert fact is not None and fact.key == key


@pytest.mark.parametrize(
    ("group", "members"),
    [
        ("bean", {"french-bean", "runner-bean", "broad-bean", "lima-bean"}),
        ("pepper", {"sweet-pepper", "chilli-pepper"}),
        ("corn", {"sweet-corn", "popcorn", "field-corn"}),
        ("squash", {"summer-squash", "winter-squash", "butternut-squash", "spaghetti-squash"}),
        ("currant", {"blackcurrant", "redcurrant", "whitecurrant"}),
        ("cress", {"garden-cress", "land-cress", "watercress"}),
        ("cherry", {"sweet-cherry", "sour-cherry"}),
    ],
)
def test_kind_words_stand_for_several_crops_of_one_family(group: str, members: set[str]) -> None:
    of = {key: fact for key, fact in crops().items() if fact.group == group}
    assert set(of) == members
    assert len({fact.family for fact in of.values()}) == 1


def test_no_kind_word_is_itself_the_name_of_a_crop() -> None:
    groups = {fold(fact.group) for fact in crops().values() if fact.group}
    assert groups & every_name().keys() == set()


@pytest.mark.parametrize(
    ("crop", "grown_as", "is_tender"),
    [  # how it is grown, not its botany: common practice, no source
        ("tomato", "annual", True), ("potato", "annual", True), ("sweet-pepper", "annual", True),
        ("leek", "overwintered", False), ("kale", "overwintered", False), ("garlic", "overwintered", False),
        ("purple-sprouting-broccoli", "overwintered", False), ("parsnip", "overwintered", False),
        ("rhubarb", "perennial", False), ("strawberry", "perennial", False), ("apple", "perennial", False),
        ("caraway", "biennial", False), ("french-bean", "annual", True), ("pea", "annual", False),
    ],
)  # fmt: skip
def test_how_crops_are_grown(crop: str, grown_as: str, is_tender: bool) -> None:
    assert (crops()[crop].grown_as, crops()[crop].is_tender) == (grown_as, is_tender)


FROST_CLASSES = {
    # Purdue University Extension, HO-203, after University of Illinois VC 14 a2: tender and warm loving crops.
    True: "snap bean,sweet corn,tomato,lima bean,cucumber,eggplant,muskmelon,okra,pepper,pumpkin,"
    "summer squash,winter squash,sweet potato,watermelon",
    # the same table: very hardy and frost tolerant crops; potato stands there, its tops are cut by frost
    False: "asparagus,collards,endive,kale,kohlrabi,lettuce,mustard greens,onion,pea,rhubarb,rutabaga,"
    "salsify,spinach,turnip,beet,broccoli,Brussels sprouts,cabbage,carrot,cauliflower,celeriac,chard,"
    "Chinese cabbage,Jerusalem artichoke,parsnip,radish",
}


@pytest.mark.parametrize("is_tender", [True, False])
def test_tenderness_agrees_with_a_published_list_of_frost_resistance(is_tender: bool) -> None:
    differ = [
        name
        for name in FROST_CLASSES[is_tender].split(",")
        if all(fact.is_tender != is_tender for fact in of_kind(name))
    ]
    assert differ == []


def of_kind(name: str) -> list[CropFact]:
    fact = crop_by_name(name)
    return [fact] if fact else [fact for fact in crops().values() if fact.group == name]


FAMILY_LISTS = {
    # Missouri Botanical Garden, Gardening Help, "What is meant by vegetable families?" (cabbage family), and
    # "Vegetable Plant Families", a garden centre's handout (the others). Neither is loaded by the package.
    "Brassicaceae": "cabbage,radish,mustard greens,turnip,rutabaga,arugula,horse radish,wasabi,bok choy,daikon,"
    "napa cabbage,kale,collards,broccoli,cauliflower,broccoli raab,kohlrabi,watercress",
    "Amaryllidaceae": "onions,garlic,leeks,scallions,chives,garlic chives,shallots",
    "Apiaceae": "parsley,celery,carrots,dill,chervil,cilantro,parsnip,cumin,angelica",
    "Cucurbitaceae": "cucumbers,pumpkins,melons",
    "Asteraceae": "lettuce,endive,escarole,cardoon,sunflower,Jerusalem artichoke",
    "Amaranthaceae": "Swiss chard,beets,spinach,quinoa,amaranth",
    "Malvaceae": "okra",
    "Fabaceae": "peas,soybeans,peanuts,lentils",
    "Lamiaceae": "basil,mint",
    "Convolvulaceae": "sweet potato",
    "Solanaceae": "tomatoes,eggplants,potatoes,tomatillos,tobacco",
    "Polygonaceae": "sorrel,rhubarb",
}


def test_families_agree_with_lists_the_package_does_not_load() -> None:
    pairs = [(name, family) for family, names in FAMILY_LISTS.items() for name in names.split(",")]
    assert len(pairs) >= 20
    differ = [
        (name, family) for name, family in pairs if (f := crop_by_name(name)) is None or f.family != family
    ]
    assert differ == []


RADISHES_AND_OTHERS = [
    # crop, variety, days as printed. Mississippi State University Extension, Vegetable gardening in Mississippi
    # (turnip), and Iowa State University Extension, Yard and Garden: Radishes, 11 April 2013. Not loaded.
    ("turnip", "Just Right", 60), ("turnip", "Tokyo Cross", 35), ("radish", "Champion", 22.5),
    ("radish", "Cherry Belle", 24), ("radish", "Sparkler", 25), ("radish", "Red Satin", 23),
]  # fmt: skip


def test_variety_days_agree_with_lists_the_package_does_not_load() -> None:
    """Tolerance set beforehand: 7 days. The sources themselves differ by 2 to 4 days on average."""
    compared = [
        (variety, abs(mean((row.low + row.high) / 2 for row in rows) - days))
        for crop, variety, days in RADISHES_AND_OTHERS
        if (rows := variety_days(crop, variety))
    ]
    assert [name for name, _ in compared] == ["Just Right", "Tokyo Cross", "Champion", "Cherry Belle"]
    assert max(miss for _, miss in compared) <= 7


def test_varieties_are_found_whatever_their_case_accents_and_plural() -> None:
    assert {row.source for row in variety_days("beetroot", "detroit  DARK reds")} == {"UIUC-VGG", "UIUC-WYGG"}
    assert variety_days("beetroot", "Cylindra") == ()
    assert variety_days("pea", "Detroit Dark Red") == ()


def test_widely_known_varieties_tell_which_crop_is_meant() -> None:
    known = {cultivar.name: cultivar for cultivar in cultivars()}
    assert len(known) >= 400
    assert known["Charlotte"].crops == ("potato",) and known["Charlotte"].is_word
    assert known["Pink Fir Apple"].crops == ("potato",) and not known["Pink Fir Apple"].is_word
    assert known["Black Beauty"].crops == ("aubergine", "summer-squash", "tomato")
    assert known["Provider"].is_word  # of the published days alone: only a capital makes it a name


def test_widely_known_varieties_are_from_memory_and_of_known_crops() -> None:
    with (DATA / "cultivars.csv").open(encoding="utf-8", newline="") as lines:
        rows = list(csv.DictReader(lines))
    assert {row["source"] for row in rows} == {"memory"}
    assert {row["is_word"] for row in rows} == {"yes", "no"}
    assert {crop for row in rows for crop in row["crops"].split(";")} <= set(crops())
    assert len({fold(row["variety"]) for row in rows}) == len(rows)
