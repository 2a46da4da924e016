"""Lines without a list mark: those jotted down one by one count, sentences that run on stay prose."""

from __future__ import annotations

import pytest

from leafmould.garden.view import View
from leafmould.garden.visible import visible_entries
from notes_as_typed import all_done, entries, entry, told


def test_the_shortest_note_is_a_date_in_the_file_name_and_a_line_for_each_thing_done() -> None:
    found = entry(
        "picked 1.2 kg pea 'Meteor' from Arch, gave away 400 g\n"
        "cleared spinach from Long border, north half\n"
        "saw aphids on broad bean in Arch\n",
        "2026-06-20.txt",
    )
    assert all_done(found) == [
        "picked pea 'Meteor' (1.2 kg) in Arch",
        "cleared spinach in Long border, north half",
        "saw broad bean in Arch",
    ]
    assert [(a.at.line, a.at.column, a.field) for a in found.actions] == [(n, 1, "body") for n in (1, 2, 3)]
    assert found.problems == ()


@pytest.mark.parametrize(
    "text",
    [
        "picked peas from Arch",
        "Picked peas from Arch.",
        "\n\n  picked peas from Arch\n",
        "too hot to write\npicked peas from Arch\nfirst lizard",
        "Not a drop for three weeks.\nPicked peas from Arch.\nThen home.",
        "# Arch\n\npicked peas",
        "Arch:\npicked peas",
        "20 June 2026\npicked peas from Arch",
    ],
)
def test_a_line_that_stands_for_itself_counts(text: str) -> None:
    assert all_done(entry(text, "2026-06-20.md")) == ["picked pea in Arch"]


def test_lines_below_a_date_count_for_that_day() -> None:
    found = entries("12 June 2026\npicked peas from Arch\n\n14 June 2026\nsowed kale in North", "log.txt")
    assert [(str(e.when and e.when.first), all_done(e)) for e in found] == [
        ("2026-06-12", ["picked pea in Arch"]),
        ("2026-06-14", ["sowed kale in North"]),
    ]


def test_list_lines_and_bare_lines_keep_their_order() -> None:
    found = entry("picked peas from Arch\n\n- sowed kale in North\n\nwatered Top bed", "2026-06-20.md")
    assert all_done(found) == ["picked pea in Arch", "sowed kale in North", "watered in Top bed"]


def test_among_lines_jotted_down_one_that_is_not_understood_is_told_and_stops_no_other() -> None:
    text = "picked 6 trays of something the neighbours left\npicked peas from Arch\nwatered North\nhmm, peas"
    found = entry(text, "2026-06-20.txt")
    assert all_done(found) == ["picked neighbours (6 trays)", "picked pea in Arch", "watered in North"]
    assert [words.text for words in found.words] == ["hmm, peas"]
    assert told(found) == [
        '1 hint: body: "neighbours" is no crop known here, so its family is not known.',
        '4 question: body: What was done with "peas"? No action is named, so the line is kept as text.',
    ]


def test_a_list_of_things_done_is_work_line_by_line() -> None:
    text = "- planted 4 kale in Sunny bed\n- dug 4 kg potatoes from Arch for Christmas dinner\n- leeks next\n"
    found = entry(text, "2026-06-20.md")
    assert all_done(found) == ["planted kale (4) in Sunny bed", "picked potato (4 kg) in Arch"]
    assert told(found) == [
        '1 hint: body: "Sunny bed" is a new bed.',
        '3 question: body: What was done with "leeks"? No action is named, so the line is kept as text.',
    ]


def test_a_list_of_other_things_is_prose() -> None:
    text = "- 12 leek plants\n- picked up the children\n- feed every week\n- sowed peas in Arch\n"
    found = entry(text, "2026-06-20.md")
    assert (all_done(found), found.words, told(found)) == (["sowed pea in Arch"], (), [])


def test_a_bed_named_by_a_letter_ends_its_line() -> None:
    found = entry("sowed spinach in Raised bed A\nwatered Arch", "2026-06-20.txt")
    assert all_done(found) == ["sowed spinach in Raised bed A", "watered in Arch"]


def test_a_sentence_that_begins_with_a_verb_stays_prose_if_it_asks_something() -> None:
    text = "Picked up where we left off in Arch last year and went on digging."
    assert all_done(entry(text, "2026-06-20.txt")) == []


