"""A note's Markdown as HTML: names linked, links checked, nothing passed through that could act.

HTML is shown as text, comments never appear, line ends are kept unless an editor made them, pictures stand where they are named (or a quiet line does), and
numbers that Markdown would take for list markers keep their value. Nothing a note says can end the run.
"""

from __future__ import annotations

import posixpath
import re
from collections.abc import Mapping, Sequence
from itertools import accumulate
from typing import Any
from urllib.parse import unquote, urlsplit

from markdown_it import MarkdownIt
from markdown_it.common.utils import escapeHtml
from markdown_it.renderer import RendererHTML
from markdown_it.rules_core import StateCore
from markdown_it.rules_inline import StateInline
from markdown_it.token import Token
from markdown_it.utils import OptionsDict
from markupsafe import Markup

from leafmould.notes.pictured import PICTURE, name_in
from leafmould.pages.mentions import Mentions
from leafmould.pages.page import Plate
from leafmould.render.contents import CONTENTS, PART, with_contents
from leafmould.render.flowing import flows
from leafmould.render.in_text import BREAKS, FIGURE, IN_LINK, PICTURES, InText
from leafmould.render.pieces import Written, safe
from leafmould.render.plain import Block, plain_blocks
from leafmould.render.typography import set_text, unbroken
from leafmould.values.lengths import too_long_at

DEEPEST = 60
"""Levels of quotes and lists that are still set as such; deeper text is shown as it was typed."""

SCHEMES = frozenset({"http", "https", "mailto", "tel"})
COMMENT = re.compile(r"<!--.*?(?:-->|\Z)", re.DOTALL)
BELOW_ZERO = re.compile(r"\d[\d.,]*\s*°")


