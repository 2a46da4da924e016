"""The first table: verbs, the slots they take, and every form they are written in.

One row an action: its name, its slots, the past forms, the plain forms (an intention: "sow", "to sow").
A form that means different things beside different objects ("cut", "fed", "gave") stands in SENSES with
what it needs beside it. The matcher in `clauses` and `slots` reads these tables and knows no verb itself.

Slots: crop! needs a crop · some! needs a crop or a place · crop takes one · bed may stand on a bed alone · place takes places · new an
unknown place after in, into, from makes a new bed · with takes "with straw" · object takes free words ·
larder keeps its places as remarks · seller reads "from" as who sold it · to reads "to" as the cause of a
loss · raise reads "from" as where it was raised · fate may be the fate of a picking in the same line.
"""

from __future__ import annotations

from dataclasses import dataclass

from leafmould.notes.words.families import FAMILY_PARTICLES, FAMILY_SENSES
from leafmould.notes.words.meanings import PARTICLES, SENSES
from leafmould.values.names import fold


@dataclass(frozen=True, slots=True)
class Verb:
    """One action and what it takes."""

    name: str
    slots: frozenset[str]


ROWS = """
started | crop! place new raise seller | started; restarted; started off; started indoors; sowed indoors; sown indoors; sowed inside; seeded indoors; planted indoors; sowed under glass; sown under glass; set off; got going | start; start off; sow indoors
sowed | crop! place new raise seller | sowed; sown; sew; sewed; seeded; direct sowed; direct sown; direct seeded; directly sowed; sowed direct; sowed out; sowed outside; sowed outdoors; sown out; sown outside; sown outdoors; broadcast; broadcasted; drilled; station sowed; over seeded; undersowed; undersown; succession sowed; did a sowing of; put down seed | sow; seed; direct sow; direct seed; sow out; succession sow
resowed | crop! place new raise seller | resowed; resown; re sowed; re sown; reseeded; re seeded; over sowed; filled gaps with; filled the gaps with; gapped up | resow; re sow; reseed
came up | crop some! place | came up; come up; coming up; came through; come through; coming through; germinated; had sprouted; have sprouted; had germinated; had come up; germinating; have germinated; sprouted; sprouting; emerged; emerging; poking through; popped up; popping up; peeking through; showing; appeared; broke ground; broke the surface; put in an appearance; broken the surface; broken ground; broken through; made an appearance; made its appearance; shown themselves; shown itself; nosing through; nosed through; poked through; pushed through; pushing through; peeping through; peeped through; poking up; pushing up; breaking through; breaking the surface; burst through; surfaced; made it through | come up; germinate; emerge
pricked out | crop! place new | pricked out; pricked off; pricked on | prick out
potted on | crop! place new | potted on; potted up; potted; up potted; uppotted; repotted; re potted; bumped up; moved on; stepped up; potted off | pot on; pot up; repot; up pot
hardened off | crop! place new | hardened off; hardening off; put out to harden off; set out to harden; set out to harden off; put out to harden; hardened | harden off
planted | crop! place new raise seller | planted; planted out; planted up; transplanted; transplanted out; set out; put in; put out; plugged in; bedded out; bedded in; popped in; stuck in; tucked in; heeled in; dibbed in; replanted; re planted; interplanted; underplanted; went in; gone in; went out; set in; got in the ground; got in | plant; plant out; transplant; set out; put in
grew | crop! place new | grew; grown; had grown; raised; was growing; were growing; is growing; are growing; growing | grow
covered | bed crop place with | covered; covered over; covered up; recovered; cloched; tunnelled; tunneled; fleeced; wrapped; wrapped up; tucked up; mesh over; meshed; closed the lid on; put the lid on | cover; fleece; cloche
uncovered | bed crop place with | uncovered; unwrapped; unfleeced; took covers off; took the covers off; took the cover off; took cover off; aired; ventilated; unnetted; un netted; opened the lid on | uncover
netted | bed crop place with | netted; re netted; renetted; caged; put nets over; put a net over; put the net over; put the nets over; put net over | net
thinned | crop some! place | thinned; thinning of; first thinning of; second thinning of; thinned out; singled | thin; thin out
weeded | bed crop place | weeded; weeding of; hoeing of; wed'd; weeded out; hand weeded; handweeded; hoed; hoed through; hoed between; hoed round; hoed around; weeded round; weeded around; weeded between; pulled weeds; did the weeding; de weeded | weed; hoe
watered | bed crop place with | watered; watering of; watered in; soaked; irrigated; drenched; hosed; hosed down; sprinkled; gave a drink; watered well; deep watered; hand watered; ran the drip on; ran drip on; ran the hose on | water; irrigate
staked | bed crop place with | staked; staked up; caned; supported; propped; propped up; trellised; stringed; strung; strung up; put canes in for; put canes up for; put sticks in for; put stakes in for; pea sticked | stake; support
tied in | bed crop place with | tied in; tied up; tied; tied back; trained; tied down; retied | tie in; tie up
pinched out | bed crop place | pinched out; side shoots out; sideshoots out; side shoots off; sideshoots off; tips out; tips off; growing tips out; growing tips off; suckers off; suckers out; pinched; pinched off; pinched back; side shooted; sideshooted; desuckered; suckered; de suckered; stopped; tipped; topped; nipped out; took out sideshoots; took out the sideshoots; took out side shoots; took sideshoots off; took side shoots off; rubbed out | pinch out; stop
earthed up | bed crop place with | earthed up; earthing up of; first earthing up of; second earthing up of; earthed; hilled; hilled up; ridged; ridged up; mounded; mounded up; banked up | earth up; hill; hill up
mulched | bed crop place with | mulched; mulching of; re mulched; mulched up; strawed; strawed down; sheet mulched; bark mulched; put mulch on; put down mulch on; put straw under; put straw round; put straw around; put straw on; put compost on | mulch
fed | bed crop place with | fertilised; fertilized; side dressed; sidedressed; top dressed; topdressed; foliar fed; liquid fed; manure tea'd | feed; fertilise; fertilize; side dress
limed | bed crop place with | limed; put lime on; sweetened | lime
acidified | bed crop place with | acidified; sulphured; sulfured | acidify
manured | bed crop place with | manured; mucked; barrowed; carted; put manure on; dunged; spread manure on; spread muck on | manure
dug in | bed crop place with | dug in; forked in; turned in; dug under; turned under; chopped in; rotavated in; rototilled in; worked in; raked in | dig in; turn in; fork in
pruned | crop some! place | pruned; leaves off; yellow leaves off; lower leaves off; bottom leaves off; dead leaves off; old leaves off; leaves came off; prune of; winter prune of; summer prune of; hard prune of; pruning of; winter pruning of; summer pruning of; trim of; pruned back; hacked back; snipped back; lopped; lopped back; thinned out branches of; pruned out; cut back; cut down; trimmed; trimmed back; clipped; clipped back; sheared; dead headed; deadheaded; hard pruned; summer pruned; winter pruned; pollarded; coppiced; cut to the ground; took back; headed back; spur pruned; chopped back | prune; cut back; trim; deadhead; summer prune; winter prune
bagged | crop some! place with | bagged; put bags on; sleeved | bag
grafted | crop place | grafted; whip and tongue grafted; whip grafted; cleft grafted; side grafted; bench grafted; saddle grafted; bark grafted; budded; bud grafted; top worked | graft
divided | crop! place new | divided; divided up; split; split up; lifted and divided | divide; split
moved | crop place new | moved; came inside; came indoors; came in for the winter; went inside; went indoors; came under cover; shifted; relocated; wheeled; carried; brought indoors; brought inside; brought under cover | move; shift
took cuttings | crop! place new | took cuttings; taken cuttings; took cuttings of; took cuttings from; took a cutting; took a cutting of; took a cutting from; took some cuttings; rooted; struck; struck cuttings; struck cuttings of; layered; pegged down; pegged down runners; pegged; pegged runners; took slips | take cuttings; layer
saved seed | crop! place | saved seed; saved seed from; saved seed of; saved seeds; kept seed; kept seed from; kept seeds from; gathered seed; gathered seed from; threshed; threshed seed | save seed
turned out | crop place object | turned out to be; turn out to be; turned out; turns out to be; proved to be; is in fact; was in fact; are in fact; were in fact; is actually; are actually; was actually; were actually; must have been |
picked | crop! place new | picked; salvaged; rescued; up and strung; up and drying; up and hanging; up and plaited; up and dried; up and curing; up and cleaned; gathered up; collected up; harvested; howked; bandicooted; grubbled for; gathered; gathered in; lifted; pulled; reaped; plucked; harvest of; snipped; brought in; got a picking of; had a picking of; had first picking of; snapped off; foraged; picking of; cropped; hand picked; dug out; snapped; cut and came again; first pick of; first picking of; first harvest of; first pickings of; pickings of; pick of; last pick of; last picking of; final pick of; final picking of; second pick of; second picking of; another pick of; another picking of | pick; harvest; gather; pull; lift
finished | crop some! place | finished picking; stopped picking; finished harvesting; done picking; finished; finished for the year; finished now; all finished; all over; all done; done; is over; are over; going over; gone over; went over; petered out; stopped cropping; finished cropping; finished producing; stopped producing; came to an end; died down; died back; gave up; have had it; has had it; had it; packed up; over and done with |
cleared | bed crop place | cleared; cleared out; cleared away; pulled up; pulled out; yanked; yanked out; yanked up; ripped out; ripped up; tore out; tore up; grubbed up; grubbed out; rooted out; emptied; emptied out; stripped; stripped out; took up; taken up; taken out; cut out; chopped down; felled; removed all; got rid of; hoiked out; hauled out; turfed out | clear; pull up; pull out; grub out; clear out
lost | crop some! place to | lost; lost to; knocked down; died; have died; dead; rotted; rotted off; failed; failed to germinate; failed to come up; did not come up; didn't come up; damped off; drowned; withered; killed; killed off; killed by; was killed by; were killed by; keeled over; eaten by; destroyed by; taken by; wiped out; wiped out by; perished; nothing came up; none came up; none germinated; nothing germinated; didn't germinate; did not germinate; didn't make it; did not make it; did not survive; didn't survive; kicked the bucket; gave up the ghost; no sign of life from; frosted off; got eaten by; got eaten; got frosted; succumbed to; succumbed; collapsed; flattened; flattened by; trampled; trampled by; blown over; blown over by; took down; snapped off by; nicked by; stolen by; gone; shrivelled; shriveled; munched by; decimated by; ruined by; finished off by; none survived; none of them came up; eaten off by; eaten off; fried; cooked |
gave away | crop! place larder fate | gave away; given away; took to the neighbours; gifted; donated; shared; handed out; handed over; passed on; sold; swapped away; took to the food bank; dropped off; traded; gave | give away
ate | crop! place larder fate | ate; eaten; ate up; had for dinner; had for supper; had for lunch; had for tea; had with dinner; cooked up; scoffed; nibbled; demolished; devoured; gobbled | eat
composted | crop place larder fate | composted; put on the compost; put on the heap; put on compost heap; put on the compost heap; to the compost; binned; chucked; threw away; threw out; thrown away; chucked out; tossed; discarded; fed to the worms; on the compost; dumped | compost
stored | crop! place larder fate | stored; plaited; braided; put away; laid down; put by; clamped; hung up; hung to dry; hung up to dry; strung up to dry; cured; kept; put in store; put into store; put in the cellar; set to cure; set aside; packed in sand; put in sand; bagged up; boxed; boxed up; kept back | store; hang up
put up | crop! place larder fate object | put up; froze; frozen; freezing; put in the freezer; to the freezer; to freezer; into freezer; put in freezer; into the freezer; in the freezer; for the freezer; canned; bottled; pickled; jarred; dried; dehydrated; fermented; jammed; preserved; salted; blanched and froze; blanched; cooked down; juiced; turned into; made into; brined; waterbath canned; pressure canned; oven dried; sun dried; passata'd; smoked | freeze; can; bottle; pickle; dry; put up; preserve
used | crop! place larder fate | used; used up; finished up; finished off; took from store; took from the store; took out of the freezer; got out of the freezer; defrosted; thawed; ate from store; brought up from the cellar | use; use up; defrost
saw | crop place object | saw; seen; noticed; spotted; observed; found; killed; squashed; squished; hand picked off; knocked off; caught; heard; counted |
treated | bed crop place with object | treated; grease banded; greasebanded; lime washed; whitewashed; sprayed; dusted; dosed; applied; washed off; soaped; put down; put out slug pellets on; wiped off; blasted | treat; spray
tested soil | bed place | tested soil; tested the soil; soil test; soil tested; soil test for; soil test from; soil test of; tested ph; tested the ph; checked soil; checked the soil; checked ph; checked the ph; measured ph; measured soil temperature; took soil temperature; took the soil temperature; took soil sample from; sampled soil; sampled the soil | test soil
tried seed | crop! | tried seed; tried seeds; tested seed; tested seeds; seed test; germination test; germination tested; germ test; did a germination test on; did a germination test of; viability test; chitted seed | test seed
penned | bed place | penned; penned up; fenced | pen
let out | bed place | let out; turned out hens; released hens |
collected | place larder object | collected; extracted; robbed; spun; took off honey | collect
released | crop place object | released; introduced; set free; put out cocoons; hung cocoons; put out nematodes; watered in nematodes; watered on nematodes; applied nematodes | release
opened | place object | hive inspection; hive check; inspected hive; checked bees; bee inspection; opened; inspected; looked in; looked into; looked through; went through; opened up; had a look in; peeped in | open; inspect
bought | crop larder seller object | bought; bought in; purchased; ordered; acquired; picked up; received; collected from; was given; were given; give me; give us; been given; given; swapped for; traded for; got given; swapped; came in the post; arrived | buy; order
fed animals | place object | fed hens; fed chickens; fed the hens; fed the chickens; fed the girls; fed the pigs; fed pigs; fed ducks; fed the ducks; fed rabbits; fed the rabbits; fed the bees; fed bees | feed hens; feed the hens
noted weather | place object | noted weather |
"""
"""name | slots | past forms | plain forms"""


