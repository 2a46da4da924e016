"""The one step that decides what a build may show.

Works on settings and entries before the garden is assembled, so that whatever is left out is reckoned as
if it had never been written: no total gives it away and no link dies. Nothing after this step hides
anything. A household view changes nothing. Applying a view twice gives the same as once.

A line or block of prose that names a hidden bed is hidden as a whole; hidden crops, people, prices and
private words go, and the rest of a work line stays (`visible_lines`).
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from leafmould.garden.blank import Names
from leafmould.garden.disguise import Disguise
from leafmould.garden.figures import TELLS_PLACE, TELLS_PRICES, tells_prices
from leafmould.garden.first_look import Look, looks_at
from leafmould.garden.people import WORDS_OF_KEY, names_people
from leafmould.garden.prose import without
from leafmould.garden.seeds import shown_seeds
from leafmould.garden.sight import Sight, has_nothing_to_hide, is_hidden, is_in_years, people_spans, sight_of
from leafmould.garden.view import View, bed_titles, is_named_for_hidden, masker
from leafmould.garden.visible_lines import Line, masked, visible_line
from leafmould.garden.visible_photos import Pictures, without_pictures
from leafmould.garden.weather import shown_months, shown_weather
from leafmould.notes.entries import Action, Entry, Words
from leafmould.notes.line_ends import is_private_block
from leafmould.notes.setting_values import BedSetting, CropSetting, Settings
from leafmould.values.names import slug
from leafmould.values.problems import Location, Problem

DATE_AT_FRONT = re.compile(r"\d[\d-]*(?!\w)")


def visible_settings(settings: Settings, view: View) -> Settings:
    """The settings as a build may use them.

    In a public view the latitude is kept to the whole degree, for day length and hemisphere: it stands on
    no page, and the exact place cannot be reckoned back from one.
    """
    if view.household:
        return settings
    mask = masker(view.words)
    titles = bed_titles(settings.beds, view.words)
    is_placed = "place" in view.show
    latitude = settings.latitude
    return replace(
        settings,
        name=mask(settings.name),
        latitude=latitude if is_placed or latitude is None else float(round(latitude)) or latitude,
        longitude=settings.longitude if is_placed else None,
        elevation_m=settings.elevation_m if is_placed else None,
        place_written=("", "", ""),
        beds=tuple(_bed(bed, view, titles) for bed in settings.beds if slug(bed.name) not in view.beds),
        crops=tuple(_crop(crop, view) for crop in settings.crops if not view.other_names.are_in(crop.name)),
        beforehand=tuple(
            replace(row, bed=titles.get(row.bed) or mask(row.bed), crop=mask(row.crop))
            for row in settings.beforehand
            if row.year not in view.years and not _names_hidden(view, row.bed, row.crop)
        ),
        seeds=shown_seeds(settings.seeds, view),
        months=shown_months(settings.months, view),
        weather=shown_weather(settings.weather, view),
        show=(),
        leave_out=(),
        private_words=(),
        problems=_problems(settings.problems, view),
    )


def visible_entries(entries: Sequence[Entry], view: View) -> tuple[Entry, ...]:
    """The entries as a build may read them, in the same order."""
    return Showing(view).of(entries)


class Showing:
    """A view applied to entries; to most of them a second time, once varieties were learned.

    What was found of an entry holds for the very same entry, as long as the same names are to be hidden.
    """

    def __init__(self, view: View) -> None:
        self.view = view
        self._looks: dict[int, Look] = {}  # with the entry, so that its number stays its own
        self._found: dict[int, Entry | None] = {}
        self._names: tuple[object, ...] = ()
        self._sight: Sight | None = None

    def of(self, entries: Sequence[Entry]) -> tuple[Entry, ...]:
        """The entries as a build may read them, in the same order."""
        if self.view.household:
            return tuple(entries)
        looks = self._looks_at(entries)
        sight = self._sight = sight_of(looks, self.view)
        if (names := (sight.others.names, sight.people.names, sight.folk.names, sight.told)) != self._names:
            self._names, self._found = names, {}
        about_hidden = {_file_of(entry) for entry in entries if _header_names_hidden(entry, sight)}
        shown = [shown for look in looks if (shown := self._shown(look, sight))]
        return _with_plain_ids(shown, about_hidden, sight)

    def seen(self, entry: Entry) -> Entry | None:
        """The entry as it was last shown; None if nothing of it was."""
        return self._found.get(id(entry))

    def tells_hidden(self, name: str) -> bool:
        """Whether the name of a file would tell something that the entries last seen may not."""
        return self._sight is not None and _tells_hidden(name, self._sight)

    def _looks_at(self, entries: Sequence[Entry]) -> list[Look]:
        new = [entry for entry in entries if id(entry) not in self._looks]
        self._looks |= {id(look.entry): look for look in looks_at(new, self.view)}
        return [self._looks[id(entry)] for entry in entries]

    def _shown(self, look: Look, sight: Sight) -> Entry | None:
        key = id(look.entry)
        if key not in self._found:
            self._found[key] = _entry(look, sight)
        return self._found[key]


def _bed(bed: BedSetting, view: View, titles: dict[str, str]) -> BedSetting:
    """A bed that is shown, without what it says of hidden things."""
    mask = masker(view.words)
    return replace(
        bed,
        name=titles[bed.name],
        kind="bed" if is_named_for_hidden(bed, view) else bed.kind,
        also=tuple(mask(name) for name in bed.also if not view.bed_names.are_in(name)),
        sun=None if _names_hidden(view, bed.sun or "") else bed.sun and mask(bed.sun),
        water=None if _names_hidden(view, bed.water or "") else bed.water and mask(bed.water),
        soil=None if "soil" in view.leave_out or _names_hidden(view, bed.soil or "") else bed.soil,
        parts=tuple(mask(part) for part in bed.parts),
        was=tuple(titles.get(name) or mask(name) for name in bed.was if not _names_hidden(view, name)),
        planted=None if _names_hidden(view, bed.planted or "") else bed.planted,
        crop=None if bed.crop and _names_hidden(view, bed.crop) else bed.crop and mask(bed.crop),
        variety=bed.variety and mask(bed.variety),
        extra=_extra(bed.extra, view),
    )


def _crop(crop: CropSetting, view: View) -> CropSetting:
    mask = masker(view.words)
    return replace(
        crop,
        name=mask(crop.name),
        also=tuple(mask(name) for name in crop.also if not view.other_names.are_in(name)),
        like=None if crop.like and _names_hidden(view, crop.like) else crop.like,
        varieties=tuple(mask(name) for name in crop.varieties),
        days_by_variety=tuple((mask(name), days) for name, days in crop.days_by_variety),
    )


def _entry(look: Look, sight: Sight) -> Entry | None:
    """The entry as it may be read; None if nothing of it may."""
    entry, view = look.entry, sight.view
    if has_nothing_to_hide(look, sight):
        return replace(entry, problems=_problems(entry.problems, view)) if entry.problems else entry
    if (entry.is_private and "private" not in view.show) or is_in_years(entry.when, view.years):
        return None
    lines = [visible_line(group, sight) for group in _grouped(entry.actions)]
    is_about_hidden = _header_names_hidden(entry, sight)
    body, gone = _body(entry, lines, sight)
    shown = replace(
        entry,
        actions=tuple(a for line in lines for a in line.actions if not _stands_in(a.at, entry, gone)),
        words=() if is_about_hidden else _words(entry, gone, sight),
    )
    pictures = Pictures(entry, shown, sight, is_cut=bool(gone))
    shown = replace(shown, body="" if is_about_hidden else pictures.in_text(body))
    shown = replace(shown, problems=_entry_problems(entry, shown, sight))
    shown = _header(shown, entry, pictures, is_about_hidden=is_about_hidden, sight=sight)
    if is_about_hidden and not shown.actions and not shown.lesson:
        return None
    return masked(_without_subjects(shown, view), sight)


def _grouped(actions: Iterable[Action]) -> list[list[Action]]:
    """The actions line by line: one line may hold several."""
    lines: dict[tuple[int | None, str], list[Action]] = {}
    for action in actions:
        lines.setdefault((action.at.line, action.field), []).append(action)
    return list(lines.values())


def _header_names_hidden(entry: Entry, sight: Sight) -> bool:
    """Whether the note as a whole is about something hidden, perhaps among other things."""
    view = sight.view
    return any(is_hidden(bed, view.beds, view.bed_names) for bed in entry.beds) or any(
        is_hidden(crop, view.crops, sight.others) for crop in (*entry.crops, *entry.varieties)
    )


def _header(shown: Entry, entry: Entry, pictures: Pictures, *, is_about_hidden: bool, sight: Sight) -> Entry:
    """The rest of what a note says of itself; with what stood only in blocks of the body now hidden gone."""
    view = sight.view

    def may_stand(text: str) -> bool:
        is_gone = _flat(text) in _flat(entry.body) and _flat(text) not in _flat(shown.body)
        return not (is_about_hidden or is_gone or _is_told(text, sight))

    photos = tuple(photo for photo in entry.photos if may_stand(photo) and pictures.may_show(photo))
    return replace(
        shown,
        title=entry.title if entry.title and may_stand(entry.title) else None,
        beds=tuple(bed for bed in entry.beds if not is_hidden(bed, view.beds, view.bed_names)),
        crops=tuple(crop for crop in entry.crops if not is_hidden(crop, view.crops, sight.others)),
        varieties=tuple(v for v in entry.varieties if not is_hidden(v, view.crops, sight.others)),
        part=None if is_about_hidden or _is_told(entry.part or "", sight) else entry.part,
        photos=photos,
        photo_lines=tuple((photo, line) for photo, line in entry.photo_lines if photo in photos),
        tags=tuple(tag for tag in entry.tags if may_stand(tag)),
        lesson=tuple(lesson for lesson in entry.lesson if may_stand(lesson)),
        again=entry.again if entry.again and may_stand(entry.again) else None,
        by=entry.by if view.shows_people and may_stand(entry.by or "") else None,
        extra=() if is_about_hidden else _extra(entry.extra, view),
    )


def _words(entry: Entry, gone: frozenset[int], sight: Sight) -> tuple[Words, ...]:
    return tuple(
        words
        for words in entry.words
        if not _is_private_line(words.text, words.is_private, sight.view)
        and not _is_told(words.text, sight)
        and not _stands_in(words.at, entry, gone)
    )


def _body(entry: Entry, lines: Sequence[Line], sight: Sight) -> tuple[str, frozenset[int]]:
    """The body with hidden blocks emptied, and which of its lines those are, counted from 0."""
    text = entry.body.split("\n")
    must_go: set[int] = set()
    read: set[int] = set()
    alone: set[int] = set()
    for line in lines:
        number = _body_line(line.at, line.field, entry)
        if number is None or not 0 <= number < len(text):
            continue
        read.add(number)
        if line.at.column == len(text[number]) - len(text[number].lstrip()) + 1:
            alone.add(number)
        if not line.text or line.before not in text[number]:
            if line.text != line.before:
                must_go.add(number)
            continue
        text[number] = text[number].replace(line.before, line.text)
    private = {_body_line(w.at, "body", entry) for w in entry.words if w.is_private}

    def is_hidden_block(start: int, block: str) -> bool:
        numbers = range(start, start + block.count("\n") + 1)
        if must_go.intersection(numbers) or _is_private_line(
            block, not private.isdisjoint(numbers), sight.view
        ):
            return True
        prose = "\n".join(row for n, row in zip(numbers, block.split("\n"), strict=True) if n not in read)
        view = sight.view
        if view.bed_names.are_in(block) or sight.others.are_in(prose) or view.disguise.are_in(block):
            return True
        return not view.shows_prices and tells_prices(block)

    return without("\n".join(text), is_hidden_block, frozenset(alone))


def _body_line(at: Location, field: str, entry: Entry) -> int | None:
    """The line of the body, counted from 0, that something stands on; None for the header."""
    if at.line is None or field.startswith(("work", "did")):
        return None
    return at.line - entry.body_line


def _stands_in(at: Location, entry: Entry, gone: frozenset[int]) -> bool:
    return bool(gone) and at.line is not None and at.line - entry.body_line in gone


def _is_private_line(text: str, is_marked: bool, view: View) -> bool:
    return "private" not in view.show and (is_marked or is_private_block(text))


def _is_told(text: str, sight: Sight) -> bool:
    """Whether the text names something hidden, so that it must go as a whole."""
    view = sight.view
    return view.bed_names.are_in(text) or sight.others.are_in(text) or view.disguise.are_in(text)


def _names_hidden(view: View, *texts: str) -> bool:
    return any(
        view.bed_names.are_in(text) or view.other_names.are_in(text) or view.disguise.are_in(text)
        for text in texts
    )


def _extra(pairs: Iterable[tuple[str, str]], view: View) -> tuple[tuple[str, str], ...]:
    """The gardener's own keys that may be shown."""
    closed = frozenset() if view.shows_prices else TELLS_PRICES
    closed |= frozenset() if "place" in view.show else TELLS_PLACE
    mask = masker(view.words)
    return tuple(
        (mask(key), mask(value))
        for key, value in pairs
        if closed.isdisjoint(WORDS_OF_KEY.findall(key.casefold()))
        and (view.shows_people or not names_people(key))
        and not _names_hidden(view, key, value)
    )


