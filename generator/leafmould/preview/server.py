"""Serves a preview to this computer alone and keeps it up to date until it is stopped.

Only files inside the built folder are given out, whatever an address says, and nothing is to be kept by
the browser. The watch runs beside the server; both end together.
"""

from __future__ import annotations

import _thread
import errno
import logging
import signal
import socket
import threading
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from pathlib import Path

from flask import Flask, Response, abort, request
from waitress.server import create_server

from leafmould.preview.live import Live, State
from leafmould.preview.strip import ROOM, SCRIPT, STYLE, decorated, missing_page
from leafmould.values.problems import LeafmouldError
from leafmould.watch import Watch

HOST = "127.0.0.1"
OWN_NAMES = frozenset({"127.0.0.1", "localhost"})
"""What this computer is called in an address. Any other name is a foreign page reaching in."""

HTML = "text/html; charset=utf-8"
TYPES = {
    ".html": HTML,
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".csv": "text/csv; charset=utf-8",
    ".txt": "text/plain; charset=utf-8",
    ".xml": "application/xml",
    ".atom": "application/atom+xml",
    ".ics": "text/calendar; charset=utf-8",
    ".svg": "image/svg+xml",
    ".png": "image/png",
    ".jpg": "image/jpeg",
    ".webp": "image/webp",
    ".avif": "image/avif",
    ".woff2": "font/woff2",
}


def find_file(site: Path, address: str) -> Path | None:
    """The file of the site at an address without its first slash; None for whatever leads elsewhere."""
    *folders, name = address.split("/")
    parts = (*folders, name or "index.html")
    if any(not part or part.startswith(".") or set(part) & set("\\:\0") for part in parts):
        return None
    path = site.joinpath(*parts)
    try:
        inside = path.resolve().is_relative_to(site.resolve())
        return path if inside and path.is_file() else None
    except OSError:
        return None  # a name longer than the disk allows, say


def make_app(site: Path, live: Live) -> Flask:
    """The preview as a web application."""
    app = Flask("leafmould.preview", static_folder=None)
    app.url_map.merge_slashes = False
    app.before_request(_only_this_computer)
    app.after_request(_never_kept)
    own = {
        "version": lambda: Response(live.state.version, content_type=TYPES[".txt"]),
        "preview.js": lambda: Response(SCRIPT, content_type=TYPES[".js"]),
        "preview.css": lambda: Response(STYLE, content_type=TYPES[".css"]),
    }
    for name, view in own.items():
        app.add_url_rule(f"{ROOM}/{name}", name, view)
    app.add_url_rule("/", "first", lambda: _answer(site, "", live))
    app.add_url_rule("/<path:address>", "any", lambda address: _answer(site, address, live))
    return app


def run(
    watch: Watch,
    live: Live,
    site: Path,
    *,
    port: int,
    tell: Callable[[str], None],
    changed: Callable[[tuple[str, ...], State], None],
) -> None:
    """Serve and rebuild until Ctrl-C. A request to end must have been made to act alike.

    Args:
        port: 0 takes a free one.
        changed: told which files changed and how it went, after each rebuild.
    Raises:
        LeafmouldError: if the port is taken.
    """
    # A browser asks for several files at once; that they wait a moment for each other is no news.
    logging.getLogger("waitress.queue").setLevel(logging.ERROR)
    listening = listen(port)
    _tell_first(live.rebuild(), listening.getsockname()[1], tell)
    server = create_server(make_app(site, live), sockets=[listening], ident=None)
    stop = threading.Event()

    def rebuild(files: tuple[str, ...]) -> None:
        changed(files, live.rebuild())

    def ended(_: Future[None]) -> None:
        if not stop.is_set():
            # The watch broke down: let the server end, then tell. Ctrl-C may be switched off, ending is not.
            _thread.interrupt_main(signal.SIGTERM)

    with ThreadPoolExecutor(max_workers=1) as beside:
        watching = beside.submit(watch.run, rebuild, stop)
        watching.add_done_callback(ended)
        try:
            server.run()
        finally:
            stop.set()
            server.close()
    watching.result()


def _tell_first(state: State, port: int, tell: Callable[[str], None]) -> None:
    if state.fault:
        tell(state.fault)
    tell(f"The garden is at http://{HOST}:{port}/ on this computer only. Ctrl-C ends it.")


def listen(port: int) -> socket.socket:
    """A socket on this computer's own address; port 0 takes a free one.

    Raises:
        LeafmouldError: if the port cannot be had.
    """
    try:
        return socket.create_server((HOST, port))
    except OSError as error:
        if error.errno not in (errno.EADDRINUSE, errno.EACCES, errno.EPERM):
            raise
        why = "is taken by another program" if error.errno == errno.EADDRINUSE else "is kept for the system"
        raise LeafmouldError(f"Port {port} {why}. Leave --port out to take a free one.") from error


def _answer(site: Path, address: str, live: Live) -> Response:
    state = live.state
    path = find_file(site, address)
    content = _read(path)
    if path is None or content is None:
        return Response(missing_page(state), status=404, content_type=HTML)
    kind = TYPES.get(path.suffix.casefold(), "application/octet-stream")
    if kind == HTML:
        return Response(decorated(content.decode("utf-8", "replace"), state), content_type=HTML)
    return Response(content, content_type=kind)


def _read(path: Path | None) -> bytes | None:
    try:
        return path.read_bytes() if path else None
    except OSError:
        return None  # removed by a build just now


def _only_this_computer() -> None:
    name = request.host.rpartition(":")[0] if ":" in request.host else request.host
    if name not in OWN_NAMES or request.remote_addr != HOST:
        abort(403)


def _never_kept(response: Response) -> Response:
    response.headers["Cache-Control"] = "no-store"
    response.headers["X-Content-Type-Options"] = "nosniff"
    return response
