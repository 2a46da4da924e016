"""Building again after any edits gives, byte for byte, what a clean build gives; anywhere, on any computer."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from leafmould.build import build

ON = date(2026, 7, 15)

SETTINGS = (
    "garden: Hill\nfrost: {last: 10 May, first: 1 October}\nbeds:\n  - Arch\n  - {name: Long border, parts: [north half]}\n",
    "garden: Hill\ndates: day first\ndecimal: comma\nshow: [people]\nbeds:\n  - {name: Arch, also: [Long border]}\n",
    "garden: Dell\nplace: {latitude: -37}\nmeasures: {tray: 400 g}\nleave out: [2025]\n",
    "garden: Hill\nprivate words: [slugs]\nbeds:\n  - Arch\n  - {name: Long border, private: yes}\n",
)

CROPS = (None, "quillroot:\n  family: Fabaceae\n  days: 60-70\n", "pea:\n  days: 50-60\n")

NAMES = (
    "2025/05-01-arch.md",
    "2026/04-12-beetroot.md",
    "2026/06-20-long-border.txt",
    "2026/Möhre.md",
    "loose.md",
    "2026/07/10.md",
)

NOTES = (
    "---\ndate: 2026-04-12\nbed: Long border\ncrop: beetroot\nvariety: Boltardy\ndid: sowed\n---\nTwo rows, soil 9 °C.\n",
    "---\ndate: 2026-06-20\nwork:\n  - picked 1.2 kg pea 'Meteor' from Arch, gave away 400 g\n  - saw slugs in Arch\n---\n",
    "---\ndate: 2025-05-01\nbed: Arch\nby: Ida\nlesson: Next year sooner\nwork:\n  - sowed Meteor peas in Arch\n---\n",
    "2026-05-02\n- sowed pea 'Meteor' in Arch\n- weeded Long border, private\n\n2026-05-20\n- cleared Arch\n",
    "---\ndate: 2026-03-01\nprivate: yes\n---\n# Plans\nsow quillroot 'Meteor' in Arch\n",
    "---\ndate: 2026-06-01\nwork:\n  - planted 3 quillroot in Arhc\n  - picked two trays of strawberries from Arch\n---\nArch.\n",
    "---\ndate: 2027-01-01\n---\nLater.\n",
    "---\nbed: [A\n---\nNot read.\n",
    "",
)


@dataclass(frozen=True)
class Edit:
    """One thing a gardener does to the folder."""

    kind: str
    name: str = ""
    other: str = ""
    text: str | None = None

    def make(self, garden: Path) -> None:
        path = garden / "notes" / self.name
        if self.kind == "write":
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(self.text or "", "utf-8")
        elif self.kind == "delete":
            path.unlink(missing_ok=True)
        elif self.kind == "rename" and path.exists():
            to = garden / "notes" / self.other
            to.parent.mkdir(parents=True, exist_ok=True)
            path.replace(to)
        elif self.kind in ("garden.yaml", "crops.yaml"):
            settings = garden / self.kind
            settings.unlink(missing_ok=True)
            if self.text is not None:
                settings.write_text(self.text, "utf-8")


edits = st.one_of(
    st.builds(Edit, kind=st.just("write"), name=st.sampled_from(NAMES), text=st.sampled_from(NOTES)),
    st.builds(Edit, kind=st.just("delete"), name=st.sampled_from(NAMES)),
    st.builds(Edit, kind=st.just("rename"), name=st.sampled_from(NAMES), other=st.sampled_from(NAMES)),
    st.builds(Edit, kind=st.just("garden.yaml"), text=st.sampled_from(SETTINGS)),
    st.builds(Edit, kind=st.just("crops.yaml"), text=st.sampled_from(CROPS)),
)


def new_garden(folder: Path) -> Path:
    (folder / "notes").mkdir(parents=True)
    (folder / "garden.yaml").write_text(SETTINGS[0], "utf-8")
    for name, text in zip(NAMES, NOTES[:4], strict=False):
        Edit(kind="write", name=name, text=text).make(folder)
    return folder


def files(site: Path) -> dict[str, bytes]:
    """Every file but the small pages that lead on from old addresses, which a new folder does not have."""
    listed = (site / "made.txt").read_text("utf-8").split("\n")
    kept = [line for line in listed if " > " not in line]
    names = [line.partition("\t")[0] for line in kept[1:] if line]
    assert len(listed) - 1 == sum(p.is_file() for p in site.rglob("*"))
    return {name: (site / name).read_bytes() for name in names} | {"made.txt": "\n".join(kept).encode()}


def clean_build(garden: Path, household: bool) -> dict[str, bytes]:
    """The site of the same notes, built elsewhere with nothing kept."""
    with tempfile.TemporaryDirectory() as place:
        copy = Path(place) / "copy"
        shutil.copytree(garden, copy, ignore=shutil.ignore_patterns(".leafmould"))
        build(copy, to=Path(place) / "site", on=ON, household=household)
        return files(Path(place) / "site")


@settings(max_examples=settings.default.max_examples // 8)
@given(steps=st.lists(edits, min_size=1, max_size=5), household=st.booleans())
def test_building_from_the_cache_equals_building_clean_after_every_edit(
    steps: list[Edit], household: bool
) -> None:
    with tempfile.TemporaryDirectory() as place:
        garden, site = new_garden(Path(place) / "garden"), Path(place) / "site"
        build(garden, to=site, on=ON, household=household)
        for step in steps:
            step.make(garden)
            build(garden, to=site, on=ON, household=household)
            assert files(site) == clean_build(garden, household)


def test_building_twice_touches_nothing(tmp_path: Path) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    build(garden, to=site, on=ON, household=True)
    for path in site.rglob("*"):
        os.utime(path, ns=(10**9, 10**9))
    again = build(garden, to=site, on=ON, household=True)
    assert (again.changed, again.removed) == ((), ())
    assert {p.stat().st_mtime_ns for p in site.rglob("*")} == {10**9}


def test_a_note_that_goes_takes_its_page_along(tmp_path: Path) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    build(garden, to=site, on=ON, household=True)
    assert (site / "notes/2025/05-01-arch.html").exists()
    (garden / "notes/2025/05-01-arch.md").unlink()
    report = build(garden, to=site, on=ON, household=True)
    assert "notes/2025/05-01-arch.html" in report.removed
    assert not (site / "notes/2025").exists()


def test_one_note_more_changes_no_page_it_has_no_part_in(tmp_path: Path) -> None:
    garden, site = new_garden(tmp_path / "garden"), tmp_path / "site"
    build(garden, to=site, on=ON, household=True)
    Edit(kind="write", name="2026/07/10.md", text="---\ndate: 2026-07-10\n---\nRain.\n").make(garden)
    changed = build(garden, to=site, on=ON, household=True).changed
    assert "notes/2026/07/10.html" in changed
    assert not {"notes/2025/05-01-arch.html", "families.html", "look/leafmould.css"}.intersection(changed)


ELSEWHERE = (
    {"TZ": "UTC", "LC_ALL": "C", "PYTHONHASHSEED": "0", "WORKERS": "1", "ORDER": "0"},
    {"TZ": "Pacific/Kiritimati", "LC_ALL": "C.UTF-8", "PYTHONHASHSEED": "1", "LANG": "tr_TR.UTF-8", "WORKERS": "2", "ORDER": "1"},
    {"TZ": "America/Adak", "LC_ALL": "de_DE.UTF-8", "PYTHONHASHSEED": "4711", "PYTHONUTF8": "0", "WORKERS": "8", "ORDER": "2"},
    {"TZ": "Asia/Kathmandu", "LC_ALL": "tr_TR.UTF-8", "PYTHONHASHSEED": "random", "PYTHONUTF8": "1", "WORKERS": "3", "ORDER": "3"},
)  # fmt: skip
"""Other clocks, other tongues, other orders of sets, of workers and of files. A locale a computer lacks counts as C."""

RUN = """\
import locale, os, random, sys
from contextlib import suppress
from datetime import date
from pathlib import Path