def _without_subjects(entry: Entry, view: View) -> Entry:
    """The entry without the photos or the prose, where `leave out` names them."""
    if "photos" in view.leave_out:
        entry = replace(entry, photos=(), photo_lines=(), body=without_pictures(entry.body))
    if "notes" in view.leave_out:
        entry = replace(
            entry, title=None, words=(), body="", tags=(), lesson=(), extra=(), photos=(), photo_lines=()
        )
    return entry


def _problems(problems: Iterable[Problem], view: View) -> tuple[Problem, ...]:
    """None in a public build, unless `show` names them; then those that name nothing hidden."""
    if "problems" not in view.show:
        return ()
    told = (p for p in problems if not _names_hidden(view, p.at.file, p.message, p.suggestion or ""))
    return tuple(p for p in told if not view.words.are_in(p.sentence))


def _entry_problems(entry: Entry, shown: Entry, sight: Sight) -> tuple[Problem, ...]:
    """The problems of an entry that stand on no line of which something was left out."""
    whole = {(a.at, a.text) for a in shown.actions} | {(w.at, w.text) for w in shown.words}
    written = {(a.at, a.text) for a in entry.actions} | {(w.at, w.text) for w in entry.words}
    cut = {at.line for at, _ in written - whole}
    told = (p for p in _problems(entry.problems, sight.view) if p.at.line not in cut)
    return tuple(p for p in told if not people_spans(p.message, sight))


