"""What stands beside a name and says that it is somebody's: a title, "from", "gave … 300 g", "says".

Used by `somebody`. The word right before or behind decides first, since most words with a capital are no names;
only then is more of the line looked at.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from leafmould.garden.called import KIN
from leafmould.notes.words import nouns
from leafmould.values.names import fold_word

SEEN = 60
"""Letters before and behind a name that are looked at."""


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


TITLES = KIN | _words(
    """mr mrs ms miss mx dr doctor prof professor rev revd reverend father sir lady lord dame canon capt captain major colonel col sgt madame
    mme herr frau signora señora cousin sister brother farmer"""
)
RELATED = _words(
    """neighbour neighbours neighbor neighbors friend friends mate mates sister brother cousin niece nephew son daughter wife husband partner
    colleague boss gardener teacher vicar postman plumber grandson granddaughter mother father lad lads girl girls boy boys kid kids called"""
)
GIVING = _words(
    "gave given handed passed sent brought offered lent sold owe owed promised slipped swapped give"
)
ADDRESSED = _words(
    """asked ask asking told tell thanks thank you thanked met meet rang phoned visited visit remind reminded invited invite owed owe paid
    cheers saw helped help let taught joined watched into birthday love dear hello hi said says"""
)
FROM_TO = _words("from for to with by via off")
BETWEEN = _words("my our the old dear little young poor good big")
AND = _words("and & +")

SPEAKING = _words(
    """and & also then always never just still even kindly already has had says say said reckons reckoned think thinks thought told asked asks
    popped rang phoned called visited suggests suggested swear swears swore promised offered recommends recommended laughed brought gave
    lent sent helped dropped swapped showed taught warned advised wondered wants wanted knows knew remembers insists texted emailed wrote
    joined built came is are was were took next"""
)
"""Every word that `SPOKE` may begin with."""

SPOKE = re.compile(
    r"(?:\s+(?:and|&)\s+[^\W\d_a-z][\w’'-]*)?\s+(?:(?:also|then|always|never|just|still|even|kindly|already|has|had)\s+)?(?:says?|said|reckon(?:s|ed)|thinks?|thought"
    r"|told|asked|asks|popped|rang|phoned|called|visited|suggest(?:s|ed)|swears?|swore|promised|offered|recommend(?:s|ed)|laughed|brought|gave|lent|sent"
    r"|helped|dropped|swapped|showed|taught|warned|advised|wondered|wants|wanted|knows|knew|remembers|insists|texted|emailed|wrote|joined|built"
    r"|came\s+(?:round|over|by|for|to\s+(?:help|see|look|tea|lunch|dinner|visit|stay|supper)|with|and|today|yesterday|this|on)"
    r"|(?:is|are|was|were)\s+(?:coming|here|visiting|round|staying|away|helping|poorly|happy|pleased|delighted|thrilled|chuffed)"
    r"|took\s+(?:some|a|the|half|home|most|all|\d)|has\s+(?:offered|promised|given|been\s+(?:round|helping))|next\s+door)\b"
)
GIVEN_IT = re.compile(
    r"(?:\s+(?:and|&)\s+[^\W\d_a-z][\w’'-]*)?\s+(?:an?|some|half|the|my|our|his|her|both|most|all|two|three|four|five|six|ten|a\s+few|\d|[½¼¾])"
)
WITH_THINGS = re.compile(
    r"\b(?:fed|feed|feeding|water\w*|spray\w*|treat\w*|mulch\w*|cover\w*|net\w*|limed?|dress\w*|dust\w*|sown|sowed|sow|plant\w*|under\w*|mix\w*"
    r"|fill\w*|scrubb\w*|clean\w*|wash\w*|edg\w*|grow\w*|grew|interplant\w*)\b[^.!?\n]*$"
)
TAKEN_UP = re.compile(
    r"\b(?:pick\w*|harvest\w*|clear\w*|pull\w*|lift\w*|dug|dig\w*|cut|gather\w*|mov\w*|transplant\w*|barrow\w*|carried|carted|shifted)\b[^,.;\n]*$"
)
"""What is done from or to a place rather than somebody; both are looked for in small letters, in a third of the time."""
STARTS = re.compile(r"(?:^|[.!?:;|>]\s*|[–—-]\s|\*\s|[\"“(])\W*$")
JOINED = re.compile(r"\s*(?:,|&|\+|\band\b|\bor\b)\s*(?:and\s+)?")


@dataclass(frozen=True, slots=True)
class Beside:
    """What stands before and behind a word, in its line."""

    before: str
    after: str
    lead: str  # the word right before, in small letters

    @property
    def is_first(self) -> bool:
        """Whether a sentence begins with it, or a line."""
        if self.before[-1:] == " " and self.before[-2:-1].isalnum():
            return False  # a word stands before it, as before most
        return STARTS.search(self.before) is not None

    @property
    def is_spoken_of(self) -> bool:
        """Whether only somebody can stand here: before "says", behind "thanks", between "gave" and an amount."""
        if self.lead in ADDRESSED or SPOKE.match(self.after):
            return True
        return self.lead in GIVING and GIVEN_IT.match(self.after) is not None

    @property
    def is_related(self) -> bool:
        """Whether it is behind "my neighbour"."""
        return self.lead in RELATED and not self._is_a_place

    @property
    def is_given(self) -> bool:
        """Whether it is from, for, to, by or with somebody."""
        how, at = self._how()
        if not how or self.after.lstrip()[:1].isdigit():
            return False
        if how == "with":
            return not WITH_THINGS.search(self.before[:at].lower())
        return how in ("for", "by", "via") or not (
            self._is_a_place or TAKEN_UP.search(self.before[:at].lower())
        )

    @property
    def _is_a_place(self) -> bool:
        """Whether a noun of a place follows: "from Low bed"."""
        behind = self.after.split(None, 1)
        return bool(behind) and behind[0].islower() and fold_word(behind[0].strip(".,;")) in nouns.PLACE_NOUNS

    def _how(self) -> tuple[str, int]:
        """The preposition before it, and where that stands; "" if there is none."""
        words = self.before.split()
        for back in (1, 2, 3):
            if len(words) < back:
                break
            word = words[-back].lower()
            if word in FROM_TO:
                return word, self.before.lower().rfind(word)
            if word not in BETWEEN:
                break
        return "", 0


def beside(text: str, start: int, end: int) -> Beside:
    """What stands beside a word of a text."""
    before = text[max(0, start - SEEN, text.rfind("\n", 0, start) + 1) : start]
    after = text[end : end + SEEN]
    words = before.split()
    lead = words[-1].strip(".,(").lower() if words else ""
    return Beside(before, after.partition("\n")[0], lead)


LEADS = TITLES | RELATED | GIVING | ADDRESSED | FROM_TO | BETWEEN | AND | {"man"}


def may_be_told(text: str, start: int, end: int) -> bool:
    """A quick look whether a word beside it may say that it is somebody's name."""
    if text[end - 2 : end] in ("'s", "’s") or text[end : end + 1] in ("'", "’"):
        return True
    before = text[max(0, start - 14) : start].split()
    if before and before[-1].strip(".,(").lower() in LEADS:
        return True
    after = text[end : end + 14].split(None, 1)
    return bool(after) and after[0].strip(".,!?") in SPEAKING


def title_before(text: str, start: int) -> int | None:
    """Where a title right before a name begins: "Mrs", "old man", "Aunt"; None if there is none."""
    before = text[max(0, start - 14) : start]
    words = before.split()
    if not words or not before[-1:].isspace():
        return None
    word = words[-1].rstrip(".").lower()
    if word == "man" and len(words) > 1 and words[-2].lower() == "old":
        return start - len(before) + before.lower().rfind("old")
    return start - len(before) + before.rfind(words[-1]) if word in TITLES else None
