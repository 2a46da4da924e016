"""Laws of the matching, over gardens put together from typed lines.

Source of the laws: the rules for matching lines to plantings; no outside source.
"""

from __future__ import annotations

import random
from collections import Counter
from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from gardens import TANSY_HILL, day_notes, entries_of, garden_of, stories
from leafmould.facts.tables import crops
from leafmould.garden.assemble import assemble
from leafmould.garden.model import Garden
from leafmould.notes.entries import Action, Entry, Fate, Named, Sureness
from leafmould.values.problems import Location
from leafmould.values.quantities import Amount
from leafmould.values.when import When

CROPS = (
    "peas",
    "pea 'Meteor'",
    "carrots",
    "tomatoes",
    "tomato 'Stupice'",
    "beans",
    "runner beans",
    "kale",
    "rhubarb",
)
BEDS = ("Arch", "Long border, north half", "Long border", "Hoop bed", "Tub 1", "Sun terrace")
FORMS = (
    "started 12 {crop} in Cold frame", "started {crop}", "sowed {crop} in {bed}", "sowed {crop} in {bed}",
    "planted 6 {crop} in {bed}", "planted {crop} in {bed}", "resowed {crop} in {bed}",
    "{crop} in {bed} came up", "thinned {crop} in {bed}", "picked 1.2 kg {crop} from {bed}",
    "picked 300 g {crop}", "picked 12 {crop} from {bed}, gave away 4", "picked {crop} from {bed}",
    "ate 200 g {crop}", "cleared {bed}", "cleared {crop} from {bed}", "lost 2 {crop} in {bed}", "lost {crop}",
    "fed {bed} with seaweed", "covered {bed} with fleece", "treated {crop} in {bed} with soap", "weeded {bed}",
    "moved 3 {crop} from {bed} to Tub 2", "saw aphids on {crop} in {bed}", "bought 6 {crop}", "frost −3",
    "{crop} in {bed} finished", "grew {crop} in {bed} (2023)", "watered everything",
)  # fmt: skip

lines = st.builds(lambda form, crop, bed: form.format(crop=crop, bed=bed), st.sampled_from(FORMS), st.sampled_from(CROPS), st.sampled_from(BEDS))  # fmt: skip
days = st.integers(0, 700).map(lambda n: date(2025, 2, 1) + timedelta(days=n))
gardens = st.dictionaries(days, st.lists(lines, min_size=1, max_size=4), min_size=1, max_size=12)


def notes(typed: dict[date, list[str]]) -> dict[str, str]:
    """One note a day, as typed."""
    return day_notes("\n".join(f"{day}\n" + "\n".join(f"- {line}" for line in typed[day]) for day in typed))


@given(gardens, st.randoms(use_true_random=False))
def test_the_order_of_files_and_lines_does_not_matter(
    typed: dict[date, list[str]], mixer: random.Random
) -> None:
    mixed_days = list(typed)
    mixer.shuffle(mixed_days)
    mixed = {day: mixer.sample(typed[day], len(typed[day])) for day in mixed_days}
    assert Counter(stories(garden_of(notes(typed)))) == Counter(stories(garden_of(notes(mixed))))


@given(gardens, st.lists(lines, min_size=1, max_size=4), st.integers(1, 400))
def test_a_later_note_changes_no_written_date_and_no_id(
    typed: dict[date, list[str]], later: list[str], wait: int
) -> None:
    day = max(typed) + timedelta(days=wait)
    before = garden_of(notes(typed), on=date(2028, 6, 1))
    after = garden_of(notes(typed | {day: later}), on=date(2028, 6, 1))
    for planting in before.plantings:
        if planting.origin in ("started", "unknown"):
            continue  # a batch may be planted out, a picking explained by a start soon after
        now = after.planting_by_id[planting.id]
        for name in ("started", "sown", "planted", "found", "first_picked", "cleared"):
            assert getattr(planting, name) in (None, getattr(now, name)), name
        assert planting.start == now.start


@given(gardens)
def test_every_action_ends_in_one_planting_group_crop_or_question(typed: dict[date, list[str]]) -> None:
    garden = garden_of(notes(typed), on=date(2028, 6, 1))
    done = [(entry.id, action.text) for entry in entries_of(notes(typed)) for action in entry.actions]
    assert sorted((event.entry, event.action.text) for event in garden.events) == sorted(done)
    for event in garden.events:
        assert not (event.plantings and event.group), event
        assert event.group is None or event.group in garden.plantings_by_group, event
        for id in event.plantings:
            assert event.id in garden.planting_by_id[id].events
        asked = {(problem.at.file, problem.at.line) for problem in garden.problems}
        is_placed = event.plantings or event.group or event.crops or event.beds
        assert (
            is_placed or _needs_no_crop(event.action) or (event.action.at.file, event.action.at.line) in asked
        )
        assert set(event.crops) <= set(garden.crops)
        assert set(event.beds) <= set(garden.beds)
    for planting in garden.plantings:
        for id in planting.events:
            assert planting.id in garden.event_by_id[id].plantings


def _needs_no_crop(action: Action) -> bool:
    return action.everything or action.verb == "noted weather"