def _with_plain_ids(entries: Sequence[Entry], about_hidden: set[str], sight: Sight) -> tuple[Entry, ...]:
    """The entries, with a plain name in place of every file name that may tell something hidden."""
    files = sorted({_file_of(entry) for entry in entries})
    tell = _telling(sight)
    must_go = {f for f in files if f in about_hidden or any(names.are_in(f) for names in tell)}
    taken = set(files) - must_go
    plain: dict[str, str] = {}
    for file in sorted(must_go):
        plain[file] = _plain_id(file, tell, taken | set(plain.values()))
    return tuple(_renamed(entry, plain) if plain else entry for entry in entries)


def _telling(sight: Sight) -> tuple[Names | Disguise, ...]:
    """What no name of a file may tell; most gardens hide little."""
    view = sight.view
    tell = (view.bed_names, sight.others, view.words, sight.people, sight.folk, view.disguise)
    return tuple(names for names in tell if names)


def _tells_hidden(name: str, sight: Sight) -> bool:
    return any(names.are_in(name) for names in _telling(sight))


def _file_of(entry: Entry) -> str:
    """What the ids of all parts of one file begin with."""
    return entry.id.partition("#")[0]


def _plain_id(file: str, tell: Sequence[Names | Disguise], taken: set[str]) -> str:
    *folders, stem = file.split("/")
    front = DATE_AT_FRONT.match(stem)
    dated = f"{front.group().strip('-')}-note" if front else "note"
    steps = [*folders, dated]
    name = "/".join("notes" if any(names.are_in(step) for names in tell) else step for step in steps)
    number, free = 1, name
    while free in taken:
        number += 1
        free = f"{name}-{number}"
    return free


def _renamed(entry: Entry, plain: dict[str, str]) -> Entry:
    file, mark, number = entry.id.partition("#")
    if file not in plain:
        return entry
    ending = entry.at.file.rpartition(".")[2]
    path = f"notes/{plain[file]}.{ending}"
    return replace(
        entry,
        id=f"{plain[file]}{mark}{number}",
        at=replace(entry.at, file=path),
        actions=tuple(replace(a, at=replace(a.at, file=path)) for a in entry.actions),
        words=tuple(replace(w, at=replace(w.at, file=path)) for w in entry.words),
    )


def _flat(text: str) -> str:
    return " ".join(text.split()).casefold()
