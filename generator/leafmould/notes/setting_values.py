"""What a garden's settings say, as frozen values with every default filled in.

Read by `settings`; this module holds only the values.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from leafmould.values.problems import Location, Problem
from leafmould.values.quantities import Amount


@dataclass(frozen=True, slots=True, kw_only=True)
class BedSetting:
    """A bed, container, tree or row as garden.yaml declares it."""

    name: str
    at: Location
    also: tuple[str, ...] = ()
    kind: str = "bed"  # bed, container, row, tree, shrub, cane row, vine, mound, under glass
    size_m: tuple[float, float] | None = None  # width, length [m]
    area_m2: float | None = None  # from its sides, or as written
    size_written: str | None = None
    position_m: tuple[float, float] | None = None  # to the right and up from the plan's corner [m]
    canopy_m: float | None = None  # how wide a crown is [m]
    sun: str | None = None
    water: str | None = None
    soil: str | None = None
    parts: tuple[str, ...] = ()
    was: tuple[str, ...] = ()  # names of the beds it came from
    begun: date | None = None  # `from:`; a year alone is its 1 January
    ended: date | None = None  # `until:`
    planted: str | None = None  # as written; trees, shrubs, vines, cane rows
    crop: str | None = None
    variety: str | None = None
    is_private: bool = False
    extra: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A path, wall, building or pond on the gardener's plan, or a stretch of ground that is wet, dry, sunny or shady."""

    kind: str  # "path", "wall", "building", "pond"; "wet", "dry", "sunny", "shady"
    size_m: tuple[float, float]  # to the right, up
    position_m: tuple[float, float]  # its bottom left corner


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """The ground the beds lie on."""

    north: float = 0.0  # degrees clockwise from straight up
    plot: tuple[float, float] | None = None  # width and length of the whole [m]
    pieces: tuple[Piece, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PacketDays:
    """Days from a start to the first picking, as a packet or the gardener says."""

    low: int
    high: int
    counts_from: str  # "sowing" or "planting out"
    at: Location


@dataclass(frozen=True, slots=True, kw_only=True)
class CropSetting:
    """An own crop, or what the garden knows better about a published one."""

    name: str
    at: Location
    also: tuple[str, ...] = ()
    family: str | None = None
    grown: str | None = None  # annual, overwintered, biennial, perennial
    like: str | None = None  # a crop whose facts serve where these are silent
    is_tender: bool | None = None
    days: PacketDays | None = None
    days_by_variety: tuple[tuple[str, PacketDays], ...] = ()
    varieties: tuple[str, ...] = ()
    apart_cm: float | None = None  # from plant to plant in the row
    rows_cm: float | None = None  # from row to row


@dataclass(frozen=True, slots=True, kw_only=True)
class Beforehand:
    """What grew where in a year before the notes began."""

    year: int
    bed: str
    crop: str
    at: Location


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptSeed:
    """One row of the seed tin, as it was written down."""

    crop: str
    at: Location
    variety: str | None = None
    year: int | None = None  # in which it was got or saved
    amount: str = ""  # as written: "half a packet"
    seeds: int | None = None  # where it was counted
    grams: float | None = None  # where it was weighed
    counted: date | None = None  # the day it was counted or weighed
    is_used_up: bool = False
    source: str | None = None
    price: str | None = None
    came_up: int | None = None  # of those tried
    tried: int | None = None
    tried_year: int | None = None
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthNormal:
    """The usual weather of a month."""

    month: int  # 1 to 12
    low: float  # mean of the daily lows [°C]
    high: float  # mean of the daily highs [°C]
    rain: float | None = None  # [mm]


@dataclass(frozen=True, slots=True, kw_only=True)
class WeatherDay:
    """The weather of one day, as it was measured."""

    on: date
    low: float | None = None  # [°C]
    high: float | None = None  # [°C]
    rain: float | None = None  # [mm]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cover:
    """A cover, and by how much it lengthens the season at either end."""

    name: str  # as written: "fleece"
    days: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """All of a garden's settings, defaults filled in."""

    name: str = "The garden"
    address: str | None = None  # where the site is put online: "https://example.org/garden/"
    latitude: float | None = None  # degrees north; never published
    longitude: float | None = None
    elevation_m: float | None = None
    place_written: tuple[str, str, str] = (
        "",
        "",
        "",
    )  # latitude, longitude, elevation, to find them in notes
    last_frost: tuple[int, int] | None = None  # month, day: average last frost of spring
    first_frost: tuple[int, int] | None = None  # month, day: average first frost of autumn
    last_chances: tuple[tuple[int, tuple[int, int]], ...] = ()  # per cent of years with frost after the day
    first_chances: tuple[tuple[int, tuple[int, int]], ...] = ()  # per cent of years with frost before it
    frost_at: Location | None = None  # where garden.yaml tells of frosts
    cover: tuple[Cover, ...] | None = None  # the least first; None: nothing is written of it
    normals: str | None = None  # path of the table of monthly normals
    units: str = "metric"  # or "imperial"
    decimal: str | None = None  # "point", "comma"; None: ask where it matters
    dates: str | None = None  # "day first", "month first"; None: ask where it matters
    people: int | None = None
    measures: tuple[tuple[str, Amount], ...] = ()
    words: tuple[tuple[str, str], ...] = ()  # own word or code, verb
    show: tuple[str, ...] = ()
    leave_out: tuple[str, ...] = ()
    private_words: tuple[str, ...] = ()  # shown as "…" in a public build, wherever they stand
    photo_widths: tuple[int, ...] = (480, 960, 1600)
    beds: tuple[BedSetting, ...] = ()
    plan: Plan = Plan()
    crops: tuple[CropSetting, ...] = ()
    beforehand: tuple[Beforehand, ...] = ()
    seeds: tuple[KeptSeed, ...] = ()
    months: tuple[MonthNormal, ...] = ()  # January to December, or none
    weather: tuple[WeatherDay, ...] = ()  # in order
    problems: tuple[Problem, ...] = ()

    @property
    def is_southern(self) -> bool:
        """Whether the seasons are those of the southern half; by latitude alone, else north."""
        return self.latitude is not None and self.latitude < 0
