"""Where a harvest went: clauses that are a share of the picking before them in the line.

"picked 2 kg peas, ate half, froze the rest" is one picking with two fates. A fate never adds a harvest.
"""

from __future__ import annotations

from dataclasses import replace

from leafmould.notes.draft import Done, Draft, Span
from leafmould.notes.entries import Fate
from leafmould.notes.set_right import add_what_was_used, is_how_much_was_used
from leafmould.notes.words import nouns
from leafmould.values.problems import Level
from leafmould.values.quantities import Amount

HOLDS_HARVEST = frozenset({"picked", "collected", "cleared", "thinned", "pruned"})


def gather_fates(done: list[Done]) -> list[Done]:
    """Fold fates into the picking they are a share of."""
    kept: list[Done] = []
    for clause in done:
        if kept and _tells_of_trial(clause, kept[-1]):
            kept[-1].draft.ask(Level.HINT, "How many came up? The line does not say.")
            continue
        if kept and _is_germination(clause, kept[-1]):
            _merge_germination(kept[-1], clause)
            continue
        picking = next((d for d in reversed(kept) if d.verb.name in HOLDS_HARVEST), None)
        if picking is None or not _is_share(clause, picking):
            kept.append(clause)
            continue
        amounts: list[Amount | None] = [a for item in clause.draft.items for a in item.amounts]
        for amount in amounts or [None]:
            kind = "ate" if clause.verb.name == "used" else clause.verb.name
            if own := _some_crops(clause, picking):
                picking.fates_of.append((Fate(kind=kind, amount=amount), own))
            else:
                picking.fates.append(Fate(kind=kind, amount=amount))
            if amount is not None:
                _check_share(picking, amount)
                _ask_for_unit(picking, amount)
        picking.draft.spans += [
            ("fate" if s[0] == "verb" else s[0], *s[1:]) for s in _all_spans(clause.draft)
        ]
        picking.draft.price = picking.draft.price or clause.draft.price
        picking.draft.asked += clause.draft.asked
        picking.draft.left += [(a, b, True) for a, b, _ in clause.draft.left]
    return kept


def _some_crops(clause: Done, picking: Done) -> frozenset[str]:
    """ "picked beans and 3 cukes, gave the cukes to Sue": the crops it tells of, if others were picked too."""
    crops = frozenset(c.key for item in clause.draft.items for c in item.crops)
    picked = {c.key for item in picking.draft.items for c in item.crops}
    return crops if crops < picked else frozenset()


def merge_yields(done: list[Done]) -> list[Done]:
    """ "lifted the first root, and it gave us two pounds": one picking and its amount."""
    kept: list[Done] = []
    for clause in done:
        before = kept[-1] if kept else None
        if before is not None and _is_yield_of(clause, before):
            items = before.draft.items
            (items[0].amounts if len(items) == 1 else before.draft.total).extend(
                a for item in clause.draft.items for a in item.amounts
            )
            before.draft.spans += [s for s in _all_spans(clause.draft) if s[0] == "amount"]
            before.draft.asked += clause.draft.asked
            continue
        if before is not None and is_how_much_was_used(clause, before):
            add_what_was_used(clause, before)
            continue
        if before is not None and _is_where_bought(clause, before):
            before.draft.source = before.draft.source or clause.draft.source
            before.draft.price = before.draft.price or clause.draft.price
            before.draft.spans += [s for s in clause.draft.spans if s[0] in ("source", "price")]
            continue
        if (
            before is not None
            and before.is_bare
            and before.verb.name == clause.verb.name
            and clause.verb.name in TWICE_TOLD
        ):
            kept[-1] = clause  # "blanched & froze 2 bags"
            continue
        if before is not None and _is_the_same(clause, before):
            before.draft.left += [(a, b, True) for a, b, _ in clause.draft.left]
            continue
        kept.append(clause)
    return kept


TWICE_TOLD = frozenset({"put up", "saved seed", "stored"})
""" "blanched & froze 2 bags", "threshed and winnowed the seed": steps of one thing."""


def _is_where_bought(clause: Done, before: Done) -> bool:
    """ "planted 6 courgettes, bought at the market": where they came from."""
    draft = clause.draft
    return (
        clause.verb.name == "bought"
        and "raise" in before.verb.slots
        and before.draft.has_crop
        and not (draft.has_crop or any(i.amounts for i in draft.items))
        and draft.source is not None
    )


def _is_the_same(clause: Done, before: Done) -> bool:
    """ "plaited the garlic and hung it up": one storing."""
    draft = clause.draft
    return (
        clause.verb.name == before.verb.name
        and clause.verb.name in ("stored", "put up")
        and not clause.is_bare
        and not (draft.has_crop or draft.places or any(i.amounts for i in draft.items))
        and before.draft.has_crop
    )


