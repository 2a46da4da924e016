"""What a public build may show, on entries and settings as the readers give them."""

from __future__ import annotations

from dataclasses import fields, replace
from datetime import date

import pytest

from leafmould.garden.figures import CODE_BEFORE, NUMBER_BEFORE, PRICE, SIGNS
from leafmould.garden.first_look import MONEY_CODES, holding
from leafmould.garden.prose import without
from leafmould.garden.view import View, unknown_words, view_of
from leafmould.garden.visible import visible_entries, visible_settings
from leafmould.notes.entries import Action, Entry, Named, Sureness, Words
from leafmould.notes.setting_values import BedSetting, Beforehand, Settings
from leafmould.values.names import Kind, Known, Vocabulary, slug
from leafmould.values.problems import Level, Location, Problem
from leafmould.values.quantities import Amount
from leafmould.values.when import on

YAML = Location(file="garden.yaml")
BEDS = (
    BedSetting(name="Arch", at=YAML),
    BedSetting(name="Long border", at=YAML, also=("LB",), parts=("north half",)),
    BedSetting(
        name="Back strip", at=YAML, also=("hideaway",), parts=("north half", "gate end"), is_private=True
    ),
)
CROPS = ("pea", "beetroot", "sweet pea", "rocket")
SETTINGS = Settings(name="Hill", latitude=46.512, longitude=6.6, elevation_m=620, beds=BEDS)


def vocabulary(settings: Settings = SETTINGS) -> Vocabulary:
    names = [
        (name, Known(kind=Kind.BED, key=slug(bed.name), name=name))
        for bed in settings.beds
        for name in (bed.name, *bed.also)
    ]
    names += [(crop, Known(kind=Kind.CROP, key=slug(crop), name=crop)) for crop in CROPS]
    names += [("Meteor", Known(kind=Kind.VARIETY, key="Meteor", name="Meteor", of=("pea",)))]
    return Vocabulary(names)


def view(settings: Settings = SETTINGS, *, household: bool = False) -> View:
    return view_of(settings, vocabulary(settings), household=household)[0]


def leaving_out(*words: str) -> View:
    return view(replace(SETTINGS, leave_out=words))


def named(name: str) -> Named:
    return Named(key=slug(name), name=name, written=name)


def action(text: str, verb: str = "picked", line: int = 4, **slots: object) -> Action:
    """An action with a span for each slot given as text that stands in the line."""
    spans = tuple(
        (slot, text.index(words), text.index(words) + len(words))
        for slot, value in slots.items()
        for words in [value if isinstance(value, str) else ""]
        if words and words in text
    )
    crop, place = slots.pop("crop", None), slots.pop("place", None)
    slots = {
        "field": "work[1]",
        "crops": (named(str(crop)),) if crop else (),
        "places": (named(str(place)),) if place else (),
        **slots,
    }
    at = Location(file="notes/2026/06-20-arch.md", line=line)
    return Action(verb=verb, text=text, at=at, spans=spans, **slots)  # type: ignore[arg-type]


def entry(*actions: Action, **parts: object) -> Entry:
    parts.setdefault("id", "2026/06-20-arch")
    at = Location(file=f"notes/{parts['id']}.md", line=1)
    return Entry(at=at, when=on(date(2026, 6, 20)), date_from="file name", actions=actions, **parts)  # type: ignore[arg-type]


def shown(seen: View, *actions: Action, **parts: object) -> Entry:
    """The one entry, as the view shows it; also that showing it again changes nothing."""
    once = visible_entries([entry(*actions, **parts)], seen)
    assert visible_entries(once, seen) == once
    assert len(once) == 1
    return once[0]


def texts(found: Entry) -> list[str]:
    return [a.text for a in found.actions]


def test_a_household_build_shows_everything_unchanged() -> None:
    note = entry(action("picked peas from Back strip", place="Back strip"), is_private=True, by="Rosa")
    assert visible_entries([note], view(household=True)) == (note,)
    assert visible_settings(SETTINGS, view(household=True)) is SETTINGS


def test_a_private_note_is_not_there() -> None:
    assert visible_entries([entry(is_private=True)], view()) == ()


def test_a_private_line_goes_with_all_it_says() -> None:
    line = "picked peas from Arch, weeded Arch, private"
    found = shown(
        view(),
        action(line, crop="pea", place="Arch", is_private=True),
        action(line, "weeded", place="Arch"),
        action("watered Arch", "watered", line=5, field="work[2]", place="Arch"),
    )
    assert texts(found) == ["watered Arch"]


