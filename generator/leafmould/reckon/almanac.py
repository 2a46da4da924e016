"""What a garden's reckonings share, gathered once: packet days, whose facts serve, the season's turn.

Built from the settings and the assembled garden before anything is reckoned. Holds values only; the
published tables are asked through `facts.tables`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from leafmould.facts import tables
from leafmould.facts.tables import CropFact
from leafmould.garden.model import Garden
from leafmould.garden.seeds import TinRow, tin_rows
from leafmould.garden.vocabulary import own_crop_keys
from leafmould.notes.cover_settings import DEFAULT
from leafmould.notes.setting_values import Cover
from leafmould.notes.settings import CropSetting, PacketDays, Settings
from leafmould.reckon.warmth import Warmth
from leafmould.values.names import fold, slug

TROPICS_END = 30.0
"""Nearer the equator than this [degrees] winter is not taken to slow growth. Common practice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Almanac:
    """What the reckonings of one garden start from."""

    on: date  # "today": the garden's day
    is_southern: bool = False
    has_winter: bool = True  # False: near the equator, where short days do not stop growth
    units: str = "metric"
    packet_by_crop: Mapping[str, PacketDays] = field(default_factory=dict)  # by crop key
    packet_by_variety: Mapping[tuple[str, tuple[str, ...]], PacketDays] = field(default_factory=dict)
    """By crop key and folded variety."""
    facts_by_crop: Mapping[str, CropFact] = field(default_factory=dict)
    """For own crops that are "like" a published one."""
    family_by_crop: Mapping[str, str] = field(default_factory=dict)  # botanical, of annual crops in no table
    last_frost: tuple[int, int] | None = None  # month, day: average last frost of spring, as garden.yaml says
    first_frost: tuple[int, int] | None = None  # month, day: average first frost of autumn
    last_chances: tuple[tuple[int, tuple[int, int]], ...] = ()  # per cent of years with frost after a day
    first_chances: tuple[tuple[int, tuple[int, int]], ...] = ()  # per cent of years with frost before it
    cover: tuple[Cover, ...] = DEFAULT  # the least first
    is_usual_cover: bool = True  # garden.yaml says nothing of cover
    latitude: float | None = None  # degrees north; a whole degree in a public build
    sides_by_bed: Mapping[str, tuple[float, float]] = field(default_factory=dict)  # by bed key [m]
    apart_by_crop: Mapping[str, float] = field(default_factory=dict)  # crops.yaml [cm]
    rows_by_crop: Mapping[str, float] = field(default_factory=dict)  # crops.yaml [cm]
    varieties_by_crop: Mapping[str, tuple[tuple[str, PacketDays], ...]] = field(default_factory=dict)
    """By crop key, the varieties crops.yaml gives days for, as written there."""
    own_words: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """By crop key, what else crops.yaml says of it: "family", "how it is grown"."""
    warmth: Warmth = field(default_factory=lambda: Warmth((), ()))  # records/normals.csv and weather.csv
    weather_until: date = date.min  # days measured later than this are not known yet
    tin: tuple[TinRow, ...] = ()  # records/seeds.csv, as far as this build may show it

    def packet(self, crop: str, variety: str | None) -> PacketDays | None:
        """The packet's days for the variety, else for the crop."""
        own = self.packet_by_variety.get((crop, fold(variety))) if variety else None
        return own or self.packet_by_crop.get(crop)

    def fact(self, crop: str) -> CropFact | None:
        """The published facts that serve for a crop; None for one that no table knows."""
        return tables.crops().get(crop) or self.facts_by_crop.get(crop)


def almanac(settings: Settings, garden: Garden) -> Almanac:
    """The almanac of a garden, as of its day."""
    keys = own_crop_keys(settings, tables.crops())
    own = settings.crops[::-1]  # of two that mean one crop, the first counts
    latitude = settings.latitude
    return Almanac(
        on=garden.on,
        is_southern=garden.is_southern,
        family_by_crop={
            key: crop.family
            for key, crop in garden.crops.items()
            if crop.family and crop.grown_as == "annual" and not crop.like and key not in tables.crops()
        },
        has_winter=latitude is None or abs(latitude) >= TROPICS_END,
        units=garden.units,
        last_frost=settings.last_frost,
        first_frost=settings.first_frost,
        last_chances=settings.last_chances,
        first_chances=settings.first_chances,
        cover=DEFAULT if settings.cover is None else settings.cover,
        is_usual_cover=settings.cover is None,
        latitude=latitude,
        sides_by_bed={slug(bed.name): bed.size_m for bed in settings.beds if bed.size_m},
        apart_by_crop={keys[c.name]: c.apart_cm for c in own if c.apart_cm},
        rows_by_crop={keys[c.name]: c.rows_cm for c in own if c.rows_cm},
        varieties_by_crop={keys[c.name]: c.days_by_variety for c in own if c.days_by_variety},
        own_words={keys[c.name]: words for c in own if (words := _own_words(c))},
        tin=tin_rows(settings),
        warmth=Warmth(settings.months, settings.weather),
        weather_until=garden.on,
        packet_by_crop={keys[c.name]: c.days for c in own if c.days},
        packet_by_variety={
            (keys[crop.name], fold(variety)): days for crop in own for variety, days in crop.days_by_variety
        },
        facts_by_crop={
            keys[crop.name]: like for crop in own if crop.like and (like := tables.crop_by_name(crop.like))
        },
    )


def _own_words(crop: CropSetting) -> tuple[str, ...]:
    """What of a crop's nature is the gardener's own word."""
    said = (
        ("family", crop.family),
        ("how it is grown", crop.grown),
        ("whether frost kills it", crop.is_tender is not None),
        (f"that it is like {crop.like}", crop.like),
    )
    return tuple(words for words, is_said in said if is_said)