def _read_rows() -> tuple[
    dict[str, Verb], dict[tuple[str, ...], tuple[str, ...]], dict[tuple[str, ...], str]
]:
    verbs: dict[str, Verb] = {}
    past: dict[tuple[str, ...], tuple[str, ...]] = {}
    plain: dict[tuple[str, ...], str] = {}
    for row in ROWS.strip().splitlines():
        name, slots, forms, bases = (cell.strip() for cell in row.split("|"))
        verbs[name] = Verb(name, frozenset(slots.split()))
        for form in filter(None, map(fold, forms.split(";"))):
            past.setdefault(form, (name,))
        for base in filter(None, map(fold, bases.split(";"))):
            plain.setdefault(base, name)
    return verbs, past, plain


STATES = """
came up | up; is up; are up; all up; just up; now up; through; is through; are through; all through; coming up; just showing; now showing; well up; up already; up now; up at last; have come up; has come up
saw: first flower | first flower; first flowers; first flower open; first blossom; started flowering; starting to flower; began flowering; started to flower; first flower out; first truss open; first flower opened
saw: first flower | flower; flower open; flower out; flower opened; truss; flower truss
saw: in flower | showing pink; showing white; showing bud; showing flower; showing blossom; in flower; in full flower; flowering; in bloom; in blossom; in full bloom; blooming; blossoming; blossomed; bloomed; blossoms; flowered; is flowering; are flowering; have flowered; blossom out; in bud; in full blossom; coming into flower; come into flower; come into bloom; came into bloom; came into flower
saw: fruit set | first truss set; truss set; trusses set; starting to set; setting; setting now; are setting; setting well; setting nicely; setting fruit; fruit set; set fruit; fruiting; fruit setting; forming pods; setting pods; set pods; podding up; pods forming; forming; forming nicely; swelling; swelling up; swelling nicely; podding; first fruit; first fruits; first pods; first fruit set; first fruit showing; fruit forming; bulbing up; hearting up; tasselling; tasseling; silking
saw: ripe | starting to turn; beginning to turn; starting to colour; starting to color; beginning to ripen; showing colour; showing color; showing red; ripe; is ripe; are ripe; ripening; first ripe; now ripe; turning red; colouring; coloring; colouring up; coloring up; ready; is ready; are ready; ready to pick; ripening up; almost ripe; nearly ripe; nearly ready; turning; starting to ripen; blushing
saw: ran to seed | bolted; bolting; has bolted; have bolted; ran to seed; run to seed; running to seed; gone to seed; going to seed; went to seed; shot to seed; shot up to seed; shot straight to seed; gone to flower; going to flower; blown; all bolted; starting to bolt; started to bolt; set seed; setting seed
saw: splitting | splitting; are splitting; cracking; are cracking
saw: wilting | wilting; drooping; wilted; flagging; looking sad; yellowing; going yellow; leaf drop; looking poorly; struggling
saw: self-sown | self sown; self seeded; self sowed; volunteers; volunteer; self set; came up by itself; came up by themselves; self seeded itself; self seeded themselves; self seeding
saw: dormant | leafing out; in leaf; breaking bud; bud break; budding; bursting bud; buds breaking; buds bursting
finished | finished; over; is over; are over; all over; over now; finished now; finished for the year; done; all done; going over; gone over; spent; past it; done for; done for the year; at an end; over for the year; finished for this year
"""
"""action, or what was seen | forms that stand behind a crop without any verb."""


