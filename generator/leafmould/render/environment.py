"""The templates: where they are found, how strictly they are read, and what they may call.

A garden's own look/ comes first, then the built-in layouts, file by file. A template that asks for
something that is not there is a fault, never an empty place on the page.
"""

from __future__ import annotations

from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

from jinja2 import ChoiceLoader, Environment, FileSystemLoader, StrictUndefined, TemplateNotFound
from markupsafe import Markup

from leafmould import __version__
from leafmould.render.compiled import Compiled
from leafmould.values.problems import LeafmouldError

STYLES = ("tokens", "text", "page", "tables", "labels", "families", "map", "share", "find", "print", "own")
"""The parts of the style, in the order they are put together; "own" is empty until a garden writes it."""


def layouts_folder() -> Path:
    """The built-in layouts: inside the installed package, or beside it in the repository."""
    shipped = Path(str(files("leafmould"))) / "layouts"
    return shipped if shipped.is_dir() else Path(__file__).parents[3] / "layouts"


class LayoutFault(LeafmouldError):
    """A template cannot be read or used."""


class _Folder(FileSystemLoader):
    """One folder of layouts; a file that cannot be read there is named."""

    def get_source(self, environment: Environment, template: str) -> tuple[str, str, Callable[[], bool]]:
        try:
            return super().get_source(environment, template)
        except TemplateNotFound:
            raise
        except (UnicodeDecodeError, OSError) as fault:
            raise _unreadable(f"{Path(self.searchpath[0]).name}/{template}", fault) from fault


def open_layouts(look: Path | None, filters: dict[str, Callable[..., Markup]]) -> Environment:
    """A strict environment over a garden's own look, if it has one, and the built-in layouts."""
    folders = [folder for folder in (look, layouts_folder()) if folder is not None]
    environment = Environment(
        loader=ChoiceLoader([_Folder(folder, encoding="utf-8") for folder in folders]),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=False,
        auto_reload=False,
        cache_size=-1,
        bytecode_cache=Compiled(layouts_folder(), f"{__version__} {Path(__file__).read_text('utf-8')}"),
    )
    environment.filters.update(filters)
    return environment


def style_and_script(look: Path | None) -> tuple[str, str]:
    """The one style file and the one script file, put together from the parts a garden may replace."""
    style = "\n".join(_part(f"styles/{name}.css", look) for name in STYLES)
    return style, _part("script/day-counts.js", look)


def finder(look: Path | None) -> str:
    """The script that searches; what it searches is made of the garden."""
    return _part("script/find.js", look)


def map_script(look: Path | None) -> str:
    """The slider over the maps of the years."""
    return _part("script/map-years.js", look)


def icon(look: Path | None) -> str:
    """The small drawing a browser shows beside the name of a page."""
    return _part("icon.svg", look)


def _part(name: str, look: Path | None) -> str:
    own = look / name if look is not None else None
    path = own if own is not None and own.is_file() else layouts_folder() / name
    try:
        return path.read_text(encoding="utf-8")
    except (UnicodeDecodeError, OSError) as fault:
        raise _unreadable(f"{path.parents[len(Path(name).parts) - 1].name}/{name}", fault) from fault


def _unreadable(name: str, fault: UnicodeDecodeError | OSError) -> LayoutFault:
    if isinstance(fault, OSError):
        return LayoutFault(f"{name}: this file cannot be opened: {fault.strerror or fault}.")
    line = fault.object[: fault.start].count(b"\n") + 1
    return LayoutFault(
        f"{name}:{line}: this file cannot be read: it is not saved as UTF-8. Save it as UTF-8."
    )
