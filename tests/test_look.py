"""The look by computation: contrast of every colour by day and by night, and families kept apart."""

from __future__ import annotations

import csv
import re
from itertools import combinations, pairwise
from math import dist

import pytest

from leafmould.facts.tables import DATA
from leafmould.pages.hatches import hatch_of
from leafmould.render.environment import STYLES, layouts_folder

FOLDER = layouts_folder() / "styles"
TOKENS = (FOLDER / "tokens.css").read_text(encoding="utf-8")
FAMILIES = (FOLDER / "families.css").read_text(encoding="utf-8")
TONES = ("growing", "ripening", "resting", "warning", "planned")


def tokens(part: str) -> dict[str, str]:
    """Colours by name."""
    return dict(re.findall(r"--([a-z0-9]+): (#[0-9a-f]{6});", part))


DAY = tokens(TOKENS.split("@media")[0])
NIGHT = {**DAY, **tokens(TOKENS.split("@media")[1])}


def luminance(colour: str) -> float:
    """Relative luminance of a colour, 0 to 1. Source: W3C, WCAG 2.2, definition of relative luminance."""

    def channel(hexadecimal: str) -> float:
        value = int(hexadecimal, 16) / 255
        return value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4

    red, green, blue = (channel(colour[n : n + 2]) for n in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio, 1 to 21. Source: W3C, WCAG 2.2, definition of contrast ratio."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_contrast_is_reckoned_as_published() -> None:
    # Source: W3C, WCAG 2.2: black on white is 21:1; #767676 on white is the well-known 4.54:1.
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.01)


@pytest.mark.parametrize("colours", [DAY, NIGHT], ids=["day", "night"])
@pytest.mark.parametrize("text", ["ink", "faded", *TONES])
@pytest.mark.parametrize("ground", ["paper", "leaf"])
def test_text_stands_out(colours: dict[str, str], text: str, ground: str) -> None:
    assert contrast(colours[text], colours[ground]) >= 4.5


@pytest.mark.parametrize("colours", [DAY, NIGHT], ids=["day", "night"])
@pytest.mark.parametrize("mark", ["mark", *TONES, *(f"t{n}" for n in range(1, 9))])
def test_marks_stand_out(colours: dict[str, str], mark: str) -> None:
    assert contrast(colours[mark], colours["paper"]) >= 3


def test_night_has_a_colour_for_every_colour_of_the_day() -> None:
    assert tokens(TOKENS.split("@media")[1]).keys() == DAY.keys()


def family_lines() -> dict[str, tuple[str, str]]:
    """Family mark to hatch and tone."""
    found = re.findall(
        r"^\.([A-Z][a-z]) \{ --hatch: var\(--(h\d+)\); --ft: var\(--(t\d)\); \}", FAMILIES, re.M
    )
    return {mark: (hatch, tone) for mark, hatch, tone in found}


def test_every_family_has_a_hatch_and_tone_of_its_own() -> None:
    with (DATA / "families.csv").open(encoding="utf-8", newline="") as table:
        marks = {row["mark"] for row in csv.DictReader(table)}
    found = family_lines()
    assert found.keys() == marks
    assert len(set(found.values())) == len(found)


def test_the_families_met_in_most_beds_differ_in_their_hatch_alone() -> None:
    found = family_lines()
    common = ("Ni", "Cb", "Pe", "Be", "Ca", "On", "Cu", "Da")
    assert len({found[mark][0] for mark in common}) == len(common)


def as_seen(colour: str, matrix: tuple[tuple[float, float, float], ...]) -> tuple[float, ...]:
    """A colour in linear light as seen with one kind of cone missing."""

    def channel(hexadecimal: str) -> float:
        value = int(hexadecimal, 16) / 255
        return value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4

    rgb = [channel(colour[n : n + 2]) for n in (1, 3, 5)]
    return tuple(sum(m * c for m, c in zip(row, rgb, strict=True)) for row in matrix)


