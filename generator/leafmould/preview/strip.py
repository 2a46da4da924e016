"""What a preview adds to a page on its way to the browser: the problems, and a script that reloads it.

The built files stay as they are. Everything a note said is escaped here.
"""

from __future__ import annotations

from html import escape

from leafmould.preview.live import State
from leafmould.report import count
from leafmould.values.problems import Level, Problem

ROOM = "/.leafmould"
"""Addresses of the preview's own; no page of a site begins with a dot."""

MOST = 30
"""How many problems the strip lists."""

SCRIPT = """\
(function () {
  "use strict";
  var version = document.currentScript.getAttribute("data-version");
  var list = document.querySelector("#leafmould-preview details");
  if (list) {
    list.open = sessionStorage.getItem("leafmould-preview") === "open";
    list.addEventListener("toggle", function () {
      sessionStorage.setItem("leafmould-preview", list.open ? "open" : "shut");
    });
  }
  function ask() {
    fetch("/.leafmould/version", { cache: "no-store" }).then(function (answer) {
      return answer.text();
    }).then(function (now) {
      if (now === version) { setTimeout(ask, 700); } else { location.reload(); }
    }).catch(function () { setTimeout(ask, 2000); });
  }
  setTimeout(ask, 700);
})();
"""

STYLE = """\
#leafmould-preview {
  position: sticky; bottom: 0; z-index: 9; padding: 0.5rem 1rem; max-height: 50vh; overflow: auto;
  background: #fff4d6; color: #2b2200; border-top: 2px solid #8a6100; font: 1rem/1.4 sans-serif;
}
#leafmould-preview ul { margin: 0.5rem 0; padding-left: 1.5rem; overflow-wrap: anywhere; }
#leafmould-preview summary { cursor: pointer; }
@media print { #leafmould-preview { display: none; } }
"""


def decorated(page: str, state: State) -> str:
    """A page with the strip and the script before its end."""
    before, end, after = page.rpartition("</body>")
    added = strip(state) + (
        f'<script src="{ROOM}/preview.js" data-version="{escape(state.version)}"></script>'
    )
    return f"{before}{added}{end}{after}" if end else page + added


def strip(state: State) -> str:
    """The problems as HTML, in their order; nothing where there is nothing to tell. Hints are no problems here."""
    told = [p for p in state.problems if p.level is not Level.HINT]
    fault = (
        f"<p><strong>The page is as it was before: {escape(state.fault)}</strong></p>" if state.fault else ""
    )
    if not told and not fault:
        return ""
    return (
        f'<link rel="stylesheet" href="{ROOM}/preview.css">'
        f'<aside id="leafmould-preview" aria-label="What the notes leave open">{fault}{_listed(told)}</aside>'
    )


def missing_page(state: State) -> str:
    """A page for an address at which nothing stands; it too comes back to life after the next build."""
    words = state.fault or "There is no such page (any more)."
    page = (
        '<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>Nothing here</title></head>'
        f'<body><main><h1>Nothing here</h1><p>{escape(words)}</p><p><a href="/">To the first page</a></p></main></body></html>'
    )
    return decorated(page, state)


def _listed(problems: list[Problem]) -> str:
    if not problems:
        return ""
    items = [f"<li>{escape(p.level)}: {escape(p.sentence)}</li>" for p in problems[:MOST]]
    more = len(problems) - MOST
    rest = f"<p>… and {more} more: leafmould check --all</p>" if more > 0 else ""
    return f"<details><summary>{escape(count(problems).sentence)}</summary><ul>{''.join(items)}</ul>{rest}</details>"
