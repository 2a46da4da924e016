"""Headers and text files as they go wrong in other software, each met here; F-numbers are kept in the names."""

from __future__ import annotations

import pytest
import yaml

from leafmould.notes import tree
from leafmould.notes.entries import Sureness
from leafmould.notes.header import is_fence, split_note
from leafmould.notes.work_lines import unquoted
from notes_as_typed import all_done, entries, entry, span, told


def test_f01_a_doubled_key_is_told_with_both_lines_and_neither_is_lost() -> None:
    found = entry("""
        ---
        bed: Arch
        crop: pea
        bed: North
        ---
        """)
    assert told(found) == [
        '4 error: bed: "bed" stands on line 2 and again on line 4. Only the first is used; keep one.'
    ]
    assert [bed.name for bed in found.beds] == ["Arch"]
    assert found.extra == (("bed", "North"),)


@pytest.mark.parametrize("word", ["no", "On", "off", "Yes", "null", "Null", "y", "n", "true"])
def test_f02_f04_f26_a_variety_called_no_stays_no(word: str) -> None:
    assert entry(f"---\ncrop: pea\nvariety: {word}\n---").varieties[0].name == word


def test_f04_private_takes_a_fixed_list_of_words() -> None:
    assert [entry(f"---\nprivate: {w}\n---").is_private for w in ("y", "Yes", "on", "ja", "n", "no", "")] == [
        True, True, True, True, False, False, True,
    ]  # fmt: skip  # nothing behind "private:" is meant as yes: in doubt it is hidden


def test_f04_what_is_neither_yes_nor_no_is_kept_private() -> None:
    found = entry("---\nprivate: perhaps\n---")
    assert found.is_private
    assert told(found) == ['2 error: private: "perhaps" is neither "yes" nor "no".']
    assert found.extra == (("private", "perhaps"),)


@pytest.mark.parametrize("written", ["2023-02-29", "2024-02-30", "0000-00-00"])
def test_f05_an_impossible_date_costs_the_date_alone(written: str) -> None:
    found = entry(f"---\ndate: {written}\nbed: Arch\ncrop: pea\ndid: sowed\n---", "2026/06-20-x.md")
    assert told(found)[0].startswith("2 error: date: ") and told(found)[0].endswith("does not exist.")
    assert all_done(found) == ["sowed pea in Arch"]
    assert span(found.when) == "2026-06-20"


@pytest.mark.parametrize(("written", "day"), [("2024-5-1", "2024-05-01"), ("01-05-2024", "2024-05-01"), ("2024/05/01", "2024-05-01"), ("2024-05", "2024-05-01..2024-05-31"), ("2024-05-01 08:30:00+02:00", "2024-05-01")])  # fmt: skip
def test_f07_f08_dates_of_all_forms_are_one_kind(written: str, day: str) -> None:
    assert span(entry(f"---\ndate: {written}\n---", "x.md").when) == day


def test_f10_f11_f12_f30_ids_ratios_and_numbers_stay_as_typed() -> None:
    found = entry("""
        ---
        bed: "012"
        mix: 2:1
        at: 12:30:00
        lot: 1_000
        big: .inf
        hex: 0x1F
        price: 1.50
        ---
        """)
    assert found.beds[0].name == "012"
    assert [value for _, value in found.extra] == ["2:1", "12:30:00", "1_000", ".inf", "0x1F", "1.50"]


def test_f10_bed_08_and_bed_8_keep_their_figures() -> None:
    assert [entry(f"---\nbed: {bed}\n---").beds[0].written for bed in ("012", "08", "8", "0x1F")] == [
        "012", "08", "8", "0x1F",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("line", "lost"),
    [
        ("bed: #3", "#3"),
        ("bed: Trough #2", "#2"),
        ("note: bed #3", "#3"),
        ("tags: [bed #1, pea]", "#1, pea]"),
    ],
)
def test_f14_a_number_sign_behind_a_space_is_warned_about(line: str, lost: str) -> None:
    warning = (
        f'2 warning: "{lost}" is left out: " #" begins a remark. To keep it, put quotes round the value.'
    )
    assert warning in told(entry(f"---\n{line}\n---"))


@pytest.mark.parametrize(
    "line", ['bed: "Trough #2"', "bed: 'Trough #2'", "bed: Arch # the new one", "# only a remark", "bed: a#3"]
)
def test_f14_no_warning_where_nothing_is_lost(line: str) -> None:
    assert not [t for t in told(entry(f"---\n{line}\n---")) if "left out" in t]


@pytest.mark.parametrize(("value", "sign"), [("*Star", "*"), ("&Co", "&"), ("!Kung", "!"), ("!!python/object/apply:os.system ['x']", "!")])  # fmt: skip
def test_f15_f29_anchors_aliases_and_tags_are_refused_and_kept_as_text(value: str, sign: str) -> None:
    found = entry(f"---\nvariety: {value}\ncrop: pea\n---")
    assert told(found) == [f'2 error: A value cannot begin with "{sign}". Put quotes round it.']
    assert found.extra == (("variety", value),)
    assert found.varieties == () and found.crops[0].name == "pea"


