"""One work line and a Vocabulary to what was done: actions with spans, and what to ask.

The matcher in its order: cut the line into words (`typed`), find its verbs (`clauses`, `senses`), fill
their slots (`deeds`, `slots`), let clauses share (`actions`), make actions (`expand`). Lines without an action are kept as text.
"""

from __future__ import annotations

import re
from dataclasses import replace

from leafmould.notes.actions import (
    closes_with_earlier,
    fill,
    inherit,
    settle_items,
    share_backward,
    share_date_forward,
)
from leafmould.notes.bare import amount_alone, is_first_of, price_alone
from leafmould.notes.beds_and_crops import apart_by_bed
from leafmould.notes.before_verb import with_unnamed_before
from leafmould.notes.by_sentence import apart_by_sentence
from leafmould.notes.clause import Clause
from leafmould.notes.clauses import find_clauses
from leafmould.notes.day_words import take_date
from leafmould.notes.deeds import read_clause, read_clauses
from leafmould.notes.doubts import ask_of_doubtful
from leafmould.notes.draft import Asked, Done, Draft
from leafmould.notes.entries import Action, Sureness
from leafmould.notes.expand import to_actions
from leafmould.notes.fates import gather_fates, merge_yields
from leafmould.notes.habits import Defaults, Habits, LineReading
from leafmould.notes.in_or_out import in_or_out, is_brought_in, is_lifted, may_be_put_out
from leafmould.notes.kept import plan_in, without_verb
from leafmould.notes.lacking import ask_what_is_missing, reads_whole
from leafmould.notes.last_look import tell_second_things
from leafmould.notes.lessons import opens_lesson
from leafmould.notes.line_start import open_line
from leafmould.notes.lists_in_short import (
    by_days,
    comes_off_a_bed,
    with_crops_beside_eggs,
    with_picking_before,
    with_planting_before,
    with_shares,
    with_swaps,
)
from leafmould.notes.misheard import ask_of_misheard
from leafmould.notes.mistyped import tell_mistyped
from leafmould.notes.one_line import OneLine
from leafmould.notes.remainder import join_kept, tell_remainder
from leafmould.notes.senses import action_of
from leafmould.notes.some_of_it import without_no_good
from leafmould.notes.told_as_things import told_as_thing
from leafmould.notes.too_long import long_line
from leafmould.notes.typed import Typed
from leafmould.notes.unread import tell_what_is_left
from leafmould.notes.verbless import verbless_clause, with_verbless
from leafmould.notes.weather import Weather, read_weather
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import NEGATIONS, PLACE_OPENERS, REMARK_OPENERS
from leafmould.values.half_years import northern_month
from leafmould.values.names import Kind
from leafmould.values.problems import Level, Location
from leafmould.values.when import When


def read_line(
    text: str,
    *,
    at: Location,
    field: str,
    base: When | None,
    habits: Habits,
    defaults: Defaults,
    is_prose: bool = False,
) -> LineReading:
    """Read one work line.

    Args:
        base: the note's date, for dates without a year.
        defaults: filled in where the line has none, once its verb needs it.
        is_prose: it may be no work line at all. It counts if it reads whole (a verb and a known crop or
            bed, left-overs only after a comma), or begins with the verb and names something known; else
            nothing is said.
    """
    if (too_long := long_line(text, at, field)) is not None:
        return too_long
    line = OneLine(text, at, field, base, habits, defaults, is_prose)
    return _read(line)


