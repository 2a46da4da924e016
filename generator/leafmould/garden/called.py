"""What people are called, and what only sounds like it: tables for `somebody`.

From memory, as given names and plants called after somebody are commonly known; no list was read for them.
"""

from __future__ import annotations

from leafmould.garden.people import ALSO_WORDS, DOES, NOBODY, OPENS_A_LINE
from leafmould.notes.words import nouns, prepositions
from leafmould.notes.words.verbs import GERUNDS, PAST, PLAIN
from leafmould.values.names import fold, fold_word


def _words(text: str) -> frozenset[str]:
    return frozenset(map(fold_word, text.split()))


def _names(text: str) -> frozenset[tuple[str, ...]]:
    return frozenset(map(fold, text.split(",")))


GIVEN = ALSO_WORDS - _words("mile summer autumn may june april august dawn grant skip chuck reed") | _words(
    """aaron abby abigail ada adam adele adrian agnes aidan aisha alan albert alec alex alexander alexandra alf alfie alice alison allan
    amanda amelia amy ana andrea andrew andy angela angie angus anita ann anna anne annette annie anthony antonia archie arnold arthur
    audrey barbara barney barry beatrice becky bella ben benjamin bernard bernice bert bertha beryl bess beth betsy betty beverley
    billy bobby brenda brian bridget bruce caitlin callum cameron carl carla carlos carol caroline carolyn carrie catherine cathy cecil
    chandra charles charlie charlotte chloe chris christina christine christopher claire clara clare claudia clive colin connie connor
    craig cynthia daniel danny daphne dave david davey deborah debbie deirdre denis dennis derek des diana diane dolly donald donna
    doreen doris dorothy dot doug douglas duncan dylan ed eddie edith edna edward edwin eileen elaine eleanor eli elizabeth ella ellen
    ellie elsie emily emma eric erica ernest ernie esme esther ethan ethel eva evan eve evelyn evie felix fergus fiona flo florence
    frances francis frankie fred freda freddie freya gail gareth gary gavin gemma geoff geoffrey george georgia georgina gerald
    geraldine gerry gillian gina gladys glen glenda gloria glyn godfrey gordon graham greg gregory greta gwen gwyneth hamish hannah
    harold harriet harry harvey hattie heidi helen henry herbert hilary hilda howard hugh hugo ian ida imogen ingrid irene isaac isabel
    isla ivan ivor jackie jacob jake james jamie jan jane janet janice jason jasper jean jeanette jeff jeffrey jen jennifer jenny
    jeremy jerry jess jessica jessie jill jim jimmy jo joan joanna joanne joe joel john johnny jon jonathan jordan jose joseph
    josephine josh joshua joyce juan jude judith judy julia julian julie justin karen karl kate kath katherine kathleen kathryn kathy
    katie kay keith kelly ken kenneth kenny kerry kevin kim kirsten kirsty kyle lara laura lauren laurence leah lee len lena leo leon
    leonard les lesley leslie lewis liam liam linda lindsay lisa liz lizzie lloyd lola lorna lorraine lottie louisa louise lucas lucy
    luke lydia lynn lynne mabel maddie madge maggie malcolm mandy marcus margaret margery margot maria marian marie marilyn marina
    marion marjorie marlene martha martin mary matilda matt matthew maud maureen maurice mavis max maxine megan mel melanie melissa
    mervyn mia michael michelle mick mike mildred millie miriam moira molly monica morag moses muriel myra myrtle nadia nancy naomi
    natalie nathan neil nell nellie neville niall nicholas nicola nicole nigel nina nora noreen norma norman oliver olivia oscar owen
    pam pamela patricia patrick patsy patty paul paula pauline peggy percy pete peter phil philip phillip phoebe phyllis pippa polly
    priya rachel ralph ramona raymond rebecca reg reggie reginald rene rhoda rhona richard rick rita robert roberta roger roland
    ron ronald ronnie rory rosa rosalind rosie ross rowena roy rupert russell ruth ryan sadie sally sam samantha samuel sandra sara
    sarah saul scott sean sebastian shane sharon sheila shelley shirley sian sid sidney silvia simon sofia sonia sophia sophie stan
    stanley stella stephanie stephen steve steven stuart susan susie suzanne sybil sylvia tamsin tania tanya tara ted teddy terence
    teresa terry tess thelma theo theresa thomas tilly tim timothy tina toby todd tom tommy toni tony tracey tracy trevor tricia trish
    trudy una ursula val valerie vanessa vera vernon veronica vic vicky victor vince vincent vivian vivien wally walter wanda warren
    wayne wendy wilfred winifred winnie yvonne zach zara zoe"""
)  # fmt: skip
"""Given names, folded: with a capital they are people's, wherever no plant or bed has the name."""

KIN = frozenset(
    [
        "aunt",
        "auntie",
        "aunty",
        "aunts",
        "uncle",
        "uncles",
        "nan",
        "nana",
        "nans",
        "gran",
        "grans",
        "granny",
        "grandma",
        "grandad",
        "granddad",
        "grandpa",
        "gramps",
        "mum",
        "mums",
        "mam",
        "mom",
        "dad",
        "dads",
        "daddy",
        "nanna",
    ]
)
"""Whom only one family calls so: as good as a name."""

NOT_OWNERS = _words(
    """it that there here what let who where how he she when why one today yesterday tomorrow tonight everyone everybody somebody someone
    nobody anybody everything nothing something winter spring summer autumn fall season month week day year morning night evening nature
    rain frost mother father gardener farmer season sun moon god grower baker builder fisherman world water sparrow ladie saint st
    lamb blackbird thrush fox badger slug snail hedgehog wren robin bird hen cat dog bee wasp"""
)
"""Folded words before 's that are no people's, or tell nobody apart."""

