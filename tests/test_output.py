"""The output folder: written beside and replaced, only our own files touched."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from leafmould.output.built import FIRST_LINE, LIST_NAME, read_list
from leafmould.output.lock import LOCK_NAME
from leafmould.output.write import Writing, Written, write_site
from leafmould.values.problems import LeafmouldError, WrongUse

AS_NOBODY = """\
import os, sys
from pathlib import Path
from leafmould.output.write import write_site
from leafmould.values.problems import LeafmouldError
if os.getuid() == 0:
    os.setuid(65534)
else:
    for path in {Path(out).parent for out in sys.argv[1:]} | {Path(sys.argv[1])}:
        path.chmod(0o555)
for out in sys.argv[1:]:
    try:
        write_site(Path(out), {"index.html": b"new"})
    except LeafmouldError as fault:
        print(fault.sentence)
"""

FUTURE = 4 * 10**18
PAGES = {"index.html": b"first page", "beds/arch.html": b"Arch"}


def held(folder: Path) -> list[str]:
    """Every file below the folder, sorted."""
    return sorted(p.relative_to(folder).as_posix() for p in folder.rglob("*") if not p.is_dir())


def times(folder: Path) -> dict[str, int]:
    return {name: (folder / name).stat().st_mtime_ns for name in held(folder)}


def test_a_new_folder_is_made_and_carries_its_own_list(tmp_path: Path) -> None:
    out = tmp_path / "a" / "site"
    written = write_site(out, PAGES)
    assert written == Written(made=2, changed=("beds/arch.html", "index.html"))
    assert held(out) == ["beds/arch.html", "index.html", "made.txt"]
    assert (out / LIST_NAME).read_text("utf-8") == (
        f"{FIRST_LINE}\nbeds/arch.html\t4-1c80d4c43b8e4b7cacb4ed41\nindex.html\t10-c626a601226dd51d22eb7644\n"
    )
    assert sorted(p.name for p in out.parent.iterdir()) == ["site"]


def test_writing_the_same_again_touches_nothing(tmp_path: Path) -> None:
    write_site(tmp_path, PAGES)
    for name in held(tmp_path):
        os.utime(tmp_path / name, ns=(10**9, 10**9))
    assert write_site(tmp_path, PAGES) == Written(made=2)
    assert set(times(tmp_path).values()) == {10**9}


def test_only_what_changed_is_written(tmp_path: Path) -> None:
    write_site(tmp_path, PAGES)
    os.utime(tmp_path / "index.html", ns=(10**9, 10**9))
    written = write_site(tmp_path, PAGES | {"beds/arch.html": b"Arch, with peas"})
    assert written == Written(made=2, changed=("beds/arch.html",))
    assert times(tmp_path)["index.html"] == 10**9
    assert (tmp_path / "beds/arch.html").read_bytes() == b"Arch, with peas"


def test_a_page_no_longer_made_goes_and_its_empty_folder_too(tmp_path: Path) -> None:
    write_site(tmp_path, PAGES | {"notes/2026/a/b.html": b"note"})
    written = write_site(tmp_path, {"index.html": b"first page"})
    assert written == Written(made=1, removed=("beds/arch.html", "notes/2026/a/b.html"))
    assert sorted(p.name for p in tmp_path.iterdir()) == ["index.html", "made.txt"]


def test_a_page_that_is_as_the_list_says_is_not_even_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_site(tmp_path / "site", PAGES)
    os.utime(tmp_path / "site" / LIST_NAME, ns=(FUTURE, FUTURE))  # as if the pages were older by a tick
    read: list[str] = []
    monkeypatch.setattr(Path, "read_bytes", lambda path: read.append(path.name) or b"")
    assert write_site(tmp_path / "site", PAGES) == Written(made=2)
    assert read == []


def test_a_page_somebody_changed_by_hand_is_made_anew(tmp_path: Path) -> None:
    write_site(tmp_path, PAGES)
    (tmp_path / "index.html").write_bytes(b"worst page")  # just as long
    assert write_site(tmp_path, PAGES).changed == ("index.html",)
    assert (tmp_path / "index.html").read_bytes() == b"first page"


@pytest.mark.skipif(sys.platform == "win32", reason="does not tell when a file was moved")
def test_an_old_page_somebody_moved_there_is_made_anew(tmp_path: Path) -> None:
    old = tmp_path / "old.html"
    old.write_bytes(b"worst page")
    os.utime(old, ns=(10**9, 10**9))
    write_site(tmp_path / "site", PAGES)
    time.sleep(0.05)  # a tick of the disk's clock
    old.replace(tmp_path / "site" / "index.html")
    assert write_site(tmp_path / "site", PAGES).changed == ("index.html",)


def test_a_page_somebody_deleted_is_made_anew(tmp_path: Path) -> None:
    write_site(tmp_path, PAGES)
    (tmp_path / "index.html").unlink()
    assert write_site(tmp_path, PAGES).changed == ("index.html",)


def test_a_list_without_digests_is_read_too(tmp_path: Path) -> None:
    write_site(tmp_path, PAGES)
    (tmp_path / LIST_NAME).write_text(f"{FIRST_LINE}\nbeds/arch.html\nindex.html\n", "utf-8")
    assert write_site(tmp_path, PAGES | {"index.html": b"new"}).changed == ("index.html",)


def test_a_file_is_kept_by_its_mark_without_being_made(tmp_path: Path) -> None:
    with Writing(tmp_path) as writing:
        assert not writing.keep("photos/a.jpg", "from 17")
        writing.add("photos/a.jpg", b"picture", "from 17")
        writing.finish()
    with Writing(tmp_path) as writing:
        assert writing.keep("photos/a.jpg", "from 17")
        assert writing.finish() == Written(made=1)
    (tmp_path / "photos/a.jpg").write_bytes(b"half")
    with Writing(tmp_path) as writing:
        assert not writing.keep("photos/a.jpg", "from 17")
        assert not writing.keep("photos/a.jpg", "from 18")
        writing.add("photos/a.jpg", b"picture", "from 17")
        assert writing.finish().changed == ("photos/a.jpg",)


def test_leaving_without_an_end_leaves_the_old_site(tmp_path: Path) -> None:
    out = tmp_path / "site"
    write_site(out, PAGES)
    with Writing(out) as writing:
        writing.add("index.html", b"new")
    assert (out / "index.html").read_bytes() == b"first page"
    assert [p.name for p in tmp_path.iterdir()] == ["site"]


def test_a_folder_others_made_of_a_page_is_in_the_way(tmp_path: Path) -> None:
    write_site(tmp_path, PAGES)
    (tmp_path / "index.html").unlink()
    (tmp_path / "index.html").mkdir()
    (tmp_path / "index.html" / "mine.txt").write_text("mine", "utf-8")
    with pytest.raises(LeafmouldError, match=r'index.html" was not made by leafmould and is in the way'):
        write_site(tmp_path, PAGES)


def test_an_output_folder_behind_a_link_is_written_where_it_leads(tmp_path: Path) -> None:
    (tmp_path / "web" / "garden").mkdir(parents=True)
    (tmp_path / "site").symlink_to(tmp_path / "web" / "garden")
    write_site(tmp_path / "site", PAGES)
    assert (tmp_path / "site").is_symlink()
    assert held(tmp_path / "web") == ["garden/beds/arch.html", "garden/index.html", "garden/made.txt"]


def test_a_folder_with_a_very_long_name_can_be_written(tmp_path: Path) -> None:
    out = tmp_path / ("x" * 250)
    write_site(out, PAGES)
    assert write_site(out, {"index.html": b"new"}).changed == ("index.html",)
    assert [p.name for p in tmp_path.iterdir()] == ["x" * 250]


@pytest.mark.skipif(not hasattr(os, "setuid"), reason="wants users")
def test_where_nothing_may_be_written_that_is_said_before_anything_is_changed() -> None:
    """As another user, since nothing is forbidden to the first of them."""
    with TemporaryDirectory() as name:
        own = Path(name)
        own.chmod(0o755)
        write_site(own / "site", {"index.html": b"old"})
        command = [sys.executable, "-c", AS_NOBODY, str(own / "site"), str(own / "other")]
        said = subprocess.run(command, capture_output=True, text=True, check=True).stdout.splitlines()
        assert held(own) == ["site/index.html", "site/made.txt"]
        assert (own / "site/index.html").read_bytes() == b"old"
    refused = "reading or writing is not allowed there. Nothing was changed."
    assert said == [
        f'Could not write "{own / "site" / LOCK_NAME}": {refused}',
        f'Could not write "{own / ".other.leafmould-lock"}": {refused}',
    ]


def test_what_others_put_there_stays(tmp_path: Path) -> None:
    write_site(tmp_path, PAGES)
    (tmp_path / "beds" / "mine.txt").write_text("mine", "utf-8")
    (tmp_path / "CNAME").write_text("garden.example", "utf-8")
    write_site(tmp_path, {"index.html": b"first page"})
    assert held(tmp_path) == ["CNAME", "beds/mine.txt", "index.html", "made.txt"]


def test_a_folder_that_holds_something_else_is_refused(tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("dear aunt", "utf-8")
    with pytest.raises(WrongUse) as refused:
        write_site(tmp_path, PAGES)
    assert refused.value.sentence == (
        f'"{tmp_path}" is not empty and was not made by leafmould (it holds "letter.txt"). '
        "Choose an empty folder with --to."
    )
    assert held(tmp_path) == ["letter.txt"]


def test_hidden_files_take_up_no_room(tmp_path: Path) -> None:
    (tmp_path / ".git").mkdir()
    (tmp_path / "Thumbs.db").write_bytes(b"")
    assert write_site(tmp_path, PAGES).made == 2


def test_a_list_of_somebody_else_is_no_list(tmp_path: Path) -> None:
    (tmp_path / LIST_NAME).write_text("letter.txt\n", "utf-8")
    with pytest.raises(WrongUse, match="is not empty and was not made by leafmould"):
        write_site(tmp_path, PAGES)


def test_a_file_as_output_folder_is_refused(tmp_path: Path) -> None:
    (tmp_path / "site").write_text("", "utf-8")
    with pytest.raises(WrongUse) as refused:
        write_site(tmp_path / "site", PAGES)
    assert refused.value.sentence == (
        f'"{tmp_path / "site"}" is a file, so no site can be put there. Choose a folder with --to.'
    )


def test_a_file_in_the_way_is_reported_and_nothing_is_changed(tmp_path: Path) -> None:
    write_site(tmp_path, {"index.html": b"old"})
    (tmp_path / "beds").mkdir()
    (tmp_path / "beds" / "arch.html").write_text("mine", "utf-8")
    with pytest.raises(LeafmouldError) as refused:
        write_site(tmp_path, PAGES)
    assert refused.value.exit_code == 3
    assert refused.value.sentence == (
        f'"{tmp_path / "beds/arch.html"}" was not made by leafmould and is in the way. '
        "Move it elsewhere, then build again. Nothing was changed."
    )
    assert (tmp_path / "index.html").read_bytes() == b"old"
    assert (tmp_path / "beds/arch.html").read_text("utf-8") == "mine"


def test_a_file_where_a_folder_must_be_is_reported(tmp_path: Path) -> None:
    write_site(tmp_path, {"index.html": b"old"})
    (tmp_path / "beds").write_text("mine", "utf-8")
    with pytest.raises(LeafmouldError, match='beds" was not made by leafmould and is in the way'):
        write_site(tmp_path, PAGES)
    assert (tmp_path / "beds").read_text("utf-8") == "mine"


def test_a_link_to_another_folder_is_never_followed(tmp_path: Path) -> None:
    out, other = tmp_path / "site", tmp_path / "other"
    other.mkdir()
    (other / "arch.html").write_text("mine", "utf-8")
    write_site(out, PAGES)
    (out / "beds" / "arch.html").unlink()
    (out / "beds").rmdir()
    (out / "beds").symlink_to(other)
    with pytest.raises(LeafmouldError, match="in the way"):
        write_site(out, PAGES)
    write_site(out, {"index.html": b"first page"})
    assert (other / "arch.html").read_text("utf-8") == "mine"


def test_a_list_that_names_files_outside_removes_none_of_them(tmp_path: Path) -> None:
    out = tmp_path / "site"
    write_site(out, PAGES)
    (tmp_path / "letter.txt").write_text("dear aunt", "utf-8")
    with (out / LIST_NAME).open("a", encoding="utf-8") as made:
        made.write(f"../letter.txt\n{tmp_path / 'letter.txt'}\n\n.\nbeds/../../letter.txt\n")
    write_site(out, PAGES)
    assert (tmp_path / "letter.txt").exists()
    own = read_list(out)
    assert own is not None
    assert sorted(own.files) == sorted(PAGES)


def test_a_page_may_become_a_folder_and_back(tmp_path: Path) -> None:
    write_site(tmp_path, {"plan": b"page"})
    assert write_site(tmp_path, {"plan/2027": b"page"}).removed == ("plan",)
    assert write_site(tmp_path, {"plan": b"page"}).removed == ("plan/2027",)
    assert held(tmp_path) == ["made.txt", "plan"]


def test_a_name_that_changes_case_ends_as_one_file(tmp_path: Path) -> None:
    """On a disk that does not tell case apart, removing the old name would remove the new file."""
    write_site(tmp_path, {"crops/Pea.html": b"old"})
    write_site(tmp_path, {"crops/pea.html": b"new"})
    assert held(tmp_path) == ["crops/pea.html", "made.txt"]


@pytest.mark.parametrize(
    "names",
    [
        ("crops/Pea.html", "crops/pea.html"),
        ("Möhre.html", "Mo\u0308hre.html"),
        ("straße.html", "STRASSE.html"),
        ("plan", "plan/2027"),
        ("Plan", "plan/2027"),
        ("made.txt",),
        ("../up.html",),
        ("/etc/passwd",),
        ("a//b",),
        ("c:evil",),
        ("a\\b",),
        ("",),
        ("beds/con.html",),
        ("LPT1.tar.gz",),
        ("beds/aux",),
        ("com¹.html",),
        ("beds./arch.html",),
        ("beds /arch.html",),
        ("arch.html.",),
        ("what?.html",),
        ("line\nend.html",),
        ("tab\t.html",),
        ("\ud800.html",),
        (f"{'x' * 251}.html",),
        (f"{'я' * 130}.html",),
        (f"{'한' * 40}.html",),
    ],
)
def test_names_that_meet_or_lead_outside_are_our_own_mistake(tmp_path: Path, names: tuple[str, ...]) -> None:
    with pytest.raises(
        ValueError, match=r"two files with one name|leads outside or is not safe|a file and a folder"
    ):
        write_site(tmp_path / "site", dict.fromkeys(names, b""))
    assert not (tmp_path / "site").exists()