def _read_states() -> dict[tuple[str, ...], tuple[str, str | None]]:
    states: dict[tuple[str, ...], tuple[str, str | None]] = {}
    for row in STATES.strip().splitlines():
        name, forms = (cell.strip() for cell in row.split("|"))
        verb, _, subject = (part.strip() for part in name.partition(":"))
        for form in map(fold, forms.split(";")):
            states.setdefault(form, (verb, subject or None))
    return states


def _gerund(base: tuple[str, ...]) -> tuple[str, ...]:
    word = base[0]
    if word in {
        "dig",
        "net",
        "cut",
        "put",
        "set",
        "bag",
        "pot",
        "thin",
        "stop",
        "trim",
        "split",
        "can",
        "pin",
    }:
        word += word[-1]
    elif word.endswith("ie"):
        word = word[:-2] + "y"
    elif word.endswith("e") and not word.endswith("ee"):
        word = word[:-1]
    return (word + "ing", *base[1:])


VERBS, PAST, PLAIN = _read_rows()
STATE_FORMS = _read_states()
SENSE_OF = {fold(form): senses for form, senses in SENSES.items()}
for _form, _senses in FAMILY_SENSES.items():
    _key = fold(_form)
    _otherwise = PAST[_key][0] if _key in PAST else "remark"
    SENSE_OF[_key] = (*_senses, *SENSE_OF.get(_key, (("else", _otherwise),)))
