"""Published sources by what they are about, for the page of sources: by what most of their figures tell."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

GROUPS = (
    ("Days to the first picking", ("to the first harvest", "planted to", "from flower", "from pollination", "heat", "warmth counts")),
    ("Sowing, warmth and frost", ("sown or", "in frost", "soil to sow", "raised", "comes up", "killed without", "grows", "stands down")),
    ("Depth and spacing", ("sown deep", "apart", "between rows", "seed for")),
    ("Seed", ("seed keeps", "seeds in", "of seed")),
    ("Soil", ("soil pH", "killed in growth")),
    ("Picking and storing", ("picked", "ready", "in store", "stored")),
    ("Rotation and disease", ("years", "after ")),
    ("Cautions", ("cautions", "days to wait")),
    ("Names", ("crops, their",)),
)  # fmt: skip
"""What each group is called, and with what its figures begin (those of days: what they hold)."""
OTHER = "Other figures"


def group_of(labels: Iterable[str]) -> str:
    """The group of a source, by its labels; the first of those that have as many."""
    found = Counter(name for label in labels for name, marks in GROUPS if _is_of(label, marks))
    return max(order(), key=lambda name: found[name]) if found else OTHER


def order() -> tuple[str, ...]:
    """All groups, in the order of a season."""
    return (*(name for name, _ in GROUPS), OTHER)


def _is_of(label: str, marks: tuple[str, ...]) -> bool:
    return label.startswith(marks) or ("first harvest" in label and "to the first harvest" in marks)
