"""Who did it: what pests, diseases and the weather did is a loss or was seen, and what ends a pest ends no crop."""

from __future__ import annotations

from leafmould.notes.clause import Clause
from leafmould.notes.draft import Done
from leafmould.notes.entries import Named
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.notes.words.prepositions import ARTICLES
from leafmould.values.names import Kind, fold

PEST_ENDS = frozenset({"lost", "composted", "ate", "picked", "cleared", "gave away", "fed animals", "remark"})


OF_PESTS = frozenset({"them", "it", "some", "all", "about", "maybe", "off", "lot"})


def is_about_pest(typed: Typed, clause: Clause, verb: str, before: Done) -> bool:
    """ "aphids on the beans, drowned them": what ended is the pest and not the crop."""
    seen = before.draft.subject or ""
    if (
        before.verb.name != "saw"
        or clause.form == ("lost",)
        or verb not in PEST_ENDS
        or not set(fold(seen)) & nouns.TROUBLES
    ):
        return False
    behind = typed.words[clause.verb_end : clause.verb_end + 1]
    return (
        any(w in OF_PESTS or w.isdigit() for w in behind)
        and not names_crop(typed, clause)
        and not trouble_first(typed, clause)
        and not DISEASES & set(fold(seen))
    )


def are_pests_picked(typed: Typed, clause: Clause, before: Done) -> bool:
    """ "hornworms. picked 11 off the tomatoes": so many of what was seen."""
    seen = set(fold(before.draft.subject or ""))
    if before.verb.name != "saw" or seen.isdisjoint(PICKED_OFF) or clause.form not in BY_HAND:
        return False
    i = clause.verb_end
    while i < clause.end and (
        typed.is_number(i) or typed.words[i] in nouns.NUMBERS or typed.words[i] in COUNTED_SO
    ):
        i += 1
    return i < clause.end and not typed.breaks[i] and typed.words[i] in ("off", "of")


BY_HAND = frozenset(
    {("picked",), ("hand", "picked"), ("pulled",), ("took",), ("picked", "off"), ("hand", "picked", "off")}
)
COUNTED_SO = frozenset({"about", "around", "over", "nearly", "dozen", "them", "loads", "lots", "some", "another", "more", "few", "maybe"})  # fmt: skip
PICKED_OFF = frozenset(
    {"caterpillar", "slug", "snail", "hornworm", "beetle", "bug", "larvae", "grub", "weevil", "grasshopper", "cutworm", "earwig",
     "worm", "locust", "stinkbug", "chafer"}
)  # fmt: skip
"""Pests large enough to be picked off one by one."""


DISEASES = frozenset(
    {
        "blight",
        "mildew",
        "rust",
        "rot",
        "canker",
        "scab",
        "wilt",
        "virus",
        "mosaic",
        "botrytis",
        "clubroot",
        "frost",
    }
)
"""What is thrown out for these is the crop."""


DISTURBANCES = frozenset({"dug in", "uncovered"})
"""What a badger or the wind did so was seen, and ends nothing."""


DONE_BY_PEOPLE = frozenset({"picked", "cleared", "ate", "pruned", "thinned", "used", "bought"})
"""What a pigeon, a fox or the wind did so is a loss."""


def by_trouble(typed: Typed, clause: Clause) -> bool:
    """ "cobs nibbled by badgers"."""
    words = typed.words
    return any(
        words[i] == "by"
        and (k := i + 1 + (words[i + 1] in ARTICLES and i + 2 < clause.end))
        and words[k] in nouns.TROUBLES
        and not typed.names(k)[0]
        for i in range(clause.verb_end, min(clause.verb_end + 4, clause.end - 1))
    )


def trouble_first(typed: Typed, clause: Clause) -> bool:
    """Whether a pest, a disease or the weather did it: "pigeons ate …", "a fox got in and ate …"."""
    return clause.is_by_trouble or any(
        (typed.words[i] in nouns.TROUBLES or (typed.words[i] in nouns.HENS and clause.form in EATING))
        and not typed.names(i)[0]
        and typed.words[i + 1] not in OF_ANIMALS
        for i in range(clause.start, clause.verb_start)
        if not any(typed.breaks[i + 1 : clause.verb_start + 1])
    )


EATING = frozenset(
    {("ate",), ("scratched", "up"), ("scratched", "out"), ("stripped",), ("dug", "up"), ("demolished",)}
)
"""What hens do to a crop that stands."""
OF_ANIMALS = (
    nouns.MANURES
    | nouns.PELLETS
    | nouns.NETS
    | frozenset({"guard", "wire", "proof", "fence", "spray", "bedding", "straw", "ark", "run"})
)
""" "horse muck", "rabbit guard": no animal."""


def names_crop(typed: Typed, clause: Clause) -> bool:
    """Whether the clause names a crop or a variety of its own."""
    kinds = (Kind.CROP, Kind.CROP_GROUP, Kind.VARIETY)
    spots = range(clause.start, clause.end)
    return any((size := typed.kind(i, *kinds)[0]) and i + size <= clause.end for i in spots) or any(
        i in spots for i in typed.quotes
    )


def is_animal_damage(typed: Typed, clause: Clause, verb: str) -> bool:
    """ "slugs ate the lettuce" may tell of a few leaves."""
    return (
        verb == "lost"
        and clause.form not in (("killed",), ("wiped", "out"))
        and trouble_first(typed, clause)
        and clause.verb != "lost"
    )


def sets_out(typed: Typed, clause: Clause, before: Done) -> bool:
    """ "bought two thymes and put them in the Herb bank": planted."""
    is_pronoun = typed.words[clause.verb_end : clause.verb_end + 1] in (["them"], ["it"], ["both"])
    is_new = before.verb.name in ("bought", "divided", "cleared") and before.draft.has_crop
    spots = range(clause.verb_end, clause.end)
    return (
        clause.form == ("put",) and is_pronoun and is_new and any(typed.kind(i, Kind.BED)[0] for i in spots)
    )


def put_them(typed: Typed, clause: Clause, before: Done) -> None:
    """ "took cuttings and put them in the Cold frame": where they stand now."""
    if "new" not in before.verb.slots or before.draft.places:
        return
    for i in range(clause.verb_end, clause.end):
        size, known = typed.kind(i, Kind.BED)
        if size and len(known) == 1:
            bed = known[0]
            before.draft.places.append(Named(key=bed.key, name=bed.name, written=typed.written(i, i + size)))
            before.draft.spans.append(("place", typed.starts[i], typed.ends[i + size - 1]))
            return
