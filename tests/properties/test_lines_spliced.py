"""Lines put together from pieces of others: whatever comes of it, it is a reading and never a fault of ours."""

from __future__ import annotations

import random
import re

import pytest

from leafmould.notes.habits import Defaults, Habits
from leafmould.notes.lines import read_line
from line_cases import AT, BASE, FOLDER
from line_garden import VOCABULARY
from long_runs import LONG

HABITS = Habits(vocabulary=VOCABULARY, order="day first", decimal="point", units="metric")
LINES = [
    row[2:].strip()
    for file in sorted(FOLDER.glob("*.txt"))
    for row in file.read_text("utf-8").splitlines()
    if row.startswith("> ")
]
PIECES = [piece for line in LINES for piece in re.split(r"(?<=[,;.]) | and | then ", line) if piece.strip()]
MANY = 3_000 * LONG


def read(line: str) -> None:
    read_line(line, at=AT, field="body", base=BASE, habits=HABITS, defaults=Defaults())


@pytest.mark.parametrize(
    "line",
    [
        "Carrot fly in about a third of the carrots from Arch, kept 1.5 kg good ones, rest to the compost",
        "3 kg potatoes from Top bed, blight, kept 1 kg",
        "slugs on 3 lettuces from Arch, kept 2 kg",
        "wasps in 2 kg plums from Old pear, made jam",
    ],
)
def test_troubles_beside_an_amount_without_a_verb(line: str) -> None:
    read(line)


def test_pieces_of_lines_in_any_order() -> None:
    chance = random.Random(917)
    for _ in range(MANY):
        read(", ".join(chance.sample(PIECES, chance.choice((2, 3)))))


def test_the_head_of_one_line_and_the_tail_of_another() -> None:
    chance = random.Random(918)
    for _ in range(MANY):
        head, tail = chance.choice(LINES).split(), chance.choice(LINES).split()
        read(" ".join(head[: chance.randint(1, len(head))] + tail[chance.randint(0, len(tail) - 1) :]))


def test_lines_that_lack_a_word_or_two() -> None:
    chance = random.Random(919)
    for _ in range(MANY):
        words = chance.choice(LINES).split()
        for _ in range(chance.choice((1, 2))):
            words.pop(chance.randrange(len(words)))
            if not words:
                break
        if words:
            read(" ".join(words))