with suppress(locale.Error):
    locale.setlocale(locale.LC_ALL, "")
shuffle, scandir, listdir = random.Random(os.environ["ORDER"]).shuffle, os.scandir, os.listdir


def in_some_order(listed):
    shuffle(listed)
    return listed


class Scanned:
    # what os.scandir gives, in some other order
    def __init__(self, path="."):
        with scandir(path) as found:
            self.items = iter(in_some_order(list(found)))

    def __enter__(self):
        return self

    def __exit__(self, *fault):
        pass

    def __iter__(self):
        return self.items

    def __next__(self):
        return next(self.items)

    def close(self):
        pass


os.scandir, os.listdir = Scanned, lambda path=".": in_some_order(listdir(path))

from leafmould.build import build

if __name__ == "__main__":
    build(Path(sys.argv[1]), to=Path(sys.argv[2]), on=date(2026, 7, 15), household=True, workers=int(os.environ["WORKERS"]))
"""


def with_pictures(garden: Path) -> None:
    """Enough pictures for several workers, and a note that names them all."""
    (garden / "photos").mkdir()
    names = [f"{colour}-{number}.png" for colour in ("red", "lime", "blue") for number in range(4)]
    for name in names:
        colour, number = name.removesuffix(".png").split("-")
        Image.new("RGB", (60 + int(number), 40), colour).save(garden / "photos" / name)
    Edit(
        kind="write",
        name="2026/07-01.md",
        text=f"---\ndate: 2026-07-01\nphoto: [{', '.join(names)}]\n---\nSeen.\n",
    ).make(garden)


def test_the_same_bytes_in_every_time_zone_locale_and_order_of_all_kinds(tmp_path: Path) -> None:
    (tmp_path / "run.py").write_text(RUN, "utf-8")
    found = []
    for number, place in enumerate(ELSEWHERE):
        garden, site = new_garden(tmp_path / f"garden{number}"), tmp_path / f"site{number}"
        with_pictures(garden)
        for name, text in zip(reversed(NAMES), reversed(NOTES), strict=False):
            Edit(kind="write", name=name, text=text).make(garden)
        subprocess.run(
            [sys.executable, str(tmp_path / "run.py"), str(garden), str(site)],
            env=os.environ | place,
            check=True,
        )
        found.append(files(site))
    assert sum(name.endswith(".jpg") for name in found[0]) == 12
    for other in found[1:]:
        assert other == found[0]


def test_the_order_in_which_files_lie_on_the_disk_does_not_matter(tmp_path: Path) -> None:
    one, other = tmp_path / "one", tmp_path / "other"
    written = list(zip(NAMES, NOTES, strict=False))
    for garden, order in ((one, written), (other, list(reversed(written)))):
        (garden / "notes").mkdir(parents=True)
        (garden / "garden.yaml").write_text(SETTINGS[0], "utf-8")
        for name, text in order:
            Edit(kind="write", name=name, text=text).make(garden)
        build(garden, to=garden / "site", on=ON, household=True)
    assert files(one / "site") == files(other / "site")
