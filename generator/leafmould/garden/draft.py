"""What the assembling works on before it is frozen: acts, and plantings as they come together.

An Act is one action with its date and bed resolved, and where matching put it. A Draft is a planting that
still grows: it takes acts, moves, ends. Nothing outside the assembling sees either.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from leafmould.garden.model import Origin
from leafmould.notes.entries import Action, Entry, Fate
from leafmould.values.when import When


@dataclass(frozen=True, slots=True, kw_only=True)
class Over:
    """From which day a planting is presumed over, and why, in words."""

    on: date
    basis: str
    days_open: int = 60  # so long after it a note may still mean this planting: it was not over yet
    days_open_by_name: int = 0  # the same for a note that names its crop and bed, where that is longer
    is_noted: bool = False  # the gardener said so


@dataclass(slots=True, kw_only=True, eq=False)
class Act:
    """One action of one entry, resolved, and where it ended."""

    id: str
    number: int
    entry: Entry
    action: Action
    when: When
    beds: tuple[str, ...] = ()
    origins: tuple[str, ...] = ()
    crops: tuple[str, ...] = ()
    varieties: tuple[str, ...] = ()
    drafts: list[Draft] = field(default_factory=list)
    batches: list[Draft] = field(default_factory=list)  # it belongs to these together
    fates: list[Fate] = field(default_factory=list)
    inferred: list[str] = field(default_factory=list)

    @property
    def verb(self) -> str:
        return self.action.verb

    @property
    def part(self) -> str | None:
        return self.action.part

    def reach(self, draft: Draft) -> None:
        """Say that this act belongs to a planting."""
        if draft not in self.drafts:
            self.drafts.append(draft)
            draft.acts.append(self)

    def leave(self) -> None:
        """Take this act off every planting again."""
        for draft in self.drafts:
            draft.acts.remove(self)
        self.drafts = []


@dataclass(slots=True, kw_only=True, eq=False)
class Draft:
    """A planting while it is being put together."""

    serial: int  # order of opening
    beds: tuple[str, ...]  # at its start; several only after a split that was not settled
    begins: date
    crops: tuple[str, ...]
    words: tuple[str, ...]
    varieties: tuple[str, ...]
    written_crops: tuple[str, ...]  # as its first note names them; for the id
    written_varieties: tuple[str, ...] = ()
    written_bed: str | None = None  # for the id, where its first note names another bed than was meant
    part: str | None = None
    stood_from: date | None = None  # where its start was never noted: how far back it may have stood
    origin: Origin = "unknown"
    start_written: When | None = None
    is_doubtful: bool = False
    is_crop_doubtful: bool = False  # "aubergine or pepper": nothing else follows from what it may be
    number: int | None = None
    number_estimated: bool = False
    started: When | None = None
    started_between: tuple[date, date] | None = None
    sown: When | None = None
    planted: When | None = None
    moved: When | None = None
    found: When | None = None
    came_up: When | None = None
    flowered: When | None = None
    picked_first: When | None = None
    picked_last: When | None = None
    cleared: When | None = None
    lost: When | None = None
    ended: When | None = None  # written, or certain: from then on nothing reaches it
    end_basis: str | None = None
    end_is_estimated: bool = False
    year: int | None = None
    is_perennial: bool = False
    is_tender: bool = False
    is_lifted: bool = False  # picking ends the plant
    months: int = 12  # after which it is presumed over
    is_under_cover: bool = False
    raised_in: str | None = None
    source: str | None = None
    parent: Draft | None = None
    from_setting: str | None = None  # the id of a tree's or row's own planting
    is_raised: bool = False  # a batch under glass, to be planted out
    left: int | None = None  # of a batch: how many are still to be planted out
    children: list[Draft] = field(default_factory=list)  # of a batch: what was drawn from it
    is_dissolved: bool = False  # opened by a picking that a later start explained away
    moves: list[tuple[date, str]] = field(default_factory=list)
    last_sign: date | None = None  # last seen alive, by name
    finished: date | None = None  # the gardener called it finished; it may still be cleared
    displaced: list[date] = field(default_factory=list)  # another crop was started in its place
    rival_on: date | None = None  # first new start of the same crop there
    over_at: object = None  # the state in which `over` was reckoned
    over: Over | None = None
    acts: list[Act] = field(default_factory=list)
    pickings: list[Act] = field(default_factory=list)
    observed: list[Entry] = field(default_factory=list)  # notes that only look
    id: str = ""
    group: str | None = None

    @property
    def is_annual(self) -> bool:
        """Whether it ends within its time; biennials and overwintered crops too."""
        return not self.is_perennial

    @property
    def is_row(self) -> bool:
        """Whether it is shown: neither explained away nor a batch already drawn on."""
        return not self.is_dissolved and not (self.is_raised and self.children)

    @property
    def key(self) -> tuple[tuple[str, ...], tuple[str, ...], tuple[str, ...]]:
        """What batches of one group share: bed, crop, variety."""
        return (self.beds, self.crops, self.varieties)

    def live(self, day: date) -> None:
        """Note a sign of life."""
        if self.last_sign is None or day > self.last_sign:
            self.last_sign = day

    def close(self, when: When, basis: str, *, is_estimated: bool = False) -> None:
        """End it once; the first end stands."""
        if self.ended is None:
            self.ended, self.end_basis, self.end_is_estimated = when, basis, is_estimated
