"""Cuts the body of a note at its dated headings and lines, and finds the list lines in each part.

Works on text without comments, before any Markdown is read. Which day a date means is for `read`, as is
whether a list line counts; whether a line without a mark does is for `bare_lines`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

from leafmould.values.date_forms import may_begin
from leafmould.values.dates import DateWords, scan_date

HEADING = re.compile(r" {0,3}(#{1,6})(?:[ \t]+(?P<text>.*?))?(?:[ \t]+#+)?[ \t]*$")
UNDERLINE = re.compile(r" {0,3}(?:=+|-+)[ \t]*$")
FENCE = re.compile(r" {0,3}(`{3,}|~{3,})")
LIST_LINE = re.compile(
    r"(?P<indent>[ \t]*)(?:[-*+•–‣·]|\d{1,3}[.)])[ \t]+(?:\[[xX]\][ \t]+)?(?P<text>\S.*?)[ \t]*$"
)
LIST_SIGNS = frozenset("-*+•–‣·")
ENDS = (".", "!", "?")
LABEL_ENDS = frozenset(":*_")
LABEL = re.compile(
    r"(?:\*\*|__)(?P<bold>[^*_]{1,60}?):?(?:\*\*|__):?[ \t]*$|(?P<plain>[^\W\d_][^:|]{0,60}):[ \t]*$"
)
EMPHASIS = re.compile(r"^(?:\*\*|__|\*|_)(?=\S)(?P<inside>.*?\S)(?:\*\*|__|\*|_)(?P<rest>.*)$")
SEPARATOR = re.compile(r"[ \t]*(?::|[ \t][-–—]+(?=[ \t])|[–—])[ \t]*|[ \t]*[.]?[ \t]*$")
COMMA = re.compile(r"[ \t]*[,;.(][ \t]*|[ \t]+(?=\S)")
SEMICOLON = re.compile(r"[ \t]*;[ \t]*(?=\S)")
FULL_STOP = re.compile(r"[ \t]*\.[ \t]+(?=[^\W_a-z])")
YEAR_ALONE = re.compile(r"(?:19|20)\d\d(?=[ \t]*(?:$|[:–—(]|-[ \t]))")

NO_LINE = re.compile(r"[ \t]*[|>]| {4}|\t")
"""How the rows of a table, a quotation or indented code begin."""

LABEL_LEVEL = 7
"""A line such as "Balcony:" counts as a heading below all others."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ListLine:
    """One line of a list, or what stands behind the date of a dated line."""

    text: str
    line: int
    column: int
    under: tuple[str, ...] = ()  # the headings above it in its part, outermost first


@dataclass(frozen=True, slots=True, kw_only=True)
class Paragraph:
    """Lines without a mark that follow one another without a blank line."""

    lines: tuple[ListLine, ...]
    above: str = ""  # the list line or dated line they stand right under, if they do


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """One part of a body; only the first may be without a date."""

    line: int  # of its date, or of its first line
    date: str | None = None  # as written
    is_heading: bool = False  # the date stands in a heading
    title: str | None = None  # the rest of the dated heading, or the first heading of an undated part
    body: str = ""
    body_line: int = 1
    lists: tuple[ListLine, ...] = ()
    paragraphs: tuple[Paragraph, ...] = ()
    has_text: bool = False  # more than headings and blank lines


@dataclass(slots=True)
class _Open:
    """A part still being read."""

    line: int
    date: str | None = None
    is_heading: bool = False
    title: str | None = None
    start: int = 0  # index of its first body line
    rows: list[str] = field(default_factory=list)
    lists: list[ListLine] = field(default_factory=list)
    paragraphs: list[tuple[str, list[ListLine]]] = field(default_factory=list)
    headings: list[tuple[int, str]] = field(default_factory=list)
    has_text: bool = False


def split_body(body: str, first_line: int) -> tuple[Section, ...]:
    """The parts of a body, top first; none for an empty one."""
    reader = _Reader(body.split("\n"), first_line)
    reader.run()
    return tuple(
        _closed(part, first_line) for part in reader.parts if part.date or part.has_text or part.title
    )


