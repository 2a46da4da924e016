"""The second table: units, count nouns, parts of beds, and the things that verbs have to do with.

All words stand here as a gardener writes them and are folded once, on import.
"""

from __future__ import annotations

from leafmould.values.names import fold, fold_word
from leafmould.values.quantities import GRAMS, Whole


def _words(text: str) -> frozenset[str]:
    return frozenset(fold_word(word) for word in text.split())


def _phrases(text: str) -> frozenset[tuple[str, ...]]:
    return frozenset(fold(phrase) for phrase in text.split(";"))


UNIT_ROWS = """
g | g gm gms gr gram gramme grm grms grams gramms
kg | kg kgs kilo kilogram kilogramme kgm
oz | oz ounce ozs
lb | lb lbs pound #
dag | dag dkg decagram dekagram deka
hg | hg hectogram
t | t tonne
stone | stone
cwt | cwt hundredweight
ml | ml mls millilitre milliliter
cl | cl centilitre centiliter
dl | dl decilitre deciliter
l | l lt ltr ltrs litre liter
mm | mm millimetre millimeter
cm | cm centimetre centimeter
m | m metre meter mtr
in | in inch ins "
ft | ft foot feet '
yd | yd yds yard
pint | pint pt pts
quart | quart qt qts
gallon | gallon gal gals
cup | cup
bushel | bushel
m² | m2 m² sqm
°C | c °c celsius
°F | f °f fahrenheit
tbsp | tbsp tablespoon
tsp | tsp teaspoon
% | percent
"""
"""unit | how it is written. A bare "in" counts only where "apart", "long" or the like follows."""

UNITS = {
    (fold_word(word) or word): unit
    for unit, words in (map(str.strip, row.split("|")) for row in UNIT_ROWS.strip().splitlines())
    for word in words.split()
}

WEIGHTS = frozenset(GRAMS)
VOLUMES = frozenset({"ml", "cl", "dl", "l", "pint", "quart", "gallon", "cup", "bushel", "tbsp", "tsp"})
LENGTHS = frozenset({"mm", "cm", "m", "in", "ft", "yd", "row"})

PLANT_NOUNS = _words(
    """plant seedling set clove tuber crown plug start starter slip sucker runner cane bush tree bulb bulbil
    corm transplant plantlet root stem rooted rhizome babies baby sapling whip division offset chit tip scion graft runner layer maiden seed-potato"""
)
PICK_NOUNS = _words(
    """head bunch ear cob pod hill shaw fruit spear stalk stick leaf bulb root truss floret berry flower sprig nut
    piece hand"""
)
HOLDERS = _words(
    """packet pack pkt pkts jar bag tray punnet basket rope kilner bucket box crate colander bowl trug bin sack tub
    barrow barrowful wheelbarrow wheelbarrowful bowlful bucketful basketful handful armful bagful panful pan
    pot plate tin can bottle boxful carton container tupperware case load bucketload trailer trolley netful flat cell
    module pail boxes bale shovel spadeful watering wheelbarrowload serving portion meal helping salad pickings
    picking string plait braid clump layer scoop dose pinch drop strip block square side-of quarter hatful
    bundle wreath swag capful boatload carload boatful shopping-bag carrier crock mug jug saucepan dish pouch cupful
    teaspoonful tablespoonful spoonful basin fistful hatbox stein ladle thimbleful thimble demijohn churn creel pannier hessian skep washbasin washtub
    sheet roll peck armload barrowload wheelbarrowload carrierbag bunchful hamper pallet hod firkin punnetful potful sackload truckload tubful trugful crateful trayful sackful jarful kettle ton quintal zentner catty gill dram cube dollop squirt"""
)
COUNT_NOUNS = (
    PLANT_NOUNS
    | PICK_NOUNS
    | HOLDERS
    | _words("row line drill station patch seed cutting hen egg bed cocoon frame super")
)
SAME_NOUN = {"line": "row", "drill": "row", "pack": "packet", "pkt": "packet", "pkts": "packet", "barrowful": "barrow", "barrowload": "barrow", "wheelbarrowload": "barrow", "armload": "armful", "wheelbarrow": "barrow",
             "wheelbarrowful": "barrow", "bucketful": "bucket", "basketful": "basket", "bowlful": "bowl", "boxful": "box", "bagful": "bag"}  # fmt: skip
"""Counted nouns that mean the same."""
NOT_ALONE = _words(
    "start set root whip plug can pot tub box picking handful"
)  # ordinary words without a number

