"""More notes as people type them, each of which was once read wrong."""

from __future__ import annotations

import pytest

from notes_as_typed import all_done, entries, entry, span, told


@pytest.mark.parametrize(
    "first_line",
    [
        "12 June 2026",
        "12.6.",
        "12. 6. 2026",
        "Friday 12 June 2026. Hot.",
        "The garden on 12 June 2026",
        "Written on 12 June 2026, in the evening",
    ],
)
def test_the_day_on_the_first_line_beats_the_year_of_the_folder(first_line: str) -> None:
    found = entry(f"{first_line}\n\n- picked peas from Arch", "2026/garden.md")
    assert (span(found.when), found.date_from) == ("2026-06-12", "first line")
    assert (all_done(found), told(found)) == (["picked pea in Arch"], [])


@pytest.mark.parametrize(
    ("text", "path", "day"),
    [
        ("Peas again. On 12 June 2025 they were ripe.", "2026/06-20-x.md", "2026-06-20"),
        ("From 12 June 2026 to 14 June 2026 it rained", "2026/garden.md", "2026-01-01..2026-12-31"),
        ("Berta was born on 12 June 1950", "2026/garden.md", "2026-01-01..2026-12-31"),
        ("We meet again on 12 June", "2026/garden.md", "2026-01-01..2026-12-31"),
    ],
)
def test_a_day_told_in_a_first_sentence_counts_only_where_nothing_else_can_be_meant(
    text: str, path: str, day: str
) -> None:
    found = entry(text, path)
    assert (span(found.when), told(found)) == (day, [])


def test_of_is_part_of_a_name() -> None:
    found = entry("---\ncrop: tomato\nvariety: [Stupice, Ring of Fire]\n---")
    assert [(v.name, v.sureness) for v in found.varieties] == [
        ("Stupice", "known"),
        ("Ring of Fire", "known"),
    ]


def test_next_year_is_a_lesson_also_over_the_end_of_a_line_and_next_years_is_none() -> None:
    found = entry(
        "It lies in the bottom like a pond. Next\nyear nothing tender goes there before June. "
        "The rest of the dose only if next year's test says so. Or next year’s."
    )
    assert found.lesson == ("Next year nothing tender goes there before June.",)


def test_one_question_about_the_order_of_day_and_month_serves_headers_and_lines() -> None:
    text = "---\ndate: 3/4/2026\nwork:\n  - picked peas from Arch, on 1/4\n  - 2/4: watered Arch\n---"
    (found,) = entries(text, "x.md", "garden: G\nbeds: [Arch]")
    assert {p.sentence for p in found.problems} == {
        "garden.yaml: dates: Some dates, such as 3/4/2026, can be read two ways. They are read with the day "
        'first. Write "dates: day first" or "dates: month first".'
    }
    assert [span(a.when) for a in found.actions] == ["2026-04-01", "2026-04-02"]


def test_a_line_that_opens_with_a_day_keeps_it_under_a_header_that_knows_only_the_year() -> None:
    found = entry("---\ndate: 2026\n---\nJune 3 - 2 beans gone", "log.md")
    assert (span(found.when), all_done(found), told(found)) == ("2026-06-03", ["lost bean (2)"], [])


def test_a_list_under_a_broken_key_of_a_header_is_kept_as_text() -> None:
    found = entry("---\n%date: x\n- sowed peas\n  in Arch <!--\ncrop: beetroot -->\n---\n")
    assert [w.text for w in found.words] == ["%date: x", "sowed peas in Arch"]
    assert [(p.at.line, p.message) for p in found.problems] == [
        (2, '"%date: x" is not read: a line here is "key: value".'),
        (3, '"sowed peas in Arch" is not read: a line here is "key: value".'),
    ]


def test_a_mark_without_its_letter_behind_an_amount_does_no_harm() -> None:
    found = entry("---\ndate: 2026-06-20\nwork:\n  - picked 2 \u0308 peas from Arch\n---")
    assert all_done(found) == ["picked pea (2) in Arch"]


@pytest.mark.parametrize(
    ("line", "day"),
    [
        ("30th March. Parsnips sown in North.", "2024-03-30"),
        ("18 May. Parsnips sown in North.", "2024-05-18"),
        ("15 June. Parsnips sown in North.", "2024-06-15"),
        ("9 Nov. Parsnips sown in North.", "2024-11-09"),
        ("31 August; parsnips sown in North", "2024-08-31"),
    ],
)
@pytest.mark.parametrize("between", ["\n", ""])
def test_a_full_stop_or_a_semicolon_behind_a_date_opens_a_part_in_the_year_of_the_part_above(
    line: str, day: str, between: str
) -> None:
    found = entries(f"16 March 2024: sowed peas in Arch\n{between}{line}\n", "diary.txt")
    assert [(str(e.when and e.when.first), all_done(e)) for e in found] == [
        ("2024-03-16", ["sowed pea in Arch"]),
        (day, ["sowed parsnip in North"]),
    ]


@pytest.mark.parametrize(
    "text",
    [
        "16 March 2024\nAfter all this rain nobody will sow before the\n30 March. Berta says so.",
        "16 March 2024\n\n9 Nov. was cold last year.",
    ],
)
def test_a_date_within_a_sentence_opens_no_part(text: str) -> None:
    assert len(entries(text, "diary.txt")) == 1


def test_days_that_run_backward_from_part_to_part_take_the_nearest_year() -> None:
    found = entries("16 March 2024: hot\n\n12 March: hot\n\n9 Nov. Hot.\n\n3 Nov. Hot.\n", "diary.txt")
    days = [str(e.when and e.when.first) for e in found]
    assert days == ["2024-03-16", "2024-03-12", "2023-11-09", "2023-11-03"]


@pytest.mark.parametrize("line", ["first frost, lost beans", "frost, lost beans", "rain, picked peas"])
def test_weather_before_a_comma_is_noted_beside_what_was_done(line: str) -> None:
    found = entry(f"- {line}\n- watered North", "2026-10-20.txt")
    verbs = [action.verb for action in found.actions]
    assert verbs == ["noted weather", line.split()[-2], "watered"]
    assert (found.actions[0].subject, told(found)) == (line.split(",")[0].removeprefix("first "), [])


def test_the_first_frost_needs_no_figure_and_no_mark() -> None:
    found = entry("first frost\nwatered North\nfirst lizard", "2026-10-20.txt")
    assert [action.verb for action in found.actions] == ["noted weather", "watered"]
