"""Cover as garden.yaml has it: by how many weeks fleece, hoops or glass lengthen the season at either end.

Read with garden.yaml. Where nothing is written, `DEFAULT` stands in, which is common practice and is called so.
"""

from __future__ import annotations

import re

from leafmould.notes.fields import Fields, is_blank
from leafmould.notes.setting_values import Cover
from leafmould.notes.tree import Branch, Leaf
from leafmould.values.problems import Level

DEFAULT = (Cover(name="fleece", days=14), Cover(name="glass", days=28))
"""Common practice, no source: fleece gains about a fortnight, a cold frame or glass about four weeks."""
MOST_DAYS = 84
"""More than twelve weeks is no cover but another climate."""
GAIN = re.compile(
    r"(?:about |ca\.? |~|\+)?(?P<number>\d{1,3}(?:[.,]\d)?|an?|one|two|three|four|five|six|eight)\s*"
    r"(?P<unit>weeks?|wks?|w|days?|d|fortnights?)",
    re.IGNORECASE,
)
IN_WORDS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8}
IN_DAYS = {"w": 7, "d": 1, "f": 14}
NO_COVER = frozenset({"none", "no", "never"})


def read_cover(fields: Fields) -> dict[str, object]:
    """The covers, the least first; none where garden.yaml says there is none."""
    key = fields.key("cover", "covers")
    if key is None or is_blank(key.value):
        return {}
    if isinstance(key.value, Leaf) and key.value.text.strip().casefold() in NO_COVER:
        return {"cover": ()}
    if not isinstance(key.value, Branch):
        message = f'"{key.written}" needs what each cover gains, such as "cover: {{fleece: 2 weeks}}".'
        fields.tell(Level.ERROR, message, key, key.name)
        return {}
    under = fields.branch_of("cover", "covers")
    assert under is not None
    found: dict[str, Cover] = {}
    for one in under.by_name.values():
        leaf = under.leaf(one.name)
        if leaf is None:
            continue
        days = _days(leaf.text)
        if days is None:
            message = f'"{leaf.text}" is no gain of {one.written}. Write it such as "2 weeks", at most 12.'
            under.tell(Level.ERROR, message, leaf, one.name)
        elif days:
            found[one.name] = Cover(name=one.written.strip(), days=days)
    return {"cover": tuple(sorted(found.values(), key=lambda cover: (cover.days, cover.name)))}


def _days(text: str) -> int | None:
    m = GAIN.fullmatch(text.strip())
    if m is None:
        return None
    word = m["number"].casefold()
    number = IN_WORDS.get(word) or float(word.replace(",", "."))
    days = round(number * IN_DAYS[m["unit"][0].casefold()])
    return days if days <= MOST_DAYS else None
