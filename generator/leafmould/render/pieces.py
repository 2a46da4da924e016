"""The small pieces that every page prints the same way: links, figures, labels, lists of lines.

Templates use them as filters: `{{ it.on | figure }}`, `{{ year.doings | doings }}`. They are written out here and not in templates
because a site holds hundreds of thousands of them; how a page is put together stays with its template.
Everything that is not ours is written safely: no sign in a note can become HTML.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

from jinja2 import pass_context
from jinja2.runtime import Context
from markupsafe import Markup, escape

from leafmould.charts.plan import Box, Words
from leafmould.pages.crop_tables import Totals
from leafmould.pages.note import Neighbours, Understood
from leafmould.pages.page import (
    Doing,
    FamilyMark,
    Figure,
    Lesson,
    Link,
    NoteLine,
    PlantingLine,
    Plate,
    StripRow,
    Tag,
)
from leafmould.pages.sections import Moment
from leafmould.render.plates import Plates
from leafmould.render.strips import strip, strip_key, strip_table
from leafmould.render.typography import set_text, shown


@lru_cache(maxsize=1 << 16)
def safe(text: str) -> str:
    """Text with the signs HTML would take for its own written out."""
    return str(escape(text))


SHORT = 16
"""Letters up to which a figure stays on one line: "1.4 kg", "119–147 days"."""


class Written(Markup):
    """HTML that is ready, made as quickly as a plain text: nothing is asked of what it is made of."""

    __slots__ = ()
    if not TYPE_CHECKING:
        __new__ = str.__new__


class Pieces:
    """The pieces of one page, each ready to be printed."""

    def __init__(
        self,
        root: str,
        *,
        months: Iterable[str],
        names: Callable[[str], str],
        mark: Callable[[FamilyMark], str],
    ) -> None:
        """Take the way to the top of the site and the letters of the months.

        Args:
            names: how a line is written with its names linked.
            mark: how a family's mark is written.
        """
        self._root = root
        self._months = months
        self._names = names
        self._mark = mark
        self._marked: dict[str, FamilyMark] = {}  # by key: families whose mark stands without their name
        self._named: set[str] = set()  # keys of those whose name stands beside it too
        self._plates = plates_at(root)

    def box(self, box: Box) -> Markup:
        """Where a shape of a drawing stands, and how large it is."""
        return Written(f'x="{box.x}" y="{box.y}" width="{box.width}" height="{box.height}"')

    def words_at(self, at: Words) -> Markup:
        """Where words of a drawing stand, and whether they are turned."""
        turned = f' transform="rotate(-90 {at.x} {at.y})"' if at.is_turned else ""
        return Written(f'x="{at.x}" y="{at.y}"{turned}')

    def names(self, text: str) -> Markup:
        """A line of plain text with its names linked."""
        return Written(self._names(text))

    def figure(self, figure: Figure) -> Markup:
        """A number or a date that leads to where it was noted."""
        return Written(_figure(figure, self._root))

    def figures(self, several: Iterable[Figure]) -> Markup:
        """Figures in a row."""
        return Written(_figures(several, self._root))

    def link(self, link: Link) -> Markup:
        """A name that leads somewhere, or stays plain."""
        return Written(_link(link, self._root))

    def links(self, several: Iterable[Link]) -> Markup:
        """Names in a row."""
        return Written(_links(several, self._root))

    def mark(self, family: FamilyMark, *, is_named: bool = False) -> Markup:
        """A family's mark; `is_named` where its name stands beside it."""
        if is_named:
            self._named.add(family.key)
        else:
            self._marked[family.key] = family
        return Written(self._mark(family))

    def marks(self, several: Iterable[FamilyMark]) -> Markup:
        """Marks of families, close together."""
        return Written("".join([self.mark(family) for family in several]))

    def marks_told(self) -> Markup:
        """What the marks of the page stand for, as far as nothing on it says so: printed below all else."""
        untold = [m for key, m in self._marked.items() if key not in self._named]
        untold.sort(key=lambda m: (m.name, m.key))
        told = "".join(f"<span>{self._mark(m)} {shown(m.name)}</span> " for m in untold)
        return Written(f'<p class="families-told">{told}</p>\n' if told else "")

    def tags(self, several: Iterable[Tag]) -> Markup:
        """A planting's labels."""
        return Written(_tags(several, self._root))

    def planting(self, line: PlantingLine, *, bed: bool = True) -> Markup:
        """A planting in one line of a list, with its bed unless the page tells it."""
        number = f' <span class="aside">× {_figure(line.number, self._root)}</span>' if line.number else ""
        part = f'<span class="aside">, {shown(line.part)}</span>' if line.part else ""
        where = ""
        if bed:
            before = "of" if line.part else "in"
            where = f'<span class="aside"> {before} {_link(line.bed, self._root)}</span>'
        what = f'<a href="{self._root}{safe(line.to)}">{shown(line.name)}</a>{number}{part}{where}'
        return Written(
            f'<li class="planting"><span class="what">{what}</span> '
            f"{self.marks(line.families)} {_tags(line.tags, self._root)}</li>"
        )

    def plate(self, plate: Plate, *, room: str = "text", is_first: bool = False) -> Markup:
        """A picture with its caption."""
        return Written(self._plates.alone(plate, room, is_first=is_first))

    def plates(self, several: Iterable[Plate], *, is_first: bool = False) -> Markup:
        """Pictures beside each other; `is_first` where they stand at the top of a page."""
        return Written(self._plates.row(several, is_first=is_first))

    def strip(self, rows: Sequence[StripRow]) -> Markup:
        """Plantings drawn along the months of a year."""
        return Written(strip(rows, self._months, self._root))

    def strip_key(self, rows: Iterable[StripRow]) -> Markup:
        """What the strips of a page draw."""
        return Written(strip_key(rows))

    def strip_table(self, rows: Sequence[StripRow], name: str) -> Markup:
        """The same days as a table, behind the strip."""
        return Written(strip_table(rows, name, self._root))

    def moments(self, several: Iterable[Moment]) -> Markup:
        """A planting's dates as labels and days."""
        rows = [
            f"<div><dt>{safe(moment.name)}</dt><dd>{_figure(moment.on, self._root)}</dd></div>\n"
            for moment in several
        ]
        return Written("".join(rows))

    def notes(self, several: Iterable[NoteLine]) -> Markup:
        """A list of notes by their days."""
        lines = "".join(_note(note, self._root) for note in several)
        return Written(f'<ul class="notes">\n{lines}</ul>')

    def doings(self, several: Iterable[Doing]) -> Markup:
        """What was done, line by line."""
        lines = "".join(
            f'<li><span class="when">{_when(doing.on, self._root)}</span> '
            f'<span class="said-there">{self._names(doing.text)}{_inferred(doing.remarks)}</span></li>\n'
            for doing in several
        )
        return Written(f'<ul class="doings">\n{lines}</ul>')

    def lessons(self, several: Iterable[Lesson]) -> Markup:
        """Lessons, each with its day and what it is about."""
        lines = "".join(self._lesson(lesson) for lesson in several)
        return Written(f'<ul class="lessons">\n{lines}</ul>')

    def _lesson(self, lesson: Lesson) -> str:
        about = f": {_links(lesson.about, self._root)}" if lesson.about else ""
        return (
            f'<li><span class="lesson">{self._names(lesson.text)}</span> '
            f'<span class="aside">{_figure(lesson.on, self._root)}{about}</span></li>\n'
        )

    def totals(self, totals: Totals) -> Markup:
        """What was picked, how often, and what was picked with others."""
        not_weighed = "not weighed" if totals.pickings and not totals.shared else ""
        parts = [_figures(totals.figures, self._root) or not_weighed]
        if totals.pickings:
            parts.append(f' <span class="aside">{safe(totals.pickings)}</span>')
        if totals.shared:
            shared = _figures(totals.shared, self._root)
            parts.append(f' <span class="aside">with others: {shared}</span>')
        return Written("".join(parts))

    def understood(self, several: Iterable[Understood]) -> Markup:
        """Lines of work as written, and what was taken from each."""
        return Written("".join(map(self._understood, several)))

    def _understood(self, line: Understood) -> str:
        written = f'<q class="as-written">{self._names(line.text)}</q> ' if line.text else ""
        slots = "".join(f" · {shown(slot)}" for slot in line.slots)
        on = f" · {_figure(line.on, self._root)}" if line.on else ""
        plantings = "".join(
            f' <a class="to-planting" href="{self._root}{safe(p.to)}">{shown(p.text)}</a>'
            for p in line.plantings
        )
        return (
            f'<li>{written}<span class="reading"><b>{shown(line.verb)}</b>{slots}{on}{plantings}'
            f"{_inferred(line.remarks)}</span></li>\n"
        )

    def ways(self, several: Iterable[Neighbours]) -> Markup:
        """The notes before and after one, for each thing it is about."""
        return Written("".join(_way(way, self._root) for way in several))


