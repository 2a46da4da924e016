"""The clauses of one line, read one by one: which are done, which are told of another, which are remarks.

Runs once the verbs of a line are found; what the clauses then give each other is in `actions`.
"""

from __future__ import annotations

import re

from leafmould.notes.actions import (
    pair_places,
)
from leafmould.notes.clause import Clause
from leafmould.notes.conditions import has_amount
from leafmould.notes.doers import (
    are_pests_picked,
    is_about_pest,
    is_animal_damage,
    names_crop,
    put_them,
    sets_out,
    trouble_first,
)
from leafmould.notes.draft import Done, Draft
from leafmould.notes.habits import LineReading
from leafmould.notes.kept import told_aside, without_meaning
from leafmould.notes.objects import take_object
from leafmould.notes.one_line import OneLine
from leafmould.notes.said_first import take_stuff_first
from leafmould.notes.senses import action_of
from leafmould.notes.set_right import set_right
from leafmould.notes.slots import walk_clause
from leafmould.notes.states import state_in
from leafmould.notes.typed import Typed
from leafmould.notes.walk import Walk
from leafmould.notes.who_from import take_giver
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ABOUT, CLAUSE_JOINS
from leafmould.notes.words.verbs import FAMILY_ANY, FAMILY_FORMS, VERBS
from leafmould.values.names import Kind
from leafmould.values.problems import Level


def read_clauses(line: OneLine, typed: Typed, clauses: list[Clause]) -> list[Done] | LineReading:
    """What each clause tells of; the line kept as text where none tells of anything done."""
    done: list[Done] = []
    topic: int | None = None
    before: list[tuple[int, int]] = []
    clauses = _without_no_verbs(typed, clauses)
    before += _saying_before(typed, clauses)
    for clause in clauses:
        if topic is not None and _is_but_a_count(typed, clause):
            clause.start = topic
        topic = None
        verb, other = action_of(typed, clause)
        if verb == "lost" and (
            not JARS.isdisjoint(typed.words[clause.start : clause.end])
            or not STORES.isdisjoint(typed.words[: typed.stops[clause.verb_start]])
        ):
            verb = "composted"  # "lost 2 jars of pickled beetroot", "mice in the apple store": none in the ground
        if clause.is_denied:
            if not done:
                if clause is clauses[-1]:
                    return line.as_text("observation", told_aside(typed, clause))
                before.append((clause.start, clause.end))
                continue
            done[-1].draft.leave(clause.start, clause.end, True)
            continue
        if done and done[-1].verb.name == "opened" and verb == "saw":
            done[-1].draft.leave(clause.start, clause.end, True)  # "opened hive 2: eggs seen"
            continue
        if done and are_pests_picked(typed, clause, done[-1]):
            verb, clause.subject = "saw", done[-1].draft.subject
        elif done and is_about_pest(typed, clause, verb, done[-1]):
            done[-1].draft.leave(clause.start, clause.end, True)
            continue
        if not done and _is_topic_of_next(typed, clause, clauses, verb):
            topic = clause.start  # "bed 4 dug and manured"
            continue
        if done and verb == "remark" and sets_out(typed, clause, done[-1]):
            verb = "planted"
        if done and clause.form == ("put",) and verb == "remark":
            put_them(typed, clause, done[-1])
        if done and clause.form == ("frozen",) and done[-1].verb.name in ("lost", "cleared"):
            done[-1].draft.leave(clause.start, clause.end, True)  # "cleared lettuce, frozen"
            continue
        if verb == "remark" and not done and clause is not clauses[-1]:
            topic = _told_for_next(typed, clause, clauses[clauses.index(clause) + 1])
        if verb == "remark":
            if len(clauses) == 1:
                return line.as_text("observation", without_meaning(typed, clause, is_asked=other is not None))
            if done:
                done[-1].draft.leave(clause.start, clause.end, True)
            else:
                before.append((clause.start, clause.end if topic is None else topic))
            continue
        done.append(read_clause(line, typed, clause, verb, other))
    for start, end in before if done else ():
        done[0].draft.leave(start, end, True)
    if not done:
        named = any(
            typed.names(i)[0] or typed.is_number(i) for i in range(typed.count)
        ) or not WORKED_ON.isdisjoint(typed.words)
        asked = without_meaning(typed, clauses[0], is_asked=False) if named else None
        return line.as_text("observation", asked)
    return done


