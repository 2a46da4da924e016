"""What a clause still lacks once all is filled in, what to ask of it, and whether it reads whole.

Runs behind `actions`, before `expand`.
"""

from __future__ import annotations

from leafmould.notes.actions import WHOLE_BED_ENDS
from leafmould.notes.draft import Done, Draft
from leafmould.notes.entries import Sureness
from leafmould.notes.typed import Typed
from leafmould.notes.words.nouns import EGGS, HENS, HIVE, HONEY, SELDOM_VARIETY, SUCKERS
from leafmould.notes.words.prepositions import FILLERS
from leafmould.values.names import fold
from leafmould.values.problems import Level


def ask_what_is_missing(clause: Done, written: str) -> None:
    """A verb without the crop it needs is a question; so is a doubtful variety of no crop."""
    draft, verb = clause.draft, clause.verb
    if draft.has_crop_named:
        return
    if "crop!" in verb.slots and not draft.everything and not any(i.crops or i.thing for i in draft.items):
        varieties = [v.written for i in draft.items for v in i.varieties]
        if varieties:
            _ask_of_variety(draft)
        else:
            draft.ask(Level.QUESTION, f'What was "{written}"? No crop is named.')
    if "crop" in verb.slots and verb.name != "grafted" and not draft.has_crop_named:
        _ask_of_variety(draft)
    if verb.name in ENDINGS and not (draft.has_crop or draft.everything or draft.origins):
        if draft.places and verb.name == "lost":
            draft.ask(Level.QUESTION, f'What was lost in "{draft.places[0].name}"? No crop is named.')
        elif not draft.places and not draft.subject and "some!" not in verb.slots:
            draft.ask(Level.QUESTION, f'What was "{written}"? Neither a crop nor a place is named.')
    _ask_of_strangers(clause)
    if (
        verb.name == "came up"
        and clause.object_left
        and draft.places
        and not draft.has_crop
        and not _is_plain(clause.object_left)
    ):
        draft.ask(Level.QUESTION, f'"{clause.object_left}" is no crop known here. What came up?')
    _ask_which_part(clause)
    if (
        "some!" in verb.slots
        and not draft.everything
        and not draft.has_crop
        and not draft.places
        and not draft.origins
        and not clause.draft.subject
    ):
        draft.ask(Level.QUESTION, f'What was "{written}"? Neither a crop nor a place is named.')
    if verb.name == "moved" and not draft.has_crop and not draft.origins and not draft.everything:
        draft.ask(Level.QUESTION, f'What was "{written}"? Neither a crop nor a place that moves is named.')


def _ask_of_variety(draft: Draft) -> None:
    varieties = [v.written for i in draft.items for v in i.varieties if not v.of]
    if varieties:
        draft.is_loose = True
        draft.ask(
            Level.QUESTION,
            f'Which crop is "{varieties[0]}"? No crop is named, and no variety of that name is known here.',
        )


THE_BED = frozenset({"bed", "ground", "soil", "patch"})
"""Which one, is asked elsewhere."""
ENDINGS = frozenset({"lost", "cleared", "composted", "manured", "limed", "dug in", "covered"})


def _is_plain(written: str) -> bool:
    return set(fold(written)) <= SELDOM_VARIETY | SUCKERS | FILLERS | frozenset(
        {"shoot", "seedling", "seed", "row"}
    )


def _ask_which_part(clause: Done) -> None:
    """ "cleared half of Arch": part of a bed nobody can name."""
    draft = clause.draft
    if clause.verb.name != "cleared":
        return
    vague = any(a.whole in ("half", "the rest", "some") for i in draft.items for a in i.amounts)
    if vague and draft.places and not draft.has_crop:
        question = f'Which part of "{draft.places[0].name}" was cleared? Nothing is ended until it is said.'
        draft.ask(Level.QUESTION, question)


def _ask_of_strangers(clause: Done) -> None:
    """Care for something nobody knows: "fed asparagus", where no crop and no bed of that name is known."""
    draft = clause.draft
    if (
        "bed" not in clause.verb.slots
        or draft.has_crop
        or draft.places
        or draft.everything
        or not clause.object_left
        or draft.subject
        or set(fold(clause.object_left)) <= SELDOM_VARIETY | SUCKERS | FILLERS | THE_BED
    ):
        return
    draft.ask(Level.QUESTION, f'"{clause.object_left}" is no crop and no bed known here.')


def reads_whole(clause: Done, typed: Typed) -> bool:
    """Prose counts only with a known crop or bed, or as a closed form, and left-overs only after a comma."""
    draft = clause.draft
    names = [*(c for i in draft.items for c in i.crops), *draft.places, *draft.origins]
    if any(n.sureness is Sureness.NEW for n in names):
        return False
    if not (any(n.sureness is Sureness.KNOWN for n in names) or _is_closed_form(clause)):
        return False
    if any(a.level in (Level.QUESTION, Level.WARNING) for a in draft.asked):
        return False
    begin = next((end for slot, _, end in draft.spans if slot == "verb"), 0)
    return all(
        after_comma
        or _is_describing(typed, start, end)
        or _is_initial(typed, start, end)
        or _stands_behind_comma(typed, begin, start)
        for start, end, after_comma in draft.left
    )


OF_THE_HOUSE = EGGS | HIVE | HENS | HONEY | frozenset({"cocoon", "nematode"})


def _is_closed_form(clause: Done) -> bool:
    """ "watered everything", "collected 9 eggs", "opened the hive"."""
    draft = clause.draft
    return draft.everything or (
        clause.verb.name in WHOLE_BED_ENDS | {"penned", "let out"}
        and bool(set(fold(draft.subject or "")) & OF_THE_HOUSE)
    )


def _is_describing(typed: Typed, start: int, end: int) -> bool:
    """ "green" of "green tomato chutney", "pickled"."""
    return all(w in SELDOM_VARIETY or w.endswith("ed") for w in typed.words[start:end])


def _is_initial(typed: Typed, start: int, end: int) -> bool:
    """ "J picked raspberries": who did it."""
    written = typed.written(start, end)
    return start == 0 and len(written) == 1 and written.isupper()


def _stands_behind_comma(typed: Typed, char: int, start: int) -> bool:
    return any(typed.breaks[k] and typed.starts[k] >= char for k in range(1, start + 1))
