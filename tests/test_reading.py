"""The shapes gardeners really write in: each is read without harm, and the test says how.

P-numbers are kept in the names. Every note is typed as it would be, with its path where that matters.
"""

from __future__ import annotations

import pytest

from leafmould.notes.entries import Entry, Sureness
from leafmould.notes.lines import Habits
from leafmould.notes.read import learned_varieties, read_all
from leafmould.values.problems import Level
from notes_as_typed import GARDEN, all_done, entries, entry, habits, note_file, span, told


def days(found: tuple[Entry, ...]) -> list[str | None]:
    return [span(e.when) for e in found]


def test_p01_month_and_day_without_a_year_are_asked_about_never_guessed() -> None:
    found = entry("- thyme (p 11/30/23)\n- chard (s 2/9 t 3/17)", "log.md")
    assert (found.when, all_done(found)) == (None, [])
    assert told(found) == [
        'question: date: No date is written here. Write "date: 2026-06-20" at the top, '
        "or put the date into the file's name."
    ]


def test_p01_dates_that_can_be_read_two_ways_are_asked_about_once_for_the_garden() -> None:
    unset = "garden: G\nbeds: [Arch]"
    found = [entry(f"---\ndate: {date}\n---", "x.md", unset) for date in ("3/4/2026", "5/6/2026", "4/4/2026")]
    assert [span(e.when) for e in found] == ["2026-04-03", "2026-06-05", "2026-04-04"]
    assert [{p.sentence for p in e.problems} for e in found] == [
        {
            "garden.yaml: dates: Some dates, such as 3/4/2026, can be read two ways. They are read with the day "
            'first. Write "dates: day first" or "dates: month first".'
        }
    ] * 2 + [set()]
    named = entry("---\ndate: 3/4/2026\n---", "2026-03-04.md", unset)
    assert (span(named.when), told(named)) == ("2026-03-04", [])


def test_p02_the_year_is_inherited_from_the_title() -> None:
    found = entries("# Plot log 2022\n\nJune 3 - 2 beans gone\n\n# 12 mai\n- semé kale in Arch\n", "log.md")
    assert days(found) == ["2022-06-03", "2022-05-12"]
    assert all_done(found) == ["lost bean (2)", "sowed kale in Arch"]
    assert [e.id for e in found] == ["log", "log#2"]


def test_p02_the_year_is_inherited_from_the_file_name() -> None:
    assert days(entries("## 12 mai\nx\n## June 3rd\ny", "plot 2022.md")) == ["2022-05-12", "2022-06-03"]


def test_p02_a_year_at_the_first_date_serves_those_below_and_above() -> None:
    assert days(entries("# 3 November 2023\na\n# 12 January\nb", "log.md")) == ["2023-11-03", "2024-01-12"]
    assert days(entries("# 12 January\nb\n# 3 November 2023\na", "log.md")) == ["2024-01-12", "2023-11-03"]


def test_dates_without_any_year_are_one_error() -> None:
    found = entries("12 June\n- picked peas from Arch\n\n13 June\n- picked kale from North", "log.md")
    assert days(found) == [None, None]
    assert told(found) == [
        '1 error: date: "12 June" has no year. Write it once: in the first date, the title or the file\'s name.'
    ]
    assert all_done(found) == ["picked pea in Arch", "picked kale in North"]


def test_p04_many_dated_paragraphs_in_one_file_newest_first() -> None:
    found = entries("2023-05-11: netted the kale in Arch.\n\n2023-05-02: first white butterfly.\n", "log.md")
    assert days(found) == ["2023-05-11", "2023-05-02"]
    assert all_done(found) == ["netted kale in Arch"]
    assert [(e.body, e.body_line) for e in found] == [
        ("netted the kale in Arch.", 1),
        ("first white butterfly.", 3),
    ]


def test_p06_a_bare_date_on_the_first_line() -> None:
    found = entry("2020-02-17\n## Beans, boards and mud\nText.", "x.md")
    assert (span(found.when), found.date_from, found.body) == (
        "2020-02-17", "first line", "## Beans, boards and mud\nText.",
    )  # fmt: skip


def test_p07_day_counters_are_shown_as_written() -> None:
    found = entry("# Day 21\n### Day 5\n- ours came up", "2024/05-01.md")
    assert (found.title, found.body, all_done(found), told(found)) == (
        "Day 21",
        "### Day 5\n- ours came up",
        [],
        [],
    )


