"""Crops as they are often misspelt, clipped or heard: each form means one crop and nothing else.

Part of the second table. A slip that is not here, or could be another word, is asked about. Forms are
common practice, no source.
"""

from __future__ import annotations

from leafmould.values.names import fold, fold_word

ROWS = """
aubergine | aubergeen aubergin aubegine aubergene aubergines aub
artichoke | articoke artichoak artichoc
asparagus | asparagas asparagrass asperagus aspargus asparagu
basil | basel bazil bazel
beetroot | beatroot betroot beetrot beteroot beetrute
blackberry | blackbery blackberrie
blackcurrant | blackcurrent blackcurant
blueberry | blubery blueberrie bluebery
broad bean | broadie broady broadbean
broccoli | brocolli brocoli brocolie broccolli brocc brocolly broccolie brocholi brockly brocly
brussels sprout | sprts brussell brussle brusel brusell brussles
butternut squash | butternutt
cabbage | cabage cabbige cabbidge cabag
carrot | carot carrott carrit carret carrotte
cauliflower | cauliflour cauliflowr coliflower caulifower cauliflwer cauly caulis
celeriac | celeraic celiriac celleriac
celery | cellery celary celry selery
chard | chared
chilli | chillis chilis chille chilles
chives | chivs chieves
coriander | corriander coriender coriandar
courgette | cgette cgettes courgs corgette courget corguette corgete courgete courgett corgettes courgets corget courgettte corjets corjet curgette cougette
cucumber | cucmber cucumbr cucamber cucumer cuecumber cucumbar cucs quecumber cowcumber cucember
fennel | fennle fenel
garlic | garlick garlc galic
gooseberry | gooseberrie goosebery gooseburry goosegob
jerusalem artichoke | fartichoke
kale | kail kayle
kohlrabi | colrabi kolrabi kohlraby
lavender | lavendar lavander
leek | leeck
lettuce | letuce lettice lettus letucce lettce lettuse lett letice lettcue letteces
mangetout | mangetoute mangetou mangtout
marrow | marow marro
onion | onoin onin onyon oinion
oregano | oregeno origano
parsley | parsly parsely parsleys
parsnip | parsnp parsnep parnsip parsnups parsinp
pea | peaes
pepper | peper pepers peppar capsicums capsicm
potato | potatoe potatos potatoes potaoes pottato potatoe potatto patato spudz
pumpkin | pumkin punkin pumpkn pumpin pumkpin
purple sprouting broccoli | psb
radish | raddish radis radishs raddishs
raspberry | rasberry rasbery raspbery rasberrie raspberrie razberry rasbry raspbury rasberries
rhubarb | rubarb rhubard rubharb rhubarbe rhurbarb rhubarp
rosemary | rosmary rosemarry
runner bean | runnerbean runer
shallot | shallott shalot shallet
spinach | spinich spinnach spinage spinatch spinnich spinch spinash
spring onion | springonion
squash | sqash squach skwash
strawberry | strwb strwbs strawbery strawberrie stawberry strawbrry strawberies straberry strawbs strawby strawbry strawbury strawburys strawburies
swede | swead sweed
sweet corn | sweetcorm swetcorn sweatcorn
thyme | thime
tomato | tomatoe tomatos tomatoe tomatoes tomatto tomtao tometo tomate tomatoo tommato toms tommies tommys toma
turnip | turnep
zucchini | zuchini zuccini zucchinni zuchinni zukini zuchinis zucini zukes zuccinni
"""
"""crop | forms, one word each."""

SPELLINGS = {
    fold_word(form): crop
    for crop, forms in (map(str.strip, row.split("|")) for row in ROWS.strip().splitlines())
    for form in forms.split()
    if (fold_word(form),) != fold(crop)
}
SPELLINGS |= {
    f"{fruit}{end}": f"{fruit}berry"
    for fruit in ("straw", "rasp", "goose", "black", "logan", "tay", "blue", "mul", "elder")
    for end in ("bury", "bery", "burry", "berr", "barry")
} | {f"ras{end}": "raspberry" for end in ("bury", "bery", "burry", "berr", "berry")} | {f"black{end}": "blackcurrant" for end in ("current", "curant", "curren", "currents")} | {
    f"red{end}": "redcurrant" for end in ("current", "curant", "curren", "currents")
}  # fmt: skip
"""Folded form -> a name to look up, as LOCAL_NAMES has them."""
