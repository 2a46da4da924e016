"""The names by which `senses` asks what stands beside the verbs of the families."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from leafmould.notes.clause import Clause
from leafmould.notes.conditions import has_crop, has_weight
from leafmould.notes.doers import by_trouble
from leafmould.notes.given_plants import is_compost_onto, is_plants_given, is_shade_given
from leafmould.notes.given_to import (
    has_other_doer,
    is_done_by_another,
    is_given,
    is_given_of_it,
    is_let_have,
    is_thief,
    to_animals,
)
from leafmould.notes.ground_work import is_for_heap, is_into_bed, names_set_out
from leafmould.notes.of_plants import (
    SHED_LEAVES,
    TOPS,
    count_first,
    cover_told,
    eaten_so,
    has_old_canes,
    heads_of_it,
    is_annual_down,
    is_burnt_then,
    is_cleared_of_them,
    is_dead_flowers,
    is_fruit_first,
    is_in_pieces,
    is_it_in_pieces,
    is_off_crop,
    is_seed_kept,
    is_slug_hunt,
    is_spent_crop,
    is_to_the_ground,
    ones_first,
    out_none,
    out_of_bed,
    plants_out,
    root_first,
    roots_out,
    self_ended,
    takes_off,
    trouble_does,
)
from leafmould.notes.put_where import (
    any_word,
    in_ground,
    in_litres,
    in_the_heat,
    is_bed_fed,
    is_bigger_pot,
    is_cans_of_water,
    is_cover_lifted,
    is_for_winter,
    is_glass,
    is_going,
    is_green_manure,
    is_hive_part,
    is_kept_dry,
    is_kept_long,
    is_let_loose,
    is_out_of_store,
    is_planted_in,
    is_soil_put,
    is_sprayed,
    is_stuff_into,
    is_to_harden,
    is_tub_moved,
    is_weather,
    is_wind_cover,
    object_is,
    to_supports,
)
from leafmould.notes.said_first import (
    LOST_THINGS,
    is_bags_full,
    is_bees_given,
    is_counted_behind,
    is_got_by_someone,
    is_green_sown,
    is_hens_lay,
    is_over,
    is_root_out,
    is_seeds_kept,
    is_somebody_first,
    is_sown_so,
    is_steeped,
    is_taker_first,
    is_to_cure,
    is_water_amount,
)
from leafmould.notes.typed import Typed
from leafmould.notes.words import nouns
from leafmould.values.names import Kind


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


ABOUT: dict[str, Callable[[Typed, Clause], bool]] = {
    "for the heap": is_for_heap, "set out": names_set_out, "into bed": is_into_bed, "right into bed": partial(is_into_bed, openers=("into", "onto")), "wind cover": is_wind_cover, "hole": object_is(frozenset({"trench", "hole", "pit", "pond", "step", "ditch", "foundation"})), "weeds first": any_word(nouns.WEEDS, before=True), "amendment put": object_is(nouns.AMENDMENTS - {"trench"}), "leaf object": object_is(frozenset({"leaf"})), "had to": lambda typed, clause: typed.words[clause.verb_end : clause.verb_end + 1] == ["to"], "by trouble": by_trouble, "cover told": cover_told, "given of it": is_given_of_it, "trouble does": trouble_does, "in the heat": in_the_heat, "in litres": in_litres, "heads of it": heads_of_it, "eaten so": eaten_so, "ones first": ones_first, "cutting": any_word(frozenset({"cutting"})),
    "lime first": any_word(nouns.LIMES, before=True), "manure first": any_word(nouns.MANURES, before=True), "mulch first": any_word(nouns.MULCHES - {"leaf"}, before=True), "amendment first": any_word(nouns.AMENDMENTS - {"trench"}, before=True),
    "cover first": any_word(nouns.COVERS - {"bottle", "sheet"}, before=True), "seeds kept": is_seeds_kept, "taker first": is_taker_first, "holder found": object_is(_words("bag jar tub box tin packet sack carton tray")), "lost thing": object_is(LOST_THINGS), "green crop": is_green_sown,
    "off crop": is_off_crop,
    "lawn": object_is(_words("lawn grass hedge")),
    "door first": lambda typed, clause: typed.words[max(clause.verb_start - 2, 0) : clause.verb_start] == ["next", "door"] and has_crop(typed, clause), "shade given": is_shade_given, "plants given": is_plants_given, "under a pot": any_word(_words("bucket forcer dustbin bin cloche pot")), "compost onto": is_compost_onto,
    "fruit first": is_fruit_first,
    "strawberry runners": lambda typed, clause: "runner" in typed.words[clause.verb_end : clause.end] and any(w.startswith("strawb") for w in typed.words),
    "water amount": is_water_amount, "to someone": lambda typed, clause: typed.words[clause.verb_end : clause.verb_end + 1] == ["to"],
    "let have": is_let_have, "for winter": is_for_winter, "hen house": object_is(_words("ark coop henhouse")),
    "given": is_given, "to animals": to_animals, "kept dry": is_kept_dry, "tub moved": is_tub_moved, "planted in": is_planted_in,
    "hens lay": is_hens_lay, "someone got": is_got_by_someone, "sown so": is_sown_so, "somebody first": is_somebody_first, "had it over": is_over, "done over": is_over, "product first": any_word(nouns.PRODUCTS, before=True), "root out": is_root_out, "bad ones": object_is(_words("soft rotten rotting mouldy moldy bad manky rotted bruised")), "boxes": any_word(_words("box crate tray drawer")), "bees given": is_bees_given, "bags full": is_bags_full, "counted behind": is_counted_behind, "to cure": is_to_cure, "bees about": lambda typed, clause: not nouns.HIVE.isdisjoint(typed.words) and not has_crop(typed, clause), "jar first": any_word(_words("jar bottle tin"), before=True), "seed saved": lambda typed, clause: typed.words[clause.verb_start - 1 : clause.verb_start] == ["seed"], "in ropes": any_word(_words("rope string plait bunch bundle swag")), "hens got": lambda typed, clause: not nouns.HENS.isdisjoint(typed.words[clause.start : clause.verb_start]) and has_crop(typed, clause), "animals first": any_word(nouns.HENS | frozenset({"bee", "hive", "nuc"}), before=True), "still standing": lambda typed, clause: typed.kind(clause.verb_start - 1, Kind.CROP, Kind.CROP_GROUP)[0] > 0, "steeped": is_steeped, "bunches first": any_word(_words("bundle bunch string plait braid rope swag"), before=True), "in trays": object_is(_words("tray box crate sack clamp shed store rack")), "hens had it": is_cleared_of_them, "from another": has_other_doer, "self ended": self_ended, "count first": count_first, "spent crop": is_spent_crop, "it in pieces": is_it_in_pieces, "annual down": is_annual_down, "runners": any_word(_words("runner"), before=True), "packet first": any_word(_words("packet pkt sachet"), before=True), "burnt then": is_burnt_then, "old canes": has_old_canes,
    "tops off": takes_off(TOPS), "leaves off": takes_off(SHED_LEAVES), "cover lifted": is_cover_lifted, "green manure": is_green_manure, "stuff into": is_stuff_into,
    "bed fed": is_bed_fed, "glass": is_glass, "to harden": is_to_harden, "bigger pot": is_bigger_pot, "cans of water": is_cans_of_water,
    "let loose": is_let_loose, "out of store": is_out_of_store, "in ground": in_ground, "plants out": plants_out, "going": is_going, "weather": is_weather,
    "out none": out_none, "roots out": roots_out, "out of bed": out_of_bed, "root first": root_first, "kept long": is_kept_long, "thief": is_thief,
    "in pieces": is_in_pieces, "to supports": to_supports, "dead flowers": is_dead_flowers, "to the ground": is_to_the_ground,
    "seed kept": is_seed_kept, "soil put": is_soil_put, "sprayed": is_sprayed, "done by another": is_done_by_another, "slugs about": is_slug_hunt, "hive part": is_hive_part,
    "in jars": any_word(_words("jar bottle kilner")), "outdoors": any_word(_words("outside outdoor")),
    "flower words": any_word(_words("flower blossom bloom leaf leave sun bud shoot petal catkin"), before=True),
    "with seed": any_word(frozenset({"seed"})), "crop bare": lambda typed, clause: has_crop(typed, clause) and not has_weight(typed, clause),
    "tree": lambda typed, clause: any(typed.kind(i, Kind.BED)[0] for i in range(clause.start, clause.end)),
    "water": object_is(frozenset({"water"})), "crop moved": lambda typed, clause: has_crop(typed, clause) and bool({"outside", "inside", "indoor", "shed", "house", "porch"} & set(typed.words[clause.verb_end : clause.end]) or any(typed.kind(i, Kind.BED)[0] for i in range(clause.verb_end, clause.end))),
    "trap": object_is(_words("trap band collar tape lure wool encarsia")), "net put": object_is(nouns.NETS),
    "cover put": object_is((nouns.COVERS - {"bottle"} - nouns.MULCHES) | _words("curtain bedsheet duvet quilt rug sheets carpet")),
    "support put": object_is(nouns.SUPPORTS - {"frame", "arch"}), "manure put": object_is(nouns.MANURES), "lime put": object_is(nouns.LIMES),
    "mulch put": object_is((nouns.MULCHES - {"seaweed"}) | _words("grass strulch leaves")), "feed put": object_is(nouns.FEEDS - {"liquid", "food", "nettle", "comfrey"}),
}  # fmt: skip


"""What `senses` asks by these names."""
