"""Whatever is typed, reading ends in entries, settings and sentences: never a traceback, nothing lost.

Sound texts are spoilt by chance, with fixed seeds: letters and signs put in, cut out, doubled, lines and
halves of other texts mixed. 5,000 texts for each reader; the long run takes ten times as many.
"""

from __future__ import annotations

import random
import re
from collections.abc import Iterable
from datetime import date
from textwrap import dedent

import pytest

from leafmould.notes.beforehand import read_beforehand
from leafmould.notes.crops_file import read_crops
from leafmould.notes.entries import Entry
from leafmould.notes.garden_file import read_garden_file
from leafmould.notes.header import NOTE_KEYS, split_note
from leafmould.notes.note import read_note
from leafmould.notes.seeds_file import read_seeds
from leafmould.notes.text import clean_text, without_comments
from leafmould.values.dates import read_date, scan_date
from leafmould.values.problems import Problem, UnreadableGarden
from leafmould.values.when import When
from long_runs import LONG
from notes_as_typed import GARDEN, habits, note_file
from test_headers import WORK
from test_settings import BAD, CROPS, DESIGN

SEEDS = range(5)
TEXTS_A_SEED = 1_000 * LONG

NOTES = [
    dedent(WORK).strip(),
    "---\ndate: 2026-06-20\nbed: [Arch, Long border, north half]\ncrop: [pea, kale]\nvariety: [Meteor, 'No']\n"
    "did: sowed\namount: [2 rows, 1.4 kg]\nphoto: a.jpg\ntags: [a, b]\nprivate: no\nagain: yes\nlesson: next year\n"
    "odd: {a: [1, 2]}\n---\nText <!-- secret --> here. Next year more.\n\n- picked peas from Arch\n",
    "# Plot log 2022\n\nIntro\n\n# 12 mai\n## Balcony\n- sowed peas\n  in Arch\n\nJune 3 - 2 beans gone\n",
    "2023-05-11: netted the kale.\n\n**12 June 2023**\n- 3/4: picked kale, gave away half\n- 13 June\n  - watered\n",
    "---\nnote: peas: sown\nx: 'a' b\ny: *z\nw:\ttab\nlist:\n  - a\n  - [b\nbed: #3\n---\nbody\n",
]
SCRAPS = [
    "\n", "\n\n", "---\n", "- ", "  ", "\t", ": ", ":", "#", " #3", "'", '"', "[", "]", "{", "}", "*", "&a ", "!", "|",
    "> ", "<!--", "-->", "\\", "é", "ö", "ß", "½", "トマト", "\u0308", "\ufeff", "\x07", "\x85", "\u2028", "🍅", "0",
    "99999999999999999999", "2026-02-30", "12 June", "29 Feb 2023", "1/2/3", "1,200", "work:\n", "date: ", "bed: ",
    "private: ", "```\n", "# ", "...", "—-\n", "~", "?", "%", "@", "\r", ",", ";", "-1", "inf", "x" * 300, "[" * 40,
]  # fmt: skip


def spoilt(chance: random.Random, texts: list[str]) -> str:
    """A text with a few things wrong with it."""
    text = chance.choice(texts)
    for _ in range(chance.choice((1, 1, 2, 3, 5, 8))):
        a, b = sorted((chance.randrange(len(text) + 1), chance.randrange(len(text) + 1)))
        kind = chance.randrange(6)
        if kind < 3:
            text = text[:a] + chance.choice(SCRAPS) + text[a:]
        elif kind == 3:
            text = text[:a] + text[min(b, a + 20) :]
        elif kind == 4:
            text = text[:a] + text[a : a + 30] * 2 + text[a + 30 :]
        else:
            other = chance.choice(texts)
            text = text[:a] + other[chance.randrange(len(other) + 1) :]
    return text[:6000]


def texts_of(seed: int, texts: list[str]) -> Iterable[str]:
    chance = random.Random(seed)
    return (spoilt(chance, texts) for _ in range(TEXTS_A_SEED))


def are_sentences(problems: Iterable[Problem]) -> None:
    """Each problem is one line that ends like a sentence and is not endless."""
    for problem in problems:
        assert problem.message.endswith((".", "?")), problem
        assert "\n" not in problem.sentence and len(problem.sentence) < 1200, problem


@pytest.mark.parametrize("seed", SEEDS)
def test_notes_end_in_entries_with_nothing_lost(seed: int) -> None:
    for number, text in enumerate(texts_of(seed, NOTES)):
        path = ("2026/06-20-x.md", "log.md", "2024.txt")[number % 3]
        file = note_file(text.encode("utf-8", "surrogatepass"), path)
        found = read_note(file, habits())
        are_sentences(problem for entry in found for problem in entry.problems)
        assert [e.id for e in found] == [
            path.rsplit(".", 1)[0] + (f"#{n}" if n > 1 else "") for n in range(1, len(found) + 1)
        ]
        lines_fit(found)
        nothing_is_lost(file.text, found)