SIZES = _words(
    "more whole full big small large good little heaped fat decent huge further nice of medium giant level young tiny short long wee double single triple staggered hardwood softwood kilner mason semi heel basal bare brown paper carrier rooted overflowing packed"
)
"""May stand between a number and its noun: "3 short rows"."""

VAGUE_ROWS: dict[Whole, str] = {
    "all": """
        all; all of; all the; all of the; all my; every; every one of; every one of the; every one of my; every single; every single one of; every single one of the; the lot; lot; the whole lot; whole lot; them all;
        all of it; all of them; the whole; whole; all our; every last; entire
    """,
    "the rest": """
        the rest; rest; the rest of; rest of; remaining; the remaining; remainder; the remainder; the other one; the rest
        of the; rest of the; the remainder of; the others; what was left of
    """,
    "the last": """
        last; the last; last of; the last of; last of the; the last of the; last few; the last few; the very
        last; last lot of; the last lot of; the last lot of the; the last batch of; last remaining; final; the final; the last remaining
    """,
    "half": """
        every other; every other one of; every other one of the; every second; every second one of; every second one of the; alternate;
        half; half of; half the; half of the; about half; half my; about half the; about half of; half of
        my; half our; about half of the; half of them; half of it
    """,
    "some": """
        most; most of; most of the; almost all; nearly all; almost all the; nearly all the; nearly all of;
        some; some of; some of the; some more; plenty; plenty of; lots; lots of; loads; loads of; a lot of;
        a load of; lots more; loads more; tons of; heaps of; masses of; a lot; a good lot of; an awful lot
        of; oodles of; many; so many; various; tonnes of; stacks of; piles of; zillions of; hundreds of; dozens of; a bit of; a little; a bit; a small amount of; some of it;
        some of them; umpteen; a glut of; a bumper crop of; a mountain of; a pile of
    """,
    "a few": """
        a good couple of; a good couple; a good many; a fair few; a decent few;
        a few; few; several; a few more; a couple; a couple of; couple of; a couple more; few more; a good
        few; quite a few; a few of; a few of the; a couple of the; a number of; several more; the first few;
        first few; the odd; one or two; two or three
    """,
}
VAGUE: dict[tuple[str, ...], Whole] = {
    fold(words): whole for whole, row in VAGUE_ROWS.items() for words in row.split(";")
}
"""Words instead of a number."""
LONGEST_VAGUE: dict[str, int] = {}
for _vague in VAGUE:
    LONGEST_VAGUE[_vague[0]] = max(LONGEST_VAGUE.get(_vague[0], 0), len(_vague))

NUMBERS = {
    word: number
    for number, word in enumerate(
        [
            "zero",
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "thirteen",
            "fourteen",
            "fifteen",
            "sixteen",
            "seventeen",
            "eighteen",
            "nineteen",
            "twenty",
        ]
    )
} | {
    "thirty": 30,
    "forty": 40,
    "fifty": 50,
    "sixty": 60,
    "seventy": 70,
    "eighty": 80,
    "ninety": 90,
    "hundred": 100,
    "another": 1,
    "a": 1,
    "an": 1,
}
TENS = _words("twenty thirty forty fifty sixty seventy eighty ninety")
ORDINALS = _words("first second third fourth fifth sixth last 1st 2nd 3rd 4th 5th 6th")

PART_SIDES = _words(
    """north south east west top bottom left right front back middle centre center near far upper lower
    northern southern eastern western inner outer sunny shady lefthand righthand northeast northwest southeast
    southwest ne nw se sw n s e w nearest furthest first second third fourth other foot head central high low
    left-hand right-hand n.e half back-half whole"""
)
PART_ENDS = _words(
    "half end row side third corner quarter section bit part edge strip bay tier shelf level patch square step"
)
PART_ALONE = _words("north south east west top bottom left right front back middle centre center foot")
PART_COUNTED = _words(
    "tree row plant cane bag pot position bay post square cell station bush shelf line tier step third half level block ring cordon module section"
)