NO_NAMES = (
    NOT_OWNERS | NOBODY | DOES | OPENS_A_LINE | prepositions.ARTICLES | prepositions.FILLERS | prepositions.REMARK_OPENERS
    | prepositions.SUBJECTS | frozenset(prepositions.PLACE_OPENERS) | prepositions.NEGATIONS | prepositions.BEING
    | nouns.PLACE_NOUNS | nouns.SOON_PLACES | nouns.COUNT_NOUNS | nouns.TROUBLES | nouns.COVERS | nouns.MULCHES | nouns.SUPPORTS
    | nouns.FEEDS | nouns.TREATMENTS | nouns.THINGS | nouns.PRODUCTS | nouns.WEEDS | nouns.HENS | nouns.LEAVES | nouns.FURNITURE
    | frozenset(nouns.NUMBERS) | frozenset(nouns.UNITS) | frozenset(nouns.LONGEST_VAGUE) | nouns.PART_ALONE | nouns.AMENDMENTS
    | frozenset(words[0] for words in (*PAST, *PLAIN, *GERUNDS) if len(words) == 1)
    | _words(
        """north south east west northern southern england scotland wales ireland britain uk usa america canada france spain italy germany
        holland dutch french italian spanish german english scottish irish welsh european europe japan japanese china chinese india indian
        asian turkish african mediterranean korea thai christmas easter whitsun lent halloween michaelma lady candlemas valentine passover
        ramadan diwali eid thanksgiving advent boxing bonfire monday tuesday wednesday thursday friday saturday sunday january february
        march april may june july august september october november december jan feb mar apr jun jul aug sep sept oct nov dec mon tue
        tues wed thu thur fri sat sun growmore tomorite maxicrop seasol vitax epsom bordeaux neem pyrethrum nematode nemaslug ferric
        enviromesh scotch latin rh npk ph am pm ok tv bbc uv f1 diy internet web google youtube label packet book radio forecast paper
        everybody council committee society club school church shop market show fete weather soil sky light heat lid hose shed
        tray pot water butt potager allotment part row bed border garden greenhouse polytunnel tunnel house kitchen patio balcony yard
        lawn path fence gate hedge orchard compost heap bin seed seedling crop harvest plant flower fruit veg vegetable leaf root
        landing jam chutney soup pesto salad supper lunch dinner tea breakfast pickle freezer jar bottle bag box good great nice happy late
        early next last final week end winter spring summer autumn plan plans note notes list jobs job todo lesson lessons photo
        question answer result total sum year sown planted picked things thing lots loads plenty somewhere nowhere something
        if because although though while since until unless whether when once as like about around between during without within
        after before under over above below behind beside near off out up down so too very quite rather really maybe perhaps
        probably possibly hopefully sadly luckily oddly meanwhile otherwise however therefore anyway besides instead
        can could should would must might shall will does did do is are was were has have had be been being get got
        wow ah oh well yes no hello dear sincerely regards thank thanks cheers please sorry"""
    )
) - _words("pat")  # fmt: skip
"""Folded words that may have a capital and name nobody, unless they stand where only a person can."""

CALLED_AFTER = _names(
    """black-eyed susan,sweet william,good king henry,busy lizzie,creeping jenny,herb robert,jack by the hedge,bouncing bet,joe pye weed,
    joe pye,st john's wort,solomon's seal,lady's mantle,lady's bedstraw,lady's smock,lady's finger,ladies finger,queen anne's lace,
    job's tears,jacob's ladder,valentine's day,valentine's,mother's day,father's day,new year's day,new year's eve,new year's,st
    patrick's day,st george's day,st david's day,st swithin's day,lily of the valley,rose of sharon,johnny jump up,sweet cicely,ragged robin,
    herb bennet,jack frost,jack in the pulpit,jack in the green,mother-in-law's tongue,dusty miller,miss willmott's ghost,bishop's weed,
    adam's needle,aaron's rod,jack o'lantern,tom thumb,king edward,king edwards,peter pan,mr big,mrs popple,mr stripey,uncle bert,aunt
    molly's,aunt ruby's,grandpa ott,grandpa ott's,granny smith,granny's bonnet,granny's bonnets,grandpa admire's,mother nature,father
    christmas,father time,william lobb,rosa rugosa,rosa canina,rosa gallica,old father time,jerusalem artichoke,lamb's lettuce,lamb's
    ears,lamb's tongue,bird's foot,sheep's sorrel,goat's beard,mare's tail,hart's tongue,bear's breeches,old man's beard,gardener's
    delight,gardeners world,gardeners' question time,st george,swiss chard,brussels sprout,savoy cabbage,egyptian onion,welsh onion,
    spanish onion,black nightshade,virginia creeper,michaelmas daisy,shasta daisy,shirley poppy,shirley tomato,ailsa craig,will o' the
    wisp,jack russell,bob a job,heath robinson,tommy toe,peter rabbit,mr mcgregor,robin redbreast,jenny wren,paul robeson,jersey royal,
    ice saints,st martin's summer,penny bun,jelly baby,sally lunn,eton mess,bloody mary,waldorf salad,caesar salad,victoria sponge,
    alexanders,victoria plum,worcester pearmain,black krim,green man"""
)  # fmt: skip
"""Plants, varieties, feasts and figures that sound like people, beside those of the public list."""

BYNAMES = _words("tom tommy tommie")
"""Names for a crop that are rather a person's where somebody is given, or gives, something."""
