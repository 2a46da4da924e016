"""A line of the parts of a long page in the gardener's own words, set before the first of them.

Works on what the Markdown reader found; each heading of the first level gets an id that a link may name.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from markdown_it.token import Token

from leafmould.render.pieces import safe

CONTENTS = "contents"
"""The kind of token the line is."""
MANY = 5
"""A page with fewer parts is seen at a glance."""
PART = re.compile(r"part-[1-9]\d{0,2}")
"""What a part is called in a link."""


def with_contents(tokens: Sequence[Token]) -> list[Token]:
    """The same with the line, where there are many parts."""
    heads = [at for at, token in enumerate(tokens) if token.type == "heading_open" and token.level == 0]
    top = min((tokens[at].tag for at in heads), default="")
    parts = [at for at in heads if tokens[at].tag == top]
    if len(parts) < MANY:
        return list(tokens)
    links = []
    for number, at in enumerate(parts, start=1):
        tokens[at].attrs["id"] = f"part-{number}"
        links.append(f'<li><a href="#part-{number}">{safe(_words(tokens[at + 1]))}</a></li>\n')
    line = f'<nav class="near-here" aria-label="On this page">\n<ul>\n{"".join(links)}</ul>\n</nav>\n'
    return [*tokens[: parts[0]], Token(CONTENTS, "", 0, content=line), *tokens[parts[0] :]]


def _words(inline: Token) -> str:
    """A heading as plain words."""
    return "".join(child.content for child in inline.children or () if child.type in ("text", "code_inline"))