PLACE_NOUNS = _words(
    """bed border tub row frame patch pot plot box container planter trough tunnel polytunnel greenhouse
    glasshouse hothouse hoop house barrel bag sack corner terrace mound field garden orchard hedge wall
    fence bank basket windowbox bath sink bucket conservatory porch arch trellis allotment strip square
    bay balcony shed crate hugel bin coldframe tank drum urn raised-bed keyhole pergola arbour arbor
    potager cloche lean-to nursery seedbed holdingbed spiral rockery circle pen"""
)
"""An unknown place that ends in one of these is a new bed."""
SOON_PLACES = _words("windowsill sill propagator airing cupboard kitchen fridge freezer cellar garage shed loft attic "
                     "pantry larder house lounge utility conservatory basement sand ground soil compost water "
                     "rain sun shade evening morning afternoon dark drizzle heat wind frost hurry end time "
                     "week year block line total all situ turn between spring summer autumn fall winter flower full "
                     "blocks pairs drill drills trench trenches group groups bloom blossom bud leaf fruit store oven "
                     "cardboard newspaper paper moss straw vinegar oil salt syrup brine jars bags tubes toilet roll "
                     "rolls guttering gutter root trainers trainer modules module cells cell plugs tray trays pot "
                     "pots peat coir rows row holes hole stages batches batch clump clumps station stations lot "
                     "case stock office bathroom bedroom room day night market shop supermarket "
                     "tent grow lights light home")  # fmt: skip
"""Where things stand or lie that is no bed: always a remark, unless the garden knows a bed of that name."""

RAISED_IN = _phrases(
    """indoors;indoor;inside;under glass;on the windowsill;on windowsill;on the window sill;on sill;on the sill;in the
    propagator;in propagator;in a propagator;in heated propagator;in the heated propagator;in modules;in module trays;in cells;in cell
    trays;in seed trays;in seed tray;in a seed tray;in plugs;in plug trays;in root trainers;in roottrainers;in rootrainers;in soil blocks;
    in the airing cupboard;in airing cupboard;on heat mat;on the heat mat;on a heat mat;under lights;under grow lights;under
    the lights;in the kitchen;in the house;in the conservatory;in conservatory;in trays;in a tray;in loo rolls;in toilet
    rolls;in toilet roll tubes;in small pots;in little pots;in 9 cm pots;in 7 cm pots;in 3 inch pots;in solo cups;in winter sow jugs;in milk
    jugs;in gutter;in gutters;in guttering;on bottom heat;with bottom heat;in grow tent;in the grow tent;in cell packs;in six packs;in a cell tray;in seed
    flats;in flats;in a flat;in soil blocks;in paper pots;in newspaper pots;in yoghurt pots;in coir pots;in jiffy pots;in pots indoors;to
    germinate indoors;in modular trays;in half trays;in a half tray;in half tray"""
)
"""Behind "sowed" these make it "started"."""
LONGEST_RAISED = max(map(len, RAISED_IN))

UNDER_COVER = _phrases(
    "under cover;undercover;under fleece;under a cloche;under cloches;under cloche;under hoops;under glass;under plastic;"
    "under mesh;under netting;under net;under nets;under a tunnel;under tunnels;under poly;under row cover;under rowcover;under bottles;"
    "under a net;under enviromesh;under low tunnel;under a low tunnel;under low tunnels;under a fleece;under cut bottles"
)

TROUBLES = _words(
    """something slug snail pigeon pigeons aphid greenfly blackfly whitefly rabbit deer mice mouse rat vole squirrel bird
    blackbird sparrow pheasant badger fox hedgehog caterpillar butterfly moth beetle weevil thrip mite spider ant
    wasp earwig woodlouse woodlice cutworm wireworm chafer leatherjacket eelworm nematode sawfly rootfly
    blight mildew rust botrytis rot canker scab curl clubroot virus mosaic wilt damping frost cold wet wind gale hail storm
    heat drought scorch flood rain neglect thirst cat dog chicken duck groundhog gopher chipmunk raccoon hornworm
    borer leafminer miner psyllid sawfly bug stinkbug fly flies grub maggot larvae eggs-of locust grasshopper
    disease fungus mould mold spot blackspot chlorosis deficiency sunburn sunscald splitting tipburn woodpigeon
    crow jay magpie jackdaw mole toad frog ladybird ladybug hoverfly lacewing bee bumblebee bees gremlin vandal
    thief thieves hare porcupine possum wallaby kangaroo bandicoot cockatoo parrot monkey boar peacock turkey armadillo cockie cocky cockies galah lorikeet corella roo currawong pukeko weka earwigs budgie
    ewe sheep lamb goat cow calf horse pony bullock heifer rook silvereye fieldmouse tortoise hen-harrier waterlogging pigeon's ice snow weather hungry-gap moths swift marten dove starling"""
) - {"mildew's"}
"""Pests, diseases and weather: what is seen, and what losses are due to."""
HELPERS = _words("toad frog hedgehog ladybird ladybug hoverfly lacewing bee bees bumblebee")
"""Seen, and no trouble."""