DEUTERANOPIA = (
    (0.367322, 0.860646, -0.227968),
    (0.280085, 0.672501, 0.047413),
    (-0.011820, 0.042940, 0.968881),
)
EYES = {
    "usual": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
    "protanopia": (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    "deuteranopia": DEUTERANOPIA,
    "tritanopia": (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    ),
}
"""Source: Machado, Oliveira, Fernandes, A Physiologically-based Model for Simulation of Color Vision
Deficiency, IEEE Transactions on Visualization and Computer Graphics 15 (2009), severity 1.0, in linear light."""

MET_MOST = 16
"""So many families stand first in the styles; whoever grows others has their letters and their names."""
APART = 10.0
"""Steps of CIELAB between two tones that share a hatch: a difference one sees without looking for it."""


def lightness_and_hue(
    colour: str, matrix: tuple[tuple[float, float, float], ...]
) -> tuple[float, float, float]:
    """CIELAB of a colour as it is seen. Source: CIE 15, with the white of sRGB (IEC 61966-2-1)."""
    red, green, blue = (min(1.0, max(0.0, channel)) for channel in as_seen(colour, matrix))
    x = (0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.9505
    y = 0.2126 * red + 0.7152 * green + 0.0722 * blue
    z = (0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.0890
    roots = [v ** (1 / 3) if v > 0.008856 else 7.787 * v + 16 / 116 for v in (x, y, z)]
    return 116 * roots[1] - 16, 500 * (roots[0] - roots[1]), 200 * (roots[1] - roots[2])


def test_white_and_black_are_a_hundred_apart() -> None:
    white, black = (lightness_and_hue(colour, EYES["usual"]) for colour in ("#ffffff", "#000000"))
    assert white == pytest.approx((100, 0, 0), abs=0.05)
    assert black == pytest.approx((0, 0, 0), abs=0.05)


@pytest.mark.parametrize("colours", [DAY, NIGHT], ids=["day", "night"])
@pytest.mark.parametrize("eyes", EYES)
def test_families_of_one_hatch_are_told_apart_by_every_eye(colours: dict[str, str], eyes: str) -> None:
    most = list(family_lines().items())[:MET_MOST]
    too_near = [
        (one, other)
        for (one, (hatch, tone)), (other, (same, second)) in combinations(most, 2)
        if hatch == same
        and dist(lightness_and_hue(colours[tone], EYES[eyes]), lightness_and_hue(colours[second], EYES[eyes]))
        < APART
    ]
    assert too_near == []


def test_drawings_hatch_a_family_as_the_styles_do() -> None:
    drawn = {mark: f"h{hatch_of(mark)}" for mark in family_lines()}
    assert drawn == {mark: hatch for mark, (hatch, _) in family_lines().items()}


def test_growing_and_ripening_never_rest_on_colour_alone() -> None:
    """The two tones that meet on a strip lie close for the colour-blind, so their shapes must differ."""
    labels = (FOLDER / "labels.css").read_text(encoding="utf-8")
    heights = dict(re.findall(r"\.strip \.(\w+) \{ y: [\d.]+px; height: ([\d.]+)px", labels))
    assert set(heights) == {"raised", "ground", "picking", "expected"}
    assert len(set(heights.values())) == 4


@pytest.mark.parametrize("colours", [DAY, NIGHT], ids=["day", "night"])
def test_planned_differs_from_every_other_tone_for_the_colour_blind(colours: dict[str, str]) -> None:
    seen = {tone: as_seen(colours[tone], DEUTERANOPIA) for tone in ("planned", "growing", "ripening")}
    for one, other in combinations(seen, 2):
        if "planned" in (one, other):
            distance = sum((a - b) ** 2 for a, b in zip(seen[one], seen[other], strict=True)) ** 0.5
            assert distance > 0.08, (one, other)


def test_colours_live_in_the_table_of_tokens_alone() -> None:
    for name in STYLES:
        if name not in ("tokens", "print"):
            assert not re.search(
                r"#[0-9a-f]{3,6}\b|rgb\(", (FOLDER / f"{name}.css").read_text(encoding="utf-8")
            ), name


def test_there_are_five_sizes_in_one_scale() -> None:
    sizes = [float(re.search(rf"--{n}: ([\d.]+)rem", TOKENS).group(1)) for n in ("small", "text", "large", "title", "numeral")]  # type: ignore[union-attr]  # fmt: skip
    ratios = [b / a for a, b in pairwise(sizes)]
    assert all(1.2 <= ratio <= 1.35 for ratio in ratios)


def test_only_system_faces_and_nothing_fetched() -> None:
    for name in STYLES:
        text = (FOLDER / f"{name}.css").read_text(encoding="utf-8")
        assert "@font-face" not in text
        assert "url(" not in text
