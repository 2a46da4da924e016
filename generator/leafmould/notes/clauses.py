"""Where the verbs of a line stand, and which words belong to which.

A clause begins at a comma or a join and has one verb; what stands before the verb is its topic ("Arch:
sowed peas", "peas came up"). Here the verb table and the garden's own words are read, nothing else.
"""

from __future__ import annotations

from functools import lru_cache

from leafmould.notes.clause import Clause
from leafmould.notes.states import HALF_WAY, state_at
from leafmould.notes.typed import Typed
from leafmould.notes.verbless import STUFF_VERBS
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import (
    ARTICLES,
    BEFORE_VERB,
    CLAUSE_LEADS,
    FILLERS,
    NEGATIONS,
    NEW_PLACE_OPENERS,
    PLACE_OPENERS,
)
from leafmould.notes.words.verbs import (
    GERUNDS,
    LONGEST_PAST,
    LONGEST_PLAIN,
    LONGEST_STATE,
    PARTICLES_OF,
    PAST,
    PLAIN,
    SENSE_OF,
    VERBS,
)
from leafmould.values.names import Kind, Known, fold


def find_clauses(typed: Typed) -> list[Clause]:
    """The clauses of a line, in order; none if no verb stands where one may."""
    clauses: list[Clause] = []
    begin, i, is_topic, is_denied, topic_has_name, strangers = 0, 0, True, False, False, 0
    words, breaks, gaps, quotes, count = typed.words, typed.breaks, typed.gaps, typed.quotes, typed.count
    while i < count:
        if i and (
            breaks[i]
            or words[i - 1] in CLAUSE_LEADS
            or (gaps[i] and _joins(gaps[i]))
            or (words[i] in RUN_ON and clauses and _runs_on(typed, i))
        ):
            if clauses and is_topic and topic_has_name and ":" in gaps[i] and begin > clauses[-1].verb_start:
                pass  # "… thinned. Bed 3: weeded"
            elif clauses:
                begin, is_topic, is_denied, topic_has_name = i, True, False, False
            elif breaks[i]:
                is_topic, strangers, is_denied = True, 0, is_denied and words[0] == "not"
        if i in quotes:
            i, topic_has_name = max(quotes[i].last, i + 1), True
            continue
        size, known = typed.names(i)
        word = words[i]
        found = None
        if is_topic and (word in VERB_STARTS or (size and _is_own_verb(known))):
            counted = topic_has_name or (bool(clauses) and i > begin and words[i - 1].isdigit())
            has_verb = bool(clauses) and begin <= clauses[-1].verb_start
            found = _verb_at(typed, i, size, is_topic, counted, has_verb)
        if found is None and is_topic and clauses and i - begin <= 1 and word in STUFF_VERBS and not size:
            found = _stuff_at(typed, i)
        if found is not None and i > begin and words[i - 1] in WHO and found.verb_end < count:
            found = _past_relative(typed, found, begin) or found
        if found is not None:
            if clauses:
                clauses[-1].end = _before_join(typed, begin, clauses[-1].verb_end)
            found.start, found.end = begin, count
            is_to_come = i > 0 and words[i - 1] == "be"  # "peas to be picked"
            found.is_denied = is_denied or is_to_come or _is_denied_after(typed, found.verb_end)
            if is_denied and _is_loss(typed, found, begin):
                found.verb, found.is_denied = "lost", False
            _find_particle(typed, found)
            found.is_by_trouble = bool(clauses) and _is_by_trouble(typed, clauses, found)
            clauses.append(found)
            begin, i, is_topic = found.start, found.verb_end, False
            continue
        if size:
            topic_has_name = topic_has_name or any(k.kind is not VERB for k in known)
            i += size
            continue
        if word in NEGATIONS:
            is_denied = True
        elif (
            is_topic
            and not _may_precede(word)
            and not (word in FIERCE and words[i + 1 : i + 2] and words[i + 1] in nouns.TROUBLES)
        ):
            strangers += 1
            is_topic = (
                not clauses
                and strangers <= 2
                and (typed.capital(i) or topic_has_name or word in nouns.TROUBLES)
            )
        i += 1
    return clauses