def _saying_before(typed: Typed, clauses: list[Clause]) -> list[tuple[int, int]]:
    """ "A glut is only a gift badly timed. Left five marrows …": a sentence that names nothing is no topic."""
    if clauses and clauses[0].start and typed.words[clauses[0].start - 1] == "but":
        return [(0, clauses[0].start - 1)]
    if not clauses or clauses[0].start or ". " not in typed.plain:
        return []
    first = clauses[0]
    spots = range(first.verb_start, 2, -1)
    end = next((i for i in spots if typed.gaps[i].lstrip().startswith((".", "!")) and typed.breaks[i]), 0)
    if not end or any(typed.names(i)[0] or typed.is_number(i) for i in range(end)):
        return []
    first.start = end
    return [(0, end)]


def _is_but_a_count(typed: Typed, clause: Clause) -> bool:
    """Whether nothing but a number stands before the verb: "about 10 died"."""
    before = typed.words[clause.start : clause.verb_start]
    return len(before) <= 1 or all(w.isdigit() or w in ABOUT or w in nouns.NUMBERS for w in before)


def _without_no_verbs(typed: Typed, clauses: list[Clause]) -> list[Clause]:
    """Behind a clause, an everyday verb that means nothing beside its object is no verb: ", tucked in a corner"."""
    kept: list[Clause] = []
    for clause in clauses:
        is_none = bool(kept) and (
            (
                clause.form in FAMILY_FORMS
                and clause.form != ("left",)
                and action_of(typed, clause)[0] == "remark"
            )
            or _is_the_same_planting(typed, clause)
            or _is_covering_of_seed(typed, kept[-1], clause)
            or (_closes_with_place(typed, clause) and action_of(typed, clause)[0] == "remark")
            or (_starts_nothing_grown(typed, clause) and action_of(typed, kept[-1])[0] == "put up")
        )
        if is_none and not clause.is_denied:
            if _is_told(typed, clause):
                kept[-1].unread = (clause.start, min(typed.stops[clause.verb_start], clause.end))
            kept[-1].end = clause.end
        elif kept and _is_beside_bare(typed, kept[-1], clause):
            kept[-1].verb_end, kept[-1].end = clause.verb_end, clause.end  # "cleared and dug over Top bed"
        elif (
            kept
            and kept[-1].form == ("blanched",)
            and clause.form in FREEZING
            and clause.verb_start == kept[-1].verb_end
        ):
            before = kept.pop()  # "blanched & froze 800 g beans": one deed
            clause.start, clause.verb_start = before.start, before.verb_start
            kept.append(clause)
        elif kept and _is_step_towards(typed, kept[-1], clause):
            before = kept.pop()  # "stewed 2 kg rhubarb and froze it"
            clause.start = before.verb_end if before.start == before.verb_start else before.start
            kept.append(clause)
        else:
            kept.append(clause)
    return kept


def _closes_with_place(typed: Typed, clause: Clause) -> bool:
    """ ", took out old wood, Orchard row": the place behind it is that of what was done before."""
    stop = typed.stops[clause.verb_start]
    if (
        stop >= clause.end
        or not typed.kind(stop, Kind.BED)[0]
        or typed.breaks[clause.verb_end : stop].count(True)
    ):
        return False
    return not any(typed.names(i)[0] or typed.is_number(i) for i in range(clause.start, stop))


def _is_told(typed: Typed, clause: Clause) -> bool:
    """Whether something was done here to something: ", tipped the strawberries out"."""
    is_new = typed.breaks[clause.start] or typed.words[clause.start - 1] in CLAUSE_JOINS
    is_pronoun = typed.phrase(clause.verb_end, 1) in (("them",), ("it",))
    return is_new and clause.verb_start - clause.start <= 1 and (is_pronoun or names_crop(typed, clause))


def _is_beside_bare(typed: Typed, before: Clause, clause: Clause) -> bool:
    is_bare = before.verb_end + 1 >= clause.start and typed.words[clause.start - 1] in CLAUSE_JOINS
    return is_bare and not clause.is_denied and action_of(typed, clause)[0] == "remark"