def piece_filters() -> dict[str, Callable[..., Markup]]:
    """Every piece as a filter, which finds the pieces of its page as `pieces` among what is printed."""
    return {name: _filter(name) for name in vars(Pieces) if not name.startswith("_") and name != "marks_told"}


def plates_at(root: str) -> Plates:
    """How pictures are written on a page, seen from which the site begins at `root`."""
    return Plates(root, figure=lambda on: _figure(on, root), links=lambda several: _links(several, root))


def _filter(name: str) -> Callable[..., Markup]:
    @pass_context
    def printed(context: Context, value: object, **ways: object) -> Markup:
        piece: Markup = getattr(context.parent["pieces"], name)(value, **ways)
        return piece

    printed.__qualname__ = name  # as a fault in a layout is told
    return printed


def _link(link: Link, root: str) -> str:
    return f'<a href="{root}{safe(link.to)}">{shown(link.text)}</a>' if link.to else shown(link.text)


def _links(several: Iterable[Link], root: str) -> str:
    return ", ".join([_link(link, root) for link in several])


def _figure(figure: Figure, root: str) -> str:
    name, value = ("time", "datetime") if figure.is_time else ("data", "value")
    why = f' title="{safe(figure.why)}"' if figure.why else ""
    text = shown(figure.text)
    if figure.to:
        text = f'<a href="{root}{safe(figure.to)}">{text}</a>'
    estimated = ' <span class="estimated">estimated</span>' if figure.is_estimated else ""
    whole = ' class="one"' if not figure.is_time and " " in figure.text and len(figure.text) <= SHORT else ""
    return f'<{name} {value}="{safe(figure.value)}"{whole}{why}>{text}</{name}>{estimated}'


