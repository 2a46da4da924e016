"""Has Lighthouse judge every kind of page of the example as a host gives it; prints scores and what cost them.

    npm install --prefix tests/outside/lighthouse lighthouse@12.2.3
    PYTHONPATH=tests python tests/outside/lighthouse.py            # a telephone with a slow line, then a desk
    PYTHONPATH=tests python tests/outside/lighthouse.py index.html # some pages

Aimed at is 99 of 100 and more in all four; whoever runs it reads them. Times are those of a busy machine, so performance alone
may vary by a point or two.
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Any
from urllib.parse import quote

from sites import Book, example
from static_host import served

TOOL = Path(__file__).parent / "lighthouse" / "node_modules" / ".bin" / "lighthouse"
AIM = 99
DESKS = {"telephone": (), "desk": ("--preset=desktop",)}
KINDS = ("performance", "accessibility", "best-practices", "seo")


def judged(address: str, options: tuple[str, ...]) -> dict[str, Any]:
    """What Lighthouse found of a page."""
    browser = shutil.which("chromium") or shutil.which("chromium-browser") or ""
    command = [
        str(TOOL),
        address,
        "--quiet",
        "--output=json",
        f"--only-categories={','.join(KINDS)}",
        *options,
    ]
    flags = "--chrome-flags=--headless=new --no-sandbox --disable-gpu"
    ran = subprocess.run(
        [*command, flags],
        capture_output=True,
        text=True,
        check=True,
        env={**os.environ, "CHROME_PATH": browser},
    )
    found: dict[str, Any] = json.loads(ran.stdout)
    return found


def told(found: dict[str, Any]) -> list[str]:
    """The audits that cost a page something."""
    wanting = []
    for kind in KINDS:
        for part in found["categories"][kind]["auditRefs"]:
            audit = found["audits"][part["id"]]
            if part["weight"] and audit["score"] is not None and audit["score"] < 0.9:
                wanting.append(f"{kind}: {audit['title']} {audit.get('displayValue', '')}".strip())
    return wanting


def main() -> None:
    """Judge every kind of page, or those named."""
    if not TOOL.is_file():
        sys.exit("Lighthouse is wanted: npm install --prefix tests/outside/lighthouse lighthouse@12.2.3")
    lowest = dict.fromkeys(KINDS, 100)
    with tempfile.TemporaryDirectory() as top:
        book = Book(example(Path(top), household=False))
        with served(book.folder) as host:
            for desk, options in DESKS.items():
                for name in sys.argv[1:] or book.kinds.values():
                    found = judged(host + quote(name), options)
                    scores = {kind: round(100 * found["categories"][kind]["score"]) for kind in KINDS}
                    lowest = {kind: min(lowest[kind], scores[kind]) for kind in KINDS}
                    print(f"{desk:10} {name:45}", *(f"{scores[kind]:4}" for kind in KINDS), flush=True)
                    for words in told(found):
                        print(f"           {words}")
    print(
        "lowest:",
        ", ".join(f"{kind} {score}{'' if score >= AIM else ' (aim: 99)'}" for kind, score in lowest.items()),
    )


if __name__ == "__main__":
    main()
