"""Entries kept between builds: lossless, and worth nothing as soon as anything differs."""

from __future__ import annotations

import json
from dataclasses import fields, is_dataclass, replace
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leafmould.notes import cache
from leafmould.notes.as_json import from_json, to_json
from leafmould.notes.cache import Kept, habits_digest
from leafmould.notes.entries import Action, Entry, Fate, Named, Sureness, Words
from leafmould.notes.find import NoteFile
from leafmould.notes.read import read_all
from leafmould.values.names import Kind, Known
from leafmould.values.problems import Level, Location, Problem
from leafmould.values.quantities import Amount
from leafmould.values.when import When
from notes_as_typed import habits, note_file

text = st.text(max_size=8)
optional = st.none() | text
texts = st.lists(text, max_size=2).map(tuple)
days = st.dates(date(1, 1, 1), date(9999, 12, 31))
numbers = st.none() | st.floats(allow_nan=False) | st.integers(-9, 9).map(float)
places = st.builds(
    Location, file=text, line=st.none() | st.integers(1, 99), column=st.none() | st.integers(1, 99)
)
whens = st.none() | st.builds(When, first=days, last=days, written=text)
problems = st.builds(
    Problem, at=places, level=st.sampled_from(Level), message=text, field=optional, suggestion=optional
)
amounts = st.builds(
    Amount,
    written=text,
    low=numbers,
    high=numbers,
    unit=text,
    is_about=st.booleans(),
    of=numbers,
    whole=st.none() | st.sampled_from(["all", "half", "some"]),
    measure_g=numbers,
)
named = st.builds(Named, key=text, name=text, written=text, sureness=st.sampled_from(Sureness), of=texts)
names = st.lists(named, max_size=2).map(tuple)
actions = st.builds(
    Action,
    verb=text,
    text=text,
    at=places,
    field=text,
    when=whens,
    until=whens,
    crops=names,
    is_together=st.booleans(),
    varieties=names,
    places=names,
    part=optional,
    amounts=st.lists(amounts, max_size=2).map(tuple),
    fates=st.lists(st.builds(Fate, kind=text, amount=st.none() | amounts), max_size=1).map(tuple),
    wait_days=st.none() | st.integers(0, 99),
    readings=st.lists(st.tuples(text, amounts), max_size=1).map(tuple),
    is_loose=st.booleans(),
    spans=st.lists(st.tuples(text, st.integers(0, 9), st.integers(0, 9)), max_size=2).map(tuple),
)
entries = st.builds(
    Entry,
    id=text,
    at=places,
    when=whens,
    date_from=text,
    title=optional,
    actions=st.lists(actions, max_size=2).map(tuple),
    words=st.lists(st.builds(Words, text=text, at=places, kind=text), max_size=1).map(tuple),
    body=text,
    body_line=st.integers(1, 99),
    beds=names,
    photos=texts,
    lesson=texts,
    extra=st.lists(st.tuples(text, text), max_size=2).map(tuple),
    is_private=st.booleans(),
    problems=st.lists(problems, max_size=2).map(tuple),
)


@given(entries)
def test_entries_go_to_json_and_back_without_loss(entry: Entry) -> None:
    assert from_json(Entry, json.loads(json.dumps(to_json(entry)))) == entry


@pytest.mark.parametrize("kind", [Entry, Action, Named, Amount, When, Problem, Words, Fate, Location])
def test_every_field_of_every_kept_value_has_a_reader(kind: type) -> None:
    assert is_dataclass(kind) and fields(kind)
    for held in ({"nothing": 1}, [], [0], [-1], [2**80, 1], ["x"], [1.5], 3, None, [1, 2, 3]):
        with pytest.raises((TypeError, ValueError, AttributeError, LookupError)):
            from_json(kind, held)


def test_equal_numbers_of_different_types_stay_what_they_are() -> None:
    held = [Amount(written="1", low=low, high=low, unit="kg") for low in (1.0, 1, 2.0, 2)]
    again = [from_json(Amount, json.loads(json.dumps(to_json(amount)))) for amount in held]
    assert [repr(a.low) for a in again] == ["1.0", "1", "2.0", "2"]


NOTES = ["- picked peas from Arch\n", "---\nbed: Arch\ndid: sowed\ncrop: kale\n---\nFine.\n"]


def files() -> list[NoteFile]:
    return [note_file(note, f"2026/06-2{n}.md") for n, note in enumerate(NOTES)]


