"""Why a picture cannot be shown. A value, so that all that is wrong is told in one run."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """What is wrong, to stand behind the picture's name."""

    why: str  # from the verb on, full stop included: "is empty (0 bytes). Copy it anew from the camera."
    suggestion: str | None = None  # the nearest name


CUT_SHORT = "is broken or cut short. Copy it anew from the camera."