def test_a_line_in_a_private_bed_goes_whatever_it_is_called_there() -> None:
    found = shown(
        view(),
        action("picked peas from Back strip", place="Back strip"),
        action("picked peas, the hideaway", line=5, field="work[2]"),
        action("weeded Arch and the gate end", line=6, field="work[3]", place="Arch"),
        action("picked peas from Arch, north half", line=7, field="work[4]", place="Arch"),
    )
    assert texts(found) == ["picked peas from Arch, north half"]


def test_prose_that_names_a_private_bed_goes_with_its_paragraph_and_section() -> None:
    body = "\n".join(
        [
            "Rain at last.",
            "",
            "The hideaway is full",
            "of slugs.",
            "",
            "# Back strip",
            "Dug it over.",
            "## Later",
            "Dug again.",
            "# Arch",
            "- fine",
            "- Back strip next",
            "  - and again",
            "- all good",
        ]
    )
    found = shown(view(), body=body, title="From the hideaway", lesson=("Dug again.", "More rain."))
    assert found.body.split("\n") == ["Rain at last.", *[""] * 8, "# Arch", "- fine", "", "", "- all good"]
    assert (found.title, found.lesson) == (None, ("More rain.",))


def test_a_body_line_marked_private_goes() -> None:
    found = shown(view(), body="Rain.\n\n- money talk, private\n- weeded\n")
    assert found.body == "Rain.\n\n\n- weeded\n"


def test_a_note_about_a_private_bed_and_another_keeps_only_lines_about_the_other() -> None:
    found = shown(
        view(),
        action("picked peas from Arch", place="Arch", crop="pea"),
        action("weeded", "weeded", line=5, field="work[2]", places=(named("Arch"), named("Back strip"))),
        beds=(named("Arch"), named("Back strip")),
        body="Both are dry.",
        title="Dry",
        tags=("dry",),
    )
    assert texts(found) == ["picked peas from Arch"]
    assert (found.beds, found.body, found.title, found.tags) == ((named("Arch"),), "", None, ())
    assert visible_entries([entry(beds=(named("Back strip"),), body="Dry.")], view()) == ()


def test_a_price_goes_with_its_words_and_the_rest_stays() -> None:
    line = "bought 2 packets pea 'Meteor' from Ida's stall, 3.20 €"
    found = shown(view(), action(line, "bought", crop="pea", source="Ida's stall", price="3.20"))
    assert texts(found) == ["bought 2 packets pea 'Meteor'"]
    [bought] = found.actions
    assert (bought.price, bought.source) == (None, None)
    assert [bought.text[a:b] for slot, a, b in bought.spans] == ["pea"]


def test_shown_people_and_prices_stay() -> None:
    open_view = view(replace(SETTINGS, show=("people", "spending")))
    line = "bought pea from Ida, 3.20"
    found = shown(open_view, action(line, "bought", source="Ida", price="3.20"), by="Rosa")
    assert (texts(found), found.by) == ([line], "Rosa")


def test_a_person_is_blanked_in_prose_but_a_plant_of_that_name_is_not() -> None:
    found = shown(
        view(), action("planted rose in Arch", "planted", crop="rose"), by="Ida", body="Ida saw a rose, ida."
    )
    assert (found.by, found.body) == (None, "… saw a rose, ….")
    rose = shown(view(), action("planted Rose in Arch", "planted", crop="Rose"), by="Rose")
    assert texts(rose) == ["planted Rose in Arch"]


def test_private_words_are_blanked_everywhere_with_their_bed_under_a_new_key() -> None:
    beds = (BedSetting(name="Ottilie's bed", at=YAML), BedSetting(name="Marnock bed", at=YAML))
    settings = replace(SETTINGS, beds=beds, private_words=("Ottilie", "Marnock"))
    seen = view(settings)
    found = shown(
        seen,
        action("weeded Ottilie's bed", "weeded", place="Ottilie's bed"),
        action("weeded Marnock bed", "weeded", line=5, field="work[2]", place="Marnock bed"),
        id="2026/06-20-ottilie",
        extra=(("marnock", "yes"), ("mood", "OTTILIE!")),
    )
    assert texts(found) == ["weeded … bed", "weeded … bed"]
    names = [bed.name for bed in visible_settings(settings, seen).beds]
    assert names == ["… bed", "… bed 2"]
    assert [a.places[0].key for a in found.actions] == [slug(name) for name in names]
    assert found.extra == (("…", "yes"), ("mood", "…!"))
    assert (found.id, found.at.file) == ("2026/06-20-note", "notes/2026/06-20-note.md")
    assert {a.at.file for a in found.actions} == {"notes/2026/06-20-note.md"}


