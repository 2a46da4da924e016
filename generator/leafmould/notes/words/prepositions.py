"""The third table: small words. What opens a place, what joins, what starts a remark, what denies.

A preposition opens a place only if a known place follows; "in", "into" and "from" may also open a new one.
"""

from __future__ import annotations

from leafmould.values.names import fold, fold_word


def _words(text: str) -> frozenset[str]:
    return frozenset(fold_word(word) for word in text.split())


PLACE_OPENERS = {
    "in": "at", "into": "at", "at": "at", "on": "at", "onto": "at", "to": "at", "along": "at", "under": "at",
    "within": "at", "inside": "at", "across": "at", "down": "at", "up": "at", "over": "at", "around": "at", "round": "at",
    "by": "at", "against": "at", "throughout": "at", "through": "at", "beside": "at", "near": "at", "of": "at",
    "from": "from", "off": "from", "for": "at", "out": "from",
}  # fmt: skip
"""What a known place behind the word is: where it happened, or where it came from."""

NEW_PLACE_OPENERS = _words("in into from")

ARTICLES = _words("the my our a an this that your his her their its")

JOINS = _words("and n plus et und y also &")

CLAUSE_JOINS = _words("and then plus but also next afterwards")
CLAUSE_LEADS = CLAUSE_JOINS | _words("so n")
"""Behind these another verb may stand: "bolted, so out it came"."""

REMARK_OPENERS = _words(
    """where which that who because as since so but before after when while whilst if for instead next between
    behind like unlike than whose until till though although per via against despite during without except about
    beside near by under around round over along across through towards above below among amongst inside outside ready hoping
    hope looks looking seems seem should might ought must will would could can cannot need needs not still yet only
    inc incl including interplanted alongside beyond opposite versus vs although thanks due following using only ie eg"""
)
"""These open a remark that runs to the next comma, unless a slot of the verb took the word first."""

FILLERS = _words(
    """the my our a an of some more also just then today tonight this morning afternoon evening finally at last
    again now already again too quickly lovely there here so very well i we have has had been was were is are did
    got to do ve im we've another all am be being well yay hooray hurrah phew at-last"""
)

SUBJECTS = _words(
    "i we he she they kids kid children child mum dad mom gran grandma grandad granny neighbour neighbor husband wife son daughter grandson granddaughter nephew niece boys girls everyone us team family neighbours foodbank church school pub cafe vicar chef shelter the my our today"
)
"""Who did it, before the verb; said, but no slot."""

BEFORE_VERB = (
    SUBJECTS
    | FILLERS
    | _words(
        "finally think believe guess pretty sure that today also just then yesterday and managed eventually meanwhile later early quickly only at last hurriedly both all have ive weve i've we've busy day next door hey note uh um er erm oh okay get getting lovely great good nice"
    )
)

NEGATIONS = _words(
    "no not never didnt havent hasnt hadnt wasnt werent isnt arent dont doesnt wont cant couldnt wouldnt nothing none nobody forgot without cannot aint neither nor hardly failed-to nope"
)

INTENDING = frozenset(
    fold(words)
    for words in (
        "to", "will", "must", "need to", "needs to", "want to", "plan to", "planning to", "going to", "gonna", "should",
        "todo", "to do", "remember to", "don't forget to", "dont forget to", "i'll", "ill", "we'll", "well", "ought to", "time to",
        "next year", "tomorrow", "shall", "would like to", "hope to", "hoping to", "intend to", "aim to", "have to", "has to",
        "might", "could", "may", "can", "let's", "lets", "we will", "i will", "i must", "we must", "i need to", "we need to",
        "got to", "gotta", "about to", "next week", "next month", "this weekend", "if", "when", "once", "consider", "i should",
        "we should", "i want to", "we want to", "please", "maybe", "perhaps", "plan", "buy", "order", "ready to", "try to", "due to be",
        "i plan to", "we plan to", "go to", "needs", "need", "meant to", "supposed to", "wanted to", "thinking of", "decided to", "next time",
        "time for", "still to", "yet to", "can't wait to",
    )
)  # fmt: skip
"""What marks an intention when a plain form of a verb follows, or stands at the start of the line."""
LONGEST_INTENDING = max(map(len, INTENDING))
INTENDING_STARTS = frozenset(words[0] for words in INTENDING)