HENS = _words("hen chicken chook bantam pullet duck goose geese girl cockerel pig quail rooster")
EGGS = _words("egg")
HONEY = _words("honey comb honeycomb beeswax")
HIVE = _words("hive bee colony nuc super brood")
SEEDS = _words("seed")
COVERS = _words("fleece net netting mesh enviromesh cloche cover bell hoop tunnel plastic polythene glass tarp cardboard "
                "membrane blanket veggiemesh agrofleece bottle sheet tarpaulin lid rowcover row-cover shade shadecloth cloth")  # fmt: skip
NETS = _words("net netting")
SUPPORTS = _words(
    "stick pole cane stake trellis support beanpole wigwam teepee wire twine string hazel arch cage obelisk frame"
)
MULCHES = _words(
    "mulch straw bark woodchip chip compost leafmould leafmold hay clipping mulching cardboard chippings bracken seaweed wool leaf leaves strulch sugarcane bagasse sawdust shaving shredding coir"
)
MANURES = _words("manure muck dung poo droppings litter midden")
LIMES = _words("lime")
FEEDS = _words("brew bone emulsion seasol liquid feed fertiliser fertilizer tea comfrey bonemeal bfb pellet seaweed nettle potash nitrogen tomorite growmore food ash blood "
               "phosphate sulphate epsom")  # fmt: skip
PELLETS = _words("pellet pelet pellett trap bait collar")
DRINKS = _words("drink rainwater water soak soaking watering drench dousing")
TRIMS = _words("trim prune pruning haircut cut")
HOES = _words("weed weeding hoe hoeing")
AMENDMENTS = (
    MULCHES | MANURES | LIMES | FEEDS | _words("green trenches rye vetch phacelia clover mustard cover")
)
ROOTS = _words("potato carrot parsnip beetroot beet onion garlic shallot leek artichoke turnip swede rutabaga celeriac radish salsify "
               "scorzonera oca horseradish kohlrabi spud tatties tattie tater yacon sunchoke skirret peanut daikon ulluco mooli new early earlies maincrop ginger turmeric bulb tuber")  # fmt: skip
TREATMENTS = _words(
    "bt spinosad kaolin diatomaceou diatomaceous sulphur sulfur bordeaux soap soapy neem derris pyrethrum pyrethrin copper fungicide insecticide spray nematode garlicspray milk bicarb"
)
"""Put on against pests and diseases."""
FURNITURE = _words(
    "pole netting net stick cage frame support string wigwam trellis cane ladder label box hoe store tunnel cloche growbag bag planter tripod teepee"
)
"""Behind a crop these are no part of it: "cleared the bean poles"."""
CANE_FRUIT = _words("raspberry blackberry loganberry tayberry boysenberry cane fruit raspberrie")
COVER_CROPS = _words("manure phacelia vetch comfrey nettle clover")
CANES = _words("cane wood branch shoot stem leader deadwood")
TOPS = _words("top haulm foliage stem growth vine")
WRAPPINGS = _words("packet label bag pot seed box wrapper old")
STRUNG = _words("onion garlic shallot chilli pepper")
SUCKERS = _words("sideshoot shoot sucker tip growing-tip")
LEAVES = _words("leaf leaves foliage branch growth")
WEEDS = _words(
    "weed bindweed docken dock dandelion nettle couch groundelder thistle chickweed bittercress glory horsetail bramble groundsel"
    " cleaver goosegrass fathen crabgrass quackgrass pigweed"
)
PRODUCTS = _words(
    """sauce jam jelly chutney pickle relish juice wine soup pesto passata puree ketchup cordial syrup cider
    vinegar cheese crumble pie cake bread gin vodka sauerkraut kraut kimchi salsa paste curd butter powder crisp compote
    leather liqueur fruit-leather stew curry marmalade stock piccalilli"""
)
THINGS = _words(
    "tape band tea liquid feed food fertiliser fertilizer cage stick pole support net netting label compost bag tray pot spray manure twine frame knife fork ring halo planter sauce tunnel"
)
"""Behind a crop these make it a thing of another kind: "tomato feed"."""

