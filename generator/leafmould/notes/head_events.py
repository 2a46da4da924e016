"""The event a header tells with `did`, `crop`, `bed` and the like, as actions.

Lists pair: one value against many is shared, equal lengths go in order, unequal lengths are a question.
One amount over several stays one action. Never every combination.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from leafmould.notes.draft import Draft
from leafmould.notes.entries import Action, Named, Words
from leafmould.notes.fields import nearest
from leafmould.notes.habits import Defaults, Habits, LineReading
from leafmould.notes.head import Head
from leafmould.notes.lines import read_line
from leafmould.notes.tree import Leaf
from leafmould.notes.typed import Typed
from leafmould.notes.walk import Walk
from leafmould.notes.whole_amounts import read_whole
from leafmould.notes.words.verbs import PAST, VERBS
from leafmould.values.problems import Level, Location, Problem
from leafmould.values.quantities import Amount
from leafmould.values.when import When


@dataclass(frozen=True, slots=True, kw_only=True)
class One:
    """What belongs to one action of the header."""

    did: Leaf
    crops: tuple[Named, ...] = ()
    varieties: tuple[Named, ...] = ()
    beds: tuple[Named, ...] = ()
    part: str | None = None
    amounts: tuple[Leaf, ...] = ()
    when: When | None = None
    is_together: bool = False


def defaults_of(head: Head) -> Defaults:
    """What the header gives lines that lack it."""
    beside = tuple(v for crop in head.crops for v in crop.varieties)
    parts = [leaf.text.strip() for leaf in head.parts] or [bed.part for bed in head.beds if bed.part]
    return Defaults(
        beds=tuple(bed.named for bed in head.beds),
        crops=tuple(crop.crop for crop in head.crops),
        varieties=(*head.varieties, *beside),
        part=parts[0] if len(parts) == 1 else None,
    )


def read_event(head: Head, file: str, base: When | None, habits: Habits) -> LineReading:
    """The actions of `did`; empty where the header has none."""
    problems: list[Problem] = []

    def ask(message: str, leaf: Leaf, field: str, level: Level = Level.QUESTION) -> None:
        at = Location(file=file, line=leaf.line, column=leaf.column)
        problems.append(Problem(at=at, level=level, message=message, field=field))

    if not head.did:
        if head.amounts:
            ask(
                'An amount stands here, but not what was done. Add a line such as "did: picked".',
                head.amounts[0],
                "amount",
            )
        return LineReading(problems=tuple(problems))
    if len(head.crops) > 1:
        _ask_beside_several(head, ask)
    readings = [_read(one, head, file, base, habits, ask) for one in _pair(head, ask)]
    problems += [p for reading in readings for p in reading.problems]
    return LineReading(
        actions=tuple(action for reading in readings for action in reading.actions),
        words=tuple(words for reading in readings for words in reading.words),
        problems=tuple(dict.fromkeys(problems)),
    )


Ask = Callable[..., None]


def _ask_beside_several(head: Head, ask: Ask) -> None:
    """Single values that cannot belong to several crops."""
    count = len(head.crops)
    for field, leaves in (("amount", head.amounts), ("part", head.parts)):
        if len(leaves) == 1 and count > 1:
            ask(
                f'"{leaves[0].text.strip()}" stands beside {count} crops. Which of them is it for?',
                leaves[0],
                field,
            )
    if head.again is not None:
        ask(f'"{head.again.text}" stands beside {count} crops. Which of them is it for?', head.again, "again")


def _pair(head: Head, ask: Ask) -> list[One]:
    """One value for each action, list by list."""
    lengths = {
        "did": len(head.did), "crop": len(head.crops), "bed": len(head.beds),
        "variety": len(head.varieties), "date": len(head.dates),
    }  # fmt: skip
    most = max(lengths.values())
    if len(head.amounts) == 1 and most > 1 and len(head.did) == 1 and len(head.dates) <= 1:
        return [_together(head)]
    uneven = {name for name, n in lengths.items() if 1 < n < most}
    uneven |= {"amount"} if most > 1 and 1 < len(head.amounts) != most else set()
    if uneven:
        said = ", ".join(f"{n} of {name}" for name, n in lengths.items() if n > 1)
        message = f"These lists differ in length ({said}), so what belongs together is not clear. "
        ask(f'{message}They are paired in order; "work:" lines say it plainly.', head.did[0], "did")
    count = len(head.crops) if len(head.crops) > 1 else most
    return [_one(head, index, most) for index in range(count)]


def _together(head: Head) -> One:
    """One amount over several: a single action with all of them."""
    defaults = defaults_of(head)
    return One(
        did=head.did[0],
        crops=defaults.crops,
        varieties=defaults.varieties,
        beds=defaults.beds,
        part=defaults.part,
        amounts=head.amounts,
        is_together=True,
    )


T = TypeVar("T")


def _one(head: Head, index: int, most: int) -> One:
    """The values at one place of the lists; a single value is shared, a list that is too short ends."""

    def at(values: Sequence[T]) -> T | None:
        if len(values) == 1:
            return values[0]
        return values[index] if index < len(values) else None

    crop, bed, variety, part = at(head.crops), at(head.beds), at(head.varieties), at(head.parts)
    beside = crop.varieties if crop else ()
    return One(
        did=at(head.did) or head.did[-1],
        crops=(crop.crop,) if crop else (),
        varieties=(*((variety,) if variety else ()), *beside),
        beds=(bed.named,) if bed else (),
        part=part.text.strip() if part else bed.part if bed else None,
        amounts=_amounts_at(head.amounts, index, most),
        when=at(head.dates) if len(head.dates) > 1 else None,
    )


def _amounts_at(amounts: tuple[Leaf, ...], index: int, most: int) -> tuple[Leaf, ...]:
    """Several amounts are dimensions of one thing, or pair with the list."""
    if most == 1:
        return amounts
    if len(amounts) == 1:
        return amounts if index == 0 else ()
    return amounts[index : index + 1]


def _read(one: One, head: Head, file: str, base: When | None, habits: Habits, ask: Ask) -> LineReading:
    """One action, or more where `did` holds a longer line."""
    field = "did" if len(head.did) == 1 else f"did[{head.did.index(one.did)}]"
    at = Location(file=file, line=one.did.line, column=one.did.column)
    defaults = Defaults(beds=one.beds, crops=one.crops, varieties=one.varieties, part=one.part)
    if one.is_together:
        defaults = replace(defaults, beds=one.beds[:1], crops=one.crops[:1], varieties=one.varieties[:1])
    text = one.did.text.strip()
    reading = read_line(text, at=at, field=field, base=one.when or base, habits=habits, defaults=defaults)
    if not (reading.actions or reading.words or reading.problems):
        near = near_verb(text)
        message = f'"{text}" is no action known here, so it is kept as text.'
        problem = Problem(at=at, level=Level.ERROR, message=message, field=field, suggestion=near)
        return LineReading(words=(Words(text=text, at=at, kind="text"),), problems=(problem,))
    amounts = tuple(_amount(leaf, habits, ask) for leaf in one.amounts)
    return replace(reading, actions=tuple(_filled(action, one, amounts) for action in reading.actions))


def _filled(action: Action, one: One, amounts: tuple[Amount, ...]) -> Action:
    """The action with the header's amounts, day and, where one amount is for several, all of them."""
    if amounts and not action.amounts:
        action = replace(action, amounts=amounts)
    if one.is_together:
        crops = one.crops if action.crops == one.crops[:1] else action.crops
        varieties = one.varieties if action.varieties == one.varieties[:1] else action.varieties
        places = one.beds if action.places == one.beds[:1] else action.places
        is_mix = max(len(crops), len(varieties)) > 1
        action = replace(action, crops=crops, varieties=varieties, places=places, is_together=is_mix)
    return action if one.when is None or action.when else replace(action, when=one.when)


def _amount(leaf: Leaf, habits: Habits, ask: Ask) -> Amount:
    """An amount of the header; what is no amount is kept as it was written."""
    text = leaf.text.strip()
    typed = Typed(text, habits.vocabulary)
    walk = Walk(
        typed, VERBS["picked"], Draft(), base=None, order=habits.order, decimal=habits.decimal,
        is_southern=habits.is_southern,
    )  # fmt: skip
    walk.end = typed.count
    read = read_whole(walk, 0, "piece") if typed.count else None
    if read is None or read.end < typed.count:
        message = f'"{text}" is no amount known here, so it is kept as written and not added up.'
        ask(message, leaf, "amount")
        return Amount(written=text, low=None, high=None, unit="piece")
    if read.asks:
        ask(read.asks, leaf, "amount")
    return read.amount


def near_verb(text: str) -> str | None:
    """The action nearest to a word that is none."""
    return nearest(text.casefold(), [*VERBS, *(" ".join(form) for form in PAST)])