def _is_yield_of(clause: Done, before: Done) -> bool:
    draft = clause.draft
    return (
        clause.verb.name == before.verb.name == "picked"
        and not draft.has_crop
        and not draft.places
        and not clause.is_bare
        and before.draft.has_crop
        and any(item.amounts for item in draft.items)
        and any(_is_measured(a) for item in draft.items for a in item.amounts)
        and not any(_is_measured(a) for item in before.draft.items for a in item.amounts)
    )


def _is_measured(amount: Amount) -> bool:
    return amount.unit in nouns.WEIGHTS or amount.unit in nouns.VOLUMES


def _tells_of_trial(clause: Done, trial: Done) -> bool:
    """ "tested old carrot seed, none came up": no carrots were lost."""
    return (
        trial.verb.name == "tried seed"
        and clause.verb.name in ("came up", "lost")
        and not any(i.crops or i.amounts for i in clause.draft.items)
    )


def _is_germination(clause: Done, trial: Done) -> bool:
    counts = [a for item in clause.draft.items for a in item.amounts]
    return (
        trial.verb.name == "tried seed"
        and clause.verb.name in ("came up", "lost")
        and bool(counts)
        and not any(i.crops for i in clause.draft.items)
    )


def _merge_germination(trial: Done, clause: Done) -> None:
    """ "tested 10 seeds beetroot, 8 came up": 8 of 10."""
    came = next(a for item in clause.draft.items for a in item.amounts)
    item = trial.draft.items[0]
    tried = next((a for a in item.amounts if a.low is not None), None)
    if came.of is not None:
        item.amounts = [came]  # what stands before it is the year of the seed
    elif tried is not None and came.low is not None:
        item.amounts = [
            replace(
                tried,
                written=f"{came.written} of {tried.written}",
                low=came.low,
                high=came.high,
                of=tried.low,
            )
        ]
    else:
        item.amounts.append(came)
    trial.draft.spans += _all_spans(clause.draft)
    trial.draft.asked += clause.draft.asked


def _all_spans(draft: Draft) -> list[Span]:
    return [*draft.spans, *(s for item in draft.items for s in item.spans)]


def _is_share(clause: Done, picking: Done) -> bool:
    if "fate" not in clause.verb.slots or (
        picking.verb.name not in ("picked", "collected") and clause.verb.name != "composted"
    ):
        return False
    crops = {c.key for item in clause.draft.items for c in item.crops}
    picked = {c.key for item in picking.draft.items for c in item.crops}
    units = {a.unit for item in clause.draft.items for a in item.amounts}
    picked_units = {a.unit for item in picking.draft.items for a in item.amounts}
    if any(item.thing for item in clause.draft.items):
        return picking.verb.name == "collected"
    is_made = clause.verb.name in ("put up", "stored") and bool(units & nouns.HOLDERS - picked_units)
    return not is_made and (not crops or crops <= picked)


def _ask_for_unit(picking: Done, amount: Amount) -> None:
    """ "plums 14 kg, gave 5 to Ann": five of them, or five kilos."""
    wholes = [a for item in picking.draft.items for a in item.amounts]
    keys = {c.key for item in picking.draft.items for c in item.crops}
    if len(wholes) != 1 or amount.unit != "piece" or amount.low is None or keys & LARGE:
        return
    whole = wholes[0]
    if whole.unit in ("kg", "lb", "stone") and whole.low is not None and amount.low <= whole.low:
        question = f'Is "{amount.written}" so many of them, or {whole.unit}? Read as so many.'
        picking.draft.ask(Level.QUESTION, question)


LARGE = frozenset(
    {"summer-squash", "winter-squash", "squash", "courgette", "marrow", "pumpkin", "cucumber", "cabbage", "lettuce", "melon", "watermelon",
     "aubergine", "cauliflower", "sweet-corn", "celeriac", "swede", "leek", "artichoke"}
)  # fmt: skip
"""Crops that are given away by the piece."""


def _check_share(picking: Done, amount: Amount) -> None:
    """More given away than was picked is a warning."""
    for item in picking.draft.items:
        for whole in item.amounts:
            same = (
                amount.unit in (whole.unit, "piece") and whole.count is not None
            ) or whole.unit == amount.unit
            a, b = (amount.high, whole.high) if same else (amount.grams, whole.grams)
            if a is not None and b is not None and a > b and not whole.is_about:
                picking.draft.ask(
                    Level.WARNING, f'"{amount.written}" is more than the "{whole.written}" that was picked.'
                )