def test_f15_in_quotes_they_are_names() -> None:
    assert entry("---\nvariety: '*Star'\n---").varieties[0].name == "*Star"


@pytest.mark.parametrize(
    ("line", "problem", "value"),
    [
        ("note: peas: sown", '3 warning: A ":" stands inside the value. Put quotes round it. It is read as "peas: sown".', "peas: sown"),
        ('note: "Krim" (2)', '3 warning: Text stands after a closing quote. Put quotes round the whole value. It is read as ""Krim" (2)".', '"Krim" (2)'),
        ("note: 'Hacon's'", '3 warning: Text stands after a closing quote. Put quotes round the whole value. It is read as "Hacon\'s".', "Hacon's"),
        ("note: @home", '3 warning: A value cannot begin with "@". Put quotes round it. It is read as "@home".', "@home"),
        ("note: 'open", '3 warning: A quote is opened here and not closed. It is read as "\'open".', "'open"),
    ],
)  # fmt: skip
def test_f17_f18_one_line_yaml_cannot_read_costs_a_warning(line: str, problem: str, value: str) -> None:
    found = entry(f"---\ncrop: pea\n{line}\nbed: Arch\n---\nThe body stays.")
    assert told(found) == [problem]
    assert found.extra == (("note", value),)
    assert (found.crops[0].name, found.beds[0].name, found.body) == ("pea", "Arch", "The body stays.")


def test_f17_the_column_is_that_of_the_fault() -> None:
    (problem,) = entry("---\nnote: peas: sown\n---").problems
    assert (problem.at.line, problem.at.column) == (2, 11)


def test_f18_a_quoted_variety_with_words_behind_it_is_the_variety() -> None:
    assert entry("---\nvariety: 'Sugar Ann' pea\n---").varieties[0].name == "Sugar Ann"


@pytest.mark.parametrize("line", ["crop:\tpea", "crop: pea\t", "\tcrop: pea"])
def test_f20_a_tab_is_named_by_its_line_and_read_as_a_space(line: str) -> None:
    found = entry(f"---\nbed: Arch\n{line}\n---")
    assert (found.beds[0].name, found.crops[0].name) == ("Arch", "pea")
    tab = [t for t in told(found) if "A tab stands on line 3. It is read as a space; write spaces." in t]
    assert len(tab) == (0 if line.endswith("\t") else 1)


def test_f21_a_path_in_double_quotes_is_taken_as_typed_with_advice() -> None:
    found = entry('---\nphoto: "C:\\photos\\new.jpg"\ncrop: pea\n---')
    assert found.photos == ("C:\\photos\\new.jpg",)
    assert told(found) == [
        '2 warning: A "\\" has a meaning inside double quotes. Use single quotes, or "/" in a path. '
        'It is read as "C:\\photos\\new.jpg".'
    ]


@pytest.mark.parametrize("sign", ["\x07", "\x85", "\u2028", "\x1b"])
def test_f23_a_control_character_is_told_by_position(sign: str) -> None:
    found = entry(f"---\nbed: Arch\nnote: a{sign}b\n---")
    (problem,) = found.problems
    assert (problem.at.line, problem.at.column) == (3, 8)
    assert problem.message == "A character here cannot be shown. It is read as a space."
    assert found.extra == (("note", "a b"),)


def test_f25_keys_are_text() -> None:
    assert entry("---\n1: a\n2024-05-01: b\nno: c\n~: d\n---").extra == (
        ("1", "a"), ("2024-05-01", "b"), ("no", "c"), ("~", "d"),
    )  # fmt: skip


@pytest.mark.parametrize("value", ["", "~", "-", "?", "??", "TODO", "tbd", "(still to test)", "[]", "{}"])
def test_f26_p48_unfinished_fields_are_not_recorded(value: str) -> None:
    found = entry(f"---\nbed: {value}\npart: {value}\nlesson: {value}\n---")
    assert (found.beds, found.part, found.lesson, told(found)) == ((), None, (), [])


def test_p22_unknown_is_a_value_of_its_own() -> None:
    found = entry("---\ncrop: ???\nvariety: unknown\nbed: Arch\ndid: planted\n---")
    assert [n.sureness for n in (*found.crops, *found.varieties)] == [Sureness.UNKNOWN, Sureness.UNKNOWN]
    doubtful = entry("---\ncrop: tomato\nvariety: Krim or Cherokee\n---").varieties
    assert [(v.name, v.sureness) for v in doubtful] == [
        ("Krim", Sureness.DOUBTFUL),
        ("Cherokee", Sureness.DOUBTFUL),
    ]


