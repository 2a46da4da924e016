"""A plain host of a folder's files, as anybody has one, on this computer alone and for as long as a test takes."""

from __future__ import annotations

import gzip
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

TEXTS = {
    ".html": "text/html; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
}


class _Silent(SimpleHTTPRequestHandler):
    """Gives text out compressed, as hosts do, to whoever takes it so."""

    def log_message(self, *words: object) -> None:
        """Nobody reads it."""

    def do_GET(self) -> None:
        """Answer with a file."""
        path = Path(self.translate_path(self.path))
        if (
            path.suffix not in TEXTS
            or not path.is_file()
            or "gzip" not in self.headers.get("Accept-Encoding", "")
        ):
            super().do_GET()
            return
        content = gzip.compress(path.read_bytes(), 6)
        self.send_response(200)
        for name, value in (
            ("Type", TEXTS[path.suffix]),
            ("Encoding", "gzip"),
            ("Length", str(len(content))),
        ):
            self.send_header(f"Content-{name}", value)
        self.end_headers()
        self.wfile.write(content)


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
