"""One work line and a Vocabulary to what was done: actions with spans, and what to ask.

The matcher in its order: cut the line into words (`typed`), find its verbs (`clauses`, `senses`), fill
their slots (`slots`), make actions (`actions`). Lines without an action are kept as text.
"""

from __future__ import annotations

import re

from leafmould.notes.actions import (
    ask_what_is_missing,
    closes_with_earlier,
    fill,
    inherit,
    pair_places,
    reads_whole,
    settle_items,
    share_backward,
    share_date_forward,
)
from leafmould.notes.bare import amount_alone, in_or_out
from leafmould.notes.clause import Clause
from leafmould.notes.clauses import find_clauses
from leafmould.notes.day_words import set_date, take_date
from leafmould.notes.doers import is_about_pest, is_animal_damage, put_them, trouble_first
from leafmould.notes.draft import Asked, Done, Draft
from leafmould.notes.entries import Action, Sureness, Words
from leafmould.notes.expand import to_actions
from leafmould.notes.fates import gather_fates, merge_yields
from leafmould.notes.habits import Defaults, Habits, LineReading
from leafmould.notes.kept import plan_in, without_meaning, without_verb
from leafmould.notes.last_look import tell_second_things
from leafmould.notes.line_ends import strip_ends
from leafmould.notes.objects import take_object
from leafmould.notes.senses import action_of
from leafmould.notes.slots import walk_clause
from leafmould.notes.states import state_in
from leafmould.notes.too_long import long_line
from leafmould.notes.typed import Typed
from leafmould.notes.unread import tell_what_is_left
from leafmould.notes.verbless import Weather, read_weather, verbless_clause, with_verbless
from leafmould.notes.walk import Walk
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import NEGATIONS
from leafmould.notes.words.verbs import LONGEST_PAST, VERBS
from leafmould.values.dates import scan_date
from leafmould.values.names import Kind
from leafmould.values.problems import Level, Location, Problem
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
    line = _Line(text, at, field, base, habits, defaults, is_prose)
    return line.read()