def test_f28_aliases_never_multiply() -> None:
    bomb = "\n".join(f"a{n}: &a{n} [*a{n - 1},*a{n - 1},*a{n - 1}]" for n in range(1, 12))
    found = entry(f"---\na0: &a0 [x,x]\n{bomb}\nbed: Arch\n---")
    assert found.beds[0].name == "Arch"
    assert len(told(found)) == 12
    assert sum(len(value) for _, value in found.extra) < 400


def test_f31_keys_in_any_case_are_one_key_and_the_pair_is_told() -> None:
    assert entry("---\nBED: Arch\nCrop: pea\nDid: sowed\n---").beds[0].name == "Arch"
    assert told(entry("---\nBed: Arch\nbed: North\n---")) == [
        '3 error: bed: "Bed" and "bed" are the same word, on line 2 and on line 3. Only the first is used; keep one.'
    ]


def test_f32_a_byte_mark_hides_nothing_and_one_inside_the_text_stays() -> None:
    found = entry("\ufeff---\nbed: Arch\n---\na\ufeffb".encode())
    assert (found.beds[0].name, found.body) == ("Arch", "a\ufeffb")


@pytest.mark.parametrize("end", ["\r\n", "\r", "\n"])
def test_f34_line_ends_of_all_systems_keep_their_numbers(end: str) -> None:
    found = entry(end.join(["---", "bed: Nroth", "---", "one", "two"]).encode())
    assert (found.problems[0].at.line, found.body, found.body_line) == (2, "one\ntwo", 4)


def test_f35_blank_lines_before_the_header_are_accepted_and_a_space_is_told() -> None:
    assert entry("\n\n---\nbed: Arch\n---").beds[0].name == "Arch"
    found = entry(b" ---\nbed: Arch\n---")
    assert found.beds[0].name == "Arch"
    assert told(found) == [
        "1 warning: This looks like a header, but a space stands before the dashes. It is read as one."
    ]
    assert told(entry("# Peas\n---\ndate: 2026-06-20\n---\n")) == [
        "2 error: This looks like a header but is not at the top, so it is read as text. Move it up."
    ]


@pytest.mark.parametrize("fence", ["---", "----", "----------", "—-", "—-—", "–-", "——"])
def test_f37_three_or_more_dashes_open_and_close(fence: str) -> None:
    assert entry(f"{fence}\nbed: Arch\n{fence}\ntext").body == "text"
    assert entry(f"{fence}\nbed: Arch\n---\ntext").beds[0].name == "Arch"


def test_f37_three_dots_close_and_two_dashes_are_no_fence() -> None:
    assert entry("---\nbed: Arch\n...\ntext").body == "text"
    assert not any(map(is_fence, ("--", "-", "", "—", "- - -", "=== ")))


def test_f37_rules_across_a_text_are_no_header() -> None:
    found = entry("---\nJust a line drawn above.\n---\nmore")
    assert (found.body, found.extra, told(found)) == ("---\nJust a line drawn above.\n---\nmore", (), [])


def test_a_header_that_is_never_closed_is_read_and_told() -> None:
    found = entry("---\nbed: Arch\ncrop: pea\n\nThe text.")
    assert (found.beds[0].name, found.crops[0].name, found.body) == ("Arch", "pea", "The text.")
    assert told(found) == [
        '1 warning: The header that begins here is not closed. Write "---" under its last line.'
    ]


def test_f39_a_latin_1_file_is_named_and_its_sound_letters_are_kept() -> None:
    found = entry("---\nbed: Arch\n---\nok\nMöhren".encode("latin-1"))
    assert told(found) == [
        "5 error: A letter here cannot be read: this file is not saved as UTF-8. Save it as UTF-8."
    ]
    assert (found.beds[0].name, found.body) == ("Arch", "ok\nM\ufffdhren")


@pytest.mark.parametrize("name", ["utf-16", "utf-32"])
def test_f39_a_wide_file_is_named_and_not_guessed_at(name: str) -> None:
    found = entry("---\nbed: Arch\n---".encode(name))
    assert told(found) == [
        f"error: This file is saved as {name.upper()}, so it is not read. Save it as UTF-8."
    ]
    assert found.beds == ()


def test_f39_without_a_mark_nulls_tell() -> None:
    assert told(entry("peas".encode("utf-16-le"))) == [
        "error: This file is no text saved as UTF-8, so it is not read."
    ]


@pytest.mark.parametrize("closing", ["", "]" * 900])
def test_900_nested_brackets_cost_one_sentence(closing: str) -> None:
    found = entry(f"---\nbed: Arch\nx: {'[' * 900}{closing}\ncrop: pea\n---\ntext")
    assert (found.beds[0].name, found.crops[0].name, found.body) == ("Arch", "pea", "text")
    (problem,) = told(found)
    assert problem.startswith("3 error: ")


