"""The words the measuring gardens are made of; `make_garden` puts them together."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class CropWords:
    """A crop with what its life needs."""

    name: str
    varieties: tuple[str, ...]
    month: int  # of the start
    days: int  # from sowing or planting out to the first picking
    is_raised: bool = False


CROPS = (
    CropWords(name="beetroot", varieties=("Boltardy", "Cylindra", "Chioggia"), month=4, days=70),
    CropWords(name="pea", varieties=("Meteor", "Hurst's Green Shaft", "Sugar Ann"), month=4, days=75),
    CropWords(name="carrot", varieties=("Nantes", "Amsterdam Forcing", "Danvers"), month=4, days=80),
    CropWords(name="lettuce", varieties=("Salad Bowl", "Winter Density", "Buttercrunch"), month=4, days=50),
    CropWords(name="spinach", varieties=("Bloomsdale", "Matador"), month=4, days=48),
    CropWords(name="radish", varieties=("French Breakfast", "Cherry Belle"), month=4, days=28),
    CropWords(name="potato", varieties=("Charlotte", "Pink Fir Apple", "Kennebec"), month=4, days=95),
    CropWords(name="broad bean", varieties=("Aquadulce Claudia", "The Sutton"), month=3, days=100),
    CropWords(name="runner bean", varieties=("Scarlet Emperor", "Painted Lady"), month=5, days=80),
    CropWords(name="French bean", varieties=("Provider", "Contender"), month=5, days=58),
    CropWords(name="onion", varieties=("Sturon", "Red Baron"), month=4, days=120),
    CropWords(name="turnip", varieties=("Golden Ball", "Milan Purple Top"), month=7, days=55),
    CropWords(name="chard", varieties=("Lucullus", "Fordhook Giant"), month=5, days=58),
    CropWords(name="parsnip", varieties=("Tender and True", "Gladiator"), month=4, days=150),
    CropWords(
        name="tomato",
        varieties=("Stupice", "Gardener's Delight", "Black Krim"),
        month=3,
        days=65,
        is_raised=True,
    ),
    CropWords(name="cabbage", varieties=("January King", "Golden Acre"), month=3, days=80, is_raised=True),
    CropWords(name="leek", varieties=("Musselburgh", "Bleu de Solaise"), month=3, days=130, is_raised=True),
    CropWords(name="courgette", varieties=("Black Beauty", "Defender"), month=4, days=50, is_raised=True),
    CropWords(
        name="cucumber", varieties=("Marketmore 76", "Straight Eight"), month=4, days=58, is_raised=True
    ),
    CropWords(name="kale", varieties=("Nero di Toscana", "Red Russian"), month=4, days=60, is_raised=True),
    CropWords(name="celeriac", varieties=("Prinz", "Monarch"), month=3, days=110, is_raised=True),
    CropWords(name="broccoli", varieties=("Arcadia", "Green Goliath"), month=3, days=65, is_raised=True),
)

BED_NAMES = (
    "Long border", "Arch", "Hoop bed", "Top bed", "Hedge bed", "Shed strip", "Low frame", "Gate bed",
    "Tub 1", "Tub 2", "Tub 3", "North slope", "South slope", "Well bed", "Nut bed", "Barn border",
    "Cold frame", "Ash bed", "Stone bed", "Sand bed", "Path bed", "Rose border", "Deep bed", "Old border",
    "Bed 1", "Bed 2", "Bed 3", "Bed 4", "Bed 5", "Bed 6", "Bed 7", "Bed 8",
    "Quarry plot", "Brook plot", "Corner plot", "House border", "Kitchen border", "Willow bed", "Hazel bed", "Far bed",
)  # fmt: skip

CHORES = ("weeded", "watered", "mulched", "limed", "covered")

SIGHTINGS = ("aphids", "slugs", "mildew", "blight", "first flower")

FATES = ("", "", "", ", gave away half", ", ate the lot", ", stored 100 g")

OPENINGS = (
    "Wind from the west, and a sky that could not decide.",
    "Out before breakfast, while the dew still held the dust down.",
    "Two hours between one shower and the next.",
    "Nobody else about, only the blackbird and his opinions.",
    "Too warm for the jacket and too cold without it.",
    "The last light, and the tools still lying where they fell.",
)

SENTENCES = (
    "The {crop} in {bed} looks better than it did {days} days ago.",
    "Hoed along {bed} and found an old label, quite unreadable.",
    "There is more of the {crop} than three families could eat.",
    "Something has been digging in {bed}; the prints are a cat's.",
    "The rain barrel behind {bed} is down to its last hand's breadth.",
    "A neighbour swears by soot round the {crop}, and we nodded.",
    "Of {bed} there is nothing new to say, which is good news.",
)

LESSONS = (
    "Next year the {crop} goes in {days} days sooner.",
    "Next year no {crop} in {bed}, whatever anybody says.",
)