def _read(line: OneLine) -> LineReading:
    """Actions, or the line kept as text."""
    typed = line.typed
    if not typed.count:
        return LineReading()
    if opens_lesson(line.text):
        return line.as_text("observation", None)
    if "?" in typed.plain and TAKEN_BACK.search(typed.plain):
        return line.as_text(
            "observation", Asked(Level.HINT, "Taken back, so the line is kept as text.", None)
        )
    if typed.words[0] in ASKING and line.text.rstrip(" )").endswith("?") and "?" not in line.text[:-2]:
        return line.as_text("observation", None)  # "What has been eating the borage?"
    start = open_line(line)
    if start >= typed.count:
        return line.as_text("text", None)
    rest = line.behind(start)
    if (weather := read_weather(rest, line.habits.units, 0)) is not None:
        return _weather(line, weather, start)
    found = verbless_clause(rest) or in_or_out(rest) or told_as_thing(rest)
    if found is None and (plan := plan_in(rest)) is not None:
        return line.as_text("intention", plan)
    if found is not None and is_brought_in(rest, found, line.base, is_southern=line.habits.is_southern):
        found.verb = "picked"
        told = f'"{rest.written(0, found.verb_end)}" may be "picked" or "planted"; read as "picked".'
        line.asked.append(Asked(Level.QUESTION, told, rest.starts[0]))
    is_out = may_be_put_out(rest, found, line.base, is_southern=line.habits.is_southern) if found else None
    if found is not None and is_out is not None:
        found.verb = "planted" if is_out else "picked"
        told = f'"{rest.written(0, found.verb_end)}" may be "planted" or "picked"; read as "{found.verb}".'
        line.asked.append(Asked(Level.QUESTION, told, rest.starts[0]))
    clauses = by_days(rest)
    if clauses and clauses[0].verb == "collected":
        found = None  # "eggs: 3 Mon, 5 Tue"
    elif clauses:
        line.asked.append(
            Asked(Level.QUESTION, f'No action is named; read as "{clauses[0].verb}".', rest.starts[0])
        )
    clauses = clauses or with_picking_before(rest, without_no_good(rest, find_clauses(rest)))
    if found is None and not line.is_prose:
        clauses, asks = with_unnamed_before(rest, clauses)
        line.asked += [Asked(Level.QUESTION, asks, rest.starts[0])] if asks is not None else []
    if found is not None and found.relative is not None:
        clauses = [found]  # "28 sets in, 201 bulbs out"
    elif found is not None and found.start and all(action_of(rest, c)[0] == "remark" for c in clauses):
        clauses = [found]  # "the red hen is gone broody, so only 3 eggs"
    elif found is not None:
        clauses = with_verbless(rest, found, clauses)
    if clauses and is_lifted(rest, clauses[0], line.base, is_southern=line.habits.is_southern):
        clauses[0].verb, clauses[0].is_state, clauses[0].subject = "picked", False, None
        told = f'"{rest.written(0, clauses[0].verb_end)}" may be "picked" or "came up"; read as "picked".'
        line.asked.append(Asked(Level.QUESTION, told, rest.starts[0]))
    clauses = with_swaps(rest, with_crops_beside_eggs(rest, clauses))
    clauses = with_shares(rest, with_planting_before(rest, clauses))
    if (
        len(clauses) == 1
        and clauses[0].is_denied
        and not _denies(rest)
        and (alone := _amount_alone(line, rest))
    ):
        return alone  # "37 roots, leaves twisted off, not cut"
    if len(clauses) == 1 and clauses[0].form == ("forced",) and action_of(rest, clauses[0])[0] == "remark":
        clauses = []  # "forced rhubarb, 6 sticks"
    if not clauses:
        if line.is_prose:
            return LineReading()
        return _amount_alone(line, rest) or line.as_text(*without_verb(rest))
    return _done(line, rest, clauses)


def _amount_alone(line: OneLine, typed: Typed) -> LineReading | None:
    """ "2 kg peas, Arch": a picking, with a question, if the words say that and nothing else."""
    clause = None if line.is_prose else price_alone(typed) or amount_alone(typed)
    if clause is None or _denies(typed):
        return None
    done = read_clause(line, typed, clause, clause.verb or "picked", None)
    kinds = (Kind.CROP, Kind.CROP_GROUP)
    is_told = all(
        after or typed.kind(end, *kinds)[0] > 0 or typed.words[start] in MAY_OPEN
        for start, end, after in done.draft.left
    )
    is_bought = done.verb.name == "bought" and done.draft.price is not None
    asked = [
        a
        for a in done.draft.asked
        if not (a.level is Level.HINT and (is_bought or "perhaps a variety" in a.message))
    ]
    if not is_told or asked or not (done.draft.has_crop or _is_of_the_house(done.draft)):
        return None
    needs_none = (
        is_bought or done.verb.name == "moved" or is_first_of(typed)
    )  # "toms -> Hoop bed": all of them
    if not (needs_none or done.draft.total or any(i.amounts for i in done.draft.items)):
        return None
    is_sown = done.verb.name == "sowed" and "seed" in typed.words and "potato" not in typed.words
    if not is_sown and (done.verb.name != "picked" or not _is_surely_picked(line, typed, done.draft)):
        question = f'No action is named; read as "{done.verb.name}".'
        done.draft.ask(Level.QUESTION, question, typed.starts[0])
    return _finish(line, typed, [done], [clause])


