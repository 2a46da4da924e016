"""Where the verbs of a line stand, and which words belong to which.

A clause begins at a comma or a join and has one verb; what stands before the verb is its topic ("Arch:
sowed peas", "peas came up"). Here the verb table and the garden's own words are read, nothing else.
"""

from __future__ import annotations

from functools import lru_cache

from leafmould.notes.clause import Clause
from leafmould.notes.clause_signs import (
    BODY,
    DESCRIBED,
    DESCRIBING,
    DONE_BEFORE,
    FIERCE,
    HALF_DONE,
    HURTING,
    RUN_ON,
    SELDOM_DONE,
    TAKING,
    TO_COME,
    UNREAL,
    describes_crop,
    ends_object,
    goes_on,
    is_cursed,
    is_denied_after,
    is_loss,
    is_next_code,
    is_not_done,
    is_place_word,
    joins,
    runs_on,
    stuff_at,
)
from leafmould.notes.lists_in_short import DAYS
from leafmould.notes.states import HALF_WAY, state_at
from leafmould.notes.typed import Typed
from leafmould.notes.verbless import STUFF_VERBS
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import BEFORE_VERB, CLAUSE_LEADS, FILLERS, NEGATIONS, PLACE_OPENERS
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
    last = _last_begin(typed)
    while i < count and (is_topic or i <= last):
        if i and (
            breaks[i]
            or words[i - 1] in CLAUSE_LEADS
            or (gaps[i] and joins(typed, i))
            or (clauses and words[i - 1].isdigit() and is_next_code(typed, i))
            or (words[i] in RUN_ON and clauses and runs_on(typed, i))
        ):
            is_new = bool(clauses) and ":" in gaps[i] and begin > clauses[-1].verb_start
            if is_new and ((is_topic and topic_has_name) or (i - begin <= 2 and words[begin] in DAYS)):
                is_topic = True  # "… thinned. Bed 3: weeded", "… sowed peas; Tue: watered"
            elif clauses:
                begin, is_topic, is_denied, topic_has_name = i, True, False, False
            elif words[i - 1] in ("so", "but") or (
                words[i - 1] == "and"
                and not is_topic
                and words[i] in VERB_STARTS
                and words[i] not in NO_BEGIN
            ):
                is_topic, strangers, is_denied = True, 0, False  # "no sign of them, so put beans in"
                begin = (
                    i if words[i - 1] == "but" and not topic_has_name else begin
                )  # "flies awful but got …"
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
        if (
            found is None
            and is_topic
            and (clauses or (topic_has_name and (breaks[i] or (breaks[i - 1] and words[i - 1] == "slug"))))
            and (i - begin <= 1 or not clauses)
            and word in STUFF_VERBS
            and word != "bone"
            and not size
        ):
            found = stuff_at(typed, i)
        is_told_of = i > begin and (words[i - 1] in WHO or word == "sown")
        if found is not None and is_told_of and found.verb_end < count:
            found = _past_relative(typed, found, begin) or found
        if found is not None:
            if clauses:
                clauses[-1].end = _before_join(typed, begin, clauses[-1].verb_end)
            found.start, found.end = begin, count
            is_to_come = i > 0 and (words[i - 1] == "be" or words[i - 1] in TO_COME)  # "peas to be picked"
            found.is_denied = is_denied or is_to_come or is_denied_after(typed, found.verb_end)
            if is_denied and is_loss(typed, found, begin):
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
        if word in NEGATIONS or (word in UNREAL and words[i + 1 : i + 2] in (["have"], ["ve"], ["of"])):
            is_denied = True
        elif (
            is_topic
            and not _may_precede(word)
            and not (word == "cabbage" and words[i + 1 : i + 2] == ["white"])
            and not (word in DONE_BEFORE or (i and word.endswith("ed") and describes_crop(typed, i)))
            and not (
                clauses
                and i - begin <= 1
                and words[i + 1 : i + 2]
                and words[i + 1] in TAKING
                and typed.capital(i)
            )
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


NO_BEGIN = frozenset({"raked", *STUFF_VERBS})
WHO = frozenset(
    {"i", "we", "he", "she", "they", "that", "which", "mum", "dad", "grandad", "nan", "you", "just", "only"}
)


MAIN = frozenset({"came up", "lost", "finished", "saw", "picked", "cleared", "planted", "potted on"})


def _past_relative(typed: Typed, clause: Clause, begin: int) -> Clause | None:
    """ "the peas I sowed in March have come up", "peas sown in March are up": what came of them is told, not the sowing."""
    is_participle = typed.words[clause.verb_start] == "sown"
    first = next((j for j in range(begin, clause.verb_start) if typed.words[j] in WHO), clause.verb_start)
    if first == begin or not any(
        j + typed.kind(j, Kind.CROP, Kind.CROP_GROUP)[0] == first for j in range(begin, first)
    ):
        return None
    for j in range(clause.verb_end, typed.stops[clause.verb_start]):
        if is_participle and (typed.words[j] in CLAUSE_LEADS or typed.is_number(j)):
            return None  # "peas sown 3 May came up 12 May" tells of both
        found = _verb_at(typed, j, 0, True, True, False)
        is_main = found is not None and (found.verb is None or found.verb in MAIN)
        if found is not None and is_main and (not is_participle or found.verb in ("came up", "lost")):
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
    if typed.gaps[clause.start].strip().startswith((".", "!")):
        return False  # "The jackdaws had every cherry bar eleven. Ate the eleven."
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


def _last_begin(typed: Typed) -> int:
    """The last word a clause may begin at: behind a verb, all words past it belong to that verb's clause."""
    words, breaks, gaps = typed.words, typed.breaks, typed.gaps
    for i in range(typed.count - 1, 0, -1):
        if breaks[i] or words[i - 1] in CLAUSE_LEADS or words[i] in RUN_ON or (gaps[i] and joins(typed, i)):
            return i
        if words[i - 1].isdigit() and is_next_code(typed, i):
            return i
    return 0


def _is_own_verb(known: tuple[Known, ...]) -> bool:
    return known[0].kind is VERB if len(known) == 1 else any(k.kind is VERB for k in known)


@lru_cache(maxsize=5_000)
def _may_precede(word: str) -> bool:
    return (
        word in BEFORE_VERB or (word in nouns.SELDOM_VARIETY and word != "tomorrow") or word.isdigit() or word in nouns.COUNT_NOUNS or word in nouns.UNITS or word in nouns.NUMBERS
        or word in PLACE_OPENERS or word in nouns.PART_SIDES or word in nouns.TROUBLES or word in nouns.HENS or word in nouns.PRODUCTS or word in nouns.LONGEST_VAGUE
        or (word.endswith("ly") and len(word) > 4 and word not in HALF_DONE) or word in nouns.WEEDS or word in nouns.LIMES or word in nouns.MANURES or word in nouns.ORDINALS or word in ("unknown", "mystery", "unlabelled", "unnamed", "everything", "everywhere", "both", "them") or word in nouns.FRACTION_WORDS
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
    if is_place_word(typed, i):
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
        if form == ("rotted",) and typed.words[i + 1 : i + 2] and typed.words[i + 1] in nouns.MANURES:
            continue  # "rotted manure on bed 3"
        if verbs is not None and size == 1 and i > 0 and not typed.breaks[i] and describes_crop(typed, i):
            continue  # "six tubs of stewed rhubarb"
        if (
            verbs is not None
            and form[-1] == "over"
            and form[0] in ("all", "went")
            and goes_on(typed, i + size)
        ):
            continue  # "whitefly all over the kale"
        if (
            verbs is not None
            and form[-1] in ("done", "finished")
            and HALF_WAY & set(typed.words[max(0, i - 4) : i])
        ):
            continue
        if (
            verbs is not None
            and form == ("picked", "up")
            and typed.words[i + 2 : i + 3] == ["to"]
            and typed.is_number(i + 3)
        ):
            continue  # "picked up to 3 kg"
        if size == 1 and word in SELDOM_DONE and is_not_done(typed, i):
            continue  # "badger has been digging", "forced rhubarb pulled 2 lb"
        is_several = (
            typed.plain[typed.ends[i] - 1] in "sS" and word[-1] != "s" and word not in ("get", "take")
        )
        if verbs is not None and size == 1 and is_several:
            continue  # "40 sets"
        if verbs is not None and word in HURTING and i > 0 and typed.words[i - 1] in BODY:
            continue  # "arms dead"
        if verbs is not None and size == 1 and word in FIERCE and is_cursed(typed, i):
            continue  # "this blasted wind"
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
    {"got", "had", "started", "began", "finished", "did", "done", "kept", "managed", "remembered", "continued",
     "enjoyed", "tried", "spent", "helped", "been", "was", "were"}
)  # fmt: skip


GERUND_LINKS = frozenset(
    {"round", "around", "down", "on", "some", "the", "a", "an", "bit", "of", "more", "off", "with", "by",
     "busy", "to", "morning", "afternoon", "day", "hour", "evening", "whole", "all", "time"}
)  # fmt: skip


VERB_STARTS = frozenset({*LONGEST_PAST, *LONGEST_STATE, *AT_IT})


"""Every word a verb's form may begin with; a garden's own words are names."""


DONE_AFTER_TO = frozenset({"had", "managed", "remembered", "helped"})
HELPED = frozenset({"me", "us", "him", "her", "them", "mum", "dad", "mom"})


def _done_to(typed: Typed, i: int) -> Clause | None:
    """ "had to resow the carrots", "managed to sow", "helped me sow": it was done."""
    is_help = typed.words[i] == "helped"
    j = i + 1 + (is_help and typed.words[i + 1 : i + 2] != [] and typed.words[i + 1] in HELPED)
    if typed.words[j : j + 1] == ["to"]:
        j += 1
    elif not is_help:
        return None
    for size in range(
        min(LONGEST_PLAIN.get(typed.words[j], 0) if j < typed.count else 0, typed.count - j), 0, -1
    ):
        form = tuple(typed.words[j : j + size])
        if (verb := PLAIN.get(form)) is not None:
            return Clause(0, i, j + size, 0, form, verb)
    return None


def gerund_at(typed: Typed, i: int) -> Clause | None:
    """ "finished weeding", "started picking", "did some pruning"."""
    if typed.words[i] not in AT_IT:
        return None
    if typed.words[i] in DONE_AFTER_TO and (found := _done_to(typed, i)) is not None:
        return found
    if typed.words[i] == "had":
        return None
    for j in range(i + 1, min(i + 5, typed.count)):
        for size in range(min(LONGEST_PLAIN.get(typed.words[j], 2), 3, typed.count - j), 0, -1):
            form = tuple(typed.words[j : j + size])
            if (verb := GERUNDS.get(form)) is not None:
                return Clause(0, i, j + size, 0, form, verb)
        if typed.words[j] not in GERUND_LINKS:
            return None
    return None


def _find_particle(typed: Typed, clause: Clause) -> None:
    """The second half of a verb behind its object: "pulled the peas up", "gave 4 courgettes away"."""
    if len(clause.form) != 1 or clause.verb_end - clause.verb_start != 1:
        return
    for particle in PARTICLES_OF.get(clause.first_word, ()):
        if particle not in typed.words:
            continue
        for j in range(
            clause.verb_end + 1,
            min(clause.verb_end + 8, typed.stops[clause.verb_end] if clause.verb_end < typed.count else 0),
        ):
            if clause.first_word == "planted" and typed.phrase(j, 2) == ("out", "of"):
                continue  # "planted beans out of the greenhouse into Bed 3"
            if typed.words[j] == particle and ends_object(typed, j, particle):
                form = (clause.first_word, particle)
                if form in PAST or form in SENSE_OF:
                    clause.form, clause.particle = form, j
                    clause.verb = None if form in SENSE_OF else PAST[form][0]
                return