def _closed(part: _Open, first_line: int) -> Section:
    """A part with the blank lines at its edges gone; line numbers still fit."""
    rows, begin, end = part.rows, 0, len(part.rows)
    while begin < end and not rows[begin].strip():
        begin += 1
    while end > begin and not rows[end - 1].strip():
        end -= 1
    return Section(
        line=part.line,
        date=part.date,
        is_heading=part.is_heading,
        title=part.title,
        body="\n".join(rows[begin:end]),
        body_line=first_line + part.start + begin,
        lists=tuple(part.lists),
        paragraphs=tuple(Paragraph(lines=tuple(lines), above=above) for above, lines in part.paragraphs),
        has_text=part.has_text,
    )


class _Reader:
    """Goes through the lines once."""

    def __init__(self, rows: list[str], first_line: int) -> None:
        self.rows = rows
        self.first_line = first_line
        self.parts = [_Open(line=first_line)]
        self.fence = ""
        self.is_list_open = False
        self.underline_at = -1
        self.row_above = ""  # a list line or dated line right above
        self.is_paragraph_open = False

    @property
    def part(self) -> _Open:
        return self.parts[-1]

    def run(self) -> None:
        for index, row in enumerate(self.rows):
            if self._in_fence(row):
                self._keep(row)
                self._close_paragraph()
            elif index == self.underline_at or not row.strip():
                self.is_list_open = False
                self._close_paragraph()
                self.part.rows.append("")
            elif "#" in row[:4] and (m := HEADING.match(row)) is not None:
                self._heading(index, row, len(m[1]), (m["text"] or "").strip())
            else:
                sign = row.lstrip()[0]
                item = LIST_LINE.match(row) if sign in LIST_SIGNS or sign.isdigit() else None
                if not self._dated_row(index, row, item):
                    self._plain_row(index, row, item)

    def _in_fence(self, row: str) -> bool:
        """Whether the row belongs to a block of code, its fences included."""
        m = FENCE.match(row) if "`" in row or "~" in row else None
        if self.fence:
            if m and m[1].startswith(self.fence) and not row.strip(" `~"):
                self.fence = ""
            return True
        self.fence = m[1] if m else ""
        return m is not None

    def _close_paragraph(self, above: str = "") -> None:
        self.is_paragraph_open, self.row_above = False, above

    def _keep(self, row: str) -> None:
        self.part.rows.append(row)
        self.part.has_text = True

    def _heading(self, index: int, row: str, level: int, text: str) -> None:
        """A heading: the start of a dated part, the title, or a place or kind of work."""
        self.is_list_open = False
        self._close_paragraph()
        found = dated_heading(text)
        if found is not None:
            self._begin(index, found[0], is_heading=True, title=found[1])
            return
        self._under(level, text)
        if self.part.date is None and self.part.title is None and not self.part.has_text:
            self.part.title = _unmarked(text) or None
            self.part.rows.append("")
        else:
            self.part.rows.append(row)

    def _under(self, level: int, text: str) -> None:
        headings = self.part.headings
        self.part.headings = [*(h for h in headings if h[0] < level), (level, _unmarked(text))]

    def _begin(self, index: int, date: str, *, is_heading: bool, title: str | None = None) -> None:
        """Open a new part at a date."""
        part = _Open(line=self.first_line + index, date=date, is_heading=is_heading, title=title, start=index)
        part.rows.append("")
        self.parts.append(part)
        self.is_list_open = False
        self._close_paragraph()

    def _dated_row(self, index: int, row: str, item: re.Match[str] | None) -> bool:
        """A line that is only a date, or begins with one and goes on."""
        inner = None if row[0].isdigit() else item
        text = row.strip() if inner is None else inner["text"]
        if not _may_open_with_date(text):
            return False
        alone = _date_alone(text)
        below = self.rows[index + 1] if index + 1 < len(self.rows) else ""
        if alone is not None and (inner is None or _is_deeper(below, row)):
            self._begin(index, alone, is_heading=UNDERLINE.match(below) is not None)
            self.underline_at = index + 1 if UNDERLINE.match(below) else -1
            return True
        if inner is not None or row[0].isspace():
            return False
        above = self.rows[index - 1].strip() if index else ""
        is_diary = self.part.date is not None and self.part.start == index - 1
        found = dated_line(row, is_first=not above, is_after_sentence=is_diary or above.endswith(ENDS))
        if found is None:
            return False
        date, start = found
        self._begin(index, date, is_heading=False)
        self.part.rows[-1] = row[start:]
        self.part.has_text = True
        self._close_paragraph(row[start:])
        self.part.lists.append(
            ListLine(text=row[start:].rstrip(), line=self.first_line + index, column=start + 1)
        )
        return True

    def _plain_row(self, index: int, row: str, m: re.Match[str] | None) -> None:
        """A list line, the rest of one, a label, or prose."""
        self._keep(row)
        if m is not None:
            self.is_list_open = True
            self.part.lists.append(self._line(index, m["text"], m.start("text")))
            self._close_paragraph(m["text"])
        elif self.is_list_open and row[:2].isspace():
            last = self.part.lists[-1]
            self.part.lists[-1] = replace(last, text=f"{last.text} {row.strip()}")
        elif row.rstrip()[-1] in LABEL_ENDS and (label := LABEL.match(row)) is not None:
            self.is_list_open = False
            self._close_paragraph()
            self._under(LABEL_LEVEL, (label["bold"] or label["plain"]).strip())
        else:
            self.is_list_open = False
            self._bare_row(index, row)

    def _bare_row(self, index: int, row: str) -> None:
        """A row without a mark, for whoever decides whether it is prose."""
        if NO_LINE.match(row):
            self._close_paragraph()
            return
        text = row.strip()
        line = self._line(index, text, len(row) - len(row.lstrip()))
        if self.is_paragraph_open:
            self.part.paragraphs[-1][1].append(line)
        else:
            self.part.paragraphs.append((self.row_above, [line]))
        self.is_paragraph_open = True

    def _line(self, index: int, text: str, column: int) -> ListLine:
        under = tuple(text for _, text in self.part.headings)
        return ListLine(text=text, line=self.first_line + index, column=column + 1, under=under)