class _Line:
    """One line while it is read."""

    def __init__(
        self,
        text: str,
        at: Location,
        field: str,
        base: When | None,
        habits: Habits,
        defaults: Defaults,
        is_prose: bool,
    ) -> None:
        self.text, self.at, self.field, self.base = text, at, field, base
        self.habits, self.defaults, self.is_prose = habits, defaults, is_prose
        body, self.is_private, self.is_settled = strip_ends(text)
        self.typed = Typed(body, habits.vocabulary)
        self.asked: list[Asked] = []
        self.opening = Draft()

    def read(self) -> LineReading:
        """Actions, or the line kept as text."""
        typed = self.typed
        if not typed.count:
            return LineReading()
        if TAKEN_BACK.search(typed.plain):
            return self._as_text(
                "observation", Asked(Level.HINT, "Taken back, so the line is kept as text.", None)
            )
        start = self._open()
        if start >= typed.count:
            return self._as_text("text", None)
        if (weather := read_weather(self._from(start), self.habits.units, 0)) is not None:
            return self._weather(weather, start)
        rest = self._from(start)
        found = verbless_clause(rest) or in_or_out(rest)
        if found is None and (plan := plan_in(rest)) is not None:
            return self._as_text("intention", plan)
        clauses = find_clauses(rest)
        if found is not None:
            clauses = with_verbless(rest, found, clauses)
        if not clauses:
            return self._amount_alone(rest) or self._as_text(*without_verb(rest))
        return self._done(rest, clauses)

    def _amount_alone(self, typed: Typed) -> LineReading | None:
        """ "2 kg peas, Arch": a picking, with a question, if the words say that and nothing else."""
        clause = None if self.is_prose else amount_alone(typed)
        if clause is None or any(w in NEGATIONS for w in typed.words):
            return None
        done = self._clause(typed, clause, clause.verb or "picked", None)
        kinds = (Kind.CROP, Kind.CROP_GROUP)
        is_told = all(after or typed.kind(end, *kinds)[0] > 0 for _, end, after in done.draft.left)
        if not is_told or done.draft.asked or not done.draft.has_crop:
            return None
        if not (done.draft.total or any(i.amounts for i in done.draft.items)):
            return None
        question = f'No action is named; read as "{done.verb.name}".'
        done.draft.ask(Level.QUESTION, question, typed.starts[0])
        return self._finish(typed, [done], [clause])

    def _from(self, start: int) -> Typed:
        """The line from word `start`, positions kept by blanking what went before."""
        if not start:
            return self.typed
        cut = self.typed.starts[start]
        return Typed(" " * cut + self.typed.text[cut:], self.habits.vocabulary)

    def _open(self) -> int:
        """A date at the start: "12 June: …", "Tuesday …". The first word behind it."""
        typed = self.typed
        walk = self._walk(typed, Draft(), "noted weather")
        walk.end = typed.count
        word = typed.words[0]
        lead = 1 if word in ("on", "the") and typed.count > 1 else 0
        plain = typed.plain
        if typed.count > 2 and typed.gaps[1] == "." and typed.words[2] in LONGEST_PAST:
            plain = DOTTED_DAY.sub(r"\1/\2", plain, count=1)
        found = scan_date(plain, typed.starts[lead])
        if found is None or typed.names(lead)[0] or (typed.breaks[lead] and lead):
            return 0
        words, stop = found
        end = lead
        while end < typed.count and typed.starts[end] < stop:
            end += 1
        bare = words.day is None and words.weekday is None and words.days_ago is None and words.year is None
        if bare and end < typed.count and not typed.breaks[end] and words.third is None:
            return 0
        if words.day is not None and words.month is None:
            return 0
        set_date(walk, words, 0, end)
        self.opening, self.asked = walk.draft, list(walk.draft.asked)
        return end

    def _walk(self, typed: Typed, draft: Draft, verb: str) -> Walk:
        habits = self.habits
        return Walk(
            typed, VERBS[verb], draft, base=self.base, order=habits.order, decimal=habits.decimal,
            is_southern=habits.is_southern,
        )  # fmt: skip

    def _as_text(self, kind: str, asked: Asked | None) -> LineReading:
        if self.is_prose:
            return LineReading()
        problems = tuple(map(self._problem, [*self.asked, *([asked] if asked else [])]))
        words = Words(text=self.text, at=self.at, kind=kind, is_private=self.is_private)
        return LineReading(words=(words,), problems=() if self.is_settled else problems)

    def _problem(self, asked: Asked) -> Problem:
        column = None if asked.column is None else asked.column + 1
        at = Location(file=self.at.file, line=self.at.line, column=column)
        return Problem(
            at=at, level=asked.level, message=asked.message, field=self.field, suggestion=asked.suggestion
        )

    def _weather(self, weather: Weather, start: int) -> LineReading:
        if self.is_prose and not weather.readings:
            return LineReading()
        when = self.opening.when or self._day_behind(weather)
        rest = self.text[weather.end :].strip(" ,;.")
        begin = self.typed.starts[start]
        action = Action(
            verb="noted weather", text=self.text, at=self.at, field=self.field, when=when, subject=weather.subject,
            readings=weather.readings, remark=rest or None, is_private=self.is_private, is_settled=self.is_settled,
            spans=(*self.opening.spans, ("subject", begin, len(self.text[: weather.end].rstrip(" ,;.!")))),
        )  # fmt: skip
        if (
            rest
            and (
                tail := Typed(" " * weather.end + self.typed.text[weather.end :], self.habits.vocabulary)
            ).count
        ):
            clauses = find_clauses(tail)
            spots = range(tail.count)
            if not clauses and any(tail.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] for i in spots):
                self.asked.append(Asked(Level.HINT, f'"{rest}" is kept as a remark.', tail.starts[0]))
            if clauses:
                more = self._done(tail, clauses)
                from dataclasses import replace

                first = replace(action, remark=None)
                return replace(more, actions=(first, *more.actions))
        return LineReading(
            actions=(action,), problems=() if self.is_settled else tuple(map(self._problem, self.asked))
        )

    def _day_behind(self, weather: Weather) -> When | None:
        """ "frost −1, on 1 May"."""
        tail = Typed(" " * weather.end + self.typed.text[weather.end :], self.habits.vocabulary)
        walk = self._walk(tail, self.opening, "noted weather")
        walk.end = tail.count
        if not tail.count or not take_date(walk):
            return None
        weather.end = tail.ends[walk.i - 1]
        return self.opening.when

    def _done(self, typed: Typed, clauses: list[Clause]) -> LineReading:
        """Read every clause and make its actions."""
        done: list[Done] = []
        topic: int | None = None
        for clause in clauses:
            if topic is not None and clause.verb_start - clause.start <= 1:
                clause.start = topic
            topic = None
            verb, other = action_of(typed, clause)
            if clause.is_denied:
                if len(clauses) == 1 or not done:
                    return self._as_text("observation", None)
                done[-1].draft.leave(clause.start, clause.end, True)
                continue
            if done and is_about_pest(typed, clause, verb, done[-1]):
                done[-1].draft.leave(clause.start, clause.end, True)
                continue
            if not done and _is_topic_of_next(typed, clause, clauses, verb):
                topic = clause.start  # "bed 4 dug and manured"
                continue
            if done and clause.form == ("put",) and verb == "remark":
                put_them(typed, clause, done[-1])
            if done and clause.form == ("frozen",) and done[-1].verb.name in ("lost", "cleared"):
                done[-1].draft.leave(clause.start, clause.end, True)  # "cleared lettuce, frozen"
                continue
            if verb == "remark" and not done and clause is not clauses[-1]:
                topic = _told_for_next(typed, clause, clauses[clauses.index(clause) + 1])
            if verb == "remark":
                if len(clauses) == 1:
                    return self._as_text(
                        "observation", without_meaning(typed, clause, is_asked=other is not None)
                    )
                if done:
                    done[-1].draft.leave(clause.start, clause.end, True)
                continue
            done.append(self._clause(typed, clause, verb, other))
        if not done:
            named = any(typed.names(i)[0] for i in range(typed.count))
            asked = without_meaning(typed, clauses[0], is_asked=False) if named else None
            return self._as_text("observation", asked)
        return self._finish(typed, done, clauses)

    def _clause(self, typed: Typed, clause: Clause, verb: str, other: str | None) -> Done:
        draft = Draft()
        draft.subject = clause.subject
        walk = self._walk(typed, draft, verb)
        if other is not None:
            written = typed.written(clause.verb_start, clause.verb_end)
            walk.ask(
                Level.QUESTION,
                f'"{written}" may be "{verb}" or "{other}"; read as "{verb}".',
                clause.verb_start,
            )
        if verb == "saw" and clause.subject is None and (state := state_in(typed, clause)) is not None:
            verb, draft.subject = state.verb or verb, state.subject
            walk = self._walk(typed, draft, verb)
            walk.span("verb", state.verb_start, state.verb_end)
            walk.used = range(state.verb_start, state.verb_end)
            clause.subject, clause.is_state = state.subject or "seen", True
        if clause.subject and not clause.is_state and (begin := typed.text.find(clause.subject)) >= 0:
            draft.spans.append(("subject", begin, begin + len(clause.subject)))
        take_object(walk, clause)
        walk_clause(walk, clause)
        pair_places(draft)
        if verb == "lost" and clause.is_by_trouble and draft.cause is None:
            draft.cause = next((w for w in typed.words if w in nouns.TROUBLES), None)
        if verb == "grew" and SEVERAL_YEARS.search(typed.plain):
            walk.ask(
                Level.QUESTION, "Only one of these years is read. Write a line for each.", clause.verb_start
            )
        if UNSURE & set(typed.words[clause.start : clause.verb_start]):
            walk.ask(Level.QUESTION, f'Is it sure? Read as "{verb}".', clause.verb_start)
        is_bare = clause.verb_end >= clause.end and clause.start == clause.verb_start
        left = next(
            (r for r in draft.left if r[0] in (clause.start, walk.past_articles(clause.verb_end))), None
        )
        stranger = typed.written(left[0], left[1]) if left is not None else None
        if is_animal_damage(typed, clause, verb) and not any(i.amounts for i in draft.items):
            walk.ask(Level.QUESTION, "Was all of it lost? The line does not say how much.", clause.verb_start)
        return Done(
            verb=VERBS[verb],
            draft=draft,
            is_bare=is_bare,
            is_pronoun=typed.phrase(clause.verb_end, 1) in (("them",), ("it",), ("both",)),
            is_after_comma=typed.breaks[clause.start],
            object_left=stranger,
        )

    def _finish(self, typed: Typed, done: list[Done], clauses: list[Clause]) -> LineReading:
        shares_date = not closes_with_earlier(done)
        for clause in done:
            settle_items(clause)
        done = merge_yields(done)
        share_backward(done)
        done = gather_fates(done)
        inherit(done)
        self._dates(done, shares_date)
        for clause in done:
            fill(clause, self.defaults.beds, self.defaults.crops, self.defaults.varieties, self.defaults.part)
            settle_items(clause)
            ask_what_is_missing(clause, clause.verb.name)
        tell_what_is_left(done, typed)
        tell_second_things(done, typed)
        if self.is_prose and not (
            all(reads_whole(clause, typed) for clause in done) or self._opens_as_work(clauses, done)
        ):
            return LineReading()
        actions = [
            action
            for clause in done
            for action in to_actions(
                clause, typed, text=self.text, at=self.at, name=self.field, is_private=self.is_private, is_settled=self.is_settled,
            )
        ]  # fmt: skip
        asked = [*self.asked, *(a for clause in done for a in clause.draft.asked)]
        problems = () if self.is_settled else tuple(dict.fromkeys(map(self._problem, asked)))
        return LineReading(actions=tuple(actions), problems=problems)

    def _opens_as_work(self, clauses: list[Clause], done: list[Done]) -> bool:
        """Whether the line begins with what was done, and names something known of its own."""
        if clauses[0].verb_start or clauses[0].subject:
            return False
        lent = {*self.defaults.beds, *self.defaults.crops, *self.defaults.varieties}
        drafts = [clause.draft for clause in done]
        names = [n for d in drafts for item in d.items for n in (*item.crops, *item.varieties)]
        names += [n for d in drafts for n in (*d.places, *d.origins)]
        return any(n.sureness is Sureness.KNOWN and n not in lent for n in names)

    def _dates(self, done: list[Done], shares_date: bool) -> None:
        """A date that opens the line, or closes it, holds for all of it."""
        last = done[-1].draft.when if done and shares_date else None
        for clause in done:
            clause.draft.when = clause.draft.when or self.opening.when or last
            clause.draft.spans += self.opening.spans
        share_date_forward(done)