LOCAL_NAMES = {
    "tom": "tomato", "tommie": "tomato", "tommy": "tomato", "tomatoe": "tomato", "spud": "potato", "tattie": "potato",
    "tater": "potato", "potatoe": "potato", "earlie": "potato", "maincrop": "potato", "strawb": "strawberry", "strawbs": "strawberry", "rasp": "raspberry", "raspb": "raspberry",
    "courg": "courgette", "appl": "apple", "zuke": "zucchini", "zuch": "zucchini", "zuc": "zucchini", "zucc": "zucchini", "cuke": "cucumber", "cuc": "cucumber", "cue": "cucumber", "caulie": "cauliflower", "cauli": "cauliflower",
    "brocc": "broccoli", "broc": "broccoli", "psb": "purple sprouting broccoli", "sprout": "brussels sprout", "brussel": "brussels sprout",
    "beet": "beetroot", "squashe": "squash", "pep": "pepper", "capsicum": "pepper", "chilly": "chilli", "chil": "chilli", "chili": "chilli", "chile": "chilli", "chillie": "chilli", "chilie": "chilli",
    "caper": "pepper", "cayenne": "chilli", "serrano": "chilli", "poblano": "chilli", "habanero": "chilli", "padron": "pepper", "shishito": "pepper", "toma": "tomato", "pot": "", "letuce": "lettuce", "gooseg": "gooseberry", "goosegog": "gooseberry", "rhub": "rhubarb", "parsley": "parsley",
    "cilantro": "coriander", "coriander": "cilantro", "eggplant": "aubergine", "aubergine": "eggplant", "zucchini": "courgette", "courgette": "zucchini", "rocket": "arugula",
    "arugula": "rocket", "swede": "rutabaga", "rutabaga": "swede", "scallion": "spring onion", "sweetcorn": "sweet corn", "corn": "sweet corn",
    "mangetout": "pea", "chard": "swiss chard", "silverbeet": "swiss chard", "sybo": "spring onion", "syboe": "spring onion", "neep": "swede", "nep": "swede", "caps": "pepper", "snowpea": "mangetout", "onion set": "onion", "blackcurrant": "black currant", "redcurrant": "red currant", "parship": "parsnip", "snip": "parsnip",
    "beetroot": "beet", "broad": "broad bean", "runner": "runner bean", "french bean": "bean", "fava": "broad bean", "cabb": "cabbage", "raspberrie": "raspberry",
}  # fmt: skip
"""Short and local words, where the garden's own names have none: folded word -> a name to look up."""

STRAWBERRIES = _words("strawberry strawb strawbs strawberrie")
"""Beside these a runner is no bean."""
SELDOM_VARIETY = _words(
    """each both every stuff veg veggie vegetable thing bit everything lots come again twice once thoroughly lightly heavily deeply direct outside outdoors indoors inside thinly thickly straight out up thinning trimming leftover them it that this those these
    herself himself us me ourselves down away back off together separately too later before long
    a an the my our your his her their some any more most many much few little bit of first last next new old
    big bigger biggest small smaller smallest huge tiny enormous large medium lovely nice good great best better
    bad poor sad late later early young baby spare extra leftover remaining surplus same other another final only just ripe unripe green
    red yellow white purple black orange pink golden dark fresh dried dry wet home-grown homegrown own organic
    giant slow overnight mini monster whole half several various mixed assorted healthy strong leggy weak sickly stunted split
    damaged bolted dead dying forced overwintered overwintering wintered autumn spring summer winter fall salad pot indoor
    outdoor climbing dwarf bush pole maincrop main second third fourth early-crop tender sweet bitter hot mild wild
    pelleted rotted self-sown self sown volunteer saved bought shop free apart lots beautiful gorgeous decent proper perfect fat thin long
    short round straggly straggling crop crops crunchy tasty delicious yummy manky wonky slug-eaten eaten nibbled wormy
    tired sorry rotten mouldy moldy soft hard cracked bendy curly flat rather very really quite so too not no
    quick another's everyone today tonight yesterday now again finally already still also then about around
    bumper grand total further garden kitchen heritage bare maiden cordon espalier heirloom grafted potted rooted bare-root bareroot plug potting seedling plants
    lone single double pretty super sprouting sprouted chitted stray second-hand random odd last-minute decent-sized good-sized weedy and or
    with in on at to from for by it they them we i you he she was were is are be been did do done had has have
    windfall windfalls weight weighing worth tomorrow less fewer minus anyway anyhow though standing var cv variety mix morning evening afternoon lunch lunchtime tea supper dinner"""
)
"""Plain describing words beside a crop: never "perhaps a variety"."""

FRACTION_WORDS = frozenset("½⅓⅔¼¾⅛⅜⅝⅞") | _words(
    "about around another x kg g each both of or to only st nd rd th roughly nearly"
)
"""Small words and signs that belong to amounts."""
