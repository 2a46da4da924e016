"""Case files of work lines: reading them, and writing a reading the way they hold it.

A file is a title, a sentence, then cases. A case is the line as typed behind "> ", settings of the note
behind "with ", and what is read:

    > picked 12 tomatoes, 1.4 kg from Arch
    with crop: tomato
    picked · tomato · 12 · 1.4 kg · in Arch
      verb "picked" · amount "12" · crop "tomatoes" · amount "1.4 kg" · place "Arch"
    question: …
      at “word”

The second line shows where each slot was read. A third is there where something else was read than these two
tell: what a word stands for (courgette = summer-squash), one amount for several, what a measure weighs, words
put together out of several places. So a case holds everything its reading says. `python tests/line_cases.py FILE` writes the readings of
today into a file; read the difference before accepting it.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from leafmould.notes.entries import Action, Fate, Named, Sureness
from leafmould.notes.habits import Defaults, Habits, LineReading
from leafmould.notes.lines import read_line
from leafmould.values.names import Kind, slug
from leafmould.values.problems import Location, Problem, asking
from leafmould.values.quantities import Amount
from leafmould.values.when import on
from line_garden import VOCABULARY

FOLDER = Path(__file__).parent / "cases" / "lines"
AT = Location(file="notes/2026/06-20-case.md", line=4)
BASE = on(date(2026, 6, 20))
UNSURE = {
    Sureness.KNOWN: "", Sureness.NEW: " (new)", Sureness.PERHAPS: " (perhaps)", Sureness.DOUBTFUL: " (?)", Sureness.UNKNOWN: "",
}  # fmt: skip


@dataclass
class Case:
    """One line as typed, the settings it is read with, and what is expected."""

    typed: str
    place: str  # file and line, for the name of the test
    settings: dict[str, str] = field(default_factory=dict)
    expected: list[str] = field(default_factory=list)

    def read(self) -> LineReading:
        """The reading of today."""
        return read_line(
            self.typed, at=AT, field="work[1]", base=None if self.settings.get("date") == "none" else BASE,
            habits=Habits(
                vocabulary=VOCABULARY, order=self.settings.get("dates", "day first"),
                decimal=self.settings.get("decimal"), units=self.settings.get("units", "metric"),
                is_southern=self.settings.get("half") == "south",
            ),
            defaults=Defaults(
                beds=_named(self.settings, "bed", Kind.BED), crops=_named(self.settings, "crop", Kind.CROP),
                varieties=_named(self.settings, "variety", Kind.VARIETY), part=self.settings.get("part"),
            ),
            is_prose="prose" in self.settings,
        )  # fmt: skip


def _named(settings: dict[str, str], key: str, kind: Kind) -> tuple[Named, ...]:
    words = [w.strip() for w in settings.get(key, "").split(",") if w.strip()]
    known = [(w, VOCABULARY.exactly(w, kind)[0]) for w in words]
    return tuple(
        Named(key=k.key, name=k.name, written=w, of=k.of if kind is Kind.VARIETY else ()) for w, k in known
    )


@dataclass
class Group:
    """One case file."""

    title: str
    about: str
    cases: list[Case]
    path: Path


def groups() -> list[Group]:
    """All case files, in order of their names."""
    return [read_group(path) for path in sorted(FOLDER.glob("*.txt"))]


def read_group(path: Path) -> Group:
    """One case file as values."""
    title, about, cases = "", "", list[Case]()
    for number, row in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1):
        if row.startswith("# "):
            title = row[2:]
        elif row.startswith("> "):
            cases.append(Case(row[2:], f"{path.name}:{number}"))
        elif row.startswith("with ") and cases:
            key, value = row[5:].split(":", 1)
            cases[-1].settings[key.strip()] = value.strip()
        elif row.strip() and cases:
            cases[-1].expected.append(row)
        elif row.strip():
            about = f"{about} {row}".strip()
    return Group(title, about, cases, path)


def written(group: Group) -> str:
    """A case file with the readings of today."""
    rows = [f"# {group.title}", group.about]
    for case in group.cases:
        rows += [
            "",
            f"> {case.typed}",
            *(f"with {k}: {v}" for k, v in case.settings.items()),
            *shown(case.read(), case.typed),
        ]
    return "\n".join(rows) + "\n"


def shown(reading: LineReading, typed: str) -> list[str]:
    """A reading of a line as the rows of a case."""
    rows: list[str] = []
    for action in reading.actions:
        rows += [" · ".join(slots(action)), "  " + " · ".join(spans(action))]
        more = list(dict.fromkeys(besides(action, typed)))
        rows += ["  " + " · ".join(more)] if more else []
    for words in reading.words:
        rows.append(f"kept as text: {words.kind}{', private' if words.is_private else ''}")
        rows += [f"  text “{words.text}”"] if words.text != typed else []
    for problem in reading.problems:
        near = asking(problem.message, problem.suggestion)
        rows += [f"{problem.level.value}: {problem.message}{near}", *_spot(problem, typed)]
    return rows or ["prose"]


def _spot(problem: Problem, typed: str) -> list[str]:
    """The word a question points at; no row where it is about the whole line."""
    told = [] if problem.field == "work[1]" else [f"  field {problem.field}"]
    if problem.at.line != AT.line or problem.at.file != AT.file:
        told.append(f"  in {problem.at.file}:{problem.at.line}")
    if problem.at.column is None:
        return told
    behind = typed[problem.at.column - 1 :].split()
    return [*told, f"  at “{behind[0] if behind else ''}”"]


def spans(action: Action) -> list[str]:
    """Each slot with the words it was read from."""
    return [f"{slot} “{action.text[start:end]}”" for slot, start, end in action.spans]


def slots(action: Action) -> Iterator[str]:
    """What an action says, in the order a gardener would."""
    yield action.verb
    yield from ["everything"] if action.everything else []
    yield from [f"but {names_shown(action.but)}"] if action.but else []
    if action.crops:
        yield names_shown(action.crops) + (
            " together" if action.is_together and len(action.crops) > 1 else ""
        )
    if action.varieties:
        joined = " together" if action.is_together and len(action.varieties) > 1 else ""
        yield f"variety {names_shown(action.varieties)}{joined}"
    yield from map(amount_shown, action.amounts)
    yield from [f"in {names_shown(action.places)}"] if action.places else []
    yield from [f"part {action.part}"] if action.part else []
    yield from [f"from {names_shown(action.origins)}"] if action.origins else []
    yield from map(_fate, action.fates)
    yield from (f"{name} {amount_shown(value)}" for name, value in action.readings)
    if action.when:
        yield f"on {action.when.first}" + ("" if action.when.is_exact else f" to {action.when.last}")
    yield from [f"until {action.until.last}"] if action.until else []
    for name in (
        "subject",
        "cause",
        "batch",
        "source",
        "price",
        "wait_days",
        "crop_year",
        "spacing",
        "remark",
    ):
        value = getattr(action, name)
        yield from [f"{name.replace('_', ' ')}: {value}"] if value is not None else []
    for name in ("is_under_cover", "is_private", "is_settled", "is_loose"):
        yield from [name[3:].replace("_", " ")] if getattr(action, name) else []


def besides(action: Action, typed: str) -> Iterator[str]:
    """What was read besides that neither the slots nor their words tell."""
    pieces = [action.text[start:end].strip("'\"‘’“”") for _, start, end in action.spans]
    for name in (*action.crops, *action.varieties, *action.places, *action.origins, *action.but):
        yield from meant(name, pieces)
    if action.is_together and len(action.crops) < 2 and len(action.varieties) < 2:
        yield "together"
    fates = [fate.amount for fate in action.fates if fate.amount]
    for amount in (*action.amounts, *fates, *(value for _, value in action.readings)):
        yield from measured(amount, pieces)
    for day in filter(None, (action.when, action.until)):
        yield from [f"day “{day.written}”"] if day.written not in pieces else []
    yield from [f"text “{action.text}”"] if action.text != typed else []
    yield from [f"field {action.field}"] if action.field != "work[1]" else []
    yield from [f"line {action.at.line}"] if action.at.line != AT.line else []


def meant(name: Named, pieces: list[str]) -> Iterator[str]:
    """What a name stands for, where it is not the name itself."""
    if name.key not in (slug(name.name), name.name):
        yield f"{name.name} = {name.key}"
    yield from [f"{name.name} of {', '.join(name.of)}"] if name.of else []
    yield from [f"{name.name} unknown"] if name.sureness is Sureness.UNKNOWN else []
    yield from [f"name “{name.written}”"] if name.written not in pieces else []


def measured(amount: Amount, pieces: list[str]) -> Iterator[str]:
    """What an amount says that its number and unit do not."""
    yield from [f"{amount.unit} = {amount.measure_g:g} g"] if amount.measure_g is not None else []
    has_range = amount.low is not None and amount.low != amount.high
    if amount.low is None or has_range:
        yield from (
            [f"“{amount.written}” {'about' if amount.is_about else 'sure'}"]
            if (amount.is_about is not has_range)
            else []
        )
    yield from [f"amount “{amount.written}”"] if amount.written not in pieces else []


def names_shown(names: tuple[Named, ...]) -> str:
    return " + ".join(f"{n.name}{UNSURE[n.sureness]}" for n in names)


def amount_shown(amount: Amount) -> str:
    if amount.low is None and amount.whole is None:
        return f"“{amount.written}”"
    if amount.low is None or amount.high is None:
        number = str(amount.whole)
    else:
        number = f"{amount.low:g}" if amount.low == amount.high else f"{amount.low:g}–{amount.high:g}"
    about = "about " if amount.is_about and amount.low is not None and amount.low == amount.high else ""
    share = f" of {amount.of:g}" if amount.of is not None else ""
    unit = "" if amount.unit == "piece" else f" {amount.unit}"
    return f"{about}{number}{share}{unit}".rstrip()


def _fate(fate: Fate) -> str:
    return f"{fate.kind}: {amount_shown(fate.amount) if fate.amount else 'not said how much'}"


def plain_id(case: Case) -> str:
    """A name for a test that every terminal shows."""
    return f"{case.place} {re.sub(r'[^ -~]', '?', case.typed)[:60]}"


if __name__ == "__main__":
    for name in sys.argv[1:]:
        Path(name).write_text(written(read_group(Path(name))), encoding="utf-8")