def _is_surely_picked(line: OneLine, typed: Typed, draft: Draft) -> bool:
    """ "250 g peas off the Arch", "1.4kg spuds": weighed, or in a basket and off a bed.

    Plants from a frame may have been planted; and so may what is planted by weight, in its season.
    """
    units = {a.unit for item in draft.items for a in item.amounts} | {a.unit for a in draft.total}
    if not {"plant", "seedling", "seed", "set", "clove", "tuber", "bulb"}.isdisjoint(typed.words):
        return False
    if "t" in units:
        return False  # "thyme (s 2/9 t 17/3)": nobody picks tonnes
    if not units.isdisjoint(nouns.WEIGHTS) and not draft.fates and line.base is not None:
        keys = {k for item in draft.items for c in item.crops for k in (c.key, *c.of)}
        month = northern_month(line.base.first.month, is_southern=line.habits.is_southern)
        if all(month in PLANTED_BY_WEIGHT.get(key, (month,)) for key in keys):
            return True
    return comes_off_a_bed(typed, typed.count) and not units.isdisjoint(GATHERED)


PLANTED_BY_WEIGHT = {
    "potato": (6, 7, 8, 9, 10), "garlic": (6, 7, 8), "onion": (7, 8), "shallot": (7, 8), "broad-bean": (6, 7, 8), "asparagus": (5, 6),
    "rhubarb": (4, 5, 6, 7), "jerusalem-artichoke": (11, 12), "oca": (11, 12),
}  # fmt: skip
"""What is bought by weight to be planted, with the northern months in which it is rather picked: common practice, no source."""
GATHERED = nouns.WEIGHTS | frozenset(
    {
        "handful",
        "fistful",
        "armful",
        "punnet",
        "cup",
        "pint",
        "quart",
        "l",
        "bowl",
        "basket",
        "trug",
        "bunch",
        "colander",
        "bucket",
        "carrier",
    }
)


def _denies(typed: Typed) -> bool:
    """Whether something is denied where a crop or a number stands: not in "37 roots, leaves twisted off not cut"."""
    for i, word in enumerate(typed.words):
        if word in NEGATIONS:
            begin = next((k for k in range(i, -1, -1) if typed.breaks[k]), 0)
            if not begin or any(
                typed.names(k)[0] or typed.is_number(k) for k in range(begin, typed.stops[i])
            ):
                return True
    return False


def _is_of_the_house(draft: Draft) -> bool:
    """Whether it is of eggs, honey or of goods that were paid for, and needs no crop."""
    return any(item.thing for item in draft.items) or (draft.subject is not None and draft.price is not None)


def _weather(line: OneLine, weather: Weather, start: int) -> LineReading:
    line.opening = line.opening or Draft()
    when = line.opening.when or _day_behind(line, line.opening, weather)
    rest = line.text[weather.end :].strip(" ,;.")
    begin = line.typed.starts[start]
    is_told = not line.is_prose or bool(weather.readings or (weather.is_turn and not rest))
    action = Action(
        verb="noted weather", text=line.text, at=line.at, field=line.field, when=when, subject=weather.subject,
        readings=weather.readings, remark=rest or None, is_private=line.is_private, is_settled=line.is_settled,
        spans=(*line.opening.spans, ("subject", begin, len(line.text[: weather.end].rstrip(" ,;.!")))),
    )  # fmt: skip
    if (
        rest
        and (tail := Typed(" " * weather.end + line.typed.text[weather.end :], line.habits.vocabulary)).count
    ):
        clauses = find_clauses(tail)
        spots = range(tail.count)
        if not clauses and any(tail.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] for i in spots):
            line.asked.append(Asked(Level.HINT, f'"{rest}" is kept as a remark.', tail.starts[0]))
        if clauses:
            more = _done(line, tail, clauses)
            first = replace(action, remark=None)
            if not (is_told or more.actions):
                return LineReading()
            return replace(more, actions=(first, *more.actions))
    if not is_told:
        return LineReading()
    return LineReading(
        actions=(action,), problems=() if line.is_settled else tuple(map(line.problem, line.asked))
    )


def _day_behind(line: OneLine, opening: Draft, weather: Weather) -> When | None:
    """ "frost −1, on 1 May"."""
    tail = Typed(" " * weather.end + line.typed.text[weather.end :], line.habits.vocabulary)
    walk = line.walk(tail, opening, "noted weather")
    walk.end = tail.count
    if not tail.count or not take_date(walk):
        return None
    weather.end = tail.ends[walk.i - 1]
    return opening.when


def _done(line: OneLine, typed: Typed, clauses: list[Clause]) -> LineReading:
    read = read_clauses(line, typed, clauses)
    return read if isinstance(read, LineReading) else _finish(line, typed, read, clauses)


