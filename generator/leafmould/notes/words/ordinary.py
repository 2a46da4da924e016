"""Everyday words that stand one letter, or a few vowels, beside a word of the tables: never taken for a slip.

Read by `slips` alone. Picked once out of the words of Webster's Second International Dictionary (1934, public
domain) and common names, those that people use (by their frequency in wordfreq 3.1, Robyn Speer) and that would
otherwise be bent: "board" is no "broad bean", "current" no currant, Carly no curly kale. Folded, as words are compared.
"""

from __future__ import annotations


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


ORDINARY_WORDS = _words(
    """
    abroad acquire acquirer acrid adder addled adorn afield afoot africa africana agave aground ahead aided aimed
    airey alain aland aldine aline allow americana amini amped amping amuck angel angelic angelico angelina anime
    anker annal annul aphis apiece aplastic appealed appeased appel arber arche archi archy ardor arian arise armed
    armor armour arose arrive artful asean asher asker assed asser assis astern attached attacker aught aunty auster
    austria avert avian babby backed badder bader badge badged bagger baile bailed bailey baine baird baker baler
    balked balmy bandana banded banger banker banky banned barbe barbecue barbel barbra barby barca bared barged
    barger barked barkley barlow barney barra barred barren barret barron barry barth based basic basing basis
    basked basset basted baster bated bathe batted batter battler beaded beaked beale beall beano beany beardy beary
    beaten beating beatle becket bedding beery beget begged bella belly belted belting benched benching bended benet
    bennet beret bergamo berri beset bette bettered bidding bight biked binge binged birder birdy biter bitten
    bittern blacken bladder bland blank blanked blaster bleeping blend blender blending blick blighty blinded blitze
    blitzer blocky blond bloody bloop blued bluer bluey blush blushed boarder boasted boastful boating bogged boiler
    bolded bolder boling bolivia bolling bollock bolter bomer boned boner boney bonner bonney boobed booed booked
    boomed booming boone boosted booting borate bordered borea borehole borel borge borger borne borrow borrowed
    botting bottler bough bounce bowed bowel bower bowle bowled bowne boxer boyar boyer brack bracket bragged brain
    brained braise braked branched branching brand branded brasil brawn breached bream breeding brent brewer bribed
    bridge bridged broadcaster brock broder broiled bronzed bronzer brook brough browed browne browned browny browse
    browser bruise bruiser brunch brunet brunner brunt brush brushing bucked buckhorn buckle buckled buckley bucko
    bucky budge budged budging bugged buick bulbul bulged bummed bunce bundled bungee bungle bungled bunter bunton
    burley burner burnett burped burro burrow burrowed burry burton busch bused bushing bushy busied buster butch
    butted buttered buttery buttler byard cagey caked cakey calif californian calli calving camelia camped cancer
    caney canne canner canoe canted canter canty caped capel capper carbon carded carding cardona cared caress
    caring carling carly carping carraway carrer carrie carrol carrow carson carte cartel carter cartier carting
    cartoon carty carve carvel carver cased casey casse cassia cassie cassius caste casted caster cathy cause caved
    caver caving caxton cease cella cello celly chafe chafed chait chapped chara charr charted chase chaser chassis
    chater chatty cheat checker cheeked cheesed cheesy chess chica chico chide childe chilled chime chimp chine
    ching chink chino chipped chirp chirping chita chiver chock chocked choco chocolatey choir choke choked choking
    cholo chomp chopper chopping chord chowder chuck chuckled chump chung cinch cinder circe circled circlet clamp
    clapped clapping clara clare clark claro clashed clasped classis clave clayton cleaner cleansed clearer cleaved
    clementina cleric cleve cliche cliched click client clime cline clint clipper clive cloaked cloching clock
    clocked cloke clone cloned closet clothe clothed cloven clowe clown clumped clumpy coach coate coated cocked
    cocking cockle coder codon coked coker coking collapse collared combe comber comed comer comey comin compete
    comport compose composed composited compte compute conch conker conned conner conservator contained cooed cooing
    cooke cooker cookie cooky cooled cooling cooped cooper copier copped coppera coppery coppice copter coram corder
    corin corked corker corky cornea corned cornel cornet cornu corny corolla coroner corry corydon cough counter
    couper courted covert covet coveted covey cower cowered crack cracker crackled crafted crain crake cramp cramped
    crane craned cranked crapped crashed crass crater crave craved craving craze crazed creaked create created creed
    creek creep cressy crete crewed crick crime crimp cripe crise crispy criss croak croaker crocked crockery
    crocuse crone cronk crook crooked croon cropper croquette crosse crouch croup crowd crowe cruel crumbled crumbly
    crump crumple cruncher crusher crust crusted crystallize crystallized cubed culled cully cuming cummin cupped
    curate curated curbed curdled curler curlew current curried currier curtly curved curving curvy cutty dabbled
    dahlin daimon damage dammed damming damned damning damon dampen damper dashed daubed daunt dawson dearly debris
    decimate defer deflated dehydrate delicate deliverer demer dermis desert destroyer deter detoured dever devourer
    diane dibber dilli dilly diner dinged dione discard diseased dispatcher dispense dispenser dispersed dissed
    distiller ditch dived dividend divider dolled domed donate donee doner donne doped doted douse dover dovey downe
    downed dozed drain drama draper draught dread drier driller drily dripped dripping drive droll drone droned
    drooling droop drooped dropper drover drugged duane dubbed ducky ducted dumbed dumper dumping dungy dunked duped
    duster ealing earle earley earthen earther eased easing eater eaton eddie edged egged eider eking eland elissa
    eller elmer emailed empted emptier ender escape estella evert fabled faint faired famed farage fared fareed
    farmer farming fasted fastener fattened faxed feint feller felted fencer fended fennec fenner feted fiend filed
    filer filey fille filler fillet filmed finch finder fined finer finisher fired firmer firming fisher fisted
    fitful fived fixer fizzle flagged flailed flame flashed flattered flecked fleet flicker fling flinty flirt
    flocked flogging floor floored flopped flore florent flout flowed flowerbed flowery floyd flunk fluor foaming
    fogged foiled folder fonder foody footy forager fording forge forged forging formed fount framed framer frater
    freed freeing frenchy frieda friend frilled frite frock fronted frosh frosty fruity fuelled fundus funnel fused
    gable gaelic galax galea galen galla galleon gallic gallop gallow gange gaped garand garde gardened garten
    gasped gaster gatherer gauge gaunt gavel gayle gazed gazing gelder genoese germain germane germany giger gille
    gilly giver glady gland glassy glazed glazing gleamed gleaner glebe glitter gloat gloss glove glowing glowy
    gobble gobbler golde golder goldin goner gonne goode goody gorman gould gover grabber grace graced gracing
    graded grading graeme graff grail grainy grama gramma grammer grammy gramp grant granted graph grasp grassy
    grate gratin grating grayed graying graze grazer greed greene greeny greer greet grice gridded griddle grift
    grill grille grimm gripe gripped groan groat groin groot grope groped groping gross growl growling grubber
    grumbled gulden gumby guzzle guzzler hacker haire haired halper hamed hamel hamer hammer hampered hander handled
    handy hanged harbor harbour harem harmful harpy harry harty harvester hasta hateful hauler haunt haunted havel
    hawthorne hazed hazen header heady heald healed healing heaping heared hearing heath heating heave heaven
    heaving hedged heeded heeding heeler hegel heiner helder helge helmed helming helper hendy henny henri henty
    herby herded herding hewed hiked hilal hillel hiller hilly hinch hindi hinted hipped hoard hoarder hoarse hodge
    holed holey holly homburg homer homey honed honked hooded hoofed hooker hooped hoose hopped horde horne horny
    horsey horst hosier hosted hotly housed houser hovel hover hovered howled huang hugely huger hummed hushed
    husker husky hyung incan inched india indiana infested infuse infuser inger ingested insulate insulted inter
    introduce introducer invented inverted irise irritated italia itched jamaica jammer jared jaunt javanese jello
    jilly jolly jotted juicer juicy kafir kaley kalki kanga kaplan karel kauri keating keeler keeling keening keyed
    khaki kiang kicker killer kilter kinch kittle kling kneeled knocker kongo koran korea kraft krang kumar laced
    lacey lager lagging laine laird laker lamba lamer lande lander landy lapel lapped larch larva larval laser
    lasered lasher latex lathe lather latte latter lauded lauder launched lauren lavage laver lawyer lawyered layed
    lazer leaded leaked leaned leant leaped leased leashed leathery leave leaven leaver lefty legged leman lemony
    lento lette letter leveled liane libbed libel liber licked lifer liger ligne lilly liman limbed limey limped
    linea linen liner linked lipped listed lister lithe litten littler lived liver livered livre lobbied lobed
    locked locus lofted logged loiter longa longe looker loomed looming looper loosed loosen looser looted louse
    lovey lowered lowering lucked luffy lunged lurched lynched maarten machi macho madden mader madge maggie maidan
    mailer maimed maine maint maire mallet malloy mally malted manage manche manfred manga mangal manger mangle
    mangy manhandle manse mantel manto manuel margot marker markey marred marron marsha marshy martel martin martyn
    masha masher masked massacre massed masted mater mature matured mauled maxed meade mealy meare measure medal
    medic medici medico melded mellon mellow melly melter melton merged merging meson messed metal meted metra metro
    mette meuse meyer micron midst milch milder miler milked milky mille miller milly milner mimed minar mince
    mincer minded minden minder mined minge mingo minim minor minot minted minter minty minutia mirabel mired miser
    misled missed mister misty miter mitre mixer moaning moche mocked modded modulo moise moist moley molle mongo
    mooning moose moped morse moulder moult mount mounted mourning mouser mousey mousse mousy mouth mover mower
    moyle muang mucky mulcher mulled mullet multiplied munching mungo murderer mused musky mutch nagged napped navel
    naver necker negro nested nesting nestle netter nettie neuro nibble nickel nipper normed nosey notice notting
    nutted nutting observe observer odder odium oiled olden oliva oliver olivet opener opined opossum oracle orang
    orangey organ organo orion osage oster ouster overt overy oxtail paced packer packing padded padding pained
    painful paint painter paired paisley palate paled palmer palsy panch panky panned panted panter panto panty
    pappy parched pardon parel parked parley parsed parte party passe passer passy pasta pasted pastel pasty patchy
    patsy patta patted patti paused peace peachy peaked pearly peart peary peasant pecker pecking peeked peeper
    peered peeved penner penny peppery peppy perch perked permian persia pesach pestered petar petite petted petty
    phill phony picker picket pickler pieced pierce pilate pinche pincher pined pinged pinky pinner pinta piped
    pipped pisce pissed piste pitch pitched pitted pitty placer placid plage plaid plane planed planer planet plank
    planked planner plano planta plantar plante planter plaster plated platen plater plato platt platted platter
    player pleasant pliant plied plodding plopping plotted pluma plume plunged plunked poach poacher poder point
    pointer poise poised poker pokey polis polisher pollard polled ponder ponto ponty pooch pooed poole pooped
    pooping poopy poppa popper poppet poppin pored ported posed posited poster potion potter potty pounce pouted
    powdery power praised prayed preach preached prepped prepper preserver presser presto priced prickle prided
    primed prine print printed prise prized probed prodded prodding prone propping prose prove proven prude prussian
    puffer puked pullen puller pulley pulsed pumped punch punched punto pupper purchase purchaser purer purge purged
    purred purse pursed pusher putted putty quant quark quartet quarto quartz quash quashed quincey quincy quinze
    rabbi rabid rabin raced racoon raged ragged raider railed raine rainy raise raiser rakish raman ramble rammed
    ramon range ranked raped raper rapey raping rapped raster rated ratted raved ravin ravish rayed razed razing
    reacher reacted realy reamed reared receive receiver reddy reduce reducer reedy reidy reined relied relocate
    reman remove remover renderer renner renown rented reported reposted repped rescue rescuer reserved restated
    retired ribbed ricket riddle riddler riddling rigger rimmed ringed rioted riper ripper rippled roach roady
    robber robed robot rocked rocker rocketry rodman rogan rohan roller rollo rolly romain romany romped roofed
    rookery rooky roomed rooter rooty roper ropey roseate rosen rosetta rosey rosie rosier rotated rotter rotund
    roughed rouse routed rover rowed rowen rowing royster rubber rudge ruffled rugby rugged ruiner rumble rummage
    runnel rushed russel russia rusted rustle rustler rusty rutted saddled safed sager sagged sailing salah salam
    salar salat salma salta salter saluted salva salvage sampler sampling sapped sapphire sapping sated sater sauced
    saucer saucy saute savaged saver savor savour savvy sawed sayed scaby scald scale scaled scalp scalped scanned
    scare scarlett scent schade schelling scold scolded scone scooper scoot scooted scope scoped scorcher score
    scorer scorn scorned scour scoured scrape scraper scrapper scratcher screwed scrip scrounge scrounger scrub
    scrunched scuffed scuffing scuffle scullion scurry seamed seared seating seceded secker secondo secure sedan
    seedy seenu seeped seized selfy sella selling semen serviced servicer servile sewer sexed seyed shack shader
    shafted shagged shake shaked shale shallow shalt shame shamed shane shank shape sharan share sharer shari sharky
    sharp shattered shave shaved shawl shawn sheard shearer sheed sheen sheer shelley shelve shelvey shelving sherd
    shewed shied shifter shill shilling shingled shipped shirk shirted shish shock shocked shoeing shone shooed
    shooing shoop shopped shore shored shoring shorn shout shove shoving shred shredder shrug shtick shuck shuffled
    shunt shunted shushed shute siberia sicker sided sider siever sifted signed siler silted silting silvery simmer
    singe singlet sinking sinned sipped sired sitar sited sizer skeen skeet skein skewed skilled skink skipped skirt
    slack slacked slade slake slang slapped slashed slate slated slatted slaved slayer sledge sleek sleep sleet
    sleeve slicer slick slicked slide slider sliding slimed sling slink slipper slitting sliver sloop slope slowed
    slowing slugged slunk slurred smack smacked smart smarten smarter smashed smear smeared smell smelling smelted
    smite smock smoke smoker smokey smoot snack snaffle snaked snape snapper snare snared snark snarl snarling
    snatcher sneed snelling snider sniped snippet snitched snoke snoop snooped snoot snore snored snowy snuck
    snuffed snuffing soared socked soiled soled solver somethin soper soppy sorel souled soupy soured souther sower
    spade spader spake spall spank spared sparing spark sparred spattered spayed speak speared speck speeded speer
    speir spelled spelling spelt spend spewed spiced spicer spicing spick spidery spier spiker spilt spinal spink
    spitting splat splay splayed spliced splicing splint spock spoil spoiler spoof spook spool spoor spore sport
    sported spotter spout spouted spouting sprained sprang sprat sprayer springy sprinkle sprint sprit sprung spry
    spunk spurn spurned spying squared squeeze squint squinted squirm squirmed stabbed stable stabling stacker stade
    stadion staffed staffing staged stain stained stair stale stalked stall stalling stallion stamper stane stank
    stapling stare stared staring stark starker starlet starr starred starrer starring startled startling starved
    starving stated stater static staved stayed steam steamer steed steeled steen steep steeper steered stela stele
    stell stellar stemmed stent steppe stepper sterilized sterling stern stevie stich sticky stiffed stile stine
    sting stink stirling stitched stocked stocky stoke stoked stomped stoner stoney stong stony stool stoop stooped
    stope stoped stopper storer storey storied stork stormed stormy story stour stout stove stowage stower stowing
    strafed strainer strand strang strap strapped strayed streamed stree strick strig stringer stringy stripper
    stripy strix strom strop strummed stuart stucky stuffer stumped stung stunk sturt style sucked suede sugary
    suger sulking sumer summed summery sumner sunburnt sunna sunni supporter surer susan suzan swaddle swamped swank
    swart swear sweat sweden sweep sweetener sweety swelled swerving swifty swilling swipe swish switcher swoon
    swoop swooped swung syrupy taber tabla tabled tablet tacked tackle tackler tamer tandy taney tangy tanka taper
    tapped tarot tarragona tased taser tatar tatler tatter tattle tauber taunt teamed teared teary tease teaser
    tench tended tensed tepee terraced terrance terrane teste tester texan texted thais thame thinner thirsty thorn
    thorough thrashed thresher throw thumped tiber ticked tickle tickler ticky tiled tinned tinted tipper tippet
    titer toned tonge topper toppled torey torre tosser totem tough toute touted towed towne toyed traced tracked
    tracy trader trailed train trainee tramp trample transfered trapper trawler treater treed tress triad trice
    trick trickled trier trimmer tripe tripo tripped troll trolled trope trotted trout truce truck trucked truer
    trundle trust tryed tubed tucker tulsa tuned tuner tuning turing turki turney turnkey twinned twister urban
    usage usted utter valeria vanda varus veiled venter ventilate vertu vested vetted villa vince viner viney violin
    viruse voila voile wacked waddled wader wafer wager wagered wagering wahabi waite waiter waker waking walling
    wallow wally walsh walter washer wasped wasted waster waterbed watery watter waver wavered wavering wedded wedge
    welch welded welder welling werther wether whare wheal wheaty whine whipper whippet whitely whiten whiter whitey
    whity wholly whoop wield wilde wilding wiling willed willing willowy wince winced winch winded winder windowed
    windy wined winer winger winked winner wintery wiper wired wised wished witted witter wolfe wonga woodhouse
    woolf wooly worded worker wormed wracked wrath wreaked wrecker wrest wretched write wrong wunce yankee yearly
    yerba zapper zipped
    """
)
"""Some two thousand words; a word that is wrongly bent belongs here."""