def test_a_file_name_that_names_a_private_bed_is_made_plain_and_stays_its_own() -> None:
    notes = [
        entry(body="one", id="2026/06-20-back-strip"),
        entry(body="two", id="2026/06-20-back-strip#2"),
        entry(body="three", id="2026/06-20-hideaway"),
        entry(body="four", id="back strip/hideaway"),
        entry(body="five", id="2026/06-20-note-3"),
    ]
    found = visible_entries(notes, view())
    assert [e.id for e in found] == [
        "2026/06-20-note",
        "2026/06-20-note#2",
        "2026/06-20-note-2",
        "notes/note",
        "2026/06-20-note-3",
    ]


def test_a_crop_left_out_goes_and_the_rest_of_its_line_stays() -> None:
    line = "picked pea 'Meteor' and beetroot from Arch, sweet peas out"
    found = shown(
        leaving_out("peas"),
        action(line, crop="pea", place="Arch", varieties=(named("Meteor"),)),
        action(line, crop="beetroot", place="Arch"),
        body="Meteor is late.\n\nRain.",
        tags=("pea", "rain"),
    )
    assert texts(found) == ["picked … '…' and beetroot from Arch, sweet peas out"]
    assert (found.body, found.tags) == ("\n\nRain.", ("rain",))


def test_a_year_left_out_was_never_written_about() -> None:
    seen = leaving_out("2025")
    assert visible_entries([replace(entry(), when=on(date(2025, 3, 1)))], seen) == ()
    grew = action("grew peas in Arch (2025)", "grew", when=on(date(2025, 1, 1)))
    assert shown(seen, grew, body="As in 2025.\n\nDry.").actions == ()
    old = replace(
        SETTINGS,
        beforehand=(
            Beforehand(year=2025, bed="Arch", crop="pea", at=YAML),
            Beforehand(year=2024, bed="Arch", crop="pea", at=YAML),
        ),
    )
    assert [row.year for row in visible_settings(old, seen).beforehand] == [2024]


@pytest.mark.parametrize(
    ("subject", "verb", "units"),
    [
        ("seeds", "bought", "packet"),
        ("seeds", "saved seed", ""),
        ("larder", "put up", "jar"),
        ("soil", "tested soil", ""),
        ("animals", "collected", "egg"),
        ("weather", "noted weather", ""),
    ],
)
def test_what_belongs_to_a_subject_left_out_goes(subject: str, verb: str, units: str) -> None:
    amounts = (Amount(written=units, low=1, high=1, unit=units),) if units else ()
    done = action("done", verb, amounts=amounts)
    assert shown(leaving_out(subject), done).actions == ()
    assert texts(shown(view(), done)) == ["done"]


def test_prose_and_photos_go_where_they_are_left_out() -> None:
    line = action("picked pea from Arch, lovely", crop="pea", place="Arch", remark="lovely")
    found = shown(
        leaving_out("notes"), line, body="Prose.", title="T", words=(Words(text="w", at=YAML, kind="text"),)
    )
    assert (texts(found), found.actions[0].remark) == (["pea Arch"], None)
    assert (found.body, found.title, found.words) == ("", None, ())
    pictured = shown(leaving_out("photos"), body="See ![me](me.jpg) here.", photos=("a.jpg",))
    assert (pictured.body, pictured.photos) == ("See  here.", ())


def test_keys_that_tell_prices_people_or_the_place_go() -> None:
    found = shown(view(), extra=(("price", "3"), ("Author", "Ida"), ("gps", "46.5"), ("mood", "good")))
    assert found.extra == (("mood", "good"),)


def test_the_place_and_the_private_bed_are_not_in_public_settings() -> None:
    found = visible_settings(replace(SETTINGS, leave_out=("Arch",), show=("people",)), leaving_out("Arch"))
    assert [bed.name for bed in found.beds] == ["Long border"]
    assert (found.latitude, found.longitude, found.elevation_m) == (47.0, None, None)
    assert (found.show, found.leave_out, found.is_southern) == ((), (), False)
    south = replace(SETTINGS, latitude=-0.3)
    assert visible_settings(south, view(south)).is_southern


def test_problems_are_shown_only_where_asked_and_tell_nothing_hidden() -> None:
    told = Problem(at=YAML, level=Level.WARNING, message='no bed is called "Archh".', suggestion="Arch")
    untold = replace(told, suggestion="Back strip")
    assert shown(view(), problems=(told, untold)).problems == ()
    assert shown(view(replace(SETTINGS, show=("problems",))), problems=(told, untold)).problems == (told,)


def test_words_that_mean_nothing_are_warned_about_with_the_nearest() -> None:
    settings = replace(SETTINGS, show=("peeple",), leave_out=("larderr", "Moon patch", "Archh"))
    seen, problems = view_of(settings, vocabulary(), household=False)
    problems += unknown_words(seen, ["Moon patch"], vocabulary())
    assert [p.sentence for p in problems] == [
        'garden.yaml: show: "peeple" is nothing that is left out by itself. Did you mean "people"?',
        'garden.yaml: leave out: "Archh" is left out as a name, and as "Arch" too, to be safe. Did you mean "Arch"?',
        'garden.yaml: leave out: nothing here is called "larderr". Did you mean "larder"?',
    ]


