"""The preview command as a terminal starts it, also where the tests themselves run with Ctrl-C switched off."""

from __future__ import annotations

import sys

STARTED = """
import runpy, signal, sys
signal.signal(signal.SIGINT, signal.default_int_handler)
sys.argv = ["leafmould", *sys.argv[1:]]
runpy.run_module("leafmould", run_name="__main__")
"""


def preview_command(on: str) -> list[str]:
    """What to run for a preview as of a day."""
    return [sys.executable, "-u", "-c", STARTED, "preview", "--on", on]
