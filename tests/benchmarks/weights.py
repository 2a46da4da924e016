"""Weighs every page of a site before its pictures; prints the heaviest, never judges.

How to run it, from the top of the repository, with the package installed:

    python tests/benchmarks/weights.py                 # the example, and ten years of 3,000 notes
    python tests/benchmarks/weights.py 300 10000       # other numbers of notes
    python tests/benchmarks/weights.py --site FOLDER   # a site that is there already

A page is weighed as it is and as a host sends it, gzip at its usual level. Beside the page's own weight stands that
of the style and script all pages share, and of whatever else a page loads only when it is asked for.
"""

from __future__ import annotations

import argparse
import gzip
import tempfile
from dataclasses import dataclass
from pathlib import Path

from leafmould.build import build
from make_garden import LAST_DAY, make_garden

CONTENT = Path(__file__).resolve().parents[2] / "content"
MOST_RAW, MOST_SENT = 300_000, 60_000
"""What a page may weigh before its pictures. [bytes]"""
SCRIPT_SENT = 15_000
"""What all script may weigh together, but for the data it reads. [bytes]"""
SHOWN = 8
YEARS = 10
LEVEL = 6
"""How hard a host compresses, if nobody told it otherwise."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Weight:
    """A file's own weight and the weight it is sent with. [bytes]"""

    name: str
    raw: int
    sent: int

    @property
    def is_too_heavy(self) -> bool:
        """Whether a page is over the budget."""
        return self.raw > MOST_RAW or self.sent > MOST_SENT


def weighed(site: Path, ending: str) -> list[Weight]:
    """All files of a site that end so, the heaviest first, as they are sent."""
    files = [path for path in site.rglob(f"*{ending}") if path.is_file()]
    found = [_weight(path, path.relative_to(site).as_posix()) for path in files]
    return sorted(found, key=lambda weight: (-weight.sent, weight.name))


def _weight(path: Path, name: str) -> Weight:
    raw = path.read_bytes()
    return Weight(name=name, raw=len(raw), sent=len(gzip.compress(raw, LEVEL)))


def show(title: str, site: Path) -> None:
    """Print what a site weighs."""
    pages = weighed(site, ".html")
    heavy = [page for page in pages if page.is_too_heavy]
    middle = sorted(page.sent for page in pages)[len(pages) // 2]
    print(
        f"\n{title}: {len(pages)} pages, half of them under {middle / 1000:.1f} kB as sent, {len(heavy)} over the budget"
    )
    largest = max(pages, key=lambda page: page.raw)
    for page in dict.fromkeys([*pages[:SHOWN], largest, *heavy]):
        over = "  over" if page.is_too_heavy else ""
        print(f"{page.sent / 1000:9.1f} kB sent {page.raw / 1000:9.1f} kB raw  {page.name}{over}")
    for file in (*weighed(site, ".css"), *weighed(site, ".js")):
        print(f"{file.sent / 1000:9.1f} kB sent {file.raw / 1000:9.1f} kB raw  {file.name}")


def main() -> None:
    """Weigh what is asked for."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("notes", nargs="*", type=int, default=[3000])
    parser.add_argument("--site", type=Path)
    asked = parser.parse_args()
    if asked.site:
        show(str(asked.site), asked.site)
        return
    with tempfile.TemporaryDirectory() as folder:
        top = Path(folder)
        build(CONTENT, to=top / "example", on=LAST_DAY, household=True)
        show("The example", top / "example")
        for notes in asked.notes:
            make_garden(top / f"garden-{notes}", notes=notes, years=YEARS)
            build(top / f"garden-{notes}", to=top / f"site-{notes}", on=LAST_DAY, household=True)
            show(f"{notes:,} notes of {YEARS} years", top / f"site-{notes}")


if __name__ == "__main__":
    main()
