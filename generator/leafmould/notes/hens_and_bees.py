"""Hens, eggs and bees in lines without a verb: "hens off Top bed", "12 eggs", "varroa strips in both hives".

Part of the closed list of lines that count without a verb, which `verbless` asks in its order.
"""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.values.names import Kind


def as_if(typed: Typed, verb: str, start: int, end: int, subject: str | None = None) -> Clause:
    return Clause(0, start, end, typed.count, tuple(typed.words[start:end]), verb, subject)


def hens_on_or_off(typed: Typed) -> Clause | None:
    """ "hens off Top bed", "4 hens on Arch"."""
    i = 0
    while i < min(3, typed.count) and typed.words[i] not in nouns.HENS:
        if not (
            typed.words[i].isdigit()
            or typed.words[i] in ("the", "all", "my", "our")
            or typed.words[i] in nouns.NUMBERS
        ):
            return None
        i += 1
    if i >= typed.count - 1 or typed.words[i] not in nouns.HENS or typed.names(i)[0] > 1:
        return None
    j = i + 1
    while j < typed.count and typed.words[j] in (
        "are",
        "were",
        "now",
        "back",
        "moved",
        "put",
        "was",
        "is",
        "went",
        "all",
        "penned",
        "let",
    ):
        j += 1
    if j >= typed.count:
        return None
    if typed.words[j + 1 : j + 2] and typed.words[j + 1] in OFF_WHAT:
        return None  # "hens off lay": they lay none, and stay where they are
    if typed.words[j] in ("off", "out"):
        return as_if(typed, "let out", j, j + 1, "hens")
    if typed.words[j] in ("on", "onto", "in", "into", "to", "at") and any(
        typed.kind(k, Kind.BED)[0] for k in range(j + 1, min(j + 3, typed.count))
    ):
        return as_if(typed, "penned", j, j, "hens")
    return None


OFF_WHAT = frozenset({"lay", "laying", "colour", "color", "food", "feed", "form", "song", "sort", "of"})


def eggs_counted(typed: Typed) -> Clause | None:
    last = next((i for i in range(min(7, typed.stops[0])) if typed.words[i] == "egg"), 0)
    if (
        last > 1
        and typed.words[last + 1 : last + 2] != ["to"]
        and typed.words[0].isdigit()
        and all(w.isdigit() or w in nouns.NUMBERS or w in EGG_WORDS for w in typed.words[:last])
    ):
        return as_if(typed, "collected", last + 1, last + 1, "eggs")
    for i in range(min(3, typed.count)):
        if (
            typed.words[i] == "egg"
            and i
            and typed.words[i + 1 : i + 2] != ["to"]
            and (
                typed.words[i - 1].isdigit()
                or typed.words[i - 1] in nouns.NUMBERS
                or typed.words[i - 1] == "dozen"
            )
        ):
            return as_if(typed, "collected", i + 1, i + 1, "eggs")
        if (
            typed.words[i] == "egg"
            and (i == 0 or typed.words[0] in nouns.HENS)
            and (k := _egg_count(typed, i))
        ):
            return as_if(typed, "collected", 0, k, "eggs")
    return _eggs_behind(typed)


def _egg_count(typed: Typed, i: int) -> int:
    """ "eggs 4", "Eggs this week: 31 from 6 hens", "chook eggs 5 today": the word of the number, or 0."""
    k = i + 1
    while k < typed.count and typed.words[k] in EGG_TIMES:
        k += 1
    return k if k < typed.count and typed.is_number(k) else 0


EGG_TIMES = frozenset(
    {
        "this",
        "week",
        "today",
        "wk",
        "total",
        "for",
        "the",
        "count",
        "tally",
        "weekend",
        "morning",
        "collected",
    }
)


def _eggs_behind(typed: Typed) -> Clause | None:
    """ "hens off lay, only 3 eggs", "the red hen is broody so only 3 eggs": behind what is told of the hens."""
    if nouns.HENS.isdisjoint(typed.words):
        return None
    for i in range(1, typed.count):
        k = i if typed.words[i] == "egg" else 0
        while k > 0 and not _begins(typed, k) and _may_count_eggs(typed.words[k - 1]):
            k -= 1
        is_counted = any(
            w.isdigit() or w in nouns.NUMBERS or w in ("dozen", "half") for w in typed.words[k:i]
        )
        if 0 < k < i and is_counted and _begins(typed, k):
            return Clause(k, i + 1, i + 1, typed.count, ("egg",), "collected", "eggs")
    return None


def _begins(typed: Typed, k: int) -> bool:
    return typed.breaks[k] or typed.words[k - 1] in ("so", "and", "but")


def _may_count_eggs(word: str) -> bool:
    return word.isdigit() or word in EGG_WORDS or word in EGG_LEADS


EGG_LEADS = frozenset({"only", "just", "still", "got", "but", "another", "down"}) | frozenset(nouns.NUMBERS)


EGG_WORDS = frozenset(
    {
        "and",
        "half",
        "dozen",
        "more",
        "big",
        "small",
        "brown",
        "white",
        "blue",
        "duck",
        "hen",
        "quail",
        "bantam",
        "goose",
        "pullet",
        "lovely",
        "good",
        "fresh",
        "soft",
        "just",
        "only",
    }
)


MITE_STUFF = frozenset({"varroa", "apivar", "apistan", "apiguard", "oxalic", "thymol", "bayvarol", "mite"})


def mites_treated(typed: Typed) -> Clause | None:
    """ "varroa strips in both hives", "Apivar in": the bees were treated; what is out is told as it stands."""
    if typed.words[0] not in MITE_STUFF:
        return None
    end = 1 + (typed.words[1:2] in (["strip"], ["acid"], ["treatment"], ["tray"], ["board"]))
    if end >= typed.count or typed.breaks[end] or typed.words[end] not in ("in", "on", "into", "onto"):
        return None
    return as_if(typed, "treated", end, end, typed.written(0, end))


def honey_weighed(typed: Typed) -> Clause | None:
    """ "honey harvest: 22 lb from hive 1", "honey 14 lb"."""
    if typed.words[0] != "honey" or not any(
        nouns.UNITS.get(w) in nouns.WEIGHTS or w == "jar" for w in typed.words
    ):
        return None
    end = 1 + (typed.words[1:2] in (["harvest"], ["crop"], ["yield"], ["off"], ["total"]))
    return as_if(typed, "collected", 0, end, "honey") if end < typed.count and typed.is_number(end) else None


def bees_fed(typed: Typed) -> Clause | None:
    """ "fondant on, 1 kg each": the bees were fed."""
    if (
        typed.words[0] not in BEE_FOOD
        or typed.words[1:2] not in (["on"], ["given"])
        or nouns.HENS & set(typed.words)
    ):
        return None
    return as_if(typed, "fed animals", 1, 2, "bees")


BEE_FOOD = frozenset({"fondant", "candy", "syrup"})