def _figures(several: Iterable[Figure], root: str) -> str:
    return ", ".join([_figure(figure, root) for figure in several])


def _when(on: Figure, root: str) -> str:
    """The day of a line that leads to its note; a day here is never estimated."""
    if not on.is_time:
        return _figure(on, root)
    day = f'<a href="{root}{safe(on.to)}">{shown(on.text)}</a>'
    return f'<time datetime="{safe(on.value)}">{day}</time>'


def _inferred(remarks: Iterable[str]) -> str:
    return "".join([f' <span class="inferred">{shown(remark)}</span>' for remark in remarks])


def _note(note: NoteLine, root: str) -> str:
    link = note.link
    begins = f' <span class="begins">{shown(note.begins)}</span>' if note.begins else ""
    private = ' <span class="private">private</span>' if note.is_private else ""
    return (
        f'<li><span class="when">{_when(note.on, root)}</span> <span class="said-there">'
        f'<a href="{root}{safe(link.to)}">{shown(link.text)}</a>{begins}{private}</span></li>\n'
    )


def _way(way: Neighbours, root: str) -> str:
    before, after = way.before, way.after
    back = f'<a class="step" href="{root}{safe(before.to)}">← {shown(before.text)}</a>' if before else ""
    on = f'<a class="step" href="{root}{safe(after.to)}">{shown(after.text)} →</a>' if after else ""
    return f'<li><a href="{root}{safe(way.about.to)}">{shown(way.about.text)}</a> {back} {on}</li>\n'


def _tags(several: Iterable[Tag], root: str) -> str:
    labels = "".join([f"{_tag(tag, root)} " for tag in several])
    return f'<span class="tags">{labels}</span>' if labels else ""


def _tag(tag: Tag, root: str) -> str:
    """One label; a count of days can be moved on by the script while the page is read."""
    why = f' title="{safe(tag.why)}"' if tag.why else ""
    text = shown(tag.text)
    if tag.counted_from:
        around = f'data-before="{safe(set_text(tag.before))}" data-after="{safe(set_text(tag.after))}"'
        text = f'<data value="{tag.value}" data-from="{tag.counted_from}" {around}>{text}</data>'
    if tag.to:
        text = f'<a href="{root}{safe(tag.to)}">{text}</a>'
    shape = "since" if tag.is_plain else f"tag {tag.tone}"
    return f'<span class="{shape}"{why}>{text}{_wait(tag)}</span>'


def _wait(tag: Tag) -> str:
    wait = tag.wait
    if wait is None:
        return ""
    opens = f'<rect class="opens" x="{wait.opens}" y=".5" width="{100 - wait.opens}" height="3"/>'
    return (
        '<svg class="wait" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">'
        f'<path class="way" d="M0 2H100"/>{opens}<path class="gone" d="M0 2H{wait.gone}"/></svg>'
    )