FAMILY_ANY = frozenset(map(fold, FAMILY_SENSES))
FAMILY_FORMS = FAMILY_ANY - PAST.keys() - frozenset(map(fold, SENSES))
"""Forms that are no verb where nothing beside them makes them one."""
for _key in SENSE_OF:
    PAST[_key] = (*PAST.get(_key, ()), "?" + " ".join(_key))
GERUNDS = {_gerund(base): name for base, name in PLAIN.items()}
PARTICLES_OF = {
    fold(verb)[0]: tuple(dict.fromkeys((*PARTICLES.get(verb, ()), *FAMILY_PARTICLES.get(verb, ()))))
    for verb in (*PARTICLES, *FAMILY_PARTICLES)
}


def _longest(*tables: dict[tuple[str, ...], object]) -> dict[str, int]:
    longest: dict[str, int] = {}
    for table in tables:
        for words in table:
            longest[words[0]] = max(longest.get(words[0], 0), len(words))
    return longest


LONGEST_PAST = _longest(PAST)  # type: ignore[arg-type]
LONGEST_PLAIN = _longest(PLAIN, GERUNDS)  # type: ignore[arg-type]
LONGEST_STATE = _longest(STATE_FORMS)  # type: ignore[arg-type]

PARTICIPLES = {
    "gave away": "given away", "ate": "eaten", "saw": "seen", "grew": "grown", "took cuttings": "taken for cuttings",
    "saved seed": "saved for seed", "tried seed": "tried", "sowed": "sown", "resowed": "sown again", "came up": "up",
}  # fmt: skip


def as_done(verb: str) -> str:
    """A verb behind "was": "given away"."""
    return PARTICIPLES.get(verb, verb)