EXACT_STILL = _words("say only just barely")
"""These stand before a number like "about", yet leave it exact."""

ABOUT = EXACT_STILL | _words(
    "about around approximately approx est roughly nearly almost circa ca c some over under up maybe perhaps probably least possibly between"
)
"""Before a number: it is an estimate."""


SHORTENED = {
    "em": "them", "bk": "back", "div": "divided", "div'd": "divided", "sdlg": "seedling", "sdlgs": "seedling", "mod": "module", "mods": "module", "oot": "out", "doon": "down", "intae": "into", "frae": "from", "fae": "from", "aff": "off", "roon": "round", "roond": "round",
    "frm": "from", "nd": "and", "abt": "about", "agnst": "against", "agst": "against", "nxt": "next", "btw": "between",
    "bcos": "because", "coz": "because", "yday": "yesterday", "yest": "yesterday", "evrything": "everything",
    "everthing": "everything", "exept": "except", "exepct": "except", "plnted": "planted", "plantd": "planted",
    "pickd": "picked", "sowd": "sowed", "wtih": "with", "inthe": "in", "onthe": "on", "inmy": "in", "ofthe": "of", "fromthe": "from", "tothe": "to",  "doz": "dozen", "dz": "dozen", "dzn": "dozen", "cpl": "couple", "thru": "through", "pkd": "picked", "harv": "harvested", "wtrd": "watered", "transpl": "transplanted", "plntd": "planted", "swn": "sown", "hrvstd": "harvested", "altho": "although", "wkend": "weekend", "w": "with", "wi": "with", "jrs": "jar", "bgs": "bag", "bg": "bag", "hds": "head", "hd": "head", "nth": "north", "sth": "south", "lft": "lifted", "swpd": "swapped", "blchd": "blanched", "brot": "brought", "dk": "duck", "pun": "punnet", "puns": "punnet", "jr": "jar", "svd": "saved", "grn": "green", "comp'd": "composted", "compd": "composted", "btl": "bottle", "btls": "bottle", "bdl": "bundle", "lge": "large", "sml": "small", "wk'd": "weeded", "frz": "froze", "pnt": "punnet", "punet": "punnet", "bkt": "bucket", "gd": "good",
}  # fmt: skip
"""Words as they are typed on a phone."""

SAID_AS = {
    ("ice", "cream"): "icecream", ("row", "cover"): "rowcover", ("row", "covers"): "rowcover", ("feed", "sack"): "feedsack", ("feed", "bag"): "feedbag", ("frost", "free"): "frostfree", ("in", "front"): "beyond", ("in", "place"): "instead", ("leaf", "mould"): "leafmould", ("leaf", "mold"): "leafmould",
}  # fmt: skip
"""Two words of which the first alone would mean something else."""
SAID_AS_SECOND = {
    **dict.fromkeys((("sweet", w) for w in ("tater", "tatty", "tattie", "spud", "potatoe", "pot", "tatie")), "potato"),
    **dict.fromkeys((("jerusalem", w) for w in ("choke", "arti", "artichock")), "artichoke"),
    **dict.fromkeys((("globe", w) for w in ("choke", "arti", "artichock")), "artichoke"),
    ("spring", "cab"): "cabbage", ("brussel", "spout"): "sprout", ("sweet", "pep"): "pepper",
}  # fmt: skip
"""Two words of which the second is cut short or local: folded, with what it is in full."""
SAID_AS_STARTS = frozenset(first for first, _ in (*SAID_AS, *SAID_AS_SECOND))