def lines_fit(found: Iterable[Entry]) -> None:
    """Every action read from the body begins on its line of the body."""
    for entry in found:
        rows = entry.body.split("\n")
        for action in entry.actions:
            if action.field == "body" and action.at.line is not None:
                assert action.text.split()[0] in rows[action.at.line - entry.body_line]


WORD = re.compile(r"[a-z]{4,}")


REMARK = re.compile(r"(?:^|\s)#.*")
EMPTY = re.compile(r"^.*:\s*$")
"""In a header a remark, or a key with nothing behind it, says nothing."""


def nothing_is_lost(text: str, found: tuple[Entry, ...]) -> None:
    """Every longer word of the note stands somewhere in its entries, or in what was told about it."""
    parts = split_note(text, "n.md")
    below = "\n" * (parts.body_line - 1) + parts.body
    header = text.split("\n")[: parts.body_line - 1]
    kept = repr(found).casefold()
    for row in without_comments("\n".join(header))[0].split("\n") + below.split("\n"):
        plain = EMPTY.sub("", REMARK.sub("", row)) if row not in below else row
        for word in WORD.findall(plain.casefold()):
            assert word in kept or word in NOTE_KEYS or kept.count("longer than"), (word, row, text)


@pytest.mark.parametrize("seed", SEEDS)
def test_garden_files_end_in_settings_or_one_refusal(seed: int) -> None:
    for text in texts_of(
        seed,
        [
            dedent(DESIGN),
            dedent(BAD),
            dedent(GARDEN),
            "garden: A\nbeds:\n  - A\n  - name: B\n    size: 1 x 2 m\n",
        ],
    ):
        try:
            found = read_garden_file(clean_text(text.encode("utf-8", "surrogatepass"), "garden.yaml"))
        except UnreadableGarden as fault:
            assert fault.sentence.startswith("garden.yaml")
            continue
        are_sentences(found.problems)
        assert all(bed.name for bed in found.beds)


@pytest.mark.parametrize("seed", SEEDS)
def test_crops_files_end_in_crops(seed: int) -> None:
    for text in texts_of(
        seed, [CROPS, "- oca\n- pea\n", "pea: {days: 60, varieties: {A: 3, B: {low: 2, high: 4}}}\n"]
    ):
        crops, problems = read_crops(clean_text(text.encode("utf-8", "surrogatepass"), "crops.yaml").text)
        are_sentences(problems)
        assert all(crop.name for crop in crops)


@pytest.mark.parametrize("seed", SEEDS)
def test_tables_end_in_rows(seed: int) -> None:
    tables = [
        "year,bed,crop\n2021,Arch,pea\n2022,North,kale\n",
        'crop;year;bed;;\n"a; b";2020;"X ""y""";;\nTotal;2;\n',
    ]
    for text in texts_of(seed, tables):
        found, problems = read_beforehand(text)
        are_sentences(problems)
        assert all(row.bed and row.crop and 1800 <= row.year < 2200 for row in found)


@pytest.mark.parametrize("seed", SEEDS)
def test_seed_tins_end_in_packets(seed: int) -> None:
    tins = [
        "crop,variety,year,amount,from,price,tried,note\npea,Meteor,2024,half a packet,swap,2.60,8 of 10 in 2025,old\n",
        "crop;got;amount;tried;tried in\nleek;2023-04-01;1,5 g;75%;2026\nkale;;all used;6/20;\nTotal;;3;;\n",
    ]
    for text in texts_of(seed, tins):
        found, problems = read_seeds(text)
        are_sentences(problems)
        for row in found:
            assert row.crop
            assert row.year is None or 1900 <= row.year < 2100
            assert row.tried is None or (row.came_up is not None and 0 <= row.came_up <= row.tried)
            assert row.grams is None or row.grams >= 0


DATES = [
    "2026-04-12", "12 June 2026", "3/4/2026", "1.4.26", "late August", "spring/summer 2019", "winter 2023/24", "mi-mai",
    "Tue Apr 03 07:12:44 MDT 2018", "yesterday", "last Friday", "29 February", "2024年5月1日", "12 de junio de 2025", "20–22 June",
]  # fmt: skip


@pytest.mark.parametrize("seed", SEEDS)
def test_dates_end_in_a_day_a_fault_or_nothing(seed: int) -> None:
    chance = random.Random(seed)
    for text in texts_of(seed, DATES):
        base = chance.choice((None, When(first=_day(chance), last=_day(chance, late=True), written="x")))
        order = chance.choice((None, "day first", "month first"))
        reading = read_date(text, order=order, base=base, is_southern=chance.random() < 0.5)
        if reading is not None:
            assert (reading.when is None) == (reading.fault is not None)
            assert reading.when is None or reading.when.first <= reading.when.last
        for start in range(0, len(text), 7):
            found = scan_date(text, start)
            assert found is None or found[0].written == text[start : found[1]] != ""


def _day(chance: random.Random, *, late: bool = False) -> date:
    return date(chance.choice((2024, 9999)) if late else chance.choice((1, 1900, 2024)), 2, 28)
