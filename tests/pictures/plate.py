"""A sheet of paper with what a painter does on it: washes, ink lines, lifted lights. Pillow alone, no chance.

Lengths are plate units: a plate is 1600 wide whatever the number of pixels it is drawn with, so the same drawing
may be made finely for keeping and coarsely for comparing. All chance comes from the plate's own seeded source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from random import Random

from PIL import Image, ImageChops, ImageDraw, ImageFilter, ImageOps

from pictures.shapes import Path, arc, bounds, hand, ring

Colour = tuple[int, int, int]

PAPER: Colour = (248, 243, 230)
INK: Colour = (58, 46, 40)
WIDE = 1600

FIGURES: dict[str, list[tuple[float, float, float, float]]] = {
    "I": [(0, 0, 0, 1)],
    "V": [(0, 0, 0.5, 1), (1, 0, 0.5, 1)],
    "X": [(0, 0, 1, 1), (1, 0, 0, 1)],
}
"""The strokes of Roman figures, as shares of their width and height."""


class Plate:
    """One picture while it is made."""

    def __init__(self, name: str, *, tall: int, scale: float = 2.0, paper: Colour = PAPER) -> None:
        self.random = Random(name)
        self.scale = scale
        self.wide, self.tall = WIDE, tall
        self.size = (round(WIDE * scale), round(tall * scale))
        self.grain = self._noise(2.2, 4)
        self.cloud = self._noise(150, 3)
        self.drift = self._noise(60, 2)
        self.paper = Image.new("RGB", self.size, paper)
        self._age_paper()
        self.canvas = self.paper.copy()

    def _noise(self, grain: float, octaves: int) -> Image.Image:
        """Soft grey noise over the whole sheet, coarse to fine, spread over all greys. `grain` in units."""
        whole: Image.Image | None = None
        for octave in range(octaves):
            step = grain / 2**octave if grain > 10 else grain * 2**octave
            cells = (max(2, round(self.wide / step)), max(2, round(self.tall / step)))
            seeds = Image.frombytes("L", cells, self.random.randbytes(cells[0] * cells[1]))
            layer = seeds.resize(self.size, Image.Resampling.BICUBIC)
            whole = layer if whole is None else Image.blend(whole, layer, 0.36)
        assert whole is not None
        return whole.point(lambda v: max(0, min(255, round((v - 128) * 1.5 + 128))))

    def _age_paper(self) -> None:
        """Clouds of age and the tooth of the sheet."""
        tan = Image.new("RGB", self.size, (232, 220, 196))
        self.paper = Image.composite(tan, self.paper, self.cloud.point(lambda v: round(v * 0.20)))

    # where things are

    def _box(self, paths: Sequence[Sequence[complex]], pad: float) -> tuple[int, int, int, int]:
        left, top, right, bottom = bounds(paths, pad)
        s = self.scale
        return (
            max(0, int(left * s)),
            max(0, int(top * s)),
            min(self.size[0], int(right * s) + 1),
            min(self.size[1], int(bottom * s) + 1),
        )

    def _filled(self, paths: Sequence[Sequence[complex]], box: tuple[int, int, int, int]) -> Image.Image:
        mask = Image.new("L", (box[2] - box[0], box[3] - box[1]), 0)
        draw = ImageDraw.Draw(mask)
        for path in paths:
            spots = [(p.real * self.scale - box[0], p.imag * self.scale - box[1]) for p in path]
            if len(spots) > 2:
                draw.polygon(spots, fill=255)
        return mask

    def _soft(self, mask: Image.Image, radius: float) -> Image.Image:
        """Blurred by so many units; done small, which is quick and looks the same."""
        radius *= self.scale
        less = max(1, int(radius / 3))
        small = (max(1, mask.width // less), max(1, mask.height // less))
        blurred = mask.resize(small, Image.Resampling.BOX).filter(ImageFilter.GaussianBlur(radius / less))
        return blurred.resize(mask.size, Image.Resampling.BILINEAR)

    # painting

    def _glaze(
        self, box: tuple[int, int, int, int], colour: Image.Image | Colour, depth: Image.Image
    ) -> None:
        """Lays transparent colour over what is there, as deep as the mask says."""
        tint = Image.new("RGB", depth.size, colour) if isinstance(colour, tuple) else colour
        layer = Image.composite(tint, Image.new("RGB", depth.size, (255, 255, 255)), depth)
        self.canvas.paste(ImageChops.multiply(self.canvas.crop(box), layer), box)

    def wash(
        self,
        outline: Sequence[complex],
        colour: Colour,
        *,
        into: Colour | None = None,
        strength: float = 0.85,
        rim: float = 0.35,
        shade: float = 0.0,
        light: complex = -0.6 - 0.7j,
        reach: float = 0.22,
        dark: Colour | None = None,
        lift: float = 1.0,
        rough: float = 0.9,
    ) -> None:
        """A wash inside an outline.

        Args:
            into: the second colour the wash runs into here and there.
            rim: how much colour gathers at the edge.
            shade, light, reach: shadow on the side away from the light, over this share of the shape's size.
            lift: how far what lay underneath is taken out first (0 = a glaze over it).
        """
        outline = hand(outline, self.random, rough)
        box = self._box([outline], 6)
        if box[2] <= box[0] or box[3] <= box[1]:
            return
        mask = self._filled([outline], box)
        if lift:
            under = Image.composite(
                self.paper.crop(box), self.canvas.crop(box), mask.point(lambda v: round(v * lift))
            )
            self.canvas.paste(under, box)
        cloud, drift, grain = (noise.crop(box) for noise in (self.cloud, self.drift, self.grain))
        tint = Image.new("RGB", mask.size, colour)
        if into is not None:
            tint = Image.composite(Image.new("RGB", mask.size, into), tint, drift)
        uneven = Image.blend(cloud, grain, 0.35).point(
            lambda v: round(255 * strength * (0.66 + 0.34 * v / 255))
        )
        self._glaze(box, tint, ImageChops.multiply(mask, uneven))
        size = max(mask.size) / self.scale
        if rim:
            inner = self._soft(mask, min(7.0, 1.5 + size * 0.02))
            edge = ImageChops.multiply(mask, inner.point(lambda v: min(255, round((255 - v) * 2 * rim))))
            self._glaze(box, dark or colour, edge)
        if shade:
            self._shade(box, mask, dark or colour, shade, light, size * reach)

    def _shade(
        self,
        box: tuple[int, int, int, int],
        mask: Image.Image,
        colour: Colour,
        depth: float,
        light: complex,
        reach: float,
    ) -> None:
        room = round(reach * 1.6 * self.scale) + 4  # or the blur ends at the box, as a hard edge
        lit = self._soft(ImageOps.expand(mask, room, 0), max(2.0, reach * 0.55))
        shift = light * reach * self.scale
        lit = lit.transform(
            lit.size,
            Image.Transform.AFFINE,
            (1, 0, -shift.real, 0, 1, -shift.imag),
            Image.Resampling.BILINEAR,
        ).crop((room, room, room + mask.width, room + mask.height))
        away = lit.point(lambda v: min(255, round((255 - v) * 1.25 * depth)))
        tooth = self.grain.crop(box).point(lambda v: 200 + v * 55 // 255)
        self._glaze(box, colour, ImageChops.multiply(ImageChops.multiply(mask, away), tooth))

    def glaze(
        self, outline: Sequence[complex], colour: Colour, *, strength: float = 0.5, soft: float = 0.0
    ) -> None:
        """Thin colour over what is there; soft at the edge by so many units."""
        box = self._box([outline], 3 * soft + 4)
        if box[2] <= box[0] or box[3] <= box[1]:
            return
        mask = self._filled([outline], box)
        if soft:
            mask = self._soft(mask, soft)
        uneven = self.drift.crop(box).point(lambda v: round(255 * strength * (0.75 + 0.25 * v / 255)))
        self._glaze(box, colour, ImageChops.multiply(mask, uneven))

    def body(
        self, outline: Sequence[complex], colour: Colour, *, strength: float = 0.9, soft: float = 0.0
    ) -> None:
        """Opaque colour, for lights: snow, bloom on a plum, a spark on a currant."""
        box = self._box([outline], 3 * soft + 4)
        if box[2] <= box[0] or box[3] <= box[1]:
            return
        mask = self._filled([outline], box)
        if soft:
            mask = self._soft(mask, soft)
        mask = mask.point(lambda v: round(v * strength))
        region = self.canvas.crop(box)
        self.canvas.paste(Image.composite(Image.new("RGB", mask.size, colour), region, mask), box)

    # ink

    def lines(
        self,
        paths: Sequence[Sequence[complex]],
        width: float = 2.4,
        *,
        colour: Colour = INK,
        strength: float = 0.86,
        thin: float = 0.25,
        within: Sequence[complex] | None = None,
        shake: float = 0.5,
    ) -> None:
        """Pen lines: thin at both ends (down to the share `thin`), swelling and trembling between."""
        strokes = [self._stroke(path, width, thin, shake) for path in paths if len(path) > 1]
        if not strokes:
            return
        box = self._box(strokes, 3)
        if box[2] <= box[0] or box[3] <= box[1]:
            return
        mask = self._filled(strokes, box)
        if within is not None:
            mask = ImageChops.multiply(mask, self._filled([within], box))
        tooth = self.grain.crop(box).point(lambda v: round(255 * strength * (0.72 + 0.28 * v / 255)))
        mask = ImageChops.multiply(mask, tooth)
        region = self.canvas.crop(box)
        self.canvas.paste(Image.composite(Image.new("RGB", mask.size, colour), region, mask), box)

    def line(
        self,
        path: Sequence[complex],
        width: float = 2.4,
        *,
        colour: Colour = INK,
        strength: float = 0.86,
        thin: float = 0.25,
        shake: float = 0.5,
    ) -> None:
        """One pen line."""
        self.lines([path], width, colour=colour, strength=strength, thin=thin, shake=shake)

    def outline(
        self,
        path: Sequence[complex],
        width: float = 2.4,
        *,
        colour: Colour = INK,
        strength: float = 0.86,
        thin: float = 0.45,
    ) -> None:
        """A closed pen line, begun at a place of its own."""
        n = self.random.randrange(len(path))
        around = [*path[n:], *path[:n], path[n], path[(n + 1) % len(path)]]
        self.lines([around], width, colour=colour, strength=strength, thin=thin)

    def _stroke(self, path: Sequence[complex], width: float, thin: float, shake: float) -> Path:
        path = hand(path, self.random, shake) if shake else list(path)
        phase, wave = self.random.random() * 6, self.random.uniform(2, 5)
        left: Path = []
        right: Path = []
        last = len(path) - 1
        for n, point in enumerate(path):
            ahead = path[min(n + 1, last)] - path[max(n - 1, 0)]
            way = ahead / (abs(ahead) or 1)
            t = n / last
            ends = min(1.0, 4 * t, 4 * (1 - t))
            swell = 0.78 + 0.22 * math.sin(phase + wave * t)
            half = width / 2 * swell * (thin + (1 - thin) * ends)
            left.append(point - 1j * way * half)
            right.append(point + 1j * way * half)
        return left + right[::-1]

    def dots(
        self, spots: Sequence[complex], size: float = 2.0, *, colour: Colour = INK, strength: float = 0.8
    ) -> None:
        """Pen dots, no two the same size."""
        rings = [ring(spot, size * self.random.uniform(0.5, 1.1), steps=8) for spot in spots]
        if rings:
            self._spots(rings, colour, strength)

    def _spots(self, rings: Sequence[Path], colour: Colour, strength: float) -> None:
        box = self._box(rings, 2)
        if box[2] <= box[0] or box[3] <= box[1]:
            return
        mask = self._filled(rings, box).point(lambda v: round(v * strength))
        region = self.canvas.crop(box)
        self.canvas.paste(Image.composite(Image.new("RGB", mask.size, colour), region, mask), box)

    # the end

    def frame(self, number: str, margin: float = 46) -> None:
        """The plate's ruled edge, bare paper outside it, and the plate's number in Roman figures below on the right."""
        m, s = margin + 5, self.scale
        inside = Image.new("L", self.size, 0)
        ImageDraw.Draw(inside).rectangle((m * s, m * s, (self.wide - m) * s, (self.tall - m) * s), fill=255)
        self.canvas = Image.composite(self.canvas, self.paper, inside)
        for gap, width in ((margin, 3.0), (margin + 10, 1.2)):
            corners = [
                complex(gap, gap),
                complex(self.wide - gap, gap),
                complex(self.wide - gap, self.tall - gap),
                complex(gap, self.tall - gap),
            ]
            for a, b in zip(corners, [*corners[1:], corners[0]], strict=True):
                self.line(arc(a, b, steps=60), width, thin=0.9, shake=0.7, strength=0.7)
        self._roman(number, complex(self.wide - margin, self.tall - margin + 11))

    def _roman(self, number: str, at: complex, tall: float = 20) -> None:
        for figure in reversed(number):
            wide = {"I": 4.0, "V": 16.0, "X": 16.0}[figure]
            at -= wide
            for a, b, c, d in FIGURES[figure]:
                line = arc(at + complex(a * wide, b * tall), at + complex(c * wide, d * tall), steps=8)
                self.line(line, 2.6, thin=0.8, strength=0.7, shake=0.3)
            at -= 7

    def picture(self) -> Image.Image:
        """The finished picture, in the size it is kept in."""
        tooth = self.grain.point(lambda v: 246 + v * 9 // 255)
        done = ImageChops.multiply(self.canvas, Image.merge("RGB", (tooth, tooth, tooth)))
        if self.scale == 1:
            return done
        return done.resize((self.wide, self.tall), Image.Resampling.LANCZOS)
