"""Where the figures come from: every source with what is taken from it, and what is common practice."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from leafmould.facts.common_practice import common_practice
from leafmould.facts.tables import Source
from leafmould.pages.addresses import SOURCES, source_anchor
from leafmould.pages.labels import planting_name
from leafmould.pages.ledger import Ledger
from leafmould.pages.page import Link, Page
from leafmould.pages.source_groups import group_of, order
from leafmould.reckon.what_is_taken import what_is_taken
from leafmould.values.names import slug

MOST_NAMED = 24
"""Plantings named beside a source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceLine:
    """A published source, the plantings whose expectation rests on it and the crops that show its figures."""

    anchor: str
    title: str
    publisher: str
    year: str
    part: str
    used_for: tuple[Link, ...]
    taken: str  # what its figures are about
    about: str  # the subject it stands under
    crops: tuple[Link, ...]  # crops on whose pages they stand


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceGroup:
    """The sources of one subject."""

    about: str
    anchor: str
    here: tuple[SourceLine, ...]  # used for this garden's crops
    others: tuple[SourceLine, ...]  # in the tables, and not used for them


@dataclass(frozen=True, slots=True, kw_only=True)
class CustomGroup:
    """What is taken for granted without a source, by what it is about."""

    about: str
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SourcesPage:
    """The values of the page of sources."""

    groups: tuple[SourceGroup, ...]
    customs: tuple[CustomGroup, ...]
    own: tuple[Link, ...]  # expectations from the gardener's own packet days
    common: tuple[Link, ...]  # expectations from common practice, no source


def sources_page(ledger: Ledger) -> Page:
    """Which published tables stand behind the figures, and which figures have none."""
    used: dict[str, list[Link]] = {}
    own: list[Link] = []
    common: list[Link] = []
    for planting in ledger.garden.plantings:
        forecast = ledger.reckoned.forecasts.get(planting.id)
        if forecast is None:
            continue
        link = Link(text=planting_name(planting), to=ledger.sections[planting.id])
        for source in forecast.sources:
            used.setdefault(source, []).append(link)
        if not forecast.sources:
            (common if forecast.is_common_practice else own).append(link)
    taken = _taken(ledger)
    here = [s for key, s in sorted(ledger.reckoned.sources.items()) if key in used or key in taken]
    others = [s for key, s in sorted(ledger.reckoned.sources.items()) if key not in used and key not in taken]
    values = SourcesPage(
        groups=_groups(
            [_line(s, used.get(s.id, ()), taken.get(s.id, ())) for s in here],
            [_line(s, (), ()) for s in others if s.id in what_is_taken() and not _names_hidden(s, ledger)],
        ),
        customs=_customs(),
        own=tuple(own[:MOST_NAMED]),
        common=tuple(common[:MOST_NAMED]),
    )
    return Page(
        address=SOURCES,
        template="sources.html",
        title="Where the figures come from",
        section="sources",
        values=values,
    )


def _groups(here: Sequence[SourceLine], others: Sequence[SourceLine]) -> tuple[SourceGroup, ...]:
    """By subject: those that are used here, and the others."""
    found: dict[str, tuple[list[SourceLine], list[SourceLine]]] = {about: ([], []) for about in order()}
    for place, lines in enumerate((here, others)):
        for line in lines:
            found[line.about][place].append(line)
    return tuple(
        SourceGroup(about=about, anchor=f"about-{slug(about)}", here=tuple(used), others=tuple(rest))
        for about, (used, rest) in found.items()
        if used or rest
    )


def _names_hidden(source: Source, ledger: Ledger) -> bool:
    """Whether it was printed in a year that no page of this build names."""
    printed = f"{source.id} {source.title} {source.year} {source.part}"
    return any(str(year) in printed for year in ledger.garden.hidden_years)


def _line(source: Source, used_for: Sequence[Link], taken: Sequence[tuple[str, Link]]) -> SourceLine:
    """A source with what is taken from it: for the crops of this garden, else in the tables at all."""
    labels = dict.fromkeys(label for label, _ in taken) or what_is_taken().get(source.id, ())
    return SourceLine(
        anchor=source_anchor(source.id),
        title=source.title,
        publisher=source.publisher,
        year=source.year,
        part=source.part,
        used_for=tuple(used_for[:MOST_NAMED]),
        taken=", ".join(labels),
        about=group_of(labels),
        crops=tuple(dict.fromkeys(crop for _, crop in taken)),
    )


def _customs() -> tuple[CustomGroup, ...]:
    by_about: dict[str, list[str]] = {}
    for custom in common_practice():
        by_about.setdefault(custom.about, []).append(custom.words)
    return tuple(
        CustomGroup(about=about[:1].upper() + about[1:], words=tuple(words))
        for about, words in by_about.items()
    )


def _taken(ledger: Ledger) -> dict[str, list[tuple[str, Link]]]:
    """By source: what is taken from it, with the crop on whose page it stands."""
    taken: dict[str, list[tuple[str, Link]]] = {}
    for crop in ledger.garden.crops.values():
        link = Link(text=crop.name, to=f"{ledger.crop_pages[crop.key]}#known")
        for line in ledger.reckoned.known[crop.key]:
            label = line.label[:1].lower() + line.label[1:]
            for said in line.said:
                taken.setdefault(said.source, []).append((label, link))
    return taken
