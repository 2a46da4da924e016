"""What stands where while the acts are gone through in the order of their days.

The one mutable thing of the assembling: every draft, found by bed and crop. Looking up costs what stands
there, not what ever stood there.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Sequence
from datetime import date

from leafmould.garden.bed_lines import BedLines
from leafmould.garden.draft import Act, Draft, Over
from leafmould.garden.kinds import Kinds
from leafmould.garden.presumed import KillingFrosts, presumed_end
from leafmould.notes.entries import Named
from leafmould.values.names import fold
from leafmould.values.problems import Level, Problem
from leafmould.values.when import When
from leafmould.values.wording import MONTHS

Key = tuple[str | None, str | None]  # bed, crop; None stands for any


class Ground:
    """All drafts so far."""

    def __init__(self, lines: BedLines, kinds: Kinds, frosts: KillingFrosts, *, longest: int) -> None:
        """Begin with nothing; `longest` is the longest span of days any act is dated by ("in 2024")."""
        self.lines = lines
        self.kinds = kinds
        self.frosts = frosts
        self.longest = longest
        self.drafts: list[Draft] = []
        self.by_year: list[Draft] = []  # known by year only; nothing is ever matched to these
        self.problems: list[Problem] = []
        self.cleared: dict[str, list[date]] = defaultdict(list)  # days on which a whole bed was cleared
        self.bought: dict[str, list[Act]] = defaultdict(list)
        self.picked: dict[tuple[date, str], list[Act]] = defaultdict(list)
        self.acts_by_line: dict[tuple[str, int | None], list[Act]] = defaultdict(list)
        self._lists: dict[Key, list[Draft]] = defaultdict(list)
        self._limits: dict[Key, int] = defaultdict(lambda: 16)

    def add(self, draft: Draft) -> None:
        """Take a new draft into every list it may be looked for in."""
        self.drafts.append(draft)
        for bed in draft.beds:
            self._index(draft, bed)

    def move(self, draft: Draft, day: date, bed: str) -> None:
        """Let a draft stand in another bed from a day on."""
        draft.moves.append((day, bed))
        self._index(draft, bed)

    def settle_bed(self, draft: Draft, act: Act) -> None:
        """After a split, a note that names one of the new beds tells where a planting stands."""
        day = act.when.last
        now = self.beds_of(draft, day)
        if len(now) > 1 and len(act.beds) == 1 and act.beds[0] in now:
            begun = self.lines.beds[act.beds[0]].begun
            self.move(draft, begun or draft.begins, act.beds[0])

    def settle_crops(self, draft: Draft, crops: tuple[str, ...]) -> None:
        """Give a draft other crops than it had."""
        draft.crops = crops
        for bed in self.beds_of(draft, date.max):
            self._index(draft, bed)

    def _index(self, draft: Draft, bed: str) -> None:
        for key in {(b, c) for b in (bed, None) for c in (*draft.crops, None)} - {(None, None)}:
            found = self._lists[key]
            if draft in found:
                continue
            found.append(draft)
            if len(found) > self._limits[key]:
                self._lists[key] = kept = [d for d in found if not self._is_long_over(d, draft.begins)]
                self._limits[key] = max(16, 2 * len(kept))

    def _is_long_over(self, draft: Draft, day: date) -> bool:
        """Whether no note from this day on can mean it any more."""
        if draft.ended is not None:
            return (day - draft.ended.last).days > self.longest
        over = self.over(draft)
        return draft.is_dissolved or (
            over is not None and (day - over.on).days > days_meant(over, by_name=True) + self.longest
        )

    def over(self, draft: Draft) -> Over | None:
        """When it is presumed over, as far as is known by now."""
        state = (
            draft.last_sign,
            draft.rival_on,
            draft.finished,
            len(draft.displaced),
            len(draft.moves),
            draft.crops,
        )
        if draft.over_at != state:
            draft.over_at, draft.over = state, self._over(draft)
        return draft.over

    def _over(self, draft: Draft) -> Over | None:
        over = presumed_end(draft, self.frosts)
        if not self.lines.is_ever_ended:
            return over
        bed = self.lines.beds.get(self.beds_of(draft, date.max)[0])
        if bed is None or bed.ended is None or bed.became or bed.ended < draft.begins:
            return over
        if over is None or bed.ended < over.on:
            return Over(on=bed.ended, basis="presumed over: the bed ended")
        return over

    def beds_of(self, draft: Draft, day: date) -> tuple[str, ...]:
        """Where it stands on a day, under the beds' names of that day."""
        beds = draft.beds
        for moved_on, bed in draft.moves:
            if moved_on <= day:
                beds = (bed,)
        return self.beds_on(beds, day, draft.part) if self.lines.is_ever_renamed else beds

    def beds_on(self, beds: Iterable[str], day: date, part: str | None) -> tuple[str, ...]:
        """What these beds are on a day."""
        return tuple(dict.fromkeys(now for key in beds for now in self.lines.on(key, day, part)))

    def standing(
        self, *, bed: str | None, crop: str | None, when: When, also_ended: bool = False
    ) -> list[Draft]:
        """What may have stood in the bed then, of this crop or any; the oldest first."""
        beds: Sequence[str | None] = self.lines.family_of(bed) if bed else (None,)
        crops = self.kinds.may_mean(crop) if crop is not None else (None,)
        if len(beds) == len(crops) == 1:
            found = self._lists.get((beds[0], crops[0]), [])
        else:
            found = list(dict.fromkeys(d for b in beds for c in crops for d in self._lists.get((b, c), ())))
        first, last = when.first, when.last
        stood = [
            d
            for d in found
            if d.begins <= last and not d.is_dissolved
            if also_ended or d.ended is None or d.ended.last >= first
        ]
        if bed is not None:
            stood = [d for d in stood if bed in self.beds_of(d, last)]
        return sorted(stood, key=_age) if len(stood) > 1 else stood

    def ask(self, act: Act, level: Level, message: str, suggestion: str | None = None) -> None:
        """Tell the gardener something about an act."""
        at, field = act.action.at, act.action.field
        self.problems.append(Problem(at=at, level=level, message=message, field=field, suggestion=suggestion))

    def crop_name(self, crops: Sequence[str]) -> str:
        """Crops as a sentence names them."""
        return " and ".join(self.kinds.named(key).name for key in crops) or "unknown crop"

    def bed_name(self, bed: str) -> str:
        """A bed as a sentence names it."""
        found = self.lines.beds.get(bed)
        return found.name if found else bed