def test_p09_a_computers_long_date_is_read() -> None:
    assert span(entry("---\ndate: Tue Apr 03 07:12:44 MDT 2018\n---", "x.md").when) == "2018-04-03"
    kept = entry("---\ncreated_at: Tue Apr 03 07:12:44 MDT 2018\n---", "2018-04-01.md")
    assert kept.extra == (("created_at", "Tue Apr 03 07:12:44 MDT 2018"),)


def test_p10_a_header_that_disagrees_with_the_file_name_is_told_once() -> None:
    found = entry("---\nbed: Arch\ndate: 2023-02-18\n---", "2024-01-01-x.md")
    assert (span(found.when), found.date_from) == ("2023-02-18", "header")
    assert told(found) == [
        "3 warning: date: The header says 18 February 2023, the file name 1 January 2024. The header is used."
    ]
    assert told(entry("---\ndate: 2023-03-04\nerstellt: 2020-03-29\n---", "2023/03.md")) == []


def test_p10_a_header_date_far_from_all_dated_headings_is_told_once() -> None:
    found = entries("---\ndate: 2022-10-01\n---\n# 3 May 2021\nx\n# 4 May 2021\ny", "log.md")
    assert told(found) == [
        "warning: date: The header says 1 October 2022, a heading or line below 3 May 2021. "
        "Each is used for what stands under it."
    ]
    assert told(entries("---\ndate: 2021-05-10\n---\n# 3 May\nx\n# 4 May\ny", "log.md")) == []


def test_p12_a_year_heading_starts_a_season() -> None:
    found = entries("# 2020 - First try (failed)\nbad\n# 2021 - Second try\ngood", "beans.md")
    assert days(found) == ["2020-01-01..2020-12-31", "2021-01-01..2021-12-31"]
    assert [e.title for e in found] == ["First try (failed)", "Second try"]


def test_p14_season_words_are_coarse_dates_by_hemisphere() -> None:
    note = "---\ndate: spring/summer 2019\n---"
    south = GARDEN + "    place: {latitude: -37.8}\n"
    assert span(entry(note, "x.md").when) == "2019-03-01..2019-08-31"
    assert span(entry(note, "x.md", south).when) == "2019-09-01..2020-02-29"


def test_p15_a_corner_counted_from_a_side_stays_a_remark() -> None:
    found = entry("planted in bed 2, NW corner of the back plot", "2024-05-01.md")
    assert (all_done(found), found.body) == ([], "planted in bed 2, NW corner of the back plot")


def test_p17_headings_that_are_places_are_the_beds_of_the_lines_below() -> None:
    found = entry(
        "# 9 mai 2024\n## Balcony\n- sowed peas\n## Trough \\#2\n- sowed kale\n### Semis\n- sowed leek",
        "x.md",
    )
    assert all_done(found) == ["sowed pea in Balcony", "sowed kale in Trough 2", "sowed leek in Trough 2"]


def test_p17_a_label_or_bold_line_serves_as_a_heading() -> None:
    found = entry("Balcony:\n- sowed peas\n\n**Arch**\n- sowed kale", "2024-05-01.md")
    assert all_done(found) == ["sowed pea in Balcony", "sowed kale in Arch"]


def test_p18_p52_a_table_is_a_picture_and_stays_untouched() -> None:
    grid = "| B | B | K | K[x] |\n| B | B[2] | K | / |"
    found = entry(grid, "2024-05-01.md")
    assert (found.body, found.actions, told(found)) == (grid, (), [])


def test_p20_no_place_is_no_fault() -> None:
    found = entry("---\ncrop: pea\ndid: sowed\n---", "2024-05-01.md")
    assert (all_done(found), found.beds, told(found)) == (["sowed pea"], (), [])


def test_p22_unknown_varieties_are_values() -> None:
    found = entry("---\nwork:\n  - planted tomato (unknown) in Arch\n---", "2024-05-01.md")
    assert [v.sureness for v in found.actions[0].varieties] == [Sureness.UNKNOWN]


def test_p23_a_source_in_prose_is_kept() -> None:
    text = "seeds from a supermarket tomato; a neighbour gave us small plants (gift 😆)"
    assert entry(text, "2024-05-01.md").body == text