GLUED = {
    "2day": "today",
    "2nite": "tonight",
    "b4": "before",
    "in2": "into",
    "on2": "onto",
    "1s": "ones",
    "4eva": "forever",
    "2moro": "tomorrow",
    "2morrow": "tomorrow",
    "2mrw": "tomorrow",
    "w/o": "without",
    "p/o": "planted",
    "p/o'd": "planted",
    "p/out": "planted",
    "p/on": "potted",
    "t/p": "transplanted",
    "h/o": "hardened",
    "h/off": "hardened",
    "s/shooted": "sideshooted",
}
"""Words with a number for a syllable, or cut short with a stroke."""

STRONG_PLANS = frozenset(
    fold(words)
    for words in (
        "need to", "needs to", "going to", "gonna", "must", "should", "should really", "want to", "plan to", "planning to", "intend to",
        "thinking of", "thinking about", "will", "i'll", "i will", "we'll", "we will", "reckon i'll", "i must", "we must", "i should", "we should", "i need to",
        "we need to", "i want to", "we want to", "i intend to", "hoping to", "hope to", "ought to", "remember to", "have to", "got to", "gotta",
        "must get", "i'm going to", "we're going to", "meaning to", "still need to", "still to", "must remember to", "i'd like to", "might", "time to",
    )
)  # fmt: skip
"""At the start of a line these make it an intention, whatever verb follows."""
LONGEST_PLAN = max(map(len, STRONG_PLANS))
STRONG_FIRST = frozenset(words[0] for words in STRONG_PLANS)

THIRD_PERSONS = _words("it they she he these those there")
BEING = _words("was were is are be had has have looked looks look seems seemed scratched")
"""Behind a comma "they are …" tells more and names nothing done."""

ABOUT_PHRASES = """
upwards of; getting on for; close to; close on; well over; in excess of; a bit over; a little over; a bit under; a little under; a shade over;
a shade under; just shy of; shy of; a touch over; a touch under; not quite; the best part of; best part of; more or less; something like;
in the region of; at least; no less than; a good; a solid; a scant; a generous; a rough; an estimated; easily; north of; way over; at a guess;
must be; must have been; like; what felt like; what looked like
"""
EXACT_PHRASES = """
a total of; a grand total of; a grand; a full; a whole; whole; a whopping; a massive; a huge; a mere; a measly; a paltry; a record; a respectable; an impressive; a bumper;
a lovely; a nice; a decent; another good; another whole
"""
ABOUT_BY_FIRST: dict[str, tuple[tuple[tuple[str, ...], str], ...]] = {}
for _meant, _phrases in (("about", ABOUT_PHRASES), ("just", EXACT_PHRASES)):
    for _phrase in map(fold, _phrases.replace("\n", " ").split(";")):
        ABOUT_BY_FIRST[_phrase[0]] = (*ABOUT_BY_FIRST.get(_phrase[0], ()), (_phrase, _meant))
ABOUT_SIGNS = frozenset(max(p, key=len) for phrases in ABOUT_BY_FIRST.values() for p, _ in phrases)
"""The longest word of each of them: without one, no line is looked through."""
"""Words before a number that make it an estimate, or only praise it."""

NO_DEEDS = _words(
    "checked counted looked opened turned needed wanted managed went rotavated rototilled tilled edged mowed strimmed"
)
"""What was done with the eyes or in the mind: a remark that holds it is a remark."""


ABOUT_SHORT = frozenset({"c", "ca", "approx", "about", "est", "min", "max"})
TITLES = frozenset({"mr", "mrs", "ms", "dr", "st", "rev", "fr", "sr", "revd", "prof"})
ABBREVIATED = (
    ABOUT_SHORT
    | TITLES
    | frozenset({"doz", "dozen", "pkt", "pkts", "wt", "var", "approx", "incl", "inc", "qty"})
)
"""What is written short with a point, which closes no sentence."""


def ends_nothing(word: str, follows: str, is_capital: bool) -> bool:
    """Whether the point behind a word is that of "c. 3 kg", "doz. eggs", "Mr. Shaw", and closes no sentence."""
    if word in ABOUT_SHORT:
        return follows.isdigit()
    return word in ABBREVIATED and (word in TITLES or not is_capital)