def _verb_written(clause: Done, typed: Typed) -> str:
    """The gardener's own word for what was done."""
    written = (typed.text[start:end] for slot, start, end in clause.draft.spans if slot == "verb")
    return next(written, "") or clause.verb.name


def _finish(line: OneLine, typed: Typed, done: list[Done], clauses: list[Clause]) -> LineReading:
    shares_date = not closes_with_earlier(done)
    for clause in done:
        settle_items(clause)
    if len(done) > 1:
        done = merge_yields(done)
        share_backward(done, typed)
        done = gather_fates(done)
        done = apart_by_sentence(done, typed)
        inherit(done, typed)
    _dates(line, done, shares_date)
    for clause in done:
        fill(clause, line.defaults.beds, line.defaults.crops, line.defaults.varieties, line.defaults.part)
        settle_items(clause)
        ask_what_is_missing(clause, _verb_written(clause, typed))
    if _is_but_prose(line, typed, done, clauses):
        return LineReading()  # before anything is told of it: what is told makes no line of work of it
    if not _is_all_taken(done):
        tell_what_is_left(done, typed)
        tell_second_things(done, typed)
        ask_of_doubtful(done, typed)
        tell_remainder(done, typed)
    ask_of_misheard(done, typed)
    tell_mistyped(done, typed)
    if _is_but_prose(line, typed, done, clauses):
        return LineReading()
    actions = [
        action
        for clause in done
        for part in apart_by_bed(clause, typed)
        for action in to_actions(
            part, typed, text=line.text, at=line.at, name=line.field, is_private=line.is_private, is_settled=line.is_settled,
        )
    ]  # fmt: skip
    asked = join_kept([*line.asked, *(a for clause in done for a in clause.draft.asked)])
    problems = () if line.is_settled else tuple(dict.fromkeys(map(line.problem, asked)))
    return LineReading(actions=tuple(actions), problems=problems)


def _is_all_taken(done: list[Done]) -> bool:
    """A quick look, for most lines: no word is left over, so that nothing is to be told of any."""
    for clause in done:
        draft = clause.draft
        if draft.left or clause.verb.name == "fed animals" or not (draft.places or draft.has_crop):
            return False
    return True


def _is_but_prose(line: OneLine, typed: Typed, done: list[Done], clauses: list[Clause]) -> bool:
    """Whether a line that may be prose neither reads whole nor opens as work does."""
    return line.is_prose and not (
        all(reads_whole(clause, typed) for clause in done) or _opens_as_work(line, clauses, done)
    )


def _opens_as_work(line: OneLine, clauses: list[Clause], done: list[Done]) -> bool:
    """Whether the line begins with what was done, and names something known of its own."""
    if clauses[0].verb_start or clauses[0].subject:
        return False
    lent = {*line.defaults.beds, *line.defaults.crops, *line.defaults.varieties}
    drafts = [clause.draft for clause in done]
    names = [n for d in drafts for item in d.items for n in (*item.crops, *item.varieties)]
    names += [n for d in drafts for n in (*d.places, *d.origins)]
    return any(n.sureness is Sureness.KNOWN and n not in lent for n in names)


def _opens_with_day(clause: Done) -> bool:
    """The last of "weeded Arch; Sat: picked peas": that day is its own."""
    starts = {slot: start for slot, start, _ in reversed(clause.draft.spans)}
    return starts.get("date", -1) >= 0 and starts["date"] < starts.get("verb", 0)


def _dates(line: OneLine, done: list[Done], shares_date: bool) -> None:
    """A date that opens the line, or closes it, holds for all of it."""
    last = done[-1].draft.when if done and shares_date and not _opens_with_day(done[-1]) else None
    if line.opening is not None:
        last = line.opening.when or last
        for clause in done:
            clause.draft.spans += line.opening.spans
    for clause in done:
        clause.draft.when = clause.draft.when or last
    share_date_forward(done)


MAY_OPEN = PLACE_OPENERS.keys() | REMARK_OPENERS | {"with"}
"""What follows these is a remark, also beside an amount that stands alone: "leeks for the soup, five"."""
ASKING = frozenset({"what", "why", "who", "how", "which", "where", "when", "is", "are", "does", "do", "should", "can", "could", "wonder"})  # fmt: skip
"""What opens a line that asks and tells nothing."""
TAKEN_BACK = re.compile(r"\?\s+(?:no|nope|nah|not yet)\b(?!\s+\w*\s*\?)", re.IGNORECASE)
""" "pruned Old plum? No, too wet."."""