def _starts_nothing_grown(typed: Typed, clause: Clause) -> bool:
    """The wine of "made 3 jars of plum jam, started the wine"; not the peas of ", started the peas"."""
    spots = range(clause.verb_end, clause.end)
    return clause.form == ("started",) and not any(
        typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0] for i in spots
    )


def _is_step_towards(typed: Typed, before: Clause, clause: Clause) -> bool:
    """Whether a deed is but the first step of the next: "stewed … and froze it", "lifted and moved"."""
    if before.form in LIFTED and clause.form == ("split",) and action_of(typed, clause)[0] == "divided":
        return typed.phrase(clause.verb_end, 1) in (
            ("it",),
            ("them",),
        )  # "lifted the rhubarb, split it in two"
    if typed.words[clause.start - 1] not in CLAUSE_JOINS:
        return False
    is_half = before.start < before.verb_start and typed.words[before.start] in (
        "half",
        "some",
        "most",
        "rest",
    )
    if names_crop(typed, clause) == names_crop(typed, before) and not is_half:
        return False
    if before.form in LIFTED:
        return before.verb_end + 1 >= clause.verb_start and action_of(typed, clause)[0] in AFTER_LIFTING
    return (
        before.form in FAMILY_ANY
        and clause.form in FREEZING
        and action_of(typed, before)[0] == "ate"
        and (
            typed.phrase(clause.verb_end, 1) in (("it",), ("them",), ("the",), ())
            or (is_half and typed.breaks[clause.verb_end])
        )
    )


LIFTED = frozenset({("lifted",), ("dug", "up"), ("dug",)})
AFTER_LIFTING = frozenset({"moved", "divided", "planted", "potted on"})
FREEZING = frozenset(
    {("froze",), ("bottled",), ("canned",), ("frozen",), ("jarred",), ("pickled",), ("dried",), ("salted",)}
)


def _is_the_same_planting(typed: Typed, clause: Clause) -> bool:
    """ ", tucked in the corner of Top bed": how it was planted, nothing more."""
    return clause.form in TUCKED and not names_crop(typed, clause) and not has_amount(typed, clause)


def _is_covering_of_seed(typed: Typed, before: Clause, clause: Clause) -> bool:
    """ "sowed phacelia on bed 3, raked in": how it was sown."""
    if clause.form not in COVERED:
        return False
    told = action_of(typed, before)[0]
    if (
        clause.form == ("raked", "in")
        and told in ("limed", "fed", "manured", "mulched")
        and not names_crop(typed, clause)
    ):
        return True
    return (
        (not names_crop(typed, clause) or "instead" in typed.words[clause.verb_end : clause.end])
        and not has_amount(typed, clause)
        and told in ("sowed", "resowed")
    )


COVERED = frozenset({("raked", "in"), ("raked",), ("broadcast",), ("drilled",), ("rolled",)})
TUCKED = frozenset(
    {("tucked", "in"), ("popped", "in"), ("stuck", "in"), ("set", "in"), ("bedded", "in"), ("packed",)}
)