def test_p24_tags_keep_their_words_and_a_slip_in_a_crop_is_asked_about() -> None:
    found = entry("---\ntags: [bean, Beet, gartenkresse, Rote Bete]\ncrop: parnsip\n---", "2024-05-01.md")
    assert found.tags == ("bean", "Beet", "gartenkresse", "Rote Bete")
    assert (found.crops[0].name, found.crops[0].written) == ("parsnip", "parnsip")
    assert told(found) == ['3 question: crop: No crop is called "parnsip"; read as "parsnip".']


def test_p26_p28_p56_lines_that_do_not_read_whole_are_prose_in_silence() -> None:
    found = entry("We plan:\n\n- 12 leek plants.\n- s 2/9 t 3/17\n- feed every week\n", "2024-05-01.md")
    assert (found.actions, found.words, told(found)) == ((), (), [])


def test_p28_own_codes_are_read_where_garden_yaml_gives_them() -> None:
    codes = "garden: G\nwords: {s: sowed, t: planted}\nbeds: [Arch]"
    assert all_done(entry("- s chard in Arch\n- t kale in Arch", "2024-05-01.md", codes)) == [
        "sowed chard in Arch",
        "planted kale in Arch",
    ]


def test_p29_headings_give_date_place_and_kind_of_work() -> None:
    found = entry("# 9 mai 2024\n## Arch\n### Semis\n- semé kale\n### Entretien\n- watered", "x.md")
    assert (span(found.when), all_done(found)) == ("2024-05-09", ["sowed kale in Arch", "watered in Arch"])


def test_p30_a_harvest_in_prose_is_not_counted() -> None:
    found = entry("2 more cucumbers came in\nshallots lifted, now in the shed to dry", "2024-05-01.md")
    assert found.actions == ()


def test_p32_vague_days_start_parts_of_a_year() -> None:
    found = entries("end of July - lost another :(\n\nJuly 2 - one squash gone", "2022.md")
    assert days(found) == ["2022-07-21..2022-07-31", "2022-07-02"]


def test_p33_p58_prose_and_stray_letters_are_kept() -> None:
    text = "self-sown dill\n\nx\n\nrosemary did not survive the winter"
    found = entry(text, "2024-05-01.md")
    assert (found.body, told(found)) == (text, [])


def test_p34_p35_amounts_in_a_header_are_kept_as_written() -> None:
    amounts = ["~20", "~30–40", "12", "about 2 kg", "½ bucket", "hand-full"]
    read = [
        entry(f"---\ncrop: kale\nbed: Arch\ndid: picked\namount: {a}\n---", "2024-05-01.md") for a in amounts
    ]
    assert [e.actions[0].amounts[0].written for e in read] == amounts
    assert told(read[-1]) == [
        '5 question: amount: "hand-full" is no amount known here, so it is kept as written and not added up.'
    ]


def test_p39_p40_waits_and_counts_in_prose_are_no_harvest() -> None:
    found = entry(
        "sprayed; leave X days before eating (how many was it?)\nabout 150 tonight", "2024-05-01.md"
    )
    assert (found.actions, told(found)) == ((), [])


def test_p42_p43_keys_of_other_programs_are_kept_without_a_word() -> None:
    found = entry(
        "---\nlayout: post\nslug: x\nauthor: me\nimage: a.png\ncategory: garden\nernte: 3\n---",
        "2024-05-01.md",
    )
    assert [key for key, _ in found.extra] == ["layout", "slug", "author", "image", "category", "ernte"]
    assert told(found) == []


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("+++\ndate = 2020-01-01\n+++\nhi", 'A header between "+++"'),
        (":date: 2020-01-01\n:bed: x\n\nhi", 'A field such as ":date:"'),
        ("#+DATE: 2020-01-01\n* Beds", 'A line such as "#+DATE:"'),
    ],
)
def test_p45_headers_of_other_kinds_are_named_and_their_text_is_kept(text: str, sentence: str) -> None:
    found = entry(text, "2020-01-01.md")
    assert told(found) == [
        f"1 error: {sentence} is not read as a header; it stays in the text. "
        'Write "date: 2026-06-20" between two lines of "---".'
    ]
    assert found.body == text


def test_p45_a_header_without_its_dashes_is_read_with_a_warning() -> None:
    missing = '1 warning: This is read as a header, though its lines of "---" are missing. Write "---" above and below it.'
    for text in (
        "Date: 2020-01-01\nbed: Arch\nwork:\n- sowed peas\n\nhi",
        "date: 2020-01-01\nbed: Arch\nwork: sowed peas\n---\nhi",
    ):
        found = entry(text, "x.md")
        assert (span(found.when), all_done(found), found.body) == ("2020-01-01", ["sowed pea in Arch"], "hi")
        assert told(found) == [missing]
    assert entry("date: it was a day\nof which we spoke", "2020-01-01.md").beds == ()


