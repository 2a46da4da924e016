"""What one build may show: the words of `show` and `leave out`, resolved once against the garden's names.

Made after settings and vocabulary, before any note is read. `visible` applies it. A household view shows
everything.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from difflib import get_close_matches

from leafmould.garden.blank import BLANK, Folded, Names, shortened
from leafmould.garden.disguise import Disguise
from leafmould.garden.figures import place_pattern, place_signs
from leafmould.garden.leaving_out import LeftOut
from leafmould.garden.somebody import Namer
from leafmould.notes.setting_values import BedSetting, Settings
from leafmould.values.names import Kind, Known, Vocabulary, fold, slug
from leafmould.values.problems import Level, Location, Problem

SHOWABLE = ("people", "prices", "problems", "place", "private", "note slip")
"""What a public build leaves out unless it is named under `show`."""

LEAVABLE = ("people", "prices", "plan", "notes", "photos", "seeds", "larder", "soil", "animals", "weather")
"""What is in a public build unless it is named under `leave out`; beds, crops and years besides."""

SAME = {
    "names": "people", "person": "people", "spending": "prices", "coordinates": "place", "elevation": "place",
    "plans": "plan", "pictures": "photos", "photo": "photos", "seed": "seeds", "hens": "animals",
    "bees": "animals", "slip": "note slip", "private things": "private",
}  # fmt: skip
"""Other words for the same."""

EVERY_BED_HAS = frozenset(
    {
        "north", "south", "east", "west", "northern", "southern", "eastern", "western", "top", "bottom", "foot",
        "head", "middle", "centre", "center", "left", "right", "front", "back", "upper", "lower", "end", "half",
        "third", "quarter", "side", "edge", "corner", "row", "part", "bed", "tree", "near", "far", "first",
        "second", "last", "one", "two", "three", "four", "inner", "outer", "of", "the",
    }
)  # fmt: skip
"""Words of a part that could be any bed's: no part made of these alone gives a private bed away."""


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """What is left out of a build."""

    household: bool = True
    show: frozenset[str] = frozenset()  # of SHOWABLE
    leave_out: frozenset[str] = frozenset()  # of LEAVABLE
    beds: frozenset[str] = frozenset()  # keys of beds that are not shown
    crops: frozenset[str] = frozenset()  # keys of crops that are not shown
    years: frozenset[int] = frozenset()
    bed_names: Names = field(default_factory=lambda: Names(()))  # a line that has one of these is left out
    other_names: Names = field(default_factory=lambda: Names(()))  # crops, varieties, years
    words: Names = field(default_factory=lambda: Names(()))  # shown as "…" wherever they stand
    disguise: Disguise = field(default_factory=lambda: Disguise((), Names(())))  # all of these, run together
    place: re.Pattern[str] | None = None  # finds figures that tell where the garden lies
    place_signs: tuple[str, ...] = ()  # what stands in each of its own
    renamed: tuple[tuple[str, str], ...] = ()  # bed and crop keys that hold such words, and what they become
    known: frozenset[Folded] = frozenset()  # the names of all beds, crops and varieties of the settings
    namer: Namer = field(default_factory=lambda: Namer((), ()))  # finds people in what is written
    unsure: tuple[str, ...] = ()  # words of `leave out` that name nothing the settings know
    near: frozenset[str] = frozenset()  # of these, those told about already

    @property
    def shows_people(self) -> bool:
        """Whether people's names may stand on a page."""
        return "people" in self.show and "people" not in self.leave_out

    @property
    def shows_prices(self) -> bool:
        """Whether what was paid may stand on a page."""
        return "prices" in self.show and "prices" not in self.leave_out


def view_of(
    settings: Settings, vocabulary: Vocabulary, *, household: bool
) -> tuple[View, tuple[Problem, ...]]:
    """The view of a build, and one warning for each word of `show` that means nothing.

    A word of `leave out` that the settings do not know may still be a bed or crop named only in a note: it
    is left out all the same, and `unsure` until the notes are read.
    """
    show, problems = _shown(settings)
    left = LeftOut(vocabulary=vocabulary, subject_of=lambda word: _subject(word, LEAVABLE))
    left.take(settings.leave_out)
    unsure = tuple(dict.fromkeys(left.unsure))
    problems = (*problems, *left.problems)
    if household:
        return View(unsure=unsure, near=frozenset(left.near)), problems
    beds, crops, years = left.beds, left.crops, frozenset(left.years)
    beds |= {slug(bed.name) for bed in settings.beds if bed.is_private and "private" not in show}
    beds |= _earlier_beds(settings.beds, beds)
    words = Names(fold(word) for word in settings.private_words)
    names = _bed_names(settings, vocabulary, beds), _other_names(vocabulary, crops, years)
    shields = [known for known in vocabulary.by_words if len(known) > 1]
    bed_names = Names(names[0] | {fold(word) for word in unsure}, shields)
    other_names = Names(names[1], shields)
    view = View(
        household=False,
        show=show,
        leave_out=frozenset(left.subjects),
        beds=frozenset(beds | {slug(word) for word in unsure}),
        crops=frozenset(crops | {slug(word) for word in unsure}),
        years=years,
        bed_names=bed_names,
        other_names=other_names,
        words=words,
        disguise=Disguise((bed_names, other_names), words),
        place=None
        if "place" in show
        else place_pattern(settings.place_written[:2], settings.place_written[2]),
        renamed=tuple(sorted(_renamed(settings, words).items())),
        place_signs=place_signs(settings.place_written[:2], settings.place_written[2]),
        known=frozenset(vocabulary.by_words),
        namer=_namer(vocabulary),
        unsure=unsure,
        near=frozenset(left.near),
    )
    return view, problems


