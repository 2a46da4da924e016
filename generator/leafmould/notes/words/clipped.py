"""Words cut short, as they are typed in haste: "cgettes", "bns", "hds"; and what they stand for.

Read by `clipped` alone. What anybody would type for something else stands here only where it means one thing at
the beginning of a deed, or as it is written. Forms are common practice, no source.
"""

from __future__ import annotations

ROWS = """
picked | pckd pikd
sowed | swd
planted | pltd plnt'd po'd p/od
transplanted | tpd tplntd trnspltd tplanted
harvested | hvst hvstd hrvst hrvstd harvstd
lifted | lftd
blanched | blchd blnchd
froze | frzd
fed | fd
weeded | wdd wded
mulched | mlchd
pinched | pnchd
courgette | cgette cgettes cgts crgettes crgts courges
strawberry | strwb strwbs strbs sberries
raspberry | rspb rspbs raspbs
bean | bns
sprout | sprts sprt
cabbage | cabs cabb cabbs
carrot | carrs crts
onion | ons onis
radish | rads rad
lettuce | letts lett lettc ltc
garlic | gar garl
tomato | tms tomas
pepper | pepps
parsnip | psnips psnip
broad | brd
french | fr frch
green | grn
spring | sprg spr spg
sweetcorn | swtcrn swcorn
gooseberry | gsebs goosebs
blackcurrant | blkcurrants bcurrants bcurrant
redcurrant | rcurrants rcurrant
head | hd hds
bag | bg bgs
jar | jr jrs
bunch | bch bchs bnch bnchs
punnet | pun puns punn punns pnts
stick | stk stks
row | rw rws
bowl | bwl bwls
basket | bskt bskts
box | bx bxs
handful | hndfl hanful hanfull handfl hfl
bucket | bkts bkt bckt bckts
north | nth norf
south | sth
week | wk
runner | runer runers runr
plum | plumbs
module | mods mod
seedling | sdlgs sdlngs seedlngs
compost | comp
each | ea
divided | div'd divd
tied | tyed
brought | brot brung
first | furst frst
again | agen agin
half | haf harf
about | bout abot
under | undr
jam | jm
chutney | chut chutn
honey | hny
"""
"""word | how it is typed; an "s" behind stands in the table where it is typed."""

CLIPPED = {
    form: word
    for word, forms in (map(str.strip, row.split("|")) for row in ROWS.strip().splitlines())
    for form in forms.split()
}

BEFORE_BEANS = frozenset({"fr", "brd", "frch"})
"""These are what they are only before beans: "fr beans" are French, "fr the shed" is from there."""
BEFORE_ONIONS = frozenset({"spr", "spg"})
"""And these only before onions."""
BEFORE_AMOUNTS = frozenset(
    {"ons", "rads", "cabs", "carrs", "gar", "pun", "puns", "rad", "lett", "mod", "bout", "div"}
)
"""These stand for a crop or a measure only beside an amount."""

BEHIND_DEEDS = {"ot": "out", "otu": "out", "oot": "out", "ont": "on", "onn": "on", "upp": "up"}
"""These are the second half of a deed: "pricked ot"."""
OPENING = {
    "sw": "sowed",
    "po": "planted",
    "tp": "transplanted",
    "pk": "picked",
    "lft": "lifted",
    "ho": "hardened",
    "pl": "planted",
    "bt": "bought",
    "wd": "weeded",
}
"""What begins a deed, before a number or a crop; elsewhere it is a side, a sound, nothing."""