def test_f59_a_date_with_a_dot_opens_a_part_and_is_no_list() -> None:
    found = entry("14. April 2021 peas up", "x.md")
    assert (span(found.when), found.body) == ("2021-04-14", "peas up")


def test_p47_structure_in_a_header_is_kept_as_text() -> None:
    found = entry("""
        ---
        id: bed-east
        crops:
          - crop: Beet
            sow_window: { outdoors: [04-01, 07-10] }
        rotation_history: [roots, leaves]
        water: { check: poke, last: 2023-08-02 }
        ---
        """)
    assert found.extra == (
        ("id", "bed-east"),
        ("crops", "crop: Beet, sow_window: outdoors: 04-01, 07-10"),
        ("rotation_history", "roots, leaves"),
        ("water", "check: poke, last: 2023-08-02"),
    )
    assert told(found) == []


def test_p49_a_photo_name_dates_a_note_that_has_no_other_date() -> None:
    found = entry("---\nphoto: [beetroot-20260412_2.jpg, IMG_1234.JPG]\n---", "x.md")
    assert (span(found.when), found.date_from) == ("2026-04-12", "photo")
    assert entry("---\nphoto: a.jpg, my bed.png\n---").photos == ("a.jpg", "my bed.png")


@pytest.mark.parametrize("text", ["Möhre", "récolte", "プランター", "nach den Eisheiligen", "Mo\u0308hre"])
def test_p53_all_scripts_are_kept(text: str) -> None:
    found = entry(f"---\ntitle: {text}\nbed: {text}\n---\n{text}", "2024-05-01.md")
    assert (found.title, found.beds[0].name, found.body) == (text, text, text)


def test_p54_the_hemisphere_comes_from_the_settings() -> None:
    south = GARDEN + "    place: {latitude: -37.8}\n"
    assert span(entry("---\ndate: winter 2024\n---", "x.md", south).when) == "2024-06-01..2024-08-31"


def test_p55_a_text_that_mentions_a_garden_is_prose() -> None:
    found = entry("My digital garden of notes\n\n- build the sauna\n- weed the garden", "2024-05-01.md")
    assert (found.actions, told(found)) == ((), [])


def test_p60_a_private_note_and_a_private_line_are_marked() -> None:
    found = entry("---\nprivate: yes\nby: Anna\n---\nNext door.", "2024-05-01.md")
    assert (found.is_private, found.by) == (True, "Anna")
    line = entry("---\nwork:\n  - picked peas from Arch, private\n---\n", "2024-05-01.md")
    assert line.actions[0].is_private


def test_p63_a_vague_last_entry_is_a_coarse_date() -> None:
    found = entry("~Late July\n\n# Agostro\n- x", "2024.md")
    assert (span(found.when), found.date_from) == ("2024-07-21..2024-07-31", "first line")


def test_p64_two_sowings_and_a_buying_are_three_actions() -> None:
    found = entry(
        "---\ncrop: kale\nbed: Arch\nwork:\n  - sowed, 2 February\n  - bought 6\n  - sowed again\n---",
        "2024-05-01.md",
    )
    assert [a.verb for a in found.actions][:2] == ["sowed", "bought"]


# --- Rules of the grammar ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("path", "day"),
    [
        ("2026/06-20-long-border.md", "2026-06-20"),
        ("2026/06/20 x.md", "2026-06-20"),
        ("2026-06/20.txt", "2026-06-20"),
        ("2026-06-20.md", "2026-06-20"),
        ("20260620 peas.md", "2026-06-20"),
        ("9_avr_2024_salade.md", "2024-04-09"),
        ("2024/12 mai.md", "2024-05-12"),
        ("2026-06 log.md", "2026-06-01..2026-06-30"),
        ("2026/peas.md", "2026-01-01..2026-12-31"),
        ("spring 2024.md", "2024-03-01..2024-05-31"),
        ("peas.md", None),
    ],
)
def test_the_date_may_stand_in_the_file_name(path: str, day: str | None) -> None:
    assert span(entry("text", path).when) == day


def test_an_impossible_date_in_a_file_name_is_told() -> None:
    assert told(entry("x", "2026-02-30-x.md")) == [
        "error: date: In the file name: 30 February 2026 does not exist."
    ]


