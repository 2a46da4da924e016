"""How long a page takes to answer a letter typed into its search, on a garden of many notes; prints, never judges.

How to run it, from the top of the repository, with the package, Playwright and Chromium installed:

    PYTHONPATH=tests python tests/benchmarks/find_as_you_type.py          # 3,000 notes
    PYTHONPATH=tests python tests/benchmarks/find_as_you_type.py 10000

The notes are made (`make_garden.py`), and each gets a paragraph of made-up words besides, drawn as words of a language are
(the n-th as often as 1/n), so that the index holds as many different words as a diary of that length. Typed are the letters
of names, words, slips and words that are nowhere; timed is what the browser does from the letter to the last row shown,
laid out. Beside it stand the weight of the index against the text of the notes, and how long reading it takes.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path
from random import Random

from browsers import chromium
from leafmould.build import build
from make_garden import LAST_DAY, make_garden

NOTES = 3000
YEARS = 10
WORDS = 9000
SOUNDS = [
    "ba",
    "de",
    "fi",
    "go",
    "lu",
    "mer",
    "nan",
    "pol",
    "ris",
    "sat",
    "tev",
    "von",
    "wel",
    "quo",
    "chi",
    "dro",
    "sta",
    "pre",
]

TYPED = ("tomatoes", "peas long", "sowed 2024", "slugs", "tomatos cor", "badevonx", "zzyzxq", "p", "rhubard")

TIMED = """typed => {
    const field = document.querySelector(".find input[type=search]"), list = document.querySelector(".find .found");
    const took = [];
    for (const text of typed) {
        for (let n = 1; n <= text.length; n += 1) {
            field.value = text.slice(0, n);
            const begun = performance.now();
            field.dispatchEvent(new Event("input", { bubbles: true }));
            list.getBoundingClientRect();
            took.push([performance.now() - begun, field.value]);
        }
    }
    return took;
}"""

READ = """async address => {
    const begun = performance.now();
    document.querySelector(".find input[type=search]").focus();
    await new Promise(done => new MutationObserver(done).observe(document.querySelector(".find .choices"), { childList: true }));
    return performance.now() - begun;
}"""


def write_diary(folder: Path) -> None:
    """Give every note a paragraph of words of its own."""
    rng = Random(7)
    words = sorted({"".join(rng.choices(SOUNDS, k=rng.randint(2, 4))) for _ in range(WORDS)})
    weights = [1 / (n + 10) for n in range(len(words))]
    for path in sorted((folder / "notes").rglob("*.*")):
        said = " ".join(rng.choices(words, weights, k=30))
        with path.open("a", encoding="utf-8") as file:
            file.write(f"\n\n{said.capitalize()}.\n")


def made(top: Path, notes: int) -> Path:
    """The site of a garden with so many notes."""
    make_garden(top / "garden", notes=notes, years=YEARS)
    write_diary(top / "garden")
    build(top / "garden", to=top / "site", on=LAST_DAY, household=True)
    return top / "site"


def main() -> None:
    """Print the figures."""
    notes = int(sys.argv[1]) if len(sys.argv) > 1 else NOTES
    with tempfile.TemporaryDirectory() as folder, chromium() as browser:
        site = made(Path(folder), notes)
        index = (site / "look" / "find-index.js").stat().st_size
        text = sum(path.stat().st_size for path in (Path(folder) / "garden" / "notes").rglob("*.*"))
        page = browser.new_page(viewport={"width": 390, "height": 844})
        page.goto((site / "find.html").as_uri())
        read = page.evaluate(READ)
        page.evaluate(TIMED, list(TYPED[:2]))
        took = sorted(page.evaluate(TIMED, list(TYPED)))
        words = page.evaluate("window.leafmouldIndex.words.match(/[a-z\\x80-\\uffff]+/g).length")
    print(f"{notes:,} notes, {words:,} words beside the names and titles")
    print(f"the index: {index / 1000:.0f} kB, {100 * index / text:.0f} in 100 of the text of the notes")
    print(f"reading it when it is first wanted: {read:.0f} ms")
    print(
        f"a letter: half within {took[len(took) // 2][0]:.1f} ms, the slowest {took[-1][0]:.1f} ms ({took[-1][1]!r})"
    )


if __name__ == "__main__":
    main()