def test_a_bed_left_out_that_only_a_note_names_is_left_out() -> None:
    new = Named(key="moon patch", name="Moon patch", written="Moon patch", sureness=Sureness.NEW)
    note = action("weeded", "weeded", places=(new,))
    assert shown(leaving_out("moon patch"), note, body="Moon patch!\n\nRain.").body == "\n\nRain."
    assert shown(leaving_out("moon patch"), note).actions == ()


def test_blocks_take_what_belongs_to_them() -> None:
    def emptied(body: str, word: str) -> str:
        return without(body, lambda _, block: word in block)[0]

    assert emptied("a\n```\nx\n\ny\n```\nb", "x") == "a\n\n\n\n\n\nb"
    assert emptied("x\n---\nunder\n\n# top", "x") == "\n\n\n\n# top"
    assert emptied("x strip:\n- a\n\nb\n\n**Others**\n- c", "x") == "\n\n\n\n\n**Others**\n- c"
    assert emptied("- a\n- x\n  more\n\n  deeper\n- b", "x") == "- a\n\n\n\n\n- b"


def _texts_of(kind: type) -> list[str]:
    """The fields of a kind of value that hold texts a gardener may have written."""
    ours = {"id", "date_from", "verb", "field", "by", "source", "price", "body", "text"}
    texts = ("str", "str | None", "tuple[str, ...]", "tuple[tuple[str, str], ...]")
    return [f.name for f in fields(kind) if f.type in texts and f.name not in ours]


def _worded(kind: type, name: str, word: str) -> object:
    [field] = [f for f in fields(kind) if f.name == name]
    shapes = {"tuple[str, ...]": (word,), "tuple[tuple[str, str], ...]": ((word, word),)}
    return shapes.get(str(field.type), word)


@pytest.mark.parametrize("word", ["Ottilie", "hideaway", "2025", "Meteor"])
@pytest.mark.parametrize("name", _texts_of(Entry))
def test_a_hidden_word_leaves_every_field_of_a_note(name: str, word: str) -> None:
    settings = replace(SETTINGS, private_words=("Ottilie",), leave_out=("2025", "peas"))
    found = shown(view(settings), body="Rain.", **{name: _worded(Entry, name, word)})
    assert word not in repr(found)


@pytest.mark.parametrize("word", ["Ottilie", "2025", "Meteor"])
@pytest.mark.parametrize("name", _texts_of(Action))
def test_a_hidden_word_leaves_every_field_of_a_line(name: str, word: str) -> None:
    settings = replace(SETTINGS, private_words=("Ottilie",), leave_out=("2025", "peas"))
    line = replace(action("weeded Arch", "weeded", place="Arch"), **{name: _worded(Action, name, word)})
    assert word not in repr(shown(view(settings), line))


def test_most_notes_are_not_looked_at_twice() -> None:
    note = entry(action("picked peas from Arch", place="Arch", crop="pea"), body="Rain.")
    assert visible_entries([note], view())[0] is note


def test_the_header_keeps_its_public_bed_and_crop_and_no_hidden_one() -> None:
    kept = entry(beds=(named("Arch"),), crops=(named("pea"),), varieties=(named("Meteor"),))
    (found,) = visible_entries((kept,), view())
    assert [n.name for n in (*found.beds, *found.crops, *found.varieties)] == ["Arch", "pea", "Meteor"]
    mixed = entry(beds=(named("Arch"), named("Back strip")), crops=(named("pea"), named("beetroot")))
    shown = visible_entries((mixed,), leaving_out("beetroot"))
    assert {n.name for e in shown for n in (*e.beds, *e.crops)} <= {"Arch", "pea"}


def test_the_code_of_a_money_counts_before_a_number_and_not_inside_a_word() -> None:
    texts = ["sowed 'aquadulce claudia'", "seed, eur 3", "chf4 for twine", "decade after decade", "xaud 5"]
    assert holding(texts, MONEY_CODES, only=CODE_BEFORE) == {1, 2}


@pytest.mark.parametrize(
    "written",
    ["USD 5", "5 usd", "eur3.50", "3.50 EUR", "£3", "3 €", "50p", "12 kr", "1'200 CHF", "SEK 1,200"],
)
def test_no_price_is_passed_over_at_first_look(written: str) -> None:
    assert PRICE.search(written)
    text = f"bought peas for {written} from the market".lower()
    assert holding([text], SIGNS, NUMBER_BEFORE) | holding([text], MONEY_CODES, only=CODE_BEFORE) == {0}