FIERCE = frozenset(
    [
        "sharp",
        "severe",
        "killing",
        "howling",
        "torrential",
        "sudden",
        "bloody",
        "blasted",
        "damn",
        "damned",
        "flipping",
        "ruddy",
        "blooming",
        "hungry",
        "bold",
        "cheeky",
        "neighbouring",
        "marauding",
        "wretched",
        "pesky",
    ]
)
WHO = frozenset(
    {"i", "we", "he", "she", "they", "that", "which", "mum", "dad", "grandad", "nan", "you", "just", "only"}
)
MAIN = frozenset({"came up", "lost", "finished", "saw", "picked", "cleared", "planted", "potted on"})


def _past_relative(typed: Typed, clause: Clause, begin: int) -> Clause | None:
    """ "the peas I sowed in March have come up": what came of them is told, not the sowing."""
    first = next((j for j in range(begin, clause.verb_start) if typed.words[j] in WHO), clause.verb_start)
    if first == begin or not any(
        j + typed.kind(j, Kind.CROP, Kind.CROP_GROUP)[0] == first for j in range(begin, first)
    ):
        return None
    for j in range(clause.verb_end, typed.stops[clause.verb_start]):
        found = _verb_at(typed, j, 0, True, True, False)
        if found is not None and (found.verb is None or found.verb in MAIN):
            end = found.verb_start
            while typed.words[end - 1] in FILLERS:
                end -= 1
            found.relative = (first, end)
            return found
    return None


def _is_by_trouble(typed: Typed, clauses: list[Clause], clause: Clause) -> bool:
    """Whether a clause without a doer goes on with what a pest did: "a fox got in and ate the lot"."""
    if any(w not in CLAUSE_LEADS for w in typed.words[clause.start : clause.verb_start]):
        return False
    before = clauses[-1]
    return before.is_by_trouble or (
        before.subject is None
        and any(
            typed.words[i] in nouns.TROUBLES
            and not typed.names(i)[0]
            and not any(typed.breaks[i + 1 : before.verb_start + 1])
            for i in range(before.start, before.verb_start)
        )
    )


VERB = Kind.VERB


def _joins(gap: str) -> bool:
    return "&" in gap or "+" in gap or "/" in gap


def _is_own_verb(known: tuple[Known, ...]) -> bool:
    return known[0].kind is VERB if len(known) == 1 else any(k.kind is VERB for k in known)


@lru_cache(maxsize=5_000)
def _may_precede(word: str) -> bool:
    return (
        word in BEFORE_VERB or (word in nouns.SELDOM_VARIETY and word != "tomorrow") or word.isdigit() or word in nouns.COUNT_NOUNS or word in nouns.UNITS or word in nouns.NUMBERS
        or word in PLACE_OPENERS or word in nouns.PART_SIDES or word in nouns.TROUBLES or word in nouns.LONGEST_VAGUE
        or word in nouns.ORDINALS or word in ("unknown", "mystery", "unlabelled", "unnamed", "everything", "everywhere", "both", "them") or word in nouns.FRACTION_WORDS
    )  # fmt: skip


def _before_join(typed: Typed, begin: int, least: int) -> int:
    end = begin
    while end - 1 >= least and typed.words[end - 1] in CLAUSE_LEADS:
        end -= 1
    return end