def find(
    ground: Ground,
    act: Act,
    *,
    crop: str | None,
    bed: str | None,
    variety: str | None,
    prefers_raised: bool = False,
) -> list[Draft]:
    """The plantings an act can mean, narrowed as far as its words allow; several are no fault."""
    found = ground.standing(bed=bed, crop=crop, when=act.when)
    if len(found) > 1:
        found = _prefer(found, lambda d: d.is_raised == prefers_raised)
    if found and found[0].is_raised and not prefers_raised:
        found = [d for d in found if not d.children]
    if len(found) > 1:
        found = _prefer(found, lambda d: crop in d.crops or crop in ground.kinds.members)
    found = of_variety(found, variety)
    if len(found) > 1:  # "squash", where one was noted by that word and courgettes stand there too
        found = _prefer(found, lambda d: crop in d.crops)
    found = of_part(found, act.part)
    if act.action.batch is not None:
        begun = ground.standing(bed=bed, crop=crop, when=act.when, also_ended=True)
        begun = [d for d in begun if d.is_raised == prefers_raised]
        found = of_batch(found, act.action.batch, of_part(of_variety(begun, variety), act.part))
    if len(found) > 1 and "self-sown" in act.action.text.casefold():
        found = _prefer(found, lambda d: d.origin == "self-sown")
    if len(found) > 1:
        found = _prefer(found, lambda d: d.begins < act.when.first)
    return still_alive(ground, found, act.when, by_name=bed is not None)