def test_kept_entries_are_those_read_afresh(tmp_path: Path) -> None:
    first = read_all(files(), habits(), kept := Kept())
    kept.save(tmp_path)
    again = Kept.load(tmp_path)
    assert all(again.entries_of(file, habits()) is not None for file in files())
    assert read_all(files(), habits(), again) == first == read_all(files(), habits(), None)


def test_a_changed_file_changed_habits_or_another_program_are_read_afresh(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    read_all(files(), habits(), kept := Kept())
    kept.save(tmp_path)
    (changed, _) = files()
    assert Kept.load(tmp_path).entries_of(replace(changed, digest="other"), habits()) is None
    assert Kept.load(tmp_path).entries_of(changed, replace(habits(), decimal="comma")) is None
    monkeypatch.setattr(cache, "program_digest", lambda: "newer")
    assert Kept.load(tmp_path).rows == {}


@pytest.mark.parametrize(
    "change",
    [{"order": "month first"}, {"decimal": "comma"}, {"units": "imperial"}, {"is_southern": True}],
)
def test_each_habit_changes_the_key(change: dict[str, object]) -> None:
    assert habits_digest(replace(habits(), **change)) != habits_digest(habits())  # type: ignore[arg-type]


def test_the_vocabulary_changes_the_key() -> None:
    known = Known(kind=Kind.VARIETY, key="X", name="X", of=("pea",))
    more = replace(habits(), vocabulary=habits().vocabulary.with_names([("X", known)]))
    assert habits_digest(more) != habits_digest(habits())


@pytest.mark.parametrize(
    "raw",
    [
        b"",
        b"{",
        b"\n\n",
        b"another program\nkey\tdigest\t[]",
        b"\xff\xfe",
        b"PROGRAM\nkey",
        b"PROGRAM\nkey\tdigest",
        b"PROGRAM" + b"\n" * 100_000,
    ],
)
def test_an_unreadable_cache_is_an_empty_one(tmp_path: Path, raw: bytes) -> None:
    (tmp_path / ".leafmould").mkdir()
    program = cache.program_digest().encode()
    (tmp_path / ".leafmould" / "notes.txt").write_bytes(raw.replace(b"PROGRAM", program))
    assert Kept.load(tmp_path).rows == {}


@pytest.mark.parametrize(
    "row",
    [
        ("another", "[]"),
        ("DIGEST", ""),
        ("DIGEST", "null"),
        ("DIGEST", "["),
        ("DIGEST", "[" * 100_000),
        ("DIGEST", "[{}]"),
        ("DIGEST", "[1]"),
        ("DIGEST", '{"a": 1}'),
        ("DIGEST", "[[]]"),
        ("DIGEST", "[[7]]"),
    ],
)
def test_a_spoilt_row_is_read_afresh(row: tuple[str, str]) -> None:
    (file, _) = files()
    digest, held = row
    digest = digest.replace("DIGEST", file.digest)
    kept = Kept({f"{habits_digest(habits())} {file.path}": (digest, held)})
    assert kept.entries_of(file, habits()) is None


def test_a_name_with_a_tab_or_the_end_of_a_line_in_it_loses_nothing(tmp_path: Path) -> None:
    named = [note_file(NOTES[0], f"2026/06-20{sign}a.md") for sign in ("\t", "\n", "\u2028")]
    first = read_all(named, habits(), kept := Kept())
    kept.save(tmp_path)
    again = Kept.load(tmp_path)
    assert [again.entries_of(file, habits()) is not None for file in named] == [True, False, True]
    assert read_all(named, habits(), again) == first


def test_saving_leaves_no_scraps_and_forgets_notes_that_are_gone(tmp_path: Path) -> None:
    read_all(files(), habits(), kept := Kept())
    kept.save(tmp_path)
    before = (tmp_path / ".leafmould" / "notes.txt").stat().st_mtime_ns
    again = Kept.load(tmp_path)
    read_all(files(), habits(), again)
    again.save(tmp_path)
    assert (tmp_path / ".leafmould" / "notes.txt").stat().st_mtime_ns == before
    fewer = Kept.load(tmp_path)
    read_all(files()[:1], habits(), fewer)
    fewer.save(tmp_path)
    assert len(Kept.load(tmp_path).rows) == 1
    assert [p.name for p in (tmp_path / ".leafmould").iterdir()] == ["notes.txt"]


def test_a_file_that_cannot_be_opened_is_never_remembered() -> None:
    (file, _) = files()
    kept = Kept()
    read_all([replace(file, digest="")], habits(), kept)
    assert kept.used == {}
