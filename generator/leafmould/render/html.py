"""Page values to HTML text.

Runs after all pages are made. Links become relative to the page they stand on; a fault in a template ends
the run with its file and line, because the look is ours or the garden's own, never a note's.
"""

from __future__ import annotations

import re
import traceback
from pathlib import Path

import jinja2
from jinja2 import Environment, TemplateError, TemplateNotFound, TemplateSyntaxError, UndefinedError
from markupsafe import Markup

from leafmould.pages.addresses import FINDER, ICON, MAP_SCRIPT, SCRIPT, STYLE, root_of
from leafmould.pages.map import has_map
from leafmould.pages.page import FamilyMark, Page
from leafmould.pages.site import Site
from leafmould.render.environment import (
    LayoutFault,
    finder,
    icon,
    map_script,
    open_layouts,
    style_and_script,
)
from leafmould.render.pieces import Pieces, Written, piece_filters
from leafmould.render.prose import Prose

FAULTS = (TemplateError, TypeError, ValueError, ArithmeticError, LookupError, AttributeError)
"""What a template can do wrong while it prints."""

CIRCLES = 50
"""So many layouts inside each other are one that leads back to itself."""

PIECES, JINJA = str(Path(__file__).with_name("pieces.py")), str(Path(jinja2.__file__).parent)


class Renderer:
    """Prints the pages of one site; templates are read once."""

    def __init__(self, site: Site, look: Path | None = None) -> None:
        """Take the site and the garden's own look/ folder, if there is one."""
        self._site = site
        self._look = look if look is not None and look.is_dir() else None
        self._prose = Prose(site.mentions, site.note_by_file)
        self._layouts: Environment = open_layouts(self._look, {"prose": self._prose.html, **piece_filters()})
        self._policy: Markup | None = None
        self._marks: dict[tuple[str, str], Markup] = {}
        self._mastheads: dict[tuple[str, str], Markup] = {}

    def page(self, page: Page) -> str:
        """The HTML text of one page."""
        root = root_of(page.address)
        return self._printed(
            page.template,
            it=page.values,
            page=page,
            pieces=self._pieces(page, root),
            site=self._site,
            root=Written(root),
            policy=self._what_may_be_done(),
            masthead=self._masthead(page, root),
        )

    def files(self) -> tuple[tuple[str, str], ...]:
        """The style, the scripts and the icon every page asks for, as addresses and texts."""
        style, script = style_and_script(self._look)
        files = ((STYLE, style), (SCRIPT, script), (FINDER, finder(self._look)), (ICON, icon(self._look)))
        return (*files, (MAP_SCRIPT, map_script(self._look))) if has_map(self._site.ledger) else files

    def _pieces(self, page: Page, root: str) -> Pieces:
        names, mark = self._prose.names, self._mark
        return Pieces(
            root,
            months=self._site.months,
            names=lambda text: names(text, root, page.address),
            mark=lambda family: mark(family, root),
        )

    def _what_may_be_done(self) -> Markup:
        """What every page says to the browser of itself; printed once."""
        if self._policy is None:
            self._policy = Written(self._printed("policy.html"))
        return self._policy

    def _masthead(self, page: Page, root: str) -> Markup:
        """The head of the page; the same for all pages of one section in one folder."""
        key = (root, page.section)
        if key not in self._mastheads:
            self._mastheads[key] = Written(
                self._printed("masthead.html", site=self._site, section=page.section, root=root)
            )
        return self._mastheads[key]

    def _mark(self, mark: FamilyMark, root: str) -> Markup:
        """A family's mark, which stands on a page as often as its plants."""
        key = (root, mark.key)
        if key not in self._marks:
            self._marks[key] = Written(self._printed("mark.html", m=mark, root=root).strip())
        return self._marks[key]

    def _printed(self, template: str, **values: object) -> str:
        try:
            return self._layouts.get_template(template).render(values)
        except TemplateSyntaxError as fault:
            name = _shown(fault.filename or fault.name or template)
            raise LayoutFault(
                f"{name}:{fault.lineno}: this layout cannot be read: {fault.message}."
            ) from fault
        except TemplateNotFound as fault:
            raise LayoutFault(f"{template}: there is no layout of this name: {fault.name}.") from fault
        except UndefinedError as fault:
            name = _asked_for(fault)
            raise LayoutFault(f"{_place(fault)}: this layout asks for something unknown: {name}.") from fault
        except RecursionError as fault:
            if sum(map(_is_in_a_layout, _frames(fault))) < CIRCLES:
                raise
            raise LayoutFault(f"{_place(fault)}: this layout leads back to itself without end.") from fault
        except FAULTS as fault:
            if not _comes_from_a_layout(fault):
                raise
            raise LayoutFault(f"{_place(fault)}: this layout cannot be used: {fault}.") from fault


def _frames(fault: BaseException) -> list[traceback.FrameSummary]:
    return list(traceback.extract_tb(fault.__traceback__))


def _comes_from_a_layout(fault: BaseException) -> bool:
    """Whether a layout did it, or what it called with something that does not fit."""
    helpers = (PIECES, JINJA)
    frames = [frame for frame in _frames(fault) if not frame.filename.startswith(helpers)]
    return _is_in_a_layout(frames[-1])


def _is_in_a_layout(frame: traceback.FrameSummary) -> bool:
    return frame.filename.endswith(".html")


def _place(fault: BaseException) -> str:
    """The layout and line a fault came from."""
    frame = next(frame for frame in reversed(_frames(fault)) if _is_in_a_layout(frame))
    return f"{_shown(frame.filename)}:{frame.lineno}"


def _asked_for(fault: UndefinedError) -> str:
    """The name a layout asked for in vain."""
    names = re.findall(r"'(\w+)'", fault.message or "")
    return names[-1] if names else "a name"


def _shown(filename: str) -> str:
    """A layout's path as the gardener knows it: from its layouts or look folder on."""
    path = Path(filename)
    for parent in path.parents:
        if parent.name in ("look", "layouts"):
            return path.relative_to(parent.parent).as_posix()
    return path.name
