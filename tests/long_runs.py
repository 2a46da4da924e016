"""How far the tests by chance look."""

from __future__ import annotations

import os

LONG = 10 if os.environ.get("LEAFMOULD_LONG") else 1
"""The long run looks ten times as far."""
