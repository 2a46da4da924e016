"""The garden the work-line cases are read with: its beds, crops, varieties and measures, by hand.

Small on purpose and apart from the published tables, so that a case never changes because a fact did.
"""

from __future__ import annotations

from leafmould.notes.bed_aliases import other_ways
from leafmould.values.names import Kind, Known, Vocabulary, slug

BEDS = """
Long border, border, LB
Top bed
Hoop bed
Arch
Bag row
Tub 1
Tub 2
Tub 3
Landing
Frame
Cold frame
Cold frame side
bed 2
bed 3
bed 4
Bean row
Old pear
Orchard row
Mint
Herb bed
"""
"""One bed a line; its other names behind commas."""

CROPS = """
pea: pea, snap pea, mangetout
runner-bean: runner bean
broad-bean: broad bean, fava bean
french-bean: french bean, green bean, dwarf bean, climbing bean, pole bean
tomato: tomato, cherry tomato
beetroot: beetroot, beet
sweet-corn: sweet corn, sweetcorn
rocket: rocket, arugula
summer-squash: courgette, zucchini, summer squash
winter-squash: winter squash, butternut squash
spring-onion: spring onion, scallion
aubergine: aubergine, eggplant
chard: chard, swiss chard
calabrese: calabrese, broccoli
sprouting-broccoli: sprouting broccoli, purple sprouting broccoli
coriander: coriander, cilantro
brussels-sprouts: brussels sprout
jerusalem-artichoke: jerusalem artichoke
sweet-pepper: sweet pepper, bell pepper
hot-pepper: hot pepper
chilli: chilli
"""
"""Crop key: the words for it."""

PLAIN_CROPS = """
mint garlic turnip leek cabbage basil kale strawberry lavender lettuce mizuna carrot spinach pumpkin potato onion radish
pear apple plum cherry raspberry gooseberry blackcurrant rhubarb cucumber parsnip celeriac cauliflower parsley rosemary
thyme shallot chives dill oregano rye comfrey melon sunflower nasturtium celery swede
"""
"""Crops with one word, which is their key."""

GROUPS = {
    "bean": ("broad-bean", "french-bean", "runner-bean"),
    "squash": ("summer-squash", "winter-squash"),
    "pepper": ("hot-pepper", "sweet-pepper"),
}
VARIETIES = {
    "Boltardy": "beetroot", "Meteor": "pea", "Stupice": "tomato", "Black Krim": "tomato", "Sungold": "tomato",
    "Purple Podded": "pea", "Red Baron": "onion", "Solent Wight": "garlic",
}  # fmt: skip
WELL_KNOWN = {
    "Charlotte": ("potato", True), "Pink Fir Apple": ("potato", False), "Bramley": ("apple", False), "Cox": ("apple", True),
    "Autumn Bliss": ("raspberry", False), "Moneymaker": ("tomato", False), "Sun Gold": ("tomato", False),
    "Early Girl": ("tomato", False), "Provider": ("french-bean", True), "Jersey Benne": ("potato", False),
}  # fmt: skip
"""Varieties of a public list: name, crop, and whether it is an ordinary word or a person's name too."""

WIDE = {
    "brassica": ("brussels-sprouts", "cabbage", "calabrese", "cauliflower", "kale"),
    "greens": ("chard", "lettuce", "spinach"),
    "soft fruit": ("blackcurrant", "gooseberry", "raspberry", "strawberry"),
}
MEASURES = {"bucket": "7000", "tray": "400"}
PARTS = {"north half": "long-border", "south half": "long-border"}
WORDS = {"semé": "sowed", "geerntet": "picked", "s": "sowed", "t": "planted", "rip": "lost"}


def names() -> list[tuple[str, Known]]:
    """Every name of the garden, as pairs for a Vocabulary."""
    found: list[tuple[str, Known]] = []
    for row in BEDS.strip().splitlines():
        name, *also = (part.strip() for part in row.split(","))
        found += [(written, Known(kind=Kind.BED, key=slug(name), name=name)) for written in (name, *also)]
    found += other_ways(found)
    for row in CROPS.strip().splitlines():
        key, words = row.split(":")
        found += [(w.strip(), Known(kind=Kind.CROP, key=key, name=w.strip())) for w in words.split(",")]
    found += [(w, Known(kind=Kind.CROP, key=w, name=w)) for w in PLAIN_CROPS.split()]
    found += [(g, Known(kind=Kind.CROP_GROUP, key=g, name=g, of=of)) for g, of in GROUPS.items()]
    found += [(v, Known(kind=Kind.VARIETY, key=v, name=v, of=(crop,))) for v, crop in VARIETIES.items()]
    for v, (crop, is_word) in WELL_KNOWN.items():
        known = Known(kind=Kind.VARIETY, key=v, name=v, of=(crop,), is_public=True, is_word=is_word)
        found.append((v, known))
    for word, of in WIDE.items():
        is_word = word == "greens"
        known = Known(kind=Kind.CROP_GROUP, key=slug(word), name=word, of=of, is_public=True, is_word=is_word)
        found.append((word, known))
    found += [(m, Known(kind=Kind.MEASURE, key=m, name=m, of=(grams,))) for m, grams in MEASURES.items()]
    found += [(p, Known(kind=Kind.PART, key=p, name=p, of=(bed,))) for p, bed in PARTS.items()]
    found += [(w, Known(kind=Kind.VERB, key=verb, name=verb)) for w, verb in WORDS.items()]
    return found


VOCABULARY = Vocabulary(names())