@given(gardens)
def test_what_was_picked_is_the_sum_of_the_pickings(typed: dict[date, list[str]]) -> None:
    garden = garden_of(notes(typed))
    for planting in garden.plantings:
        pickings = [garden.picking_by_id[id] for id in planting.pickings]
        assert {p.planting for p in pickings} <= {planting.id}
        weights = [p.grams for p in pickings if p.grams is not None]
        assert planting.picked_g == (sum(weights) if weights else None)
        for total in planting.picked:
            written = [
                a for p in pickings for a in p.amounts if (a.unit in ("g", "kg")) == (total.unit == "kg")
            ]
            had = sum((a.grams or 0) / 1000 if total.unit == "kg" else a.value or 0 for a in written)
            assert abs((total.value or 0) - had) < 1e-9
    attached = Counter(id for planting in garden.plantings for id in planting.pickings)
    assert all(attached[p.id] == (1 if p.planting else 0) for p in garden.pickings)


@given(gardens)
def test_assembling_twice_gives_the_same_garden(typed: dict[date, list[str]]) -> None:
    assert garden_of(notes(typed)) == garden_of(notes(typed))


@given(gardens)
def test_ids_are_unique_and_ends_follow_starts(typed: dict[date, list[str]]) -> None:
    garden = garden_of(notes(typed))
    assert len(garden.planting_by_id) == len(garden.plantings)
    for planting in garden.plantings:
        assert planting.end_is_estimated is False or (
            planting.ended_on is not None and planting.cleared is None
        )
        if planting.ended_on is not None and planting.in_bed_from is not None:
            assert planting.in_bed_from.first <= planting.ended_on <= garden.on


VERBS = (
    "started", "sowed", "resowed", "came up", "pricked out", "potted on", "hardened off", "planted", "grew",
    "covered", "uncovered", "netted", "thinned", "weeded", "watered", "staked", "tied in", "pinched out",
    "earthed up", "mulched", "fed", "limed", "acidified", "manured", "dug in", "pruned", "cut back", "bagged",
    "grafted", "divided", "moved", "took cuttings", "saved seed", "turned out", "picked", "finished", "cleared",
    "lost", "gave away", "ate", "composted", "stored", "put up", "used", "saw", "treated", "tested soil",
    "tried seed", "penned", "let out", "collected", "released", "opened", "bought", "fed animals",
    "noted weather", "no such verb",
)  # fmt: skip

names = st.builds(
    lambda word, sureness, of: Named(key=word, name=word, written=word, sureness=sureness, of=of),
    st.sampled_from(
        ("pea", "tomato", "bean", "oca", "", "rhubarb", "arch", "tub-1", "old-pear", "?", "a, b")
    ),
    st.sampled_from(Sureness),
    st.sampled_from(((), ("runner-bean", "french-bean"), ("no-such-crop",))),
)
numbers = st.none() | st.floats(0, 1e6) | st.integers(0, 99).map(float)
amounts = st.builds(
    lambda low, unit, of, whole: Amount(written="?", low=low, high=low, unit=unit, of=of, whole=whole),
    numbers,
    st.sampled_from(("kg", "g", "piece", "seedling", "tray", "row", "°C", "")),
    numbers,
    st.sampled_from((None, "all", "half", "the rest", "the last", "some", "a few")),
)
whens = st.builds(
    lambda first, span: When(first=first, last=first + timedelta(days=span), written="2025"),
    st.dates(date(2024, 1, 1), date(2027, 12, 31)),
    st.sampled_from((0, 0, 9, 30, 364)),
)
few_names = st.lists(names, max_size=3).map(tuple)
actions = st.builds(
    Action,
    verb=st.sampled_from(VERBS),
    text=st.sampled_from(("a", "b", "thinned to 20")),
    at=st.builds(Location, file=st.just("notes/n.md"), line=st.integers(1, 4)),
    field=st.just("work[0]"),
    when=st.none() | whens,
    crops=few_names,
    is_together=st.booleans(),
    varieties=few_names,
    places=few_names,
    origins=few_names,
    part=st.sampled_from((None, "north half", "tree 3", "")),
    amounts=st.lists(amounts, max_size=2).map(tuple),
    fates=st.lists(st.builds(Fate, kind=st.just("ate"), amount=st.none() | amounts), max_size=2).map(tuple),
    subject=st.sampled_from((None, "self-sown", "frost", "first flower", "")),
    batch=st.sampled_from((None, "first sowing", "March sowing", "may")),
    everything=st.booleans(),
    but=few_names,
)
entries = st.builds(
    Entry,
    id=st.uuids().map(str),
    at=st.just(Location(file="notes/n.md", line=1)),
    when=st.none() | whens,
    date_from=st.just("header"),
    actions=st.lists(actions, max_size=5).map(tuple),
    beds=few_names,
    crops=few_names,
)


@given(st.lists(entries, max_size=8))
def test_nothing_ever_raises(soup: list[Entry]) -> None:
    garden = assemble(TANSY_HILL, tuple(soup), crops(), on=date(2027, 6, 1))
    assert isinstance(garden, Garden)
    assert len(garden.events) == sum(1 for e in soup for a in e.actions if _is_dated(e, a))


def _is_dated(entry: Entry, action: Action) -> bool:
    when = action.when or entry.when
    has_begun = entry.when is None or entry.when.first <= date(2027, 6, 1)
    return has_begun and when is not None and when.first <= date(2027, 6, 1)
