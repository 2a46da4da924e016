"""States: forms that count without a verb behind a crop, "peas up", "tomatoes ripe"."""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.verbs import LONGEST_STATE, STATE_FORMS
from leafmould.values.names import Kind


def state_in(typed: Typed, clause: Clause) -> Clause | None:
    """ "saw peas coming up in Arch": what was seen is a state of the crop."""
    seen = False
    for i in range(clause.verb_end, clause.end):
        if seen and (state := state_at(typed, i, True, False)) is not None:
            return state
        seen = seen or bool(typed.kind(i, Kind.CROP, Kind.CROP_GROUP)[0])
    return None


STATE_FOLLOWERS = frozenset(
    {
        "in",
        "at",
        "on",
        "already",
        "now",
        "today",
        "yesterday",
        "for",
        "from",
        "and",
        "but",
        "here",
        "again",
        "this",
        "under",
        "everywhere",
        "along",
        "early",
        "late",
        "well",
        "nicely",
        "after",
        "so",
        "too",
        "last",
        "by",
        "to",
        "since",
        "despite",
        "first",
        "as",
        "all",
        "outside",
        "inside",
    }
)


FALLING = frozenset(
    {
        "falling",
        "fallen",
        "fell",
        "knocked",
        "blown",
        "taken",
        "bent",
        "keeled",
        "leaning",
        "flopped",
        "flopping",
        "toppled",
        "tipped",
        "went",
        "going",
    }
)
""" "5 ft and falling over" is no end."""
HALF_WAY = frozenset({"half", "only", "nearly", "almost", "part", "most", "some"})
""" "only half the bush done" finishes nothing."""


def state_at(typed: Typed, i: int, has_name: bool, has_verb: bool) -> Clause | None:
    """A form that counts without a verb, behind a crop: "peas up", "tomatoes ripe"."""
    if has_verb:
        return None
    most = min(LONGEST_STATE.get(typed.words[i], 0), typed.stops[i] - i)
    for size in range(most, 0, -1):
        found = STATE_FORMS.get(tuple(typed.words[i : i + size]))
        end = i + size
        if found is None:
            continue
        leads = found[1] in ("first flower", "self-sown", "fruit set") or typed.words[i] == "first"
        if typed.words[i] in ("flower", "truss") and "first" not in typed.words[:i]:
            continue
        if not has_name and not (leads and _name_follows(typed, end)):
            continue
        if (
            has_name
            and not leads
            and end < typed.count
            and not typed.breaks[end]
            and typed.words[end] not in STATE_FOLLOWERS
            and not (found[0] != "finished" and typed.kind(end, Kind.BED)[0])
            and not typed.words[end].isdigit()
        ):
            continue
        if leads and end + 1 < typed.count and typed.words[end] in ("off", "from") and not typed.breaks[end]:
            return Clause(0, i, end, 0, tuple(typed.words[i:end]), "picked")  # "first pods off the arch"
        if (
            typed.words[end - 1] == "ready"
            and typed.words[end : end + 1] == ["to"]
            and not _is_to_pick(typed, end + 1)
        ):
            continue  # "leek seedlings ready to go out"
        if typed.words[i] == "up" and i and (typed.words[i - 1],) in GERUNDS_UP:
            continue  # "potatoes need earthing up again"
        if typed.words[i] == "over" and i and typed.words[i - 1] in nouns.COVERS | nouns.MULCHES:
            continue  # "cardboard over all"
        if typed.words[end - 1] == "over" and typed.words[max(i - 1, 0)] in FALLING:
            continue
        if found[0] == "finished" and HALF_WAY & set(typed.words[max(0, i - 4) : i]):
            continue
        form = tuple(typed.words[i:end])
        return Clause(0, i, end, 0, form, found[0], found[1], is_state=True)
    return None


GERUNDS_UP = frozenset(
    (w,) for w in ("earthing", "tying", "potting", "banking", "hilling", "ridging", "mounding", "propping")
)


def _is_to_pick(typed: Typed, i: int) -> bool:
    return typed.words[i : i + 1] != [] and typed.words[i] in (
        "pick", "harvest", "eat", "dig", "lift", "pull", "cut", "be", "use", "burst", "crop",
    )  # fmt: skip


def _name_follows(typed: Typed, i: int) -> bool:
    return any(typed.names(j)[0] for j in range(i, min(i + 4, typed.count)))