def _verb_at(
    typed: Typed, i: int, name_size: int, is_topic: bool, has_name: bool, has_verb: bool
) -> Clause | None:
    """The verb whose form begins at word `i`, unless a longer name stands there."""
    own = _own_verb(typed, i, name_size)
    if own is not None:
        return own
    word = typed.words[i]
    if _is_place_word(typed, i):
        return None
    most = min(LONGEST_PAST.get(word, 0), typed.stops[i] - i)
    for size in range(most, 0, -1):
        form = tuple(typed.words[i : i + size])
        verbs = PAST.get(form)
        if (
            verbs is not None
            and i > 0
            and typed.words[i - 1] in DESCRIBED
            and form in DESCRIBING
            and not typed.breaks[i]
        ):
            continue  # "well rotted manure"
        if verbs is not None and size == 1 and i > 0 and not typed.breaks[i] and _describes_crop(typed, i):
            continue  # "six tubs of stewed rhubarb"
        if (
            verbs is not None
            and form[-1] == "over"
            and form[0] in ("all", "went")
            and _goes_on(typed, i + size)
        ):
            continue  # "whitefly all over the kale"
        if (
            verbs is not None
            and form[-1] in ("done", "finished")
            and HALF_WAY & set(typed.words[max(0, i - 4) : i])
        ):
            continue
        if size == 1 and is_topic and (done := gerund_at(typed, i)) is not None:
            return done
        if verbs is None or size < name_size or (size == name_size and i > 0 and has_name):
            continue
        verb = None if form in SENSE_OF else verbs[0]
        longer = state_at(typed, i, has_name, has_verb)
        if longer is not None and longer.verb_end > i + size:
            return longer
        return Clause(0, i, i + size, 0, form, verb)
    if is_topic and (done := gerund_at(typed, i)) is not None:
        return done
    return state_at(typed, i, has_name, has_verb)


def _is_place_word(typed: Typed, i: int) -> bool:
    """The "raised" of "in Raised bed A" is part of a name."""
    return (
        i > 0
        and not typed.breaks[i]
        and (typed.words[i - 1] in NEW_PLACE_OPENERS or typed.words[i - 1] in ("the", "on"))
        and i + 1 < typed.stops[i]
        and typed.words[i + 1] in nouns.PLACE_NOUNS
    )


def _describes_crop(typed: Typed, i: int) -> bool:
    """ "of stewed rhubarb", "the dried beans": how a crop is, not what was done."""
    return (
        (
            typed.words[i - 1] == "of"
            or (typed.words[i - 1] in ARTICLES and typed.words[i] not in ("cut", "set"))
        )
        and i + 1 < typed.count
        and not typed.breaks[i + 1]
        and bool(typed.kind(i + 1, Kind.CROP, Kind.CROP_GROUP)[0])
    )


def _stuff_at(typed: Typed, i: int) -> Clause | None:
    """ ", fleece over", "then straw on top", ", rabbit guard on": what was put on what stands before."""
    j = i + 1
    while j < typed.stops[i] and typed.words[j] in STUFF_VERBS:
        j += 1
    j += typed.words[j : j + 1] in (["back"], ["put"], ["laid"], ["spread"], ["now"])
    if j >= typed.count or typed.breaks[j] or typed.words[j] not in ("on", "over", "round", "around", "off"):
        return None
    after = typed.words[j + 1 : j + 2]
    if not (
        j + 1 >= typed.count
        or typed.breaks[j + 1]
        or after in (["top"], ["them"], ["it"], ["the"], ["each"], ["all"], ["and"])
    ):
        return None
    verb = "uncovered" if typed.words[j] == "off" else STUFF_VERBS[typed.words[i]]
    return Clause(0, i, j + 1, 0, (typed.words[i],), verb, typed.written(i, j))


RUN_ON = frozenset({"ate", "froze", "gave", "took", "sold", "cooked", "got", "composted", "binned"})
RUN_ON_OBJECTS = frozenset({"them", "it", "half", "some", "all", "most", "both", "loads", "em"})


def _runs_on(typed: Typed, i: int) -> bool:
    """ "picked strawberries from tub 1 ate them all": another deed without a comma."""
    after = typed.words[i + 1 : i + 3]
    if not after or typed.breaks[i + 1]:
        return False
    if typed.words[i] == "got":
        return after[0].isdigit()
    return after[0] in RUN_ON_OBJECTS or after in (["the", "rest"], ["the", "lot"], ["the", "other"])


def _goes_on(typed: Typed, end: int) -> bool:
    """Whether "all over" goes on to what it was all over."""
    return (
        end < typed.count
        and not typed.breaks[end]
        and (typed.words[end] in ARTICLES or bool(typed.names(end)[0]))
        and (typed.words[end - 2] == "all")
    )


DESCRIBED = frozenset({"well", "half", "part", "home", "freeze", "oven", "shop", "freshly"})


DESCRIBING = frozenset(
    (w,) for w in ("rotted", "grown", "dried", "saved", "frozen", "bought", "raised", "picked")
)


