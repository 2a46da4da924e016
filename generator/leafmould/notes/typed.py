"""A line as typed, cut into folded words once, with quotes found and known names looked up as asked.

The first step of reading a work line. Positions are counted in words; `gaps` holds the signs between
them. Nothing here knows verbs or slots.
"""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import accumulate

from leafmould.notes.clipped import CLIPPED_WORDS, read_in_full
from leafmould.notes.no_crops import FED_WITH, TOMS, no_crop_of_tom, no_crops_of_feeds
from leafmould.notes.quotes import find_quotes
from leafmould.notes.signs import SAME_LENGTH, read_signs
from leafmould.notes.slips import mend, strange_words
from leafmould.notes.words.misspelt import MISSPELT
from leafmould.notes.words.nouns import LOCAL_NAMES, NUMBERS, PART_ENDS, STRAWBERRIES
from leafmould.notes.words.prepositions import (
    ABBREVIATED,
    ABOUT_BY_FIRST,
    ABOUT_SIGNS,
    GLUED,
    SAID_AS,
    SAID_AS_SECOND,
    SAID_AS_STARTS,
    SHORTENED,
    ends_nothing,
)
from leafmould.notes.words.spellings import SPELLINGS
from leafmould.notes.words.verbs import LONGEST_PAST
from leafmould.values.names import WORD, Kind, Known, Vocabulary, fold, fold_word

BREAKS = re.compile(
    r"[,;:()\[\]{}|!…\n\r*=]|\s-+(?:\s|$)|^-+\s|[.?](?:\s|$)|->|→|·|•|[\u2600-\u27bf\U0001f300-\U0001faff]"
)
GLUED_WORD = re.compile(rf"(?<!\w)(?:{'|'.join(GLUED)})(?!\w)", re.IGNORECASE)
MOST_WORDS = 600
"""Longer lines are read no further, so that reading time stays in proportion."""
PIECES = re.compile(f"({WORD.pattern})")
PLAIN_PIECES = re.compile("([A-Za-z]+(?:'[A-Za-z]+)*|[0-9]+)")
"""As PIECES, for text of plain letters: most lines, in a third of the time."""
BEYOND = 8
"""So many places behind the last word, and before the first, may be asked for a name, which none of them has."""


