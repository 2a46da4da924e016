"""Strips of plantings along the months of a year as HTML, and the table behind each: the days its bars are drawn from.

The table is shut on a screen, where the strip says enough at a glance, and open on paper.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from markupsafe import escape as safe

from leafmould.pages.page import StripRow
from leafmould.render.typography import shown

COLUMNS = {"raised": "Raised", "ground": "In the ground", "picking": "Picked", "expected": "Expected"}
"""What bars are of, in the order of a season, as the key beside the strip calls them."""


def strip(rows: Sequence[StripRow], months: Iterable[str], root: str) -> str:
    """The letters of the months, and under them a row for each planting."""
    letters = "".join(f"<span>{safe(letter)}</span>" for letter in months)
    drawn = "".join(_strip_row(row, root) for row in rows)
    return (
        f'<div class="strip">\n<div class="months" aria-hidden="true">{letters}</div>\n'
        f"<ul>\n{drawn}</ul>\n</div>"
    )


KEYS = {"raised": "raised", "ground": "in the ground", "picking": "picked", "expected": "expected"}
"""What bars are of, as the key calls them."""


def strip_key(rows: Iterable[StripRow]) -> str:
    """What is drawn in some strips, and nothing else."""
    bars = [bar for row in rows for bar in row.bars]
    kinds = {bar.kind for bar in bars}
    words = [(kind, said) for kind, said in KEYS.items() if kind in kinds]
    if any(bar.is_open and bar.kind != "expected" for bar in bars):
        words.append(("open", "estimated"))
    spans = " ".join(f'<span class="{kind}">{said}</span>' for kind, said in words)
    return f'<p class="key">{spans}</p>' if words else ""


def _strip_row(row: StripRow, root: str) -> str:
    note = f' <span class="aside">{safe(row.note)}</span>' if row.note else ""
    name = f'<a href="{root}{safe(row.link.to)}">{shown(row.link.text)}</a>{note}'
    bars = "".join(
        [
            f'<rect class="{bar.kind}{" open" if bar.is_open else ""}" x="{bar.x}" width="{bar.width}"/>'
            for bar in row.bars
        ]
    )
    today = f'<path class="today" d="M{row.today} 0V10"/>' if row.today else ""
    drawn = (
        f'<svg viewBox="0 0 120 10" preserveAspectRatio="none" '
        f'role="img" aria-label="{safe(row.says)}">{bars}{today}</svg>'
    )
    # What is drawn leads where its name leads; a keyboard need not stop at both.
    way = f'<a href="{root}{safe(row.link.to)}" tabindex="-1">{drawn}</a>'
    return f'<li><span class="row-name">{name}</span>{way}</li>\n'


def strip_table(rows: Sequence[StripRow], name: str, root: str) -> str:
    """Each planting with the days of its bars; what none of them has gets no column."""
    kinds = [kind for kind in COLUMNS if any(bar.kind == kind for row in rows for bar in row.bars)]
    if not kinds:
        return ""
    heads = "".join(f'<th scope="col">{COLUMNS[kind]}</th>' for kind in kinds)
    body = "".join(_row(row, kinds, root) for row in rows)
    return (
        f'<details class="as-table"><summary>{safe(name)} as a table</summary>\n'
        f'<div class="wide" role="group" aria-label="{safe(name)} as a table" tabindex="0">\n<table>\n'
        f'<thead><tr><th scope="col">Planting</th>{heads}</tr></thead>\n'
        f"<tbody>\n{body}</tbody>\n</table>\n</div>\n</details>"
    )


def _row(row: StripRow, kinds: Sequence[str], root: str) -> str:
    note = f' <span class="aside">{safe(row.note)}</span>' if row.note else ""
    cells = f'<td class="silence" colspan="{len(kinds)}">no dates noted</td>'
    if row.bars:
        cells = "".join(_cell(row, kind) for kind in kinds)
    return f'<tr><th scope="row"><a href="{root}{safe(row.link.to)}">{shown(row.link.text)}</a>{note}</th>{cells}</tr>\n'


def _cell(row: StripRow, kind: str) -> str:
    return f"<td>{'; '.join(bar.told for bar in row.bars if bar.kind == kind)}</td>"