def _told_for_next(typed: Typed, clause: Clause, after: Clause) -> int | None:
    """The bed of "dug over Top bed and planted leeks", the crop of "checked the apples, threw out 7"."""
    kinds = [Kind.BED]
    if not any(typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] for i in range(after.start, after.end)):
        kinds += [Kind.CROP, Kind.CROP_GROUP]
    return next((i for i in range(clause.verb_end, clause.end) if typed.kind(i, *kinds)[0]), None)


def _is_topic_of_next(typed: Typed, clause: Clause, clauses: list[Clause], verb: str) -> bool:
    """ "bed 4 dug and manured": what stands before a verb of no meaning is the topic of the next."""
    return (
        verb == "remark"
        and clause.verb_start > clause.start
        and clause is not clauses[-1]
        and not trouble_first(typed, clause)
    )


TAKEN_BACK = re.compile(r"\?\s+(?:no|nope|nah|not yet)\b(?!\s+\w*\s*\?)", re.IGNORECASE)
""" "pruned Old plum? No, too wet."."""


SEVERAL_YEARS = re.compile(r"\b(?:19|20)\d\d\b\s*(?:and|&|\+|,)\s*(?:19|20)\d\d\b")


DOTTED_DAY = re.compile(r"^(\s*\d{1,2})\.(\d{1,2})(?!\d)")
""" "20.06 picked peas": at the start of a line a day."""


UNSURE = frozenset({"think", "maybe", "probably", "perhaps", "guess", "reckon", "fear", "suspect", "might"})