class Typed:
    """One line: its words folded, where they stand, the signs between them."""

    __slots__ = (
        "breaks",
        "count",
        "ends",
        "found",
        "gaps",
        "mended",
        "plain",
        "quotes",
        "starts",
        "stops",
        "text",
        "torn",
        "vocabulary",
        "words",
    )

    def __init__(self, text: str, vocabulary: Vocabulary) -> None:
        self.text = text
        is_plain = text.isascii()
        self.plain = (
            text if is_plain and "`" not in text and "\t" not in text else text.translate(SAME_LENGTH)
        )
        self.vocabulary = vocabulary
        pieces = (PLAIN_PIECES if is_plain else PIECES).split(self.plain)
        edges = [*accumulate(map(len, pieces))]
        self.starts, self.ends = edges[:-1:2], edges[1::2]
        self.words, self.gaps = [*map(fold_word, pieces[1::2])], pieces[::2]
        self.count = len(self.words)
        is_glued = ("" in self.gaps[1:-1] or "/" in self.gaps) and GLUED_WORD.search(self.plain) is not None
        if is_glued or self.count > MOST_WORDS:
            self._cut_again(is_glued)
        if not is_plain or ">" in self.plain:
            read_signs(self)
        if not SHORT_FORMS.isdisjoint(self.words):
            self.words = [*map(self._spelled_out, range(self.count))]
        if not ABOUT_SIGNS.isdisjoint(self.words):
            self._say_about()
        if "place" in self.words and "of" in self.words:
            self._say_instead()
        if not SAID_AS_STARTS.isdisjoint(self.words):
            self._say_as_one()
        if not CLIPPED_WORDS.isdisjoint(self.words):
            read_in_full(self)
        if "no" in self.words and "no. " in self.plain.lower():
            self._number_no()
        self._measure_gaps()
        self.quotes = (
            find_quotes(self.text, self.plain, self.words, self.starts, self.vocabulary)
            if "'" in self.plain or '"' in self.plain
            else {}
        )
        self.mended: dict[int, str] = {}  # words mistyped, with what they were meant to be
        self.torn: dict[int, tuple[str, ...]] = {}  # words mistyped that may be several others
        if strange := strange_words(self.words, vocabulary):
            self._mend(strange)
        looks = _first_looks(self.vocabulary)
        self.found: list[tuple[int, tuple[Known, ...]] | None] = [looks.get(w, NO_NAME) for w in self.words]
        if not FED_WITH.isdisjoint(self.words):
            no_crops_of_feeds(self)
        if not TOMS.isdisjoint(self.words):
            no_crop_of_tom(self)
        self.found += NO_NAMES

    def _cut_again(self, is_glued: bool) -> None:
        """The words of a line with "2day" as one word, or of a line longer than is read."""
        found = [*zip(self.starts, self.ends, strict=True)][:MOST_WORDS]
        if is_glued:
            found = _glued(self.plain, found)
        self.starts, self.ends = [start for start, _ in found], [end for _, end in found]
        self.words = [fold_word(self.plain[start:end]) for start, end in found]
        self.words = [GLUED.get(word, word) for word in self.words] if is_glued else self.words
        self.count = len(found)
        edges = zip([0, *self.ends], [*self.starts, len(self.plain)], strict=True)
        self.gaps = [self.plain[start:end] for start, end in edges]

    def _say_about(self) -> None:
        """ "upwards of 40", "a good 2 kg", "getting on for a dozen": "about", as far as reading goes."""
        for i, word in enumerate(self.words):
            if word not in ABOUT_BY_FIRST:
                continue
            for phrase, meant in ABOUT_BY_FIRST[word]:
                end = i + len(phrase)
                if tuple(self.words[i:end]) == phrase and self._is_counted(end, is_like=word == "like"):
                    self.words[i:end] = [meant] * len(phrase)
                    break

    def _say_instead(self) -> None:
        """ "in the place of the onions": instead of them."""
        for i in range(self.count - 3):
            if self.words[i : i + 4] == ["in", "the", "place", "of"]:
                self.words[i : i + 3] = ["instead"] * 3

    def _say_as_one(self) -> None:
        """ "an ice cream tub": no ice; "a feed sack": no feed. "in Front row" stays, where that is a bed."""
        for i in range(self.count - 1):
            pair = (self.words[i], self.words[i + 1])
            if pair in SAID_AS_SECOND:
                self.words[i + 1] = SAID_AS_SECOND[pair]
            word = SAID_AS.get(pair)
            if word is not None and not self.vocabulary.at(self.words, i + 1, Kind.BED)[0]:
                self.words[i] = self.words[i + 1] = word

    def _number_no(self) -> None:
        """ "cucumber no. 1": a number, and no "no"."""
        for i in range(self.count - 1):
            if self.words[i] == "no" and self.gaps[i + 1] == ". " and self.words[i + 1].isdigit():
                self.words[i] = "number"

    def _is_counted(self, i: int, *, is_like: bool) -> bool:
        follows = self.words[i] if i < self.count else ""
        return follows.isdigit() or (
            (follows in NUMBERS or follows in ("half", "quarter", "dozen"))
            and follows not in (("one", "a", "an") if is_like else ("one",))
        )

    def _spelled_out(self, i: int) -> str:
        """A word as it would be spelled in full; the "nd" of "2nd" stays."""
        word, start = self.words[i], self.starts[i]
        if word == "n":
            return "north" if self._is_side(i) else word
        glued = start > 0 and self.plain[start - 1].isdigit()
        if (glued and SPELLED_OUT.get(word) != "dozen") or (word == "w" and not self._is_with(i)):
            return word
        if word in MISSPELT and self.vocabulary.longest_by_first_word.get(word):
            return word
        return SPELLED_OUT.get(word, word)

    def _is_side(self, i: int) -> bool:
        """ "N half Long border"; not "weeded n half the beans"."""
        behind = self.words[i + 2 : i + 6]
        if self.words[i + 1 : i + 2] == [] or self.words[i + 1] not in PART_ENDS:
            return False
        by_words = self.vocabulary.with_public
        return any(
            k.kind is Kind.BED for n in range(len(behind)) for k in by_words.get(tuple(behind[: n + 1]), ())
        )

    def _is_with(self, i: int) -> bool:
        """ "w/ the kids", "w soapy water"; not the west of "Top bed w" or "w half"."""
        if self.plain[self.ends[i] : self.ends[i] + 1] == "/":
            return True
        follows = self.words[i + 1 : i + 2]
        between = self.plain[self.ends[i] : self.starts[i + 1]] if follows else ""
        return between == " " and follows[0].isalpha() and follows[0] not in PART_ENDS

    def _mend(self, strange: set[str]) -> None:
        """Words mistyped by one letter or typed without vowels are read as what they were meant to be."""
        spots = {
            i: self.capital(i) and (not self._opens_sentence(i) or self._is_doer(i))
            for i, word in enumerate(self.words)
            if word in strange and self._may_be_slip(i)
        }
        if spots:
            mend(self.words, spots, self.vocabulary, self.mended, self.torn)

    def _may_be_slip(self, i: int) -> bool:
        """Not inside a quote, nor with an apostrophe, nor behind a number without a space."""
        start, end = self.starts[i], self.ends[i]
        is_apart = "'" not in self.plain[start:end] and not (start and self.plain[start - 1].isdigit())
        return is_apart and not any(quote.start < start < quote.end for quote in self.quotes.values())

    def _is_doer(self, i: int) -> bool:
        """ "Karla picked peas": somebody, where "Onoins lifted" are many."""
        follows = self.words[i + 1] if i + 1 < self.count else ""
        return follows in LONGEST_PAST and self.plain[self.ends[i] - 1] not in "sS"

    def _opens_sentence(self, i: int) -> bool:
        return i == 0 or (self.breaks[i] and not self.gaps[i].startswith(","))

    def _measure_gaps(self) -> None:
        """The signs before each word and behind the last, and where names must stop."""
        self.gaps = ["" if gap == " " else gap for gap in self.gaps]
        if (". " in self.gaps or "." in self.gaps) and not ABBREVIATED.isdisjoint(self.words):
            self._join_shortened()
        self.breaks = [gap != "" and _is_break(gap) for gap in self.gaps]
        for sign in SIGNS_INSIDE:
            if sign in self.gaps:
                self.breaks = [b and not self._is_inside(sign, i) for i, b in enumerate(self.breaks)]
        self.breaks[0] = self.breaks[self.count] = True
        self.stops: list[int] = []
        for i in range(1, self.count + 1):
            if self.breaks[i]:
                self.stops += [i] * (i - len(self.stops))
        self.stops.append(self.count)

    def _join_shortened(self) -> None:
        """The point behind "c. 3 kg", "doz. eggs", "Mr. Shaw" ends nothing."""
        for i in range(1, self.count):
            if self.gaps[i] in (". ", ".") and ends_nothing(
                self.words[i - 1], self.words[i], self.capital(i)
            ):
                self.gaps[i] = ""

    def _is_inside(self, sign: str, i: int) -> bool:
        """Whether the sign before word `i` stands inside a number: "1.5 kg", "1:10", "12:30"."""
        is_between = self.gaps[i] == sign and 0 < i < self.count
        return is_between and self.words[i].isdigit() and self.words[i - 1].isdigit()

    def names(self, i: int) -> tuple[int, tuple[Known, ...]]:
        """The longest known name that begins at word `i`, and what it may mean; (0, ()) if none."""
        try:
            known = self.found[i]
        except IndexError:
            return NO_NAME
        if known is None:
            known = self.found[i] = self._look_up(i)
        return known

    def _look_up(self, i: int) -> tuple[int, tuple[Known, ...]]:
        words, by_words = self.words, self.vocabulary.with_public
        if words[i] in NO_CROP_BEFORE and words[i + 1 : i + 2] == [NO_CROP_BEFORE[words[i]]]:
            return NO_NAME
        most = min(self.vocabulary.longest_by_first_word.get(words[i], 0), self.stops[i] - i)
        for size in range(most, 0, -1):
            if (known := by_words.get(tuple(words[i : i + size]))) and (
                not known[0].is_word or self._is_name(i, size, known[0])
            ):
                return size, known
        if i + 1 < self.stops[i] and (known := by_words.get((words[i] + words[i + 1],))):
            crops = tuple(k for k in known if k.kind in (Kind.CROP, Kind.CROP_GROUP))
            if crops:  # "black currants" for blackcurrants
                return 2, crops
        if len(words[i]) > LONGEST_SHORT and (known := _run_together(self.vocabulary).get(words[i], ())):
            return 1, known
        other = LOCAL_NAMES.get(words[i]) or SPELLINGS.get(words[i])
        if words[i] == "runner" and not STRAWBERRIES.isdisjoint(words):
            return NO_NAME  # "the strawberries, cut off the runners"
        if other and (known := _local(self.vocabulary, other)):
            return 1, known
        return NO_NAME

    def _is_name(self, i: int, size: int, known: Known) -> bool:
        """Whether a name that is also an ordinary word is written for a name here."""
        if known.kind is Kind.CROP_GROUP:
            return self.plain[self.starts[i] : self.ends[i + size - 1]].islower() and self._is_plural(
                i + size
            )
        if known.kind is Kind.BED:
            return self._is_written_large(i)
        if i == 0 and not self._ripens(size):
            return False
        return all(self.capital(k) or self.words[k].isdigit() for k in range(i, i + size))

    def _is_written_large(self, i: int) -> bool:
        """ "HB" for Herb bank; not "hb", not the "OR" of a line all in capitals, not "2 LB peas"."""
        written = self.text[self.starts[i] : self.ends[i]]
        is_unit = i > 0 and (self.words[i - 1].isdigit() or self.starts[i] == self.ends[i - 1])
        return written.isupper() and len(written) > 1 and not is_unit and not self.text.isupper()

    def _ripens(self, i: int) -> bool:
        """ "Discovery ripe", "Victoria in blossom": no person does that."""
        behind = self.words[i : i + 2]
        return behind[:1] in (["ripe"], ["ripening"], ["flowering"]) or (
            behind[:1] == ["in"] and behind[1:] in (["flower"], ["bloom"], ["blossom"], ["bud"])
        )

    def _is_plural(self, end: int) -> bool:
        return self.plain[self.ends[end - 1] - 1] == "s"

    def kind(self, i: int, *kinds: Kind) -> tuple[int, tuple[Known, ...]]:
        """As `names`, of these kinds only; a shorter name of the kind is not looked for."""
        size, known = found = self.names(i)
        if size == 0:
            return NO_NAME
        if len(known) == 1:
            return found if known[0].kind in kinds else NO_NAME
        fitting = tuple(k for k in known if k.kind in kinds)
        return (size, fitting) if fitting else NO_NAME

    def written(self, start: int, end: int) -> str:
        """Words `start` to `end` (not included) as typed."""
        if end <= start:
            return ""
        return self.text[self.starts[start] : self.ends[end - 1]]

    def phrase(self, i: int, size: int) -> tuple[str, ...]:
        """Folded words from `i`, at most `size`."""
        return tuple(self.words[i : i + size])

    def capital(self, i: int) -> bool:
        """Whether word `i` begins with a capital letter."""
        return self.text[self.starts[i]].isupper()

    def is_number(self, i: int) -> bool:
        """Whether word `i` is digits."""
        return i < self.count and self.words[i].isdigit()