@pytest.mark.parametrize(
    "text",
    [
        "In the years when my father was alive and the boys small, we\n"
        "picked peas from Arch\n"
        "before breakfast and ate them on the wall.",
        "Berta says that in her first summer here she\nsowed kale in North\nand never saw one leaf of it.",
        "The peas are covered with the old bed springs against the jays.",
        "We picked peas from Arch.",
        "I had thought of it all winter, but nobody\nplanted kale in North\n",
        "picked peas from Arch\nwould be a fine thing to write today",
        "picked peas from Arch\nthat is what I would like to write, but the pigeons were here before us",
        "Yesterday evening Jory and the girls, against my advice\npicked peas from Arch",
        "by the light of the lamp and with cold fingers they at last, so it is told,\npicked peas from Arch",
        "> picked peas from Arch",
        "typed on the machine:\n\n    picked peas from Arch",
        "| picked peas from Arch | 3 |",
        "```\npicked peas from Arch\n```",
        "- a list, and what hangs on it, of which nobody\npicked peas from Arch",
        "20 June 2026: it is the day on which our neighbour always\npicked peas from Arch",
    ],
)
def test_a_sentence_that_runs_over_lines_stays_prose(text: str) -> None:
    found = entries(text, "2026-06-20.md")
    assert all_done(found) == []
    assert [told(e) for e in found] == [[] for _ in found]


def test_below_a_header_only_list_lines_count() -> None:
    text = "---\ndate: 2026-06-20\nby: Berta\n---\npicked peas from Arch\n\n- sowed kale in North\n"
    assert all_done(entry(text, "x.txt")) == ["sowed kale in North"]


def shown(text: str, path: str = "2026-06-20.txt") -> list[tuple[list[str], str]]:
    seen = visible_entries(entries(text, path), View(household=False))
    return [(all_done(e), e.body) for e in seen]


def test_a_private_line_takes_no_other_line_along_in_public() -> None:
    text = "picked peas from Arch\nsowed kale in North, private\nwatered Top bed"
    assert shown(text) == [
        (["picked pea in Arch", "watered in Top bed"], "picked peas from Arch\n\nwatered Top bed")
    ]


@pytest.mark.parametrize(
    "text",
    [
        "Berta hid the key.\nsowed kale in North, private",
        "20 June 2026: picked peas from Arch\nwith somebody who is not to be named, private",
        "- picked peas from Arch\n  with somebody who is not to be named, private",
        "sowed kale in North, private\nHe said so himself.",
    ],
)
def test_prose_beside_a_private_line_goes_with_it(text: str) -> None:
    assert all(done == [] and body.strip() == "" for done, body in shown(text))


@pytest.mark.parametrize(
    ("text", "done"),
    [
        ("Nice day\nlifted garlic Top bed 38 bulbs", ["picked garlic (38 bulbs) in Top bed"]),
        ("Nice day\ndug potatoes North 3 kg", ["picked potato (3 kg) in North"]),
        (
            "J picked raspberries 1.2kg\nlifted garlic North 38 bulbs",
            ["picked raspberry (1.2kg)", "picked garlic (38 bulbs) in North"],
        ),
        ("we picked peas from Arch 1 kg\nhot", ["picked pea (1 kg) in Arch"]),
        (
            "I sowed carrots in Arch and picked peas 1 kg",
            ["sowed carrot in Arch", "picked pea (1 kg) in Arch"],
        ),
    ],
)
def test_a_line_that_gives_its_amount_counts_below_a_short_one_and_behind_who_did_it(
    text: str, done: list[str]
) -> None:
    found = entry(text, "2026-07-20.txt")
    assert (all_done(found), told(found)) == (done, [])


@pytest.mark.parametrize(
    "text",
    [
        "Away for 2 weeks. A jungle. Everything huge: picked 12 courgettes from Arch, 4 kg tomatoes",
        "onions lifted and laid out to dry on the path, 11kg. Sowed winter salad in Arch.",
        "We picked 3 kg peas from Arch.",
        "I sowed carrots in Arch, and then I picked peas 1 kg\nhot",
    ],
)
def test_a_story_in_which_something_is_weighed_is_told_and_not_counted(text: str) -> None:
    found = entry(text, "2026-07-20.txt")
    assert all_done(found) == []
    assert told(found) == [
        "1 hint: body: Something picked seems to be told here, but it reads as a story, so it is not counted. "
        'Write it on a line of its own, with "- " before it, to have it counted.'
    ]


@pytest.mark.parametrize(
    ("line", "lesson"),
    [
        ("lesson: 3 courgettes is too many", "3 courgettes is too many"),
        ("- Lesson: cover the carrots", "cover the carrots"),
        ("next year: potatoes in Arch", "next year: potatoes in Arch"),
    ],
)
def test_a_line_that_opens_as_a_lesson_is_one_and_asks_nothing(line: str, lesson: str) -> None:
    text = f"{line}\nPicked peas from Arch\n{line}\nwatered North\n"
    found = entry(text, "2026-07-20.txt")
    assert (all_done(found), found.lesson, told(found)) == (
        ["picked pea in Arch", "watered in North"],
        (lesson,),
        [],
    )
    found = entry(f"---\nwork:\n  - {line.removeprefix('- ')}\n---\n")
    assert (found.lesson, told(found)) == ((lesson,), [])


def test_a_private_line_keeps_its_lesson_to_itself() -> None:
    assert entry("lesson: ask Berta, private\nwatered North", "2026-07-20.txt").lesson == ()
