"""The built-in layouts as they were compiled by an earlier run, kept where Python keeps compiled modules.

Compiling them takes as long as reading hundreds of notes. A garden's own layouts are compiled anew each time:
nothing that comes with a garden is ever run from what was kept. What cannot be read or written is done without.
"""

from __future__ import annotations

import marshal
import os
import sys
from contextlib import suppress
from hashlib import blake2b
from importlib.util import cache_from_source
from pathlib import Path

from jinja2 import BytecodeCache, compiler
from jinja2.bccache import Bucket, bc_magic

PLACE = Path(cache_from_source(__file__)).parent
CHECKSUM = 40  # letters


class Compiled(BytecodeCache):
    """Keeps what the layouts of one folder were compiled to."""

    def __init__(self, folder: Path, made_with: str, place: Path = PLACE) -> None:
        """Take the folder, the text of whatever else decides how layouts are compiled, and where to keep it."""
        self._folder, self._place = folder, place
        found = Path(compiler.__file__).stat()
        self._made_with = f"{folder} {bc_magic!r} {found.st_size} {found.st_mtime_ns} {made_with}"

    def get_cache_key(self, name: str, filename: str | None = None) -> str:
        """The name of the file; "" for a layout that is not kept."""
        is_ours = filename is not None and Path(filename).is_relative_to(self._folder)
        return f"{name.replace('/', '-')}.{sys.implementation.cache_tag}.pyc" if is_ours else ""

    def get_source_checksum(self, source: str) -> str:
        """A short name for the layout's text and all that it is compiled with."""
        text = f"{self._made_with}\0{source}".encode()
        return blake2b(text, digest_size=CHECKSUM // 2).hexdigest()

    def load_bytecode(self, bucket: Bucket) -> None:
        """Fill in what was kept, if it was made from the same."""
        if not bucket.key:
            return
        with suppress(OSError, EOFError, ValueError, TypeError):
            raw = (self._place / bucket.key).read_bytes()
            if raw[:CHECKSUM] == bucket.checksum.encode():
                bucket.code = marshal.loads(raw[CHECKSUM:])

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep it, as Python would: only if it may."""
        if not bucket.key or sys.dont_write_bytecode:
            return
        path = self._place / bucket.key
        beside = path.with_name(f"{path.name}.{os.getpid()}")
        with suppress(OSError):
            path.parent.mkdir(parents=True, exist_ok=True)
            beside.write_bytes(bucket.checksum.encode() + marshal.dumps(bucket.code))
            beside.replace(path)