def read_clause(line: OneLine, typed: Typed, clause: Clause, verb: str, other: str | None) -> Done:
    """One clause with its slots filled."""
    draft = Draft()
    draft.subject = clause.subject
    walk = line.walk(typed, draft, verb)
    if other is not None:
        written = typed.written(clause.verb_start, clause.verb_end)
        walk.ask(
            Level.QUESTION,
            f'"{written}" may be "{verb}" or "{other}"; read as "{verb}".',
            clause.verb_start,
        )
    if (
        verb == "saw"
        and clause.form == ("set",)
        and (clause.verb_end >= clause.end or typed.breaks[clause.verb_end])
    ):
        clause.subject = draft.subject = "fruit set"
        clause.is_state = True
    if verb == "saw" and clause.subject is None and (state := state_in(typed, clause)) is not None:
        verb, draft.subject = state.verb or verb, state.subject
        walk = line.walk(typed, draft, verb)
        walk.span("verb", state.verb_start, state.verb_end)
        walk.used = range(state.verb_start, state.verb_end)
        clause.subject, clause.is_state = state.subject or "seen", True
    if clause.subject and not clause.is_state and (begin := typed.text.find(clause.subject)) >= 0:
        draft.spans.append(("subject", begin, begin + len(clause.subject)))
    take_object(walk, clause)
    walk_clause(walk, clause)
    pair_places(draft)
    take_stuff_first(draft, typed, clause, VERBS[verb])
    if verb == "bought" and clause.first_word in ("gave", "give", "brought"):
        take_giver(draft, typed, clause)
    set_right(draft, typed, clause, verb)
    if verb == "lost" and clause.is_by_trouble and draft.cause is None:
        draft.cause = next((w for w in typed.words if w in nouns.TROUBLES), None)
    if verb == "grew" and SEVERAL_YEARS.search(typed.plain):
        walk.ask(Level.QUESTION, "Only one of these years is read. Write a line for each.", clause.verb_start)
    if not UNSURE.isdisjoint(typed.words[clause.start : clause.verb_start]):
        walk.ask(Level.QUESTION, f'Is it sure? Read as "{verb}".', clause.verb_start)
    if clause.unread is not None:
        written = typed.written(*clause.unread)
        walk.ask(Level.HINT, f'"{written}" is kept as a remark.', clause.unread[0])
    is_bare = clause.verb_end >= clause.end and clause.start == clause.verb_start
    stranger = _left_behind(walk, clause) if draft.left else None
    if clause.is_state and verb == "saw" and (read := _amount_behind(typed, clause, draft)) is not None:
        walk.ask(Level.HINT, f'"{read}" stands without an action.', clause.verb_start)
    if is_animal_damage(typed, clause, verb) and not any(i.amounts for i in draft.items):
        walk.ask(Level.QUESTION, "Was all of it lost? The line does not say how much.", clause.verb_start)
    return Done(
        verb=VERBS[verb],
        draft=draft,
        is_bare=is_bare,
        is_pronoun=clause.verb_end < typed.count and typed.words[clause.verb_end] in PRONOUNS,
        is_after_comma=typed.breaks[clause.start],
        object_left=stranger,
    )


def _left_behind(walk: Walk, clause: Clause) -> str | None:
    """The words at the start of the clause, or right behind its verb, that no slot took."""
    spots = (clause.start, walk.past_articles(clause.verb_end))
    left = next((r for r in walk.draft.left if r[0] in spots), None)
    return walk.typed.written(left[0], left[1]) if left is not None else None


def _amount_behind(typed: Typed, clause: Clause, draft: Draft) -> str | None:
    """ "sweetcorn ready! 12 cobs off Top bed": seen, and how many were picked is not said."""
    stop = typed.stops[clause.verb_start]
    if stop >= clause.end:
        return None
    amounts = [a for item in draft.items for a in item.amounts if a.low is not None]
    late = [s for item in draft.items for s in item.spans if s[0] == "amount" and s[1] >= typed.starts[stop]]
    return amounts[-1].written if amounts and late else None


def _told_for_next(typed: Typed, clause: Clause, after: Clause) -> int | None:
    """The bed of "dug over Top bed and planted leeks", the crop of "checked the apples, threw out 7"."""
    named, kinds = range(after.start, after.end), list[Kind]()
    for of_one_sort in ((Kind.BED,), (Kind.CROP, Kind.CROP_GROUP)):  # the next has none of its own
        kinds += [] if any(typed.kind(i, *of_one_sort)[0] for i in named) else of_one_sort
    if not kinds:
        return None
    return next((i for i in range(clause.verb_end, clause.end) if typed.kind(i, *kinds)[0]), None)


def _is_topic_of_next(typed: Typed, clause: Clause, clauses: list[Clause], verb: str) -> bool:
    """ "bed 4 dug and manured": what stands before a verb of no meaning is the topic of the next."""
    return (
        verb == "remark"
        and clause.verb_start > clause.start
        and clause is not clauses[-1]
        and not trouble_first(typed, clause)
    )


SEVERAL_YEARS = re.compile(r"\b(?:19|20)\d\d\b\s*(?:and|&|\+|,)\s*(?:19|20)\d\d\b")


STORES = frozenset({"store", "stored", "clamp", "larder", "freezer"})
WORKED_ON = nouns.AMENDMENTS | nouns.COVERS | nouns.HENS | nouns.HIVE | frozenset({"bedding", "litter"})
JARS = frozenset({"jar", "bottle", "tin", "kilner"})
PRONOUNS = frozenset({"them", "it", "both"})


UNSURE = frozenset({"think", "maybe", "probably", "perhaps", "guess", "reckon", "fear", "suspect", "might"})
