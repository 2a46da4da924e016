"""Numbers written in few letters, for the index the browser searches.

No letter needs an escape in a script, and none is small, so that words can stand between numbers. The script
that reads them is `layouts/script/find.js`.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

DIGITS = "".join(
    chr(code) for code in range(33, 127) if chr(code) not in "'\"\\<&" and not chr(code).islower()
)[:62]
"""Letters of a number: the first of them end it, the others go on. None is small, so that words can stand between."""
FEWEST_ENDS, MOST_ENDS = 44, 60
"""How many letters end a number: few where there are thousands of notes, for then most steps are short beside the longest."""


@dataclass(frozen=True, slots=True)
class Letters:
    """How numbers are written in one index."""

    ends: int  # how many letters end a number

    def numbers(self, sorted_numbers: Iterable[int]) -> str:
        """Numbers that rise, as the steps between them."""
        letters: list[str] = []
        before = -1
        for number in sorted_numbers:
            letters.append(self.of(number - before - 1))
            before = number
        return "".join(letters)

    def of(self, number: int) -> str:
        """One number."""
        if number < self.ends:
            return DIGITS[number]
        rest, last = divmod(number, self.ends)
        return self._more(rest - 1) + DIGITS[last]

    def _more(self, number: int) -> str:
        """What stands before the last letter of a number: letters that say it goes on."""
        rest, last = divmod(number, len(DIGITS) - self.ends)
        return (self._more(rest - 1) if rest else "") + DIGITS[self.ends + last]


def letters_for(notes: int) -> Letters:
    """As many letters that end a number as leave enough to write the number of any note in two."""
    enough = (ends for ends in range(MOST_ENDS, FEWEST_ENDS, -1) if ends * (len(DIGITS) - ends + 1) >= notes)
    return Letters(next(enough, FEWEST_ENDS))