def dated_heading(text: str) -> tuple[str, str | None] | None:
    """The date a heading opens with, and the rest of it; None if it opens with none."""
    plain = _unmarked(text)
    if (m := YEAR_ALONE.match(plain)) is not None:
        return m[0], plain[m.end() :].strip(" \t:–—-") or None
    found = scan_date(plain)
    if found is None or found[0].days_ago is not None:
        return None
    words, end = found
    rest = plain[end:]
    if rest.strip(" .:") and not (SEPARATOR.match(rest) or (words.day is not None and COMMA.match(rest))):
        return None
    return words.written, rest.strip(" \t:;,.–—-") or None


def dated_line(row: str, *, is_first: bool, is_after_sentence: bool = False) -> tuple[str, int] | None:
    """The date a line opens with, and where the rest begins.

    A colon, a semicolon or a dash must follow, or where a sentence may begin a full stop and a new
    sentence; where a paragraph begins and the year is written, a comma or a space will do.
    """
    found = scan_date(row, len(row) - len(row.lstrip("~ ")))
    if found is None or not _says_days(found[0]):
        return None
    words, end = found
    m = SEPARATOR.match(row, end) or SEMICOLON.match(row, end)
    if m is None and (is_first or is_after_sentence):
        m = FULL_STOP.match(row, end)
    if m is None and is_first and words.year is not None:
        m = COMMA.match(row, end)
    return None if m is None or m.end() == len(row) else (words.written, m.end())


def _date_alone(text: str) -> str | None:
    """The date a line consists of; a bare month, season or weekday is too little."""
    plain = _unmarked(text).lstrip("~ ").rstrip(" :")
    found = scan_date(plain)
    if found is None:
        return None
    if found[1] < len(plain):  # "12.6." needs its last point, "12 June." does not
        plain = plain.rstrip(" .:")
        found = scan_date(plain)
    if found is None or found[1] < len(plain):
        return None
    words = found[0]
    return words.written if _says_days(words) or (words.year and words.month) else None


def _may_open_with_date(text: str) -> bool:
    """A quick look at the first word: most lines of a body begin with no date."""
    plain = _unmarked(text).lstrip("~ ")
    return plain != "" and (plain[0].isdigit() or may_begin(plain, 0))


def _says_days(words: DateWords) -> bool:
    """Whether a date is fine enough to open a part: a day, or a third of a month."""
    return words.day is not None or (words.third is not None and words.month is not None)


def _unmarked(text: str) -> str:
    """A text without the marks for bold and slanted letters, and without escapes."""
    if text[:1] not in ("*", "_") and "\\" not in text:
        return text.strip()
    m = EMPHASIS.match(text)
    plain = m["inside"] + m["rest"] if m else text
    return re.sub(r"\\([#*_.:-])", r"\1", plain).strip()


def _is_deeper(row: str, above: str) -> bool:
    """Whether a list line stands further in than the one above it."""
    m = LIST_LINE.match(row)
    return m is not None and len(m["indent"]) > len(above) - len(above.lstrip())
