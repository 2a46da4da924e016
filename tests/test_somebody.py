"""People stay out of a public build, however a note names them; beds, plants and varieties stay in.

Each line is one note of its own, as typed; the words with braces around them are somebody's, and must not be
shown. Where there are none, the line must come through as it is.
"""

from __future__ import annotations

import re

import pytest

from gardens import TANSY_HILL_YAML, entries_of, settings_of
from leafmould.facts.tables import crops
from leafmould.garden.first_look import texts_of
from leafmould.garden.view import view_of
from leafmould.garden.visible import visible_entries
from leafmould.garden.vocabulary import build_vocabulary

SETTINGS = settings_of(TANSY_HILL_YAML)
VIEW = view_of(SETTINGS, build_vocabulary(SETTINGS, crops()), household=False)[0]

NAMED = """
- gave {Tom} 300 g beans
- gave {Tom} a bag of beans
- gave 2 kg beans to {Tom}
- picked 2 kg beans, 500 g for {Tom}
- planted 6 leeks in Arch from {Tom}
- gave {Ann} 3 courgette plants, {Tom} 2
- sowed peas from {Aunt Clothilde} in Arch
- sowed {Joe}'s beans in Arch
- planted {Mrs Hale}'s rhubarb in Arch
- dropped a bag at {Sheila}'s
- swapped with {Pat} for leeks
- planted 3 leeks in {Sheila}'s bed
- picked 2 kg plums at {Sheila}'s
- helped {Joe} pick 2 kg beans
- {Nan} picked 2 kg beans
- weeded Arch with {Gudrun}
- 3 kg rhubarb to {Morag} next door
- took 3 courgettes round to {Mum}'s
- sent {Kasimir} a box of plums
Peas from {Aunt Clothilde} are up.
{Joe}'s beans are further on than ours.
{Mrs Hale}'s rhubarb is up already.
Dropped a bag at {Sheila}'s.
{Nan} came round in the afternoon.
{Dad} says they want more water.
Thank you {Maureen} for the manure.
My neighbour {Ottoline} has no slugs at all.
{Uncle Bertram} swears by soot.
{Old man Perkins} never thinned a carrot.
Tea with {Dr Achterberg} under the pear.
Showed {Ida} how to tie in the beans.
The leeks were a present from {Wilhelmina}.
{Rosamund} reckons it was the frost.
{Gran} would have pulled them a week ago.
Half the plums went to {Mr Okafor}.
"""

PLAIN = """
- gave away 300 g tom
- gave away 300 g toms
- picked 2 kg toms from Arch
- gave Tub 1 a feed
- gave the toms a feed
- picked 2 kg Charlotte from Arch
- picked 300 g Autumn Bliss from Raspberry row
- picked 2 kg Maris Piper from Top bed
- sowed peas 'Hurst's Green Shaft' in Arch
- planted 12 'Grandpa Ott' in Arch
- sowed tomato 'Aunt Ruby's German Green' in Hoop bed
- sowed pea 'Tom Thumb' in Tub 1
- moved 6 leeks from Cold frame to Long border
- picked 1 kg peas from Barn row
- fed toms with Tomorite
- planted King Edward in Top bed
- sowed lettuce 'Webb's Wonderful' in Tub 2
- watered everything for Easter
Black-eyed Susan is out by the gate.
Sweet William by the path, in bud.
Good King Henry again, and more of it.
Jerusalem artichoke all over the place.
Charlotte are slow this year.
Grandpa Ott has climbed the pear.
Lady's mantle after the rain.
It's cold for June and Friday's frost took the dahlias.
That's the last of the Autumn Bliss.
St John's wort on the bank.
Winter's over, says the calendar.
From April to September nothing fell on Monday.
Valentine's Day, and the first broad beans in.
Lamb's lettuce under the fleece.
Granny Smith against the wall, three apples.
Sowed in March, up in April, eaten in May.
The Long border is drier than Top bed.
Ailsa Craig from seed, Sturon from sets.
"""

NEW_NAMED = """
- gave {Bettina} and {Rolf} half the courgettes
- bought 3 trays of lettuce from {Mr Pemberton}
- planted the rhubarb {Auntie Vi} dug up for us in Long border
- planted 3 leeks from {J. Hale} in Arch
- {Hakim} watered everything while we were away
- lent the fork to {Jürgen}
- picked 1 kg peas, {Mum} shelled them
- sowed beans saved by {Yusuf} in Arch
- put up 6 jars plum jam, 2 for {Nana}
- traded 4 squash with {Delphine} for garlic
- took cuttings of sage for {Mrs Lindqvist}
{Sheila} and I emptied the compost together.
We ate them at {Fergus} and {Moira}'s on Sunday.
{Grandad}'s old spade broke at last.
Met {Siobhan} by the water butt.
The scarecrow is {Theo}'s doing.
Ask {Hamid} about the blight.
According to {Priscilla} it is too early.
Borrowed {Ulrike}'s barrow for the muck.
The seed was {Bogdan}'s, from his mother.
{Cousin Freda} sent walnuts.
"""
NEW_PLAIN = """
- picked 12 Moneymaker from Hoop bed
- sowed Painted Lady in Arch
- planted James Grieve in Long border
- picked 600 g Lady Christl from Top bed
- sowed carrot 'Early Nantes' in Top bed
- gave away 2 kg beans
- gave the Arch a good soak
- treated the apples with Neem
- planted out 6 Brussels sprouts in Top bed
- sowed basil and Rosemary in Tub 1
Busy Lizzie in the shade, still flowering.
Bramley's Seedling has canker.
The Long border's soil is still cold.
Everything's late this year.
The pigeons were back on Tuesday for the Savoy cabbages.
Nothing from the Hoop bed before May.
Solomon's seal eaten by sawfly.
Summer's end, and the Cobra are stringy.
Mother Nature did the watering.
Swiss chard to the end of November.
"""


def lines(text: str) -> list[str]:
    """The lines of a table, without the empty ones."""
    return [line for line in text.split("\n") if line.strip()]


def shown(note: str) -> str:
    """Everything a public build may read of a note."""
    entries = visible_entries(entries_of({"2026/06-01.md": f"{note}\n"}, SETTINGS), VIEW)
    return "\n".join(text for entry in entries for text in texts_of(entry))


@pytest.mark.parametrize("line", lines(NAMED + NEW_NAMED))
def test_somebody_is_not_named(line: str) -> None:
    names = [word for name in re.findall(r"\{(.*?)\}", line) for word in name.split()]
    found = shown(line.replace("{", "").replace("}", ""))
    assert [name for name in names if re.search(rf"\b{name}\b", found)] == []
    assert found


@pytest.mark.parametrize("line", lines(PLAIN + NEW_PLAIN))
def test_what_only_sounds_like_somebody_stays(line: str) -> None:
    assert line in shown(line)


def test_a_name_ends_with_its_sentence() -> None:
    assert "We had tea with …. The Arch is full." in shown("We had tea with Gerda. The Arch is full.")