def test_list_lines_count_only_without_work_or_under_a_dated_heading() -> None:
    found = entries("""
        ---
        date: 2026-06-20
        work:
          - watered Arch
        ---
        - picked peas from Arch

        # 12 June
        - picked kale from North
        """)
    assert [all_done(e) for e in found] == [["watered in Arch"], ["picked kale in North"]]
    assert days(found) == ["2026-06-20", "2026-06-12"]


def test_a_list_line_keeps_its_own_date_and_place_in_the_file() -> None:
    found = entry(
        "Fine day.\n\n1. 12 June: picked peas\n   from Arch\n2) [x] picked kale from North", "2026/06-20.md"
    )
    assert all_done(found) == ["picked pea in Arch", "picked kale in North"]
    assert [(span(a.when), a.at.line, a.at.column, a.field) for a in found.actions] == [
        ("2026-06-12", 3, 4, "body"),
        (None, 5, 8, "body"),
    ]


def test_lines_in_code_and_quotes_of_code_do_not_count() -> None:
    assert entry("```\n- picked peas from Arch\n# 3 May 2024\n```", "2024-05-01.md").actions == ()


def test_a_dated_bullet_with_lines_under_it_is_a_part() -> None:
    found = entries(
        "- 12 June 2024\n  - picked peas from Arch\n- 13 June 2024\n  - picked kale from North", "log.md"
    )
    assert days(found) == ["2024-06-12", "2024-06-13"]
    assert all_done(found) == ["picked pea in Arch", "picked kale in North"]


def test_a_list_that_a_date_breaks_off_is_closed() -> None:
    found = entries("- picked peas from Arch\n# 12 June 2024\n  and then?\n", "log.md")
    assert (all_done(found), found[1].body) == (["picked pea in Arch"], "  and then?")


def test_header_lists_pair_and_share() -> None:
    paired = entry("---\ncrop: [pea, kale]\nvariety: [Meteor, Nero]\nbed: Arch\ndid: sowed\n---")
    assert all_done(paired) == ["sowed pea 'Meteor' in Arch", "sowed kale 'Nero' in Arch"]
    assert all_done(entry("---\ncrop: pea\nbed: [Arch, North]\ndid: sowed\n---")) == [
        "sowed pea in Arch",
        "sowed pea in North",
    ]
    assert all_done(entry("---\ncrop: pea\nbed: Arch\ndid: [sowed, watered]\n---"))[0] == "sowed pea in Arch"


def test_header_lists_of_unequal_length_are_a_question_and_never_every_combination() -> None:
    found = entry("---\ncrop: [pea, kale]\nbed: [Arch, North, Top bed]\ndid: sowed\n---")
    assert all_done(found) == ["sowed pea in Arch", "sowed kale in North"]
    assert told(found) == [
        "4 question: did: These lists differ in length (2 of crop, 3 of bed), so what belongs together is not "
        'clear. They are paired in order; "work:" lines say it plainly.'
    ]


def test_one_amount_beside_several_crops_is_a_question_and_stays_one_action() -> None:
    found = entry("---\ncrop: [pea, kale]\namount: 2 kg\ndid: picked\nagain: yes\npart: foot\n---")
    assert all_done(found) == ["picked pea kale (2 kg)"]
    assert found.actions[0].is_together
    assert told(found) == [
        '3 question: amount: "2 kg" stands beside 2 crops. Which of them is it for?',
        '5 question: again: "yes" stands beside 2 crops. Which of them is it for?',
        '6 question: part: "foot" stands beside 2 crops. Which of them is it for?',
    ]


def test_amounts_pair_with_crops_or_measure_one_crop_in_several_ways() -> None:
    assert all_done(entry("---\ncrop: [pea, kale]\namount: [1 kg, 2 kg]\ndid: picked\n---")) == [
        "picked pea (1 kg)",
        "picked kale (2 kg)",
    ]
    assert all_done(entry("---\ncrop: pea\namount: [12, 1.4 kg]\ndid: picked\n---")) == [
        "picked pea (12, 1.4 kg)"
    ]


def test_several_dates_pair_with_what_was_done() -> None:
    found = entry(
        "---\ndate: [2026-04-01, 2026-05-02]\ncrop: pea\nbed: Arch\ndid: [sowed, picked]\n---", "x.md"
    )
    assert [(a.verb, span(a.when)) for a in found.actions] == [
        ("sowed", "2026-04-01"),
        ("picked", "2026-05-02"),
    ]


