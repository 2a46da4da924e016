"""Any picture's colours to those of every screen: sRGB, eight bits, nothing transparent.

Used by the worker on a decoded picture. An embedded profile is followed where it can be; where it is
broken or does not fit, the numbers are taken as they stand.
"""

from __future__ import annotations

from functools import lru_cache
from io import BytesIO

from PIL import Image, ImageCms

PAPER = (248, 243, 231)
"""The page's own colour, by day: what is transparent is laid on it."""

PLAIN = frozenset({"L", "RGB", "CMYK"})
"""Modes that can be made smaller as they are, and turned to sRGB afterwards."""

WHITE_OF_SIXTEEN = 65535.0

SRGB = "srgb"
"""How the descriptions of profiles begin that change nothing."""


def plain(image: Image.Image) -> Image.Image:
    """A decoded picture in one of the plain modes, its profile still with it."""
    if image.mode in PLAIN and "transparency" not in image.info:
        return image
    profile = image.info.get("icc_profile")
    found = _opaque(image) if image.has_transparency_data else _eight_bits(image)
    found.info = {"icc_profile": profile} if profile else {}
    return found


def srgb(image: Image.Image) -> Image.Image:
    """A plain picture as sRGB, with nothing else in it."""
    profile = image.info.get("icc_profile")
    found = _by_profile(image, profile) if profile else None
    if found is None:
        found = image if image.mode in ("RGB", "L") else image.convert("RGB")
    found.info = {}
    return found


def _opaque(image: Image.Image) -> Image.Image:
    """The picture laid on the page."""
    if image.mode == "La":
        image = image.convert("LA")
    image = image.convert("RGBA")
    page = Image.new("RGB", image.size, PAPER)
    page.paste(image, mask=image.getchannel("A"))
    return page


def _eight_bits(image: Image.Image) -> Image.Image:
    if image.mode.startswith("I") or image.mode == "F":
        return _scaled(image.convert("F"), is_sixteen=image.mode.startswith("I;16"))
    if image.mode == "LAB":
        return _from_lab(image)
    return image.convert("L" if image.mode == "1" else "RGB")


def _scaled(image: Image.Image, *, is_sixteen: bool) -> Image.Image:
    """Numbers of any size to eight bits."""
    extremes = [number for number in image.getextrema() if isinstance(number, int | float)]
    low, high = min(0.0, *extremes), max(0.0, *extremes)
    white = WHITE_OF_SIXTEEN if is_sixteen else _white(high)
    scale = 255 / (white - low)
    return image.point(lambda dot: dot * scale + (0.5 - low * scale)).convert("L")


def _white(high: float) -> float:
    """What is white in a picture that does not say: the least usual full scale that holds all its numbers."""
    return next((white for white in (1.0, 255.0, WHITE_OF_SIXTEEN) if 0 < high <= white), max(high, 1.0))


@lru_cache(maxsize=1)
def _lab() -> ImageCms.ImageCmsTransform:
    lab, screen = ImageCms.createProfile("LAB"), ImageCms.createProfile("sRGB")
    return ImageCms.buildTransform(lab, screen, "LAB", "RGB")


def _from_lab(image: Image.Image) -> Image.Image:
    found = ImageCms.applyTransform(image, _lab())
    assert found is not None  # only a picture changed in its place gives none
    return found


def _by_profile(image: Image.Image, profile: object) -> Image.Image | None:
    """The picture as its profile means it; None where that says nothing new or cannot be used."""
    if not isinstance(profile, bytes):
        return None
    transform = _transform(profile, image.mode)
    if transform is None:
        return None
    try:
        return ImageCms.applyTransform(image, transform)
    except (ImageCms.PyCMSError, ValueError):
        return None


@lru_cache(maxsize=16)
def _transform(profile: bytes, mode: str) -> ImageCms.ImageCmsTransform | None:
    """From a profile to sRGB; kept, for a camera gives all its pictures the same one."""
    try:
        source = ImageCms.getOpenProfile(BytesIO(profile))
        if mode == "RGB" and ImageCms.getProfileDescription(source).casefold().startswith(SRGB):
            return None
        return ImageCms.buildTransform(source, ImageCms.createProfile("sRGB"), mode, "RGB")
    except (ImageCms.PyCMSError, OSError, ValueError, TypeError):
        return None
