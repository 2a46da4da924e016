"""Where a preview's pages lie: a folder of its own among the temporary files, gone when the preview ends.

The household's private things are in it. What a preview left that was killed is swept by the next one; the
lock in each folder tells which of them are still in use.
"""

from __future__ import annotations

import os
import shutil
import signal
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory, gettempdir

from leafmould.output.lock import LOCK_NAME, Lock, is_held

PREFIX = "leafmould-preview-"


@contextmanager
def folder_aside() -> Iterator[Path]:
    """A folder for the site, removed on leaving."""
    sweep(Path(gettempdir()))
    with TemporaryDirectory(prefix=PREFIX) as aside, Lock(Path(aside), patience=0):
        yield Path(aside) / "site"


def end_like_ctrl_c() -> None:
    """Let a request to end, and a terminal that closes, end a preview as Ctrl-C does."""
    signal.signal(signal.SIGTERM, signal.default_int_handler)
    closing = getattr(signal, "SIGHUP", None)  # Windows has none
    if closing is not None and signal.getsignal(closing) is signal.SIG_DFL:
        signal.signal(closing, signal.default_int_handler)


def sweep(temporary: Path) -> None:
    """Remove what previews of this user left there that nobody holds any more."""
    for left in sorted(temporary.glob(f"{PREFIX}*")):
        try:
            if _is_ours(left) and not is_held(left):
                shutil.rmtree(left, ignore_errors=True)
        except OSError:
            continue  # gone since we saw it, or not for us to touch


def _is_ours(folder: Path) -> bool:
    if folder.is_symlink() or not (folder / LOCK_NAME).is_file():
        return False
    return not hasattr(os, "getuid") or folder.stat().st_uid == os.getuid()
