"""Beds and names that garden.yaml means to leave out, written in other ways than the plain one."""

from __future__ import annotations

from pathlib import Path

import pytest

from test_meant_private import public
from test_secrets import found_in

BEDS = (
    "[Arch, {name: Zzbed, private}]",
    "[Arch, {name: Zzbed, private: }]",
    "[Arch, Zzbed (private)]",
    "\n- Arch\n- Zzbed (private)",
    "\n- Arch\n- Zzbed, private",
    "[Arch, {name: Zzbed, privat: yes}]",
    "[Arch, {name: Zzbed, private:yes}]",
    "\n- Arch\n- {name: Zzbed, private: !!bool yes}",
    "\n- Arch\n- {name: Zzbed, private: &a yes}",
    "\n- Arch\n- {Zzbed: private}",
    '\n- Arch\n- {name: Zzbed, size: "1 x 2, private: yes}',
    "\n- Arch\n- {nmae: Zzbed, private: yes}",
    "\n- Arch\n- name: Zzbed\n  private: no\n  Private: yes",
    "\n- Arch\n- Zzbed\n- {name: Zzbed, private: yes}",
    "\n  Arch:\n  Zzbed: private",
    "[Arch, {name: Zzbed, secret: yes}]",
    "[Arch, {name: Zzbed, public: no}]",
)


@pytest.mark.parametrize("beds", BEDS)
def test_a_bed_that_may_be_private_is(tmp_path: Path, beds: str) -> None:
    note = "- weeded Zzbed\n- weeded Arch\n\nThe Zzbed is wet.\n"
    site, told = public(tmp_path, f"garden: Hill\nbeds: {beds}\n", {"2026-06-01.md": note})
    assert found_in(site, "zzbed") == []
    assert found_in(site, "weeded arch")
    assert told


LEFT_OUT = (
    "leave out: [Zzbed", 'leave out: "Zzbed, Larder bed"', "leave out: Zzbed and Larder bed",
    "leave out: [bed Zzbed]", "leave out: [[Zzbed]]", "leave out: {Zzbed: yes}", "leaveout: Zzbed",
    "leave-out: Zzbed", "leave out: [Zbzed]", "private word: Zzbed", "private words: [Zzbed", "private: Zzbed",
    "private words: {Zzbed: yes}", "hide: Zzbed", "leave out: Larder bed\nleave out: Zzbed",
    "leave out: the bed Zzbed", 'leave out: "Zzbed', "private words: Other\nprivate words: Zzbed",
)  # fmt: skip


@pytest.mark.parametrize("written", LEFT_OUT)
def test_what_is_meant_to_be_left_out_is(tmp_path: Path, written: str) -> None:
    yaml = f"garden: Hill\n{written}\nbeds: [Arch, Zzbed, Larder bed]\n"
    site, told = public(tmp_path, yaml, {"2026-06-01.md": "- weeded Zzbed\n- weeded Arch\n\nZzbed is wet.\n"})
    assert found_in(site, "zzbed") == []
    assert found_in(site, "weeded arch")
    assert told or written.startswith(
        ("leave out: Zzbed and", 'leave out: "Zzbed,', "leave-out", "leave out: [b", "leave out: the")
    )
