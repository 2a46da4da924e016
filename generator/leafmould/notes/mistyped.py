"""What is told of words that were mistyped: what each was read as, or which two it may be.

Runs at the end of reading, for lines that hold such a word (`slips`). A word that no slot took is told of
only where it may be two things.
"""

from __future__ import annotations

from leafmould.notes.draft import Asked, Done
from leafmould.notes.typed import Typed
from leafmould.values.names import fold_word
from leafmould.values.problems import Level
from leafmould.values.wording import plural


def tell_mistyped(done: list[Done], typed: Typed) -> None:
    """One hint for all the words that were read as others, a question for each that may be several."""
    if not typed.mended and not typed.torn:
        return
    spans = [span for d in done for span in d.draft.spans]
    spans += [span for d in done for item in d.draft.items for span in item.spans]
    told = [i for i, meant in typed.mended.items() if typed.written(i, i + 1).lower() != f"{meant}s"]
    used = [i for i in told if any(start <= typed.starts[i] < end for _, start, end in spans)]
    if used:
        pairs = _in_a_row([f'"{typed.written(i, i + 1)}" is read as "{_meant(typed, i)}"' for i in used])
        done[0].draft.ask(Level.HINT, f"{pairs}.", typed.starts[used[0]])
    left = [r for d in done for r in d.draft.left]
    for i in typed.torn:
        if any(start <= i < end for start, end, _ in left):
            done[0].draft.ask(Level.QUESTION, f"{may_be(typed, i)}. It is kept as a remark.", typed.starts[i])


def ask_of_torn(typed: Typed) -> Asked | None:
    """ "muched Arch": a line that could have been read, if one knew which verb was meant."""
    i = next((i for i in typed.torn if i < FIRST), None)
    if i is None:
        return None
    return Asked(Level.QUESTION, f"{may_be(typed, i)}, so the line is kept as text.", typed.starts[i])


FIRST = 4
"""The verb of a line stands among so many words, if it is the line's verb."""


def may_be(typed: Typed, i: int) -> str:
    """ "muched" may be "mucked" or "mulched"."""
    names = [f'"{name}"' for name in typed.torn[i]]
    return f'"{typed.written(i, i + 1)}" may be {", ".join(names[:-1])} or {names[-1]}'


def _meant(typed: Typed, i: int) -> str:
    """The word as it would have been typed: in the plural where it was meant so."""
    meant, written = typed.mended[i], typed.written(i, i + 1).lower()
    return plural(meant) if written.endswith("s") and fold_word(written) != written else meant


def _in_a_row(parts: list[str]) -> str:
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"
