"""Everyday verbs that mean what stands beside them, family by family: "bunged", "hoicked", "roasted", "dropped off".

Part of the first table, as `meanings` is; `verbs` adds these forms to its own where it has none. What a
condition means is in `senses`. A form that fits nothing beside it is taken for no verb at all.
"""

from __future__ import annotations

Senses = tuple[tuple[str, str], ...]

LAID_DOWN: Senses = (
    ("trouble first", "lost"), ("to animals", "fed animals"), ("cover off", "uncovered"), ("on heap", "composted"),
    ("freezer", "put up"), ("given", "gave away"), ("kept dry", "stored"), ("chit", "remark"), ("slug pellets", "treated"),
    ("trap", "treated"), ("net put", "netted"), ("cover put", "covered"), ("manure put", "manured"), ("lime put", "limed"),
    ("mulch put", "mulched"), ("feed put", "fed"), ("support put", "staked"), ("soil put", "earthed up"), ("cutting", "took cuttings"), ("seed raised", "started"),
    ("seed", "sowed"), ("tub moved", "moved"), ("planted in", "planted"),
)  # fmt: skip
PUT_IN: Senses = (
    ("seed raised", "started"),
    ("seed", "sowed"),
    ("support put", "staked"),
    ("crop", "planted"),
)
RIPPED_OUT: Senses = (
    ("trouble first", "lost"), ("weeds", "weeded"), ("cover put", "uncovered"), ("suckers", "pinched out"),
    ("weight", "picked"), ("crop", "cleared"), ("bed first", "cleared"),
)  # fmt: skip
GRABBED: Senses = (
    ("trouble first", "lost"), ("trouble", "saw"), ("suckers", "pinched out"), ("dead flowers", "pruned"), ("crop", "picked"),
)  # fmt: skip
COOKED: Senses = (
    ("trouble first", "saw"), ("weeds", "weeded"), ("kept long", "put up"), ("in jars", "put up"), ("freezer", "put up"),
    ("crop", "ate"), ("amount", "ate"), ("bare", "ate"),
)  # fmt: skip
PRESERVED: Senses = (("crop", "put up"), ("amount", "put up"), ("product", "put up"))
EATEN: Senses = (("trouble first", "lost"), ("crop", "ate"), ("amount", "ate"))
HANDED_ON: Senses = (("to animals", "fed animals"), ("from another", "ask bought or gave away"), ("crop", "gave away"), ("amount", "gave away"), ("eggs", "gave away"))  # fmt: skip
TAKEN_ALONG: Senses = (("to animals", "fed animals"), ("kept dry", "stored"), ("given", "gave away"))
PUT: Senses = (
    ("to animals", "fed animals"), ("trap", "treated"), ("let loose", "released"), ("on heap", "composted"), ("given", "gave away"), ("kept dry", "stored"),
    ("to harden", "hardened off"), ("bigger pot", "potted on"), ("cuttings", "took cuttings"), ("tub moved", "moved"),
)  # fmt: skip
MOVED_ON: Senses = (("hens", "penned"), ("bigger pot", "potted on"), ("to harden", "hardened off"))
GAVE: Senses = (
    ("to animals", "fed animals"), ("given of it", "gave away"),
    ("cans of water", "watered"), ("bigger pot", "potted on"), ("support put", "staked"), ("lime put", "limed"), ("sprayed", "treated"),
)  # fmt: skip
TOOK: Senses = (
    ("trouble first", "lost"), ("weeds", "weeded"), ("given", "gave away"), ("to harden", "hardened off"), ("out of store", "used"), ("tops off", "pinched out"), ("leaves off", "pruned"), ("old canes", "pruned"),
    ("hive part", "collected"), ("indoors", "moved"), ("outdoors", "moved"),
)  # fmt: skip
GOT: Senses = (
    ("trouble first", "lost"), ("going", "started"), ("in ground", "planted"), ("out of store", "used"), ("plants out", "cleared"), ("weather", "remark"),
)  # fmt: skip
KEPT: Senses = (("given", "gave away"), ("for seed", "saved seed"), ("crop", "stored"), ("amount", "stored"))
ENDED: Senses = (("trouble first", "lost"), ("crop", "lost"), ("amount", "lost"))
ENDED_SELF: Senses = (("self ended", "lost"), ("count first", "lost"))
STOLEN: Senses = (("trouble first", "lost"), ("thief", "lost"), ("suckers", "pinched out"))
DAMAGED: Senses = (("trouble first", "saw"), ("by trouble", "saw"))
SQUASHED: Senses = (("trouble", "saw"),)
SPRAYED: Senses = (("trouble", "treated"), ("treatment", "treated"), ("crop", "treated"))
CARRIED: Senses = (
    ("water", "watered"), ("to animals", "fed animals"), ("on heap", "composted"), ("given", "gave away"), ("manure put", "manured"), ("mulch put", "mulched"), ("tub moved", "moved"),
    ("kept dry", "stored"), ("crop moved", "moved"),
)  # fmt: skip
WATERED: Senses = (("crop", "watered"), ("bed", "watered"), ("seedling", "watered"), ("amount", "watered"))
VENTED: Senses = (("bed", "uncovered"),)
SHADED: Senses = (("crop", "covered"), ("bed", "covered"))
CAME_OUT: Senses = (("flower words", "remark"), ("root first", "picked"), ("out of bed", "cleared"))

