"""The seed tin: packets of the table and of the notes, their age, trials and sowings, and the page of them."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from gardens import TANSY_HILL_YAML, garden_of, settings_of
from leafmould.build import build
from leafmould.notes.seeds_file import read_seeds
from leafmould.reckon.almanac import almanac
from leafmould.reckon.amounts import enough_for
from leafmould.reckon.seed_life import Trial, judge, least_share, life_of
from leafmould.reckon.seed_tin import Lot, seed_tin

ON = date(2026, 7, 15)


def tin(table: str, notes: str = "", on: date = ON) -> list[str]:
    """The tin in one line a packet: what, when it was got, what came up, where it was sown, how it stands."""
    return [line(lot) for lot in lots(table, notes, on)]


def lots(table: str, notes: str, on: date = ON) -> tuple[Lot, ...]:
    settings = replace(settings_of(TANSY_HILL_YAML), seeds=read_seeds(table)[0])
    garden = garden_of(notes, settings, on=on) if notes else garden_of({}, settings, on=on)
    return seed_tin(garden, almanac(settings, garden))


def line(lot: Lot) -> str:
    trials = "".join(f", {t.came_up}/{t.tried} {t.year}" for t in lot.trials)
    sown = "".join(f", sown {key}" for key in lot.sown)
    name = " ".join(filter(None, (lot.word, lot.variety, str(lot.year or ""))))
    return f"{name}{trials}{sown}: {lot.judged.standing}"


# Years seed keeps: Iowa State University Extension after Knott, and an old textbook; both in the tables.
@pytest.mark.parametrize(
    ("table", "told"),
    [
        ("crop,year\nleek,2024\n", "leek 2024: still good"),  # 2 years old, keeps 2–3
        ("crop,year\nleek,2023\n", "leek 2023: test first"),
        ("crop,year\nleek,2022\n", "leek 2022: likely spent"),
        ("crop,year\nleek,\n", "leek: not known"),
        ("crop,year\ndahlia,2024\n", "dahlia 2024: not known"),
        ("crop,year,amount\nleek,2024,all used\n", "leek 2024: used up"),
        ("crop,year,tried,tried in\nleek,2020,8 of 10,2026\n", "leek 2020, 8/10 2026: still good"),
        (
            "crop,year,tried,tried in\nleek,2024,6 of 10,2026\n",
            "leek 2024, 6/10 2026: still good",
        ),  # 60 in 100 are asked for
        ("crop,year,tried,tried in\nleek,2024,3 of 10,2025\n", "leek 2024, 3/10 2025: sow thicker"),
        ("crop,year,tried,tried in\nleek,2024,1 of 20,2026\n", "leek 2024, 1/20 2026: likely spent"),
        ("crop,year,tried,tried in\nleek,2022,9 of 10,2023\n", "leek 2022, 9/10 2023: likely spent"),
    ],
)
def test_seed_is_judged_by_a_fresh_trial_else_by_its_age(table: str, told: str) -> None:
    assert tin(table) == [told]


def test_why_is_said_in_words() -> None:
    life = life_of("leek")
    assert life is not None
    assert judge("leek", 3, life, None, 2026).why == "3 years old, and seed of this crop keeps 2–3 years"
    # 60 % must come up of leek seed for sale: 7 CFR 201.31, in the tables
    assert least_share("leek") == 0.6
    trial = Trial(came_up=6, tried=20, year=2026, event=None)
    assert judge("leek", 3, life, trial, 2026).why == "6 of 20 came up in 2026: sow it twice as thick"
    assert judge("leek", None, life, None, 2026).why == "no year is written for it"
    assert judge("dahlia", 2, None, None, 2026).why == "nobody in the tables says how long it keeps"


def test_a_crop_without_figures_takes_those_of_a_relative_and_names_it() -> None:
    life = life_of("runner-bean")
    assert life is not None
    assert (life.words, life.of) == ("3 years", "French bean")
    own = life_of("french-bean")
    assert own is not None and own.of == ""
    assert life_of("dahlia") is None


def test_notes_bring_seed_into_the_tin_that_the_table_does_not_have() -> None:
    table = "crop,variety,year\nbeetroot,Cylindra,2026\n"
    notes = """
        2025-09-20
        - saved seed from runner bean 'Scarlet Emperor'
        2026-01-31
        - bought 1 packet beetroot 'Cylindra', by post, 2.60
        - bought 200 g French bean 'Provider', by post
        - bought 3 tomato plants 'Stupice' from the market
        - bought 20 onion sets
    """
    assert tin(table, notes) == [
        "beetroot Cylindra 2026: still good",
        "French bean Provider 2026: still good",
        "runner bean Scarlet Emperor 2025: still good",
    ]
    assert lots(table, notes)[0].got


def test_trials_and_sowings_find_their_packet() -> None:
    table = "crop,variety,year\nbeetroot,Boltardy,2023\nbeetroot,Boltardy,2026\nonion,Ailsa Craig,2025\n"
    notes = """
        2024-04-12
        - sowed beetroot 'Boltardy' in Arch
        2024-12-14
        - tried 10 seeds onion, 2 came up
        2026-02-10
        - tried 10 seeds beetroot 'Boltardy', 4 came up
        - tried 10 seeds onion, 9 came up
        2026-04-12
        - sowed beetroot 'Boltardy' in Arch
        - sowed beetroot in Long border
    """
    assert tin(table, notes) == [
        "beetroot Boltardy 2023, 4/10 2026, sown beetroot_arch_2024-04-12_boltardy: sow thicker",
        "beetroot Boltardy 2026, sown beetroot_arch_2026-04-12_boltardy,"
        " sown beetroot_long-border_2026-04-12: still good",
        "onion Ailsa Craig 2025, 9/10 2026: still good",
    ]


def test_seed_known_from_a_trial_alone_is_in_the_tin_where_nothing_else_tells_of_the_crop() -> None:
    notes = """
        2024-02-10
        - tried 10 seeds onion, 2 came up
        2026-02-10
        - tried 20 seeds parsnip 'Student', 15 came up
        """
    assert tin("crop,variety,year\nonion,Ailsa Craig,2025\n", notes) == [
        "onion Ailsa Craig 2025: still good",
        "parsnip Student, 15/20 2026: still good",
    ]


def test_a_trial_told_by_table_and_note_counts_once() -> None:
    table = "crop,year,tried,tried in\nparsnip,2025,5 of 20,2026\n"
    (lot,) = lots(table, "2026-02-10\n- tried 20 seeds parsnip, 5 came up")
    assert [(t.came_up, t.tried, bool(t.event)) for t in lot.trials] == [(5, 20, True)]


TABLE = """\
crop,variety,year,amount,from,price,tried,note
beetroot,Boltardy,2023,1 packet,Sellerword,8675.31,,remarkword
leek,,2023,a handful,,,,
parsnip,Gonevariety,2020,,,,,all used
"""


def site(folder: Path, *, household: bool, yaml: str = "") -> dict[str, str]:
    (folder / "notes").mkdir()
    (folder / "records").mkdir()
    (folder / "garden.yaml").write_text(f"garden: Hill\n{yaml}\nbeds: [Arch]\n", "utf-8")
    (folder / "records/seeds.csv").write_text(TABLE, "utf-8")
    (folder / "notes/2024-04-12.md").write_text("sowed beetroot 'Boltardy' in Arch\n", "utf-8")
    build(folder, to=folder / "site", on=ON, household=household)
    return {
        p.relative_to(folder / "site").as_posix(): p.read_text("utf-8") for p in html_files(folder / "site")
    }


def html_files(folder: Path) -> list[Path]:
    return sorted(folder.rglob("*.html"))


def test_the_household_sees_sellers_and_prices(tmp_path: Path) -> None:
    page = site(tmp_path, household=True)["seed-tin.html"]
    assert "Sellerword, 8675.31" in page
    assert "“remarkword”" in page


def test_a_public_site_has_neither_and_still_tells_of_the_seed(tmp_path: Path) -> None:
    pages = site(tmp_path, household=False)
    page = pages["seed-tin.html"]
    assert not [
        word for word in ("Sellerword", "8675", "remarkword") for text in pages.values() if word in text
    ]
    assert "a handful" in page
    assert "3 years, of 2–3 years" in page
    assert "<h2>Used up</h2>\n<p>parsnip ‘Gonevariety’, 2020</p>" in page
    assert 'href="beds/arch.html#beetroot_arch_2024-04-12_boltardy">Arch 2024</a>' in page
    assert 'seed-tin.html">Seed tin</a>' in pages["crops/index.html"]
    assert '<h2 id="seed">Seed in the tin</h2>' in pages["crops/beetroot.html"]


def test_seeds_left_out_have_no_page_and_no_link(tmp_path: Path) -> None:
    pages = site(tmp_path, household=False, yaml="leave out: [seeds]")
    assert "seed-tin.html" not in pages
    assert not [name for name, text in pages.items() if "seed-tin" in text or "a handful" in text]


def page_of(table: str, notes: str, folder: Path) -> str:
    (folder / "notes").mkdir()
    (folder / "records").mkdir()
    (folder / "garden.yaml").write_text("garden: Hill\nbeds: [Arch]\n", "utf-8")
    (folder / "records/seeds.csv").write_text(table, "utf-8")
    for number, text in enumerate(notes.split("\n\n")):
        (folder / f"notes/{number:02}.md").write_text(text, "utf-8")
    build(folder, to=folder / "site", on=ON, household=True)
    return (folder / "site/seed-tin.html").read_text("utf-8")


def test_seed_that_notes_told_of_long_ago_makes_the_table_no_longer(tmp_path: Path) -> None:
    notes = "\n\n".join(f"# {year}-09-01\n- saved seed from leeks" for year in range(2014, 2027))
    page = page_of("crop,year\nleek,2015\n", notes, tmp_path)
    assert page.count('<th scope="row">') == 1 + 5  # 2015 as the table has it, 2021 to 2025
    assert "leek, 2020; leek, 2019; leek, 2018; leek, 2017; leek, 2016; leek, 2014" in page


def test_a_very_large_tin_is_cut(tmp_path: Path) -> None:
    rows = "".join(f"leek,Number {number},2025\n" for number in range(450))
    page = page_of(f"crop,variety,year\n{rows}", "# 2026-01-01\n- weeded Arch", tmp_path)
    assert page.count('<th scope="row">') == 400
    assert "50 more packets stand in records/seeds.csv and the notes." in page
    assert len(page) < 300_000


def test_what_is_typed_into_the_tin_is_shown_as_typed(tmp_path: Path) -> None:
    table = 'crop,variety,amount,from,price,note\npea,<b>Meteor</b>,<i>2</i>,"<script>x</script>",<u>1</u>,"<img src=x>"\n'
    page = page_of(table, "# 2026-01-01\n- weeded Arch", tmp_path)
    assert not any(tag in page for tag in ("<b>Meteor", "<i>2", "<script>x", "<u>1", "<img src=x"))
    assert "&lt;b&gt;Meteor&lt;/b&gt;" in page


# --- what is left ---------------------------------------------------------------------------------------


def left(table: str, notes: str) -> list[str]:
    return [lot.left.words if lot.left else "not known" for lot in lots(table, notes)]


SOWN = """
    2026-03-21
    - started 12 tomato 'Stupice' in Cold frame
    2026-04-02
    - started 3 tomato 'Stupice' in Cold frame
    """


def test_what_was_sown_since_a_count_is_taken_off() -> None:
    table = "crop,variety,year,amount,counted\ntomato,Stupice,2023,about 20 seeds,2026-03-01\n"
    assert left(table, SOWN) == ["5 of 20 seeds left by the notes"]
    assert left(table.replace("2026-03-01", "2026-03-22"), SOWN) == ["17 of 20 seeds left by the notes"]
    assert left(table.replace("2026-03-01", "2026-04-03"), SOWN) == [""]


def test_the_day_of_the_count_is_the_first_that_takes_from_it() -> None:
    table = "crop,variety,year,amount,counted\ntomato,Stupice,2023,20 seeds,2026-03-21\n"
    assert left(table, SOWN) == ["5 of 20 seeds left by the notes"]


def test_more_sown_than_there_was_leaves_none() -> None:
    table = "crop,variety,year,amount,counted\ntomato,Stupice,2023,14 seeds,2026-03-01\n"
    assert left(table, SOWN) == ["none of 14 seeds left by the notes"]
    (lot,) = lots(table, SOWN)
    assert lot.left is not None and lot.left.seeds == 0 and enough_for(lot) is None


@pytest.mark.parametrize(
    "amount", ["half a packet,2026-03-01", "20 seeds,", "a few,2026-03-01", ",2026-03-01"]
)
def test_what_was_not_counted_or_nobody_says_when_is_left_as_written(amount: str) -> None:
    table = f"crop,variety,year,amount,counted\ntomato,Stupice,2023,{amount}\n"
    assert left(table, SOWN) == ["not known"]


def test_seed_that_was_weighed_is_taken_off_by_weight() -> None:
    notes = """
        2026-05-10
        - sowed 45 g French beans 'Provider' in Arch
        2026-05-24
        - sowed 2 rows French beans 'Provider' in Long border
        """
    table = "crop,variety,year,amount,counted\nFrench bean,Provider,2025,120 g,2026-01-31\n"
    assert left(table, notes) == ["75 of 120 g left by the notes; 1 sowing not counted"]
    (lot,) = lots(table, notes)
    assert lot.left is not None and (lot.left.seeds, lot.left.grams) == (None, 75)


def test_saved_seed_that_was_weighed_is_taken_off_from_its_saving() -> None:
    notes = """
        2025-09-20
        - saved seed from runner beans, 40 g
        2026-05-10
        - sowed 15 g runner beans in Arch
        """
    assert left("crop\n", notes) == ["25 of 40 g left by the notes"]


def test_rows_are_no_seeds() -> None:
    notes = "2026-03-21\n- sowed 2 rows peas 'Meteor' in Arch\n- sowed 12 peas 'Meteor' in Top bed"
    table = "crop,variety,year,amount,counted\npea,Meteor,2025,50 seeds,2026-01-31\n"
    assert left(table, notes) == ["38 of 50 seeds left by the notes; 1 sowing not counted"]


@pytest.mark.parametrize(
    ("amount", "sown", "words"),
    [
        ("12 seeds", "12", "none of 12 seeds left by the notes"),
        ("13 seeds", "12", "1 of 13 seeds left by the notes"),
        ("12.26 g", "4 g", "8.3 of 12.3 g left by the notes"),
    ],
)
def test_what_is_left_is_told_to_the_seed_and_to_the_tenth_of_a_gram(
    amount: str, sown: str, words: str
) -> None:
    table = f"crop,variety,year,amount,counted\npea,Meteor,2025,{amount},2026-01-31\n"
    assert left(table, f"2026-03-21\n- sowed {sown} peas 'Meteor' in Arch") == [words]


def test_one_count_over_two_varieties_is_a_count_of_neither() -> None:
    notes = "2026-03-21\n- sowed 12 peas 'Meteor' and 'Douce Provence' in Arch"
    table = "crop,variety,year,amount,counted\npea,Meteor,2025,50 seeds,2026-01-31\n"
    assert left(table, notes) == ["of 50 seeds; 1 sowing not counted"]


def test_a_trial_takes_seed_too() -> None:
    table = "crop,variety,year,amount,counted\nparsnip,,2025,50 seeds,2026-01-31\n"
    assert left(table, "2026-02-10\n- tried 10 seeds parsnip, 6 came up") == [
        "40 of 50 seeds left by the notes"
    ]


def test_seed_that_a_note_counts_when_it_was_got_is_taken_off_from_that_day() -> None:
    notes = """
        2026-01-31
        - bought 30 seeds tomato 'Gypsy King'
        2026-02-01
        - bought 10 seeds tomato 'Gypsy King'
        2026-03-21
        - started 12 tomato 'Gypsy King' in Cold frame
        """
    assert left("crop\n", notes) == ["28 of 40 seeds left by the notes"]


def test_what_is_left_says_for_how_many_plants_it_is_enough() -> None:
    """Tomato seed for sale must come up by 75 in 100 (7 CFR 201.31): 5 seeds for 3 plants, 20 for 15."""
    table = "crop,variety,year,amount,counted\ntomato,Stupice,2023,20 seeds,2026-03-01\n"
    (used,) = lots(table, SOWN)
    (whole,) = lots(table.replace("2026-03-01", ""), SOWN)
    assert (enough_for(used), enough_for(whole)) == ((3, 3), (15, 15))


def test_a_count_whose_day_cannot_be_read_is_told_and_the_packet_kept() -> None:
    rows, problems = read_seeds(
        "crop,amount,counted\npea,40 seeds,last spring\npea,40 seeds,2026-02-30\npea,40 seeds,2026-02-28\n"
    )
    assert [row.counted for row in rows] == [None, None, date(2026, 2, 28)]
    assert [problem.message for problem in problems] == [
        '"last spring" is no day. Write it such as 2026-03-21.',
        '"2026-02-30" is no day. Write it such as 2026-03-21.',
    ]


def test_seed_of_an_own_crop_keeps_as_long_as_that_of_the_crop_it_is_like() -> None:
    settings = settings_of(TANSY_HILL_YAML, crops_yaml="onion of my aunt: {like: leek}")
    settings = replace(settings, seeds=read_seeds("crop,year\nonion of my aunt,2023\n")[0])
    garden = garden_of("2026-05-01\n- planted 12 onion of my aunt in Arch", settings, on=ON)
    (lot,) = seed_tin(garden, almanac(settings, garden))
    assert (lot.judged.standing, lot.life and lot.life.words) == ("test first", "2–3 years")


def test_a_trial_that_names_the_year_of_the_seed_is_that_packet_s() -> None:
    found = lots(
        "crop,variety,year,amount\n",
        """
        2024-02-01
        - bought parsnip seed 2022
        2025-02-01
        - bought a packet of parsnip seed
        2025-03-01
        - tested parsnip seed 2022: 3 of 10 came up
        """,
    )
    assert [(lot.year, [t.came_up for t in lot.trials]) for lot in found] == [(2022, [3]), (2025, [])]


@pytest.mark.parametrize(
    ("note", "is_in_tin"),
    [
        ("bought parsnip seed", True),
        ("bought parsnip seeds from the market, 2 euros", True),
        ("bought leek plants", False),
        ("bought 2 packets carrots", True),
        ("bought carrots 2025 seed", True),
    ],
)
def test_what_is_bought_as_seed_is_in_the_tin(note: str, is_in_tin: bool) -> None:
    assert bool(lots("crop,variety,year,amount\n", f"2026-02-01\n- {note}\n")) is is_in_tin