def _glued(plain: str, found: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """The words with "2day" as one."""
    whole = [m.span() for m in GLUED_WORD.finditer(plain)]
    inside = {start for begin, end in whole for start, _ in found if begin <= start < end}
    return sorted([*whole, *(span for span in found if span[0] not in inside)])[:MOST_WORDS]


SIGNS_INSIDE = (".", ":")
LONGEST_SHORT = 6
NO_NAME: tuple[int, tuple[Known, ...]] = (0, ())
NO_NAMES: list[tuple[int, tuple[Known, ...]] | None] = [NO_NAME] * BEYOND
SPELLED_OUT = {**MISSPELT, **SHORTENED}
SHORT_FORMS = frozenset({*SPELLED_OUT, "n"})
NO_CROP_BEFORE = {
    "cabbage": "white",  # a butterfly
    **dict.fromkeys(("pea", "bean", "barley", "wheat", "oat", "rye"), "straw"),  # what is spread, no crop
}


@lru_cache(maxsize=5_000)
def _is_break(gap: str) -> bool:
    return BREAKS.search(gap) is not None


@lru_cache(maxsize=8)
def _first_looks(vocabulary: Vocabulary) -> dict[str, tuple[int, tuple[Known, ...]] | None]:
    """What a first look at a word says: the name it is whatever stands behind it, or None for a closer look."""
    looks: dict[str, tuple[int, tuple[Known, ...]] | None] = dict.fromkeys(_name_starts(vocabulary))
    for word, longest in vocabulary.longest_by_first_word.items():
        known = vocabulary.with_public.get((word,))
        if longest == 1 and known and not known[0].is_word and word not in NO_CROP_BEFORE:
            looks[word] = (1, known)
    return looks


@lru_cache(maxsize=8)
def _name_starts(vocabulary: Vocabulary) -> frozenset[str]:
    """Every word a name may begin with: asked once a word, so that most words are never looked up."""
    crops = (Kind.CROP, Kind.CROP_GROUP)
    singles = [w[0] for w, known in vocabulary.with_public.items() if len(w) == 1 and known[0].kind in crops]
    halves = {word[:k] for word in singles for k in range(1, len(word))}  # "black currants"
    return frozenset(
        {*vocabulary.longest_by_first_word, *halves, *_run_together(vocabulary), *LOCAL_NAMES, *SPELLINGS}
    )


@lru_cache(maxsize=8)
def _run_together(vocabulary: Vocabulary) -> dict[str, tuple[Known, ...]]:
    """Crops of two words written as one: "runnerbeans"."""
    return {
        "".join(words): (known,)
        for words, known in reversed(vocabulary.pairs)
        if len(words) == 2 and known.kind is Kind.CROP
    }


@lru_cache(maxsize=2_000)
def _local(vocabulary: Vocabulary, name: str) -> tuple[Known, ...]:
    known = vocabulary.by_words.get(fold(name), ())
    return tuple(k for k in known if k.kind in (Kind.CROP, Kind.CROP_GROUP))