FAMILIES: tuple[tuple[str, Senses], ...] = (
    ("scattered; sprinkled; strewed; chucked; threw; flung; chucked down; threw down; down to; put down to; laid down to; gone down to; set down to", (("green crop", "sowed"),)),
    ("cut off; snipped off; took off; removed; nipped off; pinched off; cut; trimmed off; pulled off", (("strawberry runners", "pruned"),)),
    ("had; got; took", (("door first", "gave away"),)),
    ("forced", (("under a pot", "covered"),)),
    ("hit; blasted; blitzed; treated; doused", (("treatment", "treated"),)),
    ("gone; gone from; all gone; all gone from", (("weeds first", "weeded"),)),
    ("scattered; strewed; strewn", (("sown so", "sowed"),)),
    ("had; blew; lifted; tore; ripped; whipped; took", (("wind cover", "remark"),)),
    ("put; put out; set out; set", PUT),
    ("bagged up; boxed up; boxed; bunched", (("given", "gave away"),)),
    ("laid", (("hens first", "collected"),)),
    ("filled", (("bags full", "picked"),)),
    ("washed", (("seed kept", "saved seed"), ("trouble", "treated"), ("treatment", "treated"))),
    ("left", (("still standing", "remark"),)),
    ("drew", (("root", "picked"), ("weight", "picked"))),
    ("paid", (("crop", "bought"), ("product", "bought"), ("seed", "bought"))),
    ("carved", (("crop", "used"),)),
    ("hosed; washed off", (("trouble", "treated"),)),
    ("let", (("let loose", "released"), ("let have", "gave away"))),
    ("hung; put up; set; set out; laid; put down", (("trap", "treated"),)),
    ("took down; took away; pulled down", (("cover put", "uncovered"),)),
    ("chopped down; cut down", (("to the ground", "pruned"),)),
    ("rubbed off; broke off; snapped off; nipped off", (("suckers", "pinched out"), ("tops off", "pinched out"))),
    ("tied", (("to supports", "tied in"),)),
    ("put in; raked in; threw down; chucked down", (("seed", "sowed"),)),
    ("tipped out; emptied; emptied out; tipped; turned out", (("root out", "picked"), ("hens onto", "penned"), ("hens", "let out"))),
    ("robbed", (("honey", "collected"), ("crop", "picked"))),
    ("pressed", (("in litres", "put up"),)),
    ("cut; pulled; lifted", (("heads of it", "picked"),)),
    ("took up; took down; took back", (("leaves off", "pruned"), ("tops off", "pinched out"))),
    ("cut off; took off", (("tops", "pruned"), ("leaves off", "pruned"), ("dead flowers", "pruned"))),
    ("had", (("eaten so", "ate"),)),
    ("snapped off", (("crop", "picked"), ("amount", "picked"), ("else", "remark"))),
    ("cooked; fried; baked; roasted", (("in the heat", "ask lost or ate"),)),
    ("binned; chucked; tossed; composted; chucked out; thrown out; discarded", (("ones first", "composted"),)),
    ("found", (("trouble does", "remark"),)),
    ("pressed; turned; cooked; cooked down; strained; filled; ran; boiled; made", (("kept long", "put up"),)),
    ("wrapped; wrapped up", (("kept dry", "stored"),)),
    ("wheeled; barrowed", (("on heap", "composted"), ("given", "gave away"))),
    ("went over", (("weight", "picked"), ("self ended", "finished"), ("else", "remark"))),
    ("thinned out; thinned", (("branches", "pruned"),)),
    ("first shoots of; first shoots on; first signs of; signs of life from; signs of life in; first sign of", (("trouble", "saw"), ("crop", "came up"))),
    ("turned out", (("hens onto", "penned"), ("hens", "let out"))),
    ("shifted; moved; dragged; wheeled; rolled", (("hen house", "penned"),)),
    ("brought; brought in; took in; carried in", (("for winter", "moved"),)),
    ("brought; brought up; brought in", (("out of store", "used"),)),
    ("moved; shifted; brought; carried; stood", MOVED_ON),
    ("gave", GAVE),
    ("took; took off; took out", TOOK),
    ("got; had", (("hens got", "fed animals"),)),
    ("got; had; gets; has; took; takes", (("someone got", "gave away"),)),
    ("got; had", (("somebody first", "ask gave away or picked"),)),
    ("dropped off; passed on; handed over; dropped; passed; left; delivered", (("given of it", "gave away"),)),
    ("got", GOT),
    ("snapped", (("suckers", "pinched out"), ("tops off", "pinched out"), ("self ended", "lost"), ("count first", "lost"))),
    ("nipped", (("tops off", "pinched out"), ("suckers", "pinched out"))),
    ("lifted; pulled; whipped; rolled", (("cover lifted", "uncovered"), ("hens had it", "cleared"))),
    ("cleared; pulled; pulled out; pulled up; removed; dug out; cleared out; taken out", (("weeds first", "weeded"),)),
    ("stripped; snipped off; picked off; took off", (("leaf object", "pruned"),)),
    ("had", (("had to", "remark"),)),
    ("dug; dug out", (("hole", "remark"),)),
    ("dug; chopped; worked; forked", (("green manure", "dug in"), ("stuff into", "dug in"))),
    ("turned over; turned", (("green manure", "dug in"),)),
    ("fed", (("bed fed", "fed"), ("animals first", "fed animals"))),
    ("opened; opened up; propped; lifted", (("glass", "uncovered"),)),
    ("cut; chopped; mowed", (("to the ground", "pruned"),)),
    ("had", (("weather", "remark"), ("done by another", "ask gave away or remark"))),
    ("drowned; counted; caught; trapped; squashed; squished", (("slugs about", "saw"),)),
    ("stuck; shoved; snipped; popped", (("cutting", "took cuttings"),)),
    (
        "bunged; shoved; plonked; slotted; squeezed; poked; pushed; flung; slung; lobbed; dumped; piled; heaped; packed; draped; stuffed; "
        "crammed; wedged; plopped; placed; nestled; buried; shovelled; shoveled; tipped; tucked; popped; stuck; chucked; threw; tossed; dropped; "
        "stood; strewed; sprinkled; scattered; whacked; banged; pressed; rigged up; rigged; laid; spread; sank; dropped in; slid",
        LAID_DOWN,
    ),
    (
        "bunged in; shoved in; plonked in; slotted in; squeezed in; poked in; pushed in; whacked in; banged in; firmed in; pressed in; "
        "dibbed; lined out; homed; trenched; plugged; found room for; found a home for; found homes for; made room for; plugged the gap with; plugged the gaps with; plugged gaps with; "
        "filled the gap with; filled a gap with; filled in with; chucked in; squashed in; shoehorned in; dropped into place; raked in seed of; shoved out; bunged out",
        PUT_IN,
    ),
    (
        "hoicked out; hoicked up; hoicked; hoiked up; whipped out; whipped up; whipped; hauled up; lugged out; heaved out; heaved up; levered out; levered up; "
        "wrenched out; wrenched up; dragged out; evicted; uprooted; scrapped; ditched; howked out; forked out; forked up; prised out; "
        "stripped out; booted out; hacked out; chopped out; slung out; got shot of; did away with; dispensed with; rooted up",
        RIPPED_OUT,
    ),
    (
        "grabbed; nabbed; scrumped; twisted off; sliced off; sliced; snipped off; cut off; unearthed; gleaned; raided; furtled for; rummaged for; snatched; swiped; "
        "shook down; combed; helped myself to; helped ourselves to; had a pick of; did a pick of; did a picking of; got a pick of; broke off; took a cut of; took a pick of; plucked off; "
        "fished out; rootled out; got a feed of; got a meal of; bagged myself; pulled off; won",
        GRABBED,
    ),
    (
        "roasted; boiled; steamed; baked; grilled; sauteed; stir fried; stewed; simmered; poached; mashed; braised; boiled up; boiled down; cooked up; stewed up; "
        "pulped; pureed; whizzed; whizzed up; rendered down; rendered; reduced; blitzed; liquidised; milled; crushed; minced; griddled; barbecued; souped; blended; cooked",
        COOKED,
    ),
    (
        "knocked up; rustled up; ran off; ran up; pressed for; sterilised; jarred up; bottled up; potted into jars; salted down; froze down; bagged and froze; boxed and froze; open froze; "
        "vacuum packed; candied; crystallised; infused; steeped; distilled; brewed; pressed cider; made cider; made juice; froze up",
        PRESERVED,
    ),
    (
        "wolfed; wolfed down; polished off; munched; chomped; chomped through; guzzled; snaffled; troughed; grazed on; feasted on; tucked into; dined on; snacked on; crunched; "
        "hoovered up; hoovered; necked; put away for tea; lunched on; ploughed through; plowed through; noshed; nommed; gobbled up; ate through; made short work of",
        EATEN,
    ),
    (
        "flogged; palmed off; offloaded; foisted; fobbed off; delivered; raffled; bestowed; dropped round; dropped over; took round; "
        "farmed out; doled out; dished out; gave out; shared out; divvied up; divvied out; rehomed; auctioned; bartered; sold off; dropped off",
        HANDED_ON,
    ),
    ("sent; slipped; ran; posted; mailed; left; lent; brought; shoved; sent off; sent home; drove", TAKEN_ALONG),
    (
        "sacked up; crated; crated up; roped; shelved; trayed up; racked; stashed; squirrelled away; squirreled away; tucked away; packed away; packed; stacked; "
        "sacked; netted up; bedded down in sand; put to bed in sand; hoarded; laid up; stowed; bunched and hung",
        KEPT,
    ),
    ("squidged; squelched; flicked off; flicked; trapped; drowned; hunted; hunted down; stamped on; trod on; removed; handpicked; knocked; scraped off; shook off; rubbed off; dispatched; despatched; murdered; collected up; evicted; smushed; jetted off", SQUASHED),
    (
        "trod on; trodden on; stepped on; stood on; sat on; mowed down; mowed over; mowed through; strimmed; strimmed through; ran over; drove over; rotavated by mistake; "
        "did for; did in; put paid to; saw off; snapped by mistake; snapped by accident; hoed off; hoed by mistake; hoed out by mistake; crushed by accident; knocked the top off; overwatered; murdered; drowned by mistake; finished off the",
        ENDED,
    ),
    (
        "gone soft; went soft; gone mouldy; gone moldy; gone rotten; gone bad; went bad; gone slimy; croaked; conked out; went to slime; went to mush; went mouldy; went moldy; turned to mush; turned to slime; turned mouldy; turned moldy; went rotten; went slimy; popped its clogs; popped their clogs; "
        "curled up and died; bit the dust; pegged it; wilted and died; shrivelled up; shriveled up; melted; melted away; rotted away; withered away; frosted; "
        "nipped by frost; got nipped; got nipped by frost; were frosted; was frosted; went to pot; went black; threw in the towel; gave up on life; carked it; karked it; went west; packed it in; "
        "never came up; never came through; never germinated; never made it; never showed; never appeared; never recovered; cooked in the heat; fizzled out; dropped dead; upped and died; went under",
        ENDED_SELF,
    ),
    ("stole; nicked; pinched; swiped; made off with; ran off with; helped themselves to; took all; scoffed; grazed; snaffled; browsed; ruined; destroyed; wrecked; scratched up; scratched out; rooted up; uprooted; dug out; pulled up; buggered; mullered; hammered; massacred; demolished; polished off; wolfed; stripped bare; cleaned out; finished off; got stuck into; went through", STOLEN),
    (
        "shredded; scorched; battered; hammered; eaten to bits; riddled; peppered; chewed; pecked; pecked at; gnawed; nobbled; blackened; singed; burnt; burned; reached; cracked; munched; munched on; attacked; spoiled; spoilt; "
        "had a go at; had a go; went for; got at; got into; nipped; bent; tore; ripped; hit; caught; scalded; bruised; marked; chomped; chewed up; chewed through; nibbled at; damaged",
        DAMAGED,
    ),
    ("zapped; squirted; spritzed; hosed off; jetted; misted with; painted; dabbed; swabbed; brushed; puffed; doused with; gave a spray; blitzed", SPRAYED),
    ("lugged; humped; dragged; heaved; hefted; toted; rolled; manhandled; hauled; trundled; carted; transferred; schlepped; sledged; switched; rehoused; carried", CARRIED),
    ("wound; twined; clipped; twisted; lashed; looped; fastened; secured; pinned; roped; fixed; tethered", (("to supports", "tied in"),)),
    ("misted; damped down; doused; gave a soak; quenched; flooded; showered; gave a water", WATERED),
    ("vented; opened vents; opened doors; opened the doors of; opened the vents of; lifted the lid on; lifted the lids on; lifted lid on; took the lid off; took lid off; took the lids off; propped open; rolled up the sides of; opened the door of", VENTED),
    ("shaded; shaded over; swaddled; insulated; bubble wrapped; lagged; tented", SHADED),
    ("shut; closed; shut up; closed up; closed down; shut down; shut the lid on; closed the lid of; shut the vents of", (("glass", "covered"),)),
    ("landed up; moulded up; molded up; drew soil up; drew soil round; drew soil around; drew soil over; drew earth up; drew earth round; drew earth over; heaped soil round; heaped soil around; heaped earth round; pulled soil up; pulled soil round; pulled soil over; raked soil up; banked soil; mounded soil; topped up the soil round", (("else", "earthed up"),)),
    ("shortened; de leafed; deleafed; defoliated; tidied up; tipped back; took the shears to; took the secateurs to; took the loppers to; gave a haircut; barbered; spurred back; headed; reduced", (("crop", "pruned"), ("tree", "pruned"))),
    ("shook out; shelled; squeezed out; scooped out; cleaned; rubbed; winnowed; podded; bagged up; dried off; extracted; stripped", (("seed kept", "saved seed"),)),
    ("shelled; shelled out; podded; husked; shucked", (("weight", "picked"), ("crop", "ask ate or put up"))),
    ("chopped; broke up; teased apart; pulled apart; cut up; cut; carved; sliced; prised apart; lifted and split; lifted and divided; dug up and split", (("in pieces", "divided"),)),
    ("did a paper towel test on; did the paper towel test on; paper towel tested; did a germ test on; germ test on; germination test on; did a germination test with; float tested; test sowed; did the damp paper test on; did a paper test on", (("crop", "tried seed"),)),
    ("upsized; bumped; moved up; went up a pot size; sized up", (("crop", "potted on"),)),
    ("came home with; splashed out on; treated myself to; treated ourselves to; blagged; scrounged; cadged; scored; snapped up; nabbed from; snagged; inherited; won at the raffle; got hold of; invested in; succumbed to buying; got hold of", (("crop", "bought"), ("product", "bought"))),
    ("had the sprinkler on; put the sprinkler on; put the hose on; set the hose on; left the hose on; ran the sprinkler on; ran the soaker hose on; ran the hose over; turned the drip on; turned the drip on in; had the hose on; left the sprinkler on; put the drip on; hauled water to; carried water to; lugged water to; ran the soaker on", (("else", "watered"),)),
    ("had a weed of; had a weed in; ran the hoe over; ran the hoe through; ran the hoe along; ran a hoe over; ran a hoe through; got on top of the weeds in; blitzed the weeds in; attacked the weeds in; tackled the weeds in; got the weeds out of; went over with the hoe; scuffled; tickled over with the hoe; got the hoe out on; got the hoe round; scratched the weeds out of; knocked the weeds back in; did battle with the weeds in; cleaned the weeds out of; took the hoe to; took a hoe to; put the hoe through; put the hoe over; put the hoe round; hand pulled weeds in", (("else", "weeded"),)),
    ("dug out; forked out; attacked; blitzed; tackled; whipped out; prised out; hoicked out; hooked out; grubbed; battled; pulled up; levered out; rooted out", (("weeds", "weeded"),)),
    ("got going; kicked off; set going; had a go at starting", (("crop", "started"),)),
    ("redid; re did; did again; filled in the gaps in; filled the gaps in; patched up; patched", (("with seed", "resowed"), ("crop bare", "resowed"))),
    ("second sowing of; third sowing of; fourth sowing of; first sowing of; another sowing of; final sowing of; last sowing of; next sowing of; new sowing of; fresh sowing of; late sowing of; early sowing of; made a sowing of; did another sowing of; made another sowing of; did a second sowing of; did a first sowing of; sowing of; succession sowing of; did a row of; second batch of", (("raised", "started"), ("crop", "sowed"))),
    ("stood outside; stood out; put outside; put outdoors; started hardening off; began hardening off", (("into bed", "planted"), ("crop", "hardened off"))),
    ("nicked; pinched; bagged", (("from bed", "picked"),)),
    (
        "hasn't survived; haven't survived; has not survived; have not survived; hasn't made it; haven't made it; hasn't come through; haven't come through; hasn't recovered; never survived; haven't recovered",
        (("crop first", "lost"), ("count first", "lost")),
    ),
    ("went to; gone to; off to; went round to; went straight to", (("to animals", "fed animals"), ("given of it", "gave away"))),
    ("back on; put back on; went back on", (("cover told", "covered"),)),
    ("back off", (("cover told", "uncovered"),)),
    ("came out; come out; coming out", CAME_OUT),
    ("out came; out went; out it came; out they came; out it went; out they went; out they all came; out it all came", (("suckers", "pinched out"), ("roots out", "picked"), ("out none", "cleared"), ("crop", "cleared"), ("amount", "cleared"))),
    ("have gone out; has gone out; gone out; have gone in; has gone in", (("crop first", "planted"),)),
)  # fmt: skip