class Prose:
    """Renders the prose of one site; holds the one Markdown reader."""

    def __init__(self, mentions: Mentions, note_by_file: Mapping[str, str]) -> None:
        self._mentions = mentions
        self._note_by_file = note_by_file
        self._markdown = _reader()

    def html(
        self,
        text: str,
        *,
        root: str,
        file: str = "",
        plates: Mapping[str, Plate] | None = None,
        contents: bool = False,
    ) -> Markup:
        """A body as HTML.

        Args:
            file: where it stands, for links to other notes.
            plates: its pictures, by the names it has for them.
            contents: with a line of its parts before the first, where it has many.
        """
        if too_long_at(text) is not None:
            return _as_typed(text)
        blocks = plain_blocks(text)
        if blocks is None:
            return self.by_parser(text, root=root, file=file, plates=plates, contents=contents)
        return Written("".join([self._block(block, root) for block in blocks]))

    def by_parser(
        self,
        text: str,
        *,
        root: str,
        file: str = "",
        plates: Mapping[str, Plate] | None = None,
        contents: bool = False,
    ) -> Markup:
        """A body as HTML, whatever is in it."""
        if "<!--" in text:
            text = COMMENT.sub("", text)
        tokens = self._markdown.parse(text)
        if any(token.level >= DEEPEST for token in tokens):
            return _as_typed(text)
        for token in tokens:
            if token.type == "inline" and token.children:
                token.children = self._led(_flowing(token.content, token.children), root, file)
        if contents:
            tokens = with_contents(tokens)
        pictures = InText(plates or {}, root)
        set_apart = pictures.set_apart(_kept_signs(tokens))
        return Written(
            self._markdown.renderer.render(set_apart, self._markdown.options, {PICTURES: pictures})
        )

    def names(self, text: str, root: str, here: str) -> str:
        """One plain line as HTML with its names linked, but for those that lead to the page it stands on."""
        return "".join(
            [
                _link(root, words, to) if to and not to.startswith(here) else unbroken(safe(words))
                for words, to in self._set_pieces(text)
            ]
        )

    def _set_pieces(self, text: str) -> Sequence[tuple[str, str]]:
        """The pieces of a text, found as it was written and set as it is read."""
        pieces, whole = self._mentions.pieces(text), set_text(text)
        if whole == text:
            return pieces
        ends = list(accumulate(len(words) for words, _ in pieces))
        return [(whole[end - len(words) : end], to) for (words, to), end in zip(pieces, ends, strict=True)]

    def _block(self, block: Block, root: str) -> str:
        if block.is_list:
            items = "".join([f"<li>{self._line(line, root, set())}</li>\n" for line in block.lines])
            return f"<ul>\n{items}</ul>\n"
        done: set[str] = set()
        lines = [self._line(line, root, done) for line in block.lines]
        ends = ["\n" if goes_on else "<br>\n" for goes_on in flows(block.lines)]
        return f"<p>{''.join(map(str.__add__, lines, [*ends, '']))}</p>\n"

    def _line(self, line: str, root: str, done: set[str]) -> str:
        """A line with its names led to their pages, each once in a paragraph."""
        written = []
        has_signs = '"' in line or ">" in line  # no other sign of HTML comes here
        for words, to in self._set_pieces(line):
            if not to or to in done:
                written.append(escapeHtml(words) if has_signs else words)
            else:
                done.add(to)
                written.append(_link(root, words, to))
        return "".join(written)

    def _led(self, children: Sequence[Token], root: str, file: str) -> list[Token]:
        """The tokens of one paragraph with its links checked and its names led to their pages, each once."""
        led: list[Token] = []
        done: set[str] = set()
        kept: list[bool] = []  # the links that are open, and whether they stay links
        for token in children:
            if token.type == "link_open":
                kept.append(self._checked(token, root, file))
                led += [token] if kept[-1] else []
            elif token.type == "link_close":
                led += [token] if kept.pop() else []
            elif token.type == "text" and not kept:
                led += self._named(token, root, done)
            else:
                if token.type == "image" and any(kept):
                    token.meta[IN_LINK] = True
                led.append(token)
        return led

    def _checked(self, token: Token, root: str, file: str) -> bool:
        """Whether a link may stay; one to another note is led to that note's page."""
        href = str(token.attrs.get("href", ""))
        if _scheme(href) in SCHEMES:
            token.attrs["rel"] = "noreferrer"
            return _leads_somewhere(href)
        beside = posixpath.normpath(posixpath.join(posixpath.dirname(file), unquote(href.partition("#")[0])))
        page = self._note_by_file.get(beside)
        if page is None:
            return False
        part = href.partition("#")[2]
        token.attrs["href"] = f"{root}{page}#{part}" if PART.fullmatch(part) else root + page
        return True

    def _named(self, token: Token, root: str, done: set[str]) -> list[Token]:
        pieces = self._set_pieces(token.content)
        if not any(to for _, to in pieces):
            token.content = set_text(token.content)
            return [token]
        led: list[Token] = []
        for words, to in pieces:
            if not to or to in done:
                led.append(Token("text", "", 0, content=words))
                continue
            done.add(to)
            led.append(Token("mention", "", 0, content=_link(root, words, to)))
        return led


def _flowing(typed: str, children: list[Token]) -> list[Token]:
    """The tokens of a paragraph with the line ends an editor made as plain ones."""
    ends = [at for at, token in enumerate(children) if token.type in BREAKS]
    lines = typed.split("\n")
    if len(ends) != len(lines) - 1:  # one stands inside of something that takes it for a space
        return children
    for at, goes_on in zip(ends, flows(lines), strict=True):
        if goes_on and children[at].type == "softbreak":
            children[at] = Token("text", "", 0, content="\n")
    return children


def _as_typed(text: str) -> Markup:
    """A text that is not set at all: as it was typed, without comments."""
    return Markup('<pre class="as-typed">{}</pre>').format(COMMENT.sub("", text))


def _link(root: str, words: str, to: str) -> str:
    """A name's link as HTML."""
    return f'<a href="{root}{safe(to)}">{unbroken(safe(words))}</a>'


def _reader() -> MarkdownIt:
    markdown = MarkdownIt(
        "commonmark", {"html": False, "breaks": True, "xhtmlOut": False, "maxNesting": DEEPEST + 4}
    )
    markdown.enable(["table", "strikethrough"])
    markdown.validateLink = _is_safe  # type: ignore[method-assign]
    markdown.inline.ruler.before("emphasis", "times", _times)
    markdown.inline.ruler.after("image", "spaced_picture", _spaced_picture)
    markdown.core.ruler.push("levels", _levels)
    markdown.add_render_rule("mention", _mention)
    markdown.add_render_rule(FIGURE, _mention)
    markdown.add_render_rule(CONTENTS, _mention)
    markdown.add_render_rule("image", _picture)
    markdown.add_render_rule("heading_open", _heading)
    markdown.add_render_rule("heading_close", _heading)
    markdown.add_render_rule("list_item_open", _item)
    markdown.add_render_rule("table_open", _table_open)
    markdown.add_render_rule("table_close", _table_close)
    return markdown