def still_alive(ground: Ground, found: list[Draft], when: When, *, by_name: bool) -> list[Draft]:
    """Those not presumed over; failing that, those so presumed not long ago: it was wrong."""
    over = [(d, None if d.ended else ground.over(d)) for d in found]
    alive = [d for d, end in over if end is None or end.on >= when.first]
    if alive:
        return alive
    return [d for d, end in over if end is None or is_still_meant(end, when.first, by_name=by_name)]


def is_still_meant(over: Over, day: date, *, by_name: bool) -> bool:
    """Whether a note of that day may mean what is presumed over already."""
    return (day - over.on).days <= days_meant(over, by_name=by_name)


def days_meant(over: Over, *, by_name: bool) -> int:
    """How long after it was presumed over notes may still mean a planting; longer if they name it."""
    return max(over.days_open, over.days_open_by_name) if by_name else over.days_open


def of_variety(found: list[Draft], variety: str | None) -> list[Draft]:
    """Those of the variety; failing that, those whose variety was never given."""
    if variety is None:
        return found
    words = fold(variety)
    same = [d for d in found if any(fold(v) == words for v in d.varieties)]
    return same or [d for d in found if not d.varieties]


def of_part(found: list[Draft], part: str | None) -> list[Draft]:
    """Those in the part; failing that, those in no named part; a numbered part is never another."""
    if part is None:
        return found
    words = fold(part)
    same = [d for d in found if d.part is not None and fold(d.part) == words]
    unnamed = [d for d in found if d.part is None]
    if same or unnamed or any(word.isdigit() for word in words):
        return same or unnamed
    return found


DAYS_BETWEEN_SOWINGS = 120
"""After so long another sowing is the first of a new season. Common practice, no source."""
ORDINALS = {"first": 0, "1st": 0, "second": 1, "2nd": 1, "third": 2, "3rd": 2, "fourth": 3, "last": -1, "latest": -1}  # fmt: skip


def of_batch(found: list[Draft], batch: str, begun: list[Draft]) -> list[Draft]:
    """The one called "first sowing", or those of the "March sowing"; all if that says nothing."""
    sowings = _latest_run(begun)
    for word in batch.casefold().split():
        if word in ORDINALS and -len(sowings) <= ORDINALS[word] < len(sowings):
            meant = sowings[ORDINALS[word]]
            return [meant] if meant in found else found
        months = [
            i for i, name in enumerate(MONTHS, start=1) if len(word) >= 3 and name.casefold().startswith(word)
        ]
        if months:
            return [d for d in found if d.begins.month in months] or found
    return found


def _latest_run(begun: list[Draft]) -> list[Draft]:
    """The sowings of this season, some over by now: back to where none followed for a good while."""
    run = begun[-1:]
    for draft in reversed(begun[:-1]):
        if (run[0].begins - draft.begins).days > DAYS_BETWEEN_SOWINGS:
            break
        run.insert(0, draft)
    return run


OPPOSITES = (
    ("north", "south"), ("east", "west"), ("left", "right"), ("front", "back"), ("top", "bottom"),
    ("upper", "lower"), ("near", "far"), ("inner", "outer"), ("sunny", "shady"),
)  # fmt: skip


def are_apart(one: str, other: str) -> bool:
    """Whether two parts of a bed surely do not overlap: north half and south half, row 1 and row 2."""
    a, b = set(fold(one)), set(fold(other))
    if any((x in a and y in b) or (y in a and x in b) for x, y in OPPOSITES):
        return True
    numbers = {w for w in a if w.isdigit()}, {w for w in b if w.isdigit()}
    return all(numbers) and not numbers[0] & numbers[1]


def merge_parts(a: str | None, b: str | None) -> bool:
    """Whether two parts are named and are the same."""
    return a is not None and b is not None and fold(a) == fold(b)


def crop_named(act: Act, key: str) -> Named | None:
    """The word by which an act names a crop."""
    return next((n for n in act.action.crops if n.key == key), None)


def _prefer(found: list[Draft], wanted: Callable[[Draft], bool]) -> list[Draft]:
    """Those that fit, or all if none does."""
    fitting = [d for d in found if wanted(d)]
    return fitting or found


def _age(draft: Draft) -> tuple[date, int]:
    return (draft.begins, draft.serial)