def _gather() -> dict[str, Senses]:
    """Every form with what it may mean; a form of several families asks them in order."""
    found: dict[str, Senses] = {}
    for forms, senses in FAMILIES:
        for form in map(str.strip, forms.split(";")):
            found[form] = (*found.get(form, ()), *(s for s in senses if s not in found.get(form, ())))
    return found


FAMILY_SENSES = _gather()

FAMILY_PARTICLES: dict[str, tuple[str, ...]] = {
    "bunged": ("in", "out"), "shoved": ("in", "out"), "plonked": ("in",), "slotted": ("in",), "poked": ("in",), "pushed": ("in",),
    "whacked": ("in",), "banged": ("in",), "firmed": ("in",), "hoicked": ("out", "up"), "whipped": ("out", "up"), "hauled": ("out", "up"), "lugged": ("out",),
    "heaved": ("out", "up"), "levered": ("out",), "wrenched": ("out",), "dragged": ("out",), "howked": ("out",), "lined": ("out",), "twisted": ("off",),
    "cut": ("off",), "snipped": ("off",), "broke": ("off",), "dropped": ("off", "round", "over"), "doled": ("out",), "sent": ("off",), "moved": ("up",),
    "boiled": ("up", "down"), "stewed": ("up",), "rendered": ("down",), "knocked": ("up",), "flicked": ("off",), "hosed": ("off",), "washed": ("off",), "tidied": ("up",),
    "shook": ("out", "down"), "squeezed": ("in", "out"), "scooped": ("out",), "propped": ("up", "open"), "packed": ("away",), "tucked": ("away", "in", "up"), "tipped": ("out",), "took": ("off", "out", "up", "round", "down"),
    "finished": ("up", "off"), "kicked": ("off",), "polished": ("off",), "wolfed": ("down",), "slung": ("out",), "chucked": ("in", "out"), "stood": ("out", "outside"), "put": ("outside", "outdoor"), "rigged": ("up",), "pulled": ("up", "out", "off"),
    "set": ("out", "going"), "got": ("in", "out", "going"), "turned": ("out", "in", "over"), "rubbed": ("off",), "nipped": ("off", "out"), "snapped": ("off",),
}  # fmt: skip
"""Verbs of these families whose second word may stand behind the object."""