def _is_safe(url: str) -> bool:
    """Only links that open a page, a letter or a telephone, and those inside the garden folder."""
    scheme = _scheme(url.strip())
    return scheme == "" or scheme in SCHEMES


def _scheme(url: str) -> str | None:
    """What a link begins with, "" for a plain path; None where it is no link at all."""
    try:
        return urlsplit(url).scheme.lower()
    except ValueError:
        return None


def _leads_somewhere(url: str) -> bool:
    """Whether a link that opens a page names whose it is: "http://[::1" names nobody's."""
    told = urlsplit(url)
    return bool(told.hostname) or told.scheme.lower() not in ("http", "https")


def _times(state: StateInline, silent: bool) -> bool:
    """A star between two digits is a times sign, not the start of emphasis."""
    at, text = state.pos, state.src
    if text[at] != "*" or not (0 < at < len(text) - 1 and text[at - 1].isdigit() and text[at + 1].isdigit()):
        return False
    if not silent:
        state.pending += "*"
    state.pos += 1
    return True


def _spaced_picture(state: StateInline, silent: bool) -> bool:
    """A picture whose file name has spaces in it."""
    found = PICTURE.match(state.src, state.pos)
    if found is None:
        return False
    if not silent:
        token = state.push("image", "img", 0)
        token.attrs = {"src": name_in(found), "alt": ""}
        token.content = found["caption"]
    state.pos = found.end()
    return True


Tokens = Sequence[Token]


def _mention(self: RendererHTML, tokens: Tokens, at: int, options: OptionsDict, env: Any) -> str:
    return tokens[at].content


def _picture(self: RendererHTML, tokens: Tokens, at: int, options: OptionsDict, env: Any) -> str:
    pictures: InText = env[PICTURES]
    return pictures.within(tokens[at])


def _levels(state: StateCore) -> None:
    """No heading skips a level, whichever the gardener liked the size of; those of one size stay of one level."""
    above: list[int] = []
    for token in state.tokens:
        if token.type == "heading_open":
            size = int(token.tag[1:])
            above = [*(other for other in above if other < size), size]
        if token.type in ("heading_open", "heading_close"):
            token.tag = f"h{len(above)}"


def _heading(self: RendererHTML, tokens: Tokens, at: int, options: OptionsDict, env: Any) -> str:
    """One level down: the page's own heading stands above every note."""
    token = tokens[at]
    level = min(6, int(token.tag[1:]) + 1)
    part = f' id="{token.attrs["id"]}"' if "id" in token.attrs else ""
    return f"<h{level}{part}>" if token.nesting == 1 else f"</h{level}>\n"


def _item(self: RendererHTML, tokens: Tokens, at: int, options: OptionsDict, env: Any) -> str:
    """List items keep the number they were written with: "14. April" stays 14."""
    number = tokens[at].info
    return f'<li value="{number}">' if number.isdecimal() else "<li>"


def _table_open(self: RendererHTML, tokens: Tokens, at: int, options: OptionsDict, env: Any) -> str:
    return '<div class="wide" role="group" aria-label="Table in the note" tabindex="0"><table>\n'


def _table_close(self: RendererHTML, tokens: Tokens, at: int, options: OptionsDict, env: Any) -> str:
    return "</table></div>\n"


def _kept_signs(tokens: list[Token]) -> list[Token]:
    """Give back the sign that was taken for a bullet: "- 4 °C" and "+ 5 plants"."""
    sign = ""
    for token in tokens:
        if token.type == "list_item_open":
            sign = token.markup
        elif token.type == "inline" and sign and token.children:
            first = token.children[0]
            if first.type == "text" and first.content[:1].isdigit():
                if sign == "+":
                    first.content = f"+ {first.content}"
                elif sign == "-" and BELOW_ZERO.match(first.content):
                    first.content = f"−{first.content}"
            sign = ""
    return tokens