def _own_verb(typed: Typed, i: int, size: int) -> Clause | None:
    """A word or code of the garden's own."""
    if not size:
        return None
    for known in typed.names(i)[1]:
        if known.kind is Kind.VERB:
            verb = known.key
            form = fold(verb)
            if verb not in VERBS:
                verb = next((v for v in PAST.get(form, ()) if v in VERBS), None) or PLAIN.get(form, "")
            if verb:
                return Clause(0, i, i + size, 0, tuple(typed.words[i : i + size]), verb)
    return None


AT_IT = frozenset(
    {
        "started",
        "began",
        "finished",
        "did",
        "done",
        "kept",
        "managed",
        "continued",
        "enjoyed",
        "tried",
        "spent",
        "helped",
        "been",
        "was",
        "were",
    }
)


GERUND_LINKS = frozenset(
    {
        "some",
        "the",
        "a",
        "an",
        "bit",
        "of",
        "more",
        "off",
        "with",
        "by",
        "busy",
        "to",
        "morning",
        "afternoon",
        "day",
        "hour",
        "evening",
        "whole",
        "all",
        "time",
    }
)


VERB_STARTS = frozenset({*LONGEST_PAST, *LONGEST_STATE, *AT_IT})
"""Every word a verb's form may begin with; a garden's own words are names."""


def gerund_at(typed: Typed, i: int) -> Clause | None:
    """ "finished weeding", "started picking", "did some pruning"."""
    if typed.words[i] not in AT_IT:
        return None
    for j in range(i + 1, min(i + 4, typed.count)):
        for size in range(min(LONGEST_PLAIN.get(typed.words[j], 2), 3, typed.count - j), 0, -1):
            form = tuple(typed.words[j : j + size])
            if (verb := GERUNDS.get(form)) is not None:
                return Clause(0, i, j + size, 0, form, verb)
        if typed.words[j] not in GERUND_LINKS:
            return None
    return None


def _is_loss(typed: Typed, clause: Clause, begin: int) -> bool:
    """ "none of the parsnips came up": a loss, not a thing that did not happen."""
    words = typed.words
    none = any(words[j] in ("none", "nothing") for j in range(begin, clause.verb_start)) or (
        words[begin] == "no" or words[begin : begin + 2] == ["not", "one"]
    )
    return (
        none and clause.verb == "came up" and not clause.is_state and "yet" not in words and "so" not in words
    )


def _is_denied_after(typed: Typed, i: int) -> bool:
    """ "picked no peas", "saw nothing"."""
    return (
        i < typed.count
        and not typed.breaks[i]
        and typed.words[i] in ("no", "nothing", "none", "nowt", "neither", "nil", "zero", "not")
    )


def _find_particle(typed: Typed, clause: Clause) -> None:
    """The second half of a verb behind its object: "pulled the peas up", "gave 4 courgettes away"."""
    if len(clause.form) != 1 or clause.verb_end - clause.verb_start != 1:
        return
    for particle in PARTICLES_OF.get(clause.form[0], ()):
        if particle not in typed.words:
            continue
        for j in range(
            clause.verb_end + 1,
            min(clause.verb_end + 8, typed.stops[clause.verb_end] if clause.verb_end < typed.count else 0),
        ):
            if typed.words[j] == particle and _ends_object(typed, j, particle):
                form = (clause.form[0], particle)
                if form in PAST or form in SENSE_OF:
                    clause.form, clause.particle = form, j
                    clause.verb = None if form in SENSE_OF else PAST[form][0]
                return


def _ends_object(typed: Typed, j: int, particle: str) -> bool:
    """Whether the particle at `j` closes the object, rather than opening a place."""
    after = j + 1
    if after >= typed.count or typed.breaks[after]:
        return True
    if particle in ("in", "on", "off", "over", "up", "down"):
        return (
            typed.words[after] in ("and", "to", "with", "from", "in", "into", "at", "today")
            and particle != typed.words[after]
        )
    return typed.words[after] in PLACE_OPENERS or typed.words[after] in (
        "and",
        "with",
        "today",
        "yesterday",
        "now",
        "then",
        "again",
    )