def test_a_header_of_reasonless_length_is_told() -> None:
    found = entries("---\n" + "a: b\n" * 6000 + "---\ntext")[0]
    assert told(found) == ["2 error: This is longer than 5000 lines, so it is not read."]
    assert found.body == "text"


def test_f69_comments_are_gone_from_header_and_body_and_an_open_one_hides_the_rest() -> None:
    parts = split_note(
        "<!-- form -->\n---\nbed: Arch <!-- old -->\n---\na <!-- secret\nwords --> b\nc <!-- open\nd", "n.md"
    )
    assert parts.body == "a \n b\nc \n"
    assert parts.header is not None and parts.header.tree is not None
    assert [p.sentence for p in parts.problems] == [
        'n.md:7: A comment opens here and never closes, so all below it is left out. Write "-->" at its end.'
    ]


def test_a_missing_space_and_a_line_too_far_in_are_read_and_told() -> None:
    found = entry("---\nbed:Arch\ncrop: pea\n   tags: a\n---")
    assert (found.beds[0].name, found.crops[0].name, found.tags) == ("Arch", "pea", ("a",))
    assert told(found) == [
        '2 warning: A space is missing after the ":".',
        "4 warning: This line stands further in than the one above. It is read as a line of its own.",
    ]


def test_a_stray_line_in_a_header_is_kept_as_text() -> None:
    found = entry("---\nhalf a line\nbed: Arch\n---")
    assert found.beds[0].name == "Arch"
    assert [w.text for w in found.words] == ["half a line"]
    assert told(found) == ['2 error: "half a line" is not read: a line here is "key: value".']


def test_a_broken_list_costs_its_own_item() -> None:
    found = entry("---\ntags:\n  - pea\n  - *x\n  - bean\nbed: Arch\n---")
    assert (found.tags, found.beds[0].name) == (("pea", "bean"), "Arch")
    assert told(found) == ['4 error: A value cannot begin with "*". Put quotes round it.']


WORK = """
    ---
    date: 2026-06-20
    work:
      - picked 1.2 kg pea 'Meteor' from Arch, gave away 400 g
      * sowed ½ row kale in North
      • watered Trough #2
      – "weeded Long border, south half"
      planted 3 leeks
        in Arch
      picked 200 g peas from Arch
    crop: beetroot
    ---
    """


def test_work_lines_never_meet_yaml() -> None:
    found = entry(WORK)
    assert [a.text for a in found.actions] == [
        "picked 1.2 kg pea 'Meteor' from Arch, gave away 400 g",
        "sowed ½ row kale in North",
        "watered Trough #2",
        "weeded Long border, south half",
        "planted 3 leeks in Arch",
        "picked 200 g peas from Arch",
    ]
    assert [a.at.line for a in found.actions] == [4, 5, 6, 7, 8, 10]
    assert [a.field for a in found.actions] == [f"work[{n}]" for n in range(6)]
    assert found.crops[0].name == "beetroot"


def test_unmarked_work_lines_and_work_beside_the_key() -> None:
    assert all_done(
        entry("---\nwork:\nsowed peas in Arch\n12 June: picked kale from North\nby: me\n---")
    ) == [
        "sowed pea in Arch",
        "picked kale in North",
    ]
    assert all_done(entry("---\nwork: sowed peas in Arch # both\n---")) == ["sowed pea in Arch"]
    assert all_done(entry("---\nwork: [sowed peas in Arch, watered North]\n---")) == [
        "sowed pea in Arch",
        "watered in North",
    ]


def test_work_lines_under_a_key_that_stands_too_far_in_are_work_lines_still() -> None:
    assert all_done(entry("---\nbed: Arch\n work:\n  - sowed peas\n  - watered: all\n---"))[:1] == [
        "sowed pea in Arch"
    ]


@pytest.mark.parametrize(
    ("line", "text"),
    [
        ("'it''s sown'", "it's sown"),
        ('"say \\"hi\\""', 'say "hi"'),
        ('"w\\eeded"', '"w\\eeded"'),
        ("'a' and 'b'", "'a' and 'b'"),
    ],
)
def test_a_work_line_in_proper_quotes_is_unquoted_and_others_stay(line: str, text: str) -> None:
    assert unquoted(line) == text


def test_without_the_c_parser_the_same_is_read(monkeypatch: pytest.MonkeyPatch) -> None:
    notes = [
        WORK,
        "---\nbed: [Arch, 'No']\nodd: {a: [1, 2]}\nx: y: z\nv: *s\n---\n",
        f"---\nx: {'[' * 900}\nbed: Arch\n---",
    ]
    with_c = [entry(note) for note in notes]
    monkeypatch.setattr(tree, "Loader", yaml.Loader)
    assert [entry(note) for note in notes] == with_c
