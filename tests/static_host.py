"""A plain host of a folder's files, as anybody has one, on this computer alone and for as long as a test takes."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path


class _Silent(SimpleHTTPRequestHandler):
    def log_message(self, *words: object) -> None:
        """Nobody reads it."""


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """The address of a folder on a plain static host."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Silent, directory=str(folder)))
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/"
    finally:
        server.shutdown()
        server.server_close()
        thread.join()