def test_did_and_work_are_both_events_and_the_header_serves_lines_that_lack_it() -> None:
    found = entry(
        "---\nbed: Long border, north half\ncrop: beetroot 'Boltardy'\ndid: sowed\nwork:\n  - thinned\n---"
    )
    assert all_done(found) == [
        "sowed beetroot 'Boltardy' in Long border, north half",
        "thinned beetroot 'Boltardy' in Long border, north half",
    ]


def test_an_amount_without_anything_done_is_asked_about() -> None:
    found = entry("---\ncrop: pea\namount: 2 kg\n---")
    assert told(found) == [
        '3 question: amount: An amount stands here, but not what was done. Add a line such as "did: picked".'
    ]


def test_a_bed_within_one_slip_is_a_question_and_another_is_new() -> None:
    found = entry("---\nbed: [Nroth, Far corner]\n---")
    assert [(b.key, b.sureness) for b in found.beds] == [
        ("north", Sureness.DOUBTFUL),
        ("far-corner", Sureness.NEW),
    ]
    assert told(found) == [
        '2 question: bed: No bed is called "Nroth"; read as "North".',
        '2 hint: bed: "Far corner" is a new bed.',
    ]


def test_a_misspelt_key_is_kept_with_a_hint_and_a_plural_is_taken() -> None:
    found = entry("---\nvarety: Meteor\ncrops: [pea, kale]\n---")
    assert found.extra == (("varety", "Meteor"),)
    assert [c.name for c in found.crops] == ["pea", "kale"]
    assert told(found) == [
        '2 hint: varety: "varety" is kept and shown, but not used. Did you mean "variety"?'
    ]


def test_lessons_come_from_the_key_the_body_and_remarks_but_not_from_private_lines() -> None:
    found = entry("""
        ---
        lesson: Cover the carrots.
        work:
          - picked peas from Arch, next year sow them in March
          - picked kale from North, next year ask Berta first, private
        ---
        A dry month. Next year we water
        from the butt. It went well.

        - Next time: fewer courgettes
        """)
    assert found.lesson == (
        "Cover the carrots.",
        "Next year we water from the butt.",
        "Next time: fewer courgettes",
        "next year sow them in March",
    )


def test_again_title_and_settled() -> None:
    found = entry("---\nagain: maybe\ntitle: A day\nsettled: as is\nbed: Nroth\n---")
    assert (found.again, found.title, found.is_settled, told(found)) == ("perhaps", "A day", True, [])


def test_a_note_without_a_date_is_an_error_if_something_was_done() -> None:
    found = entry("- picked peas from Arch", "peas.md")
    assert all_done(found) == ["picked pea in Arch"]
    assert [p.level for p in found.problems] == [Level.ERROR]


def test_an_intro_above_dated_parts_is_kept_without_a_question() -> None:
    found = entries("How we sow.\n\n# 3 May 2024\n- picked peas from Arch", "peas.md")
    assert [(e.body, span(e.when)) for e in found] == [
        ("How we sow.", None),
        ("- picked peas from Arch", "2024-05-03"),
    ]
    assert told(found) == []


def test_an_empty_note_is_no_entry() -> None:
    assert entries(" \n\n") == ()


def test_two_files_of_one_name_keep_two_ids() -> None:
    files = [note_file("a", "2026/06-20-x.md"), note_file("b", "2026/06-20-x.txt")]
    assert [e.id for e in read_all(files, habits(), None)] == ["2026/06-20-x", "2026/06-20-x.txt"]


def test_varieties_named_surely_are_learned_with_their_crops() -> None:
    found = entries("- sowed pea 'Meteor' in Arch\n- sowed pea 'Kelvedon'? in Arch", "2024-05-01.md")
    assert [(name, known.of) for name, known in learned_varieties(found)] == [("Meteor", ("pea",))]


def test_learned_varieties_change_the_second_reading() -> None:
    learned = learned_varieties(entries("- sowed pea 'Meteor' in Arch", "2024-05-01.md"))
    again = Habits(vocabulary=habits().vocabulary.with_names(learned), order="day first")
    (found,) = read_all([note_file("- sowed Meteor in Arch", "2024-05-02.md")], again, None)
    assert [v.name for v in found.actions[0].varieties] == ["Meteor"]
