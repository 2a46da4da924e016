"""A clause: a verb of a line with the words that belong to it, as word numbers."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(slots=True)
class Clause:
    """A verb with the words around it, all as word numbers."""

    start: int
    verb_start: int
    verb_end: int
    end: int
    form: tuple[str, ...]  # the verb as it was found, folded
    verb: str | None  # None: the form has senses
    subject: str | None = None  # "in flower", for a form that stands behind the crop
    is_denied: bool = False
    is_state: bool = False
    is_by_trouble: bool = False  # what did it stands in the clause before: "a fox got in and ate …"
    is_laid: bool = False  # ", straw on top": stuff that was put on what stands before
    particle: int | None = None  # the word of "pulled … up", wherever it stands
    relative: tuple[int, int] | None = None  # "I sowed in March", between the crop and its verb
    unread: tuple[int, int] | None = None  # a deed behind it that is told and kept as a remark

    @property
    def first_word(self) -> str:
        """The first word of its verb; "" where the verb was not written."""
        return self.form[0] if self.form else ""

    @property
    def last_word(self) -> str:
        """The last word of its verb; "" where the verb was not written."""
        return self.form[-1] if self.form else ""