def unknown_words(view: View, named: Iterable[str], vocabulary: Vocabulary) -> tuple[Problem, ...]:
    """One warning for each word of `leave out` that names no bed and no crop, in settings or notes.

    Args:
        named: every bed and crop the notes name.
    """
    known = {fold(name) for name in named}
    return tuple(
        Problem(
            at=Location(file="garden.yaml"),
            level=Level.WARNING,
            field="leave out",
            message=f'nothing here is called "{word}".',
            suggestion=_nearest(word, LEAVABLE) or vocabulary.closest(word, Kind.BED, Kind.CROP),
        )
        for word in view.unsure
        if fold(word) not in known
        and word not in view.near
        and _nearest(word, LEAVABLE) not in view.leave_out  # told by the reader
    )


def masker(words: Names) -> Callable[[str], str]:
    """What puts "…" in the place of private words."""
    return lambda text: shortened(text, words.spans(text)).text


def bed_titles(beds: Sequence[BedSetting], words: Names) -> dict[str, str]:
    """Each bed's name as it may be shown; two beds never become one for want of their words."""
    mask = masker(words)
    shown: dict[str, str] = {}
    for bed in beds:
        title, number = mask(bed.name), 2
        while title in shown.values():
            title, number = f"{mask(bed.name)} {number}", number + 1
        shown[bed.name] = title
    return shown


def is_named_for_hidden(bed: BedSetting, view: View) -> bool:
    """Whether only a bed's name would tell a hidden crop: no planting may be read from it then."""
    is_told = bed.crop is not None and not view.other_names.are_in(bed.crop)
    return not is_told and any((word,) in view.other_names.names for word in fold(bed.name))


def _earlier_beds(beds: Sequence[BedSetting], hidden: set[str]) -> set[str]:
    """Beds that went on only as hidden ones, and have no word of their own in the settings."""
    names = {"hidden": set[str](), "shown": {slug(bed.name) for bed in beds} - hidden}
    for bed in beds:
        names["hidden" if slug(bed.name) in hidden else "shown"].update(slug(name) for name in bed.was)
    return names["hidden"] - names["shown"]


def _renamed(settings: Settings, words: Names) -> dict[str, str]:
    titles = bed_titles(settings.beds, words)
    mask = masker(words)
    titles |= {crop.name: mask(crop.name) for crop in settings.crops if BLANK in mask(crop.name)}
    return {slug(name): slug(title) for name, title in titles.items() if name != title}


def _shown(settings: Settings) -> tuple[frozenset[str], tuple[Problem, ...]]:
    found = {word: _subject(word, SHOWABLE) for word in settings.show}
    problems = tuple(
        Problem(
            at=Location(file="garden.yaml"),
            level=Level.WARNING,
            field="show",
            message=f'"{word}" is nothing that is left out by itself.',
            suggestion=_nearest(word, SHOWABLE),
        )
        for word, subject in found.items()
        if subject is None
    )
    return frozenset(subject for subject in found.values() if subject), problems


def _subject(word: str, subjects: Sequence[str]) -> str | None:
    plain = " ".join(word.casefold().split())
    named = SAME.get(plain, plain)
    return named if named in subjects else None


def _nearest(word: str, subjects: Sequence[str]) -> str | None:
    near = get_close_matches(word.casefold(), (*subjects, *SAME), n=1, cutoff=0.72)
    return SAME.get(near[0], near[0]) if near else None


def _bed_names(settings: Settings, vocabulary: Vocabulary, beds: set[str]) -> set[Folded]:
    """Names, other names and telling parts of the beds that are not shown."""
    names = {fold(name) for bed in settings.beds if slug(bed.name) in beds for name in (bed.name, *bed.also)}
    names |= {fold(name) for bed in settings.beds for name in bed.was if slug(name) in beds}
    kept_parts = {fold(p) for bed in settings.beds if slug(bed.name) not in beds for p in bed.parts}
    parts = {fold(p) for bed in settings.beds if slug(bed.name) in beds for p in bed.parts}
    names |= {part for part in parts - kept_parts if not EVERY_BED_HAS.issuperset(part)}
    return names | _names_of(vocabulary, lambda k: k.kind is Kind.BED and k.key in beds)


def _other_names(vocabulary: Vocabulary, crops: set[str], years: frozenset[int]) -> set[Folded]:
    names: set[Folded] = {(str(year),) for year in years}
    if not crops:
        return names
    return names | _names_of(
        vocabulary,
        lambda k: (
            (k.kind in (Kind.CROP, Kind.CROP_GROUP) and k.key in crops)
            or (k.kind is Kind.VARIETY and bool(k.of) and crops.issuperset(k.of))
        ),
    )


def _namer(vocabulary: Vocabulary) -> Namer:
    named = vocabulary.with_public
    beds = {words for words, known in named.items() if any(k.kind in (Kind.BED, Kind.PART) for k in known)}
    return Namer(named.keys() - beds, beds)


def _names_of(vocabulary: Vocabulary, is_meant: Callable[[Known], bool]) -> set[Folded]:
    return {words for words, known in vocabulary.by_words.items() if any(is_meant(k) for k in known)}
