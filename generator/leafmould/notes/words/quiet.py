"""Words that tell a deed from what is only said beside it: for what is left over of a line.

Read by `remainder` alone. What stands in QUIET is felt, seen, said or was the weather; TURNS open why, when and how.
"""

from __future__ import annotations

from leafmould.values.names import fold_word


def _words(text: str) -> frozenset[str]:
    return frozenset(fold_word(word) for word in text.split())


DEEDS = _words(
    """ate took gave cut put went tied broke died came dug fed froze sold sown kept hung threw sent brought made got ran
    drew laid lit blew bent shook shut swept spread stuck wound wove built caught drowned lost fell stole tore
    trod split burnt shot set struck bled drove fetched rid unblocked untied untangled unrolled unpegged unpacked unearthed"""
)
"""Past forms without -ed that tell of something done or suffered."""

QUIET = _words(
    """red bed seed tidied rotavated rototilled tilled edged mowed strimmed feed need weed shed breed speed hundred indeed instead naked wicked sacred
    needed wanted hoped liked loved hated enjoyed looked seemed smelled tasted sounded appeared felt thought knew said
    told asked wondered decided planned meant managed tried remembered forgot noticed expected promised learned guessed
    rained poured snowed blew hailed frosted cried laughed smiled swore cursed moaned grinned cheered
    sliced stoned tailed peeled grated rinsed scrubbed hulled cored diced pasteurised pasteurized
    pleased excited delighted chuffed annoyed disappointed surprised impressed amazed tired knackered exhausted worried relieved
    bored stressed scared confused embarrassed blessed bothered interested convinced supposed deserved proved
    mixed assorted salted sized shaped flavoured coloured colored striped speckled stunted neglected crowded packed
    checked counted looked opened turned waited visited chatted walked talked worked helped played stopped started ended lasted
    timed aged overgrown unripe used allowed required recommended advised according called named labelled marked
    morning evening nothing something anything everything spring during king string dressing seedling picking pudding
    get being going coming looking raining snowing feeling hoping thinking wondering trying getting having doing
    thinning drying curing heated according including considering riddled tucked seen left staging landing standing resting falling sitting something somthing letting talking speaking amazing stunning lovely disgusting interesting promising"""
)
"""No deeds, whatever they end in."""

QUIET_PAIRS = frozenset(
    {
        ("came", "through"),
        ("raked", "in"),
        ("topped", "and"),
        ("cut", "and"),
        ("washed", "off"),
        ("got", "in"),
        ("frozen", "solid"),
        ("came", "back"),
        ("fell", "over"),
    }
)
"""Nor these."""

TURNS = _words(
    """because since so that which who where when while whilst if as before like than though although until till unless
    hoping despite whatever whoever cos for after"""
)
"""From these words on a piece says why, when, or what it is like."""

DURATIONS = _words(
    """am pm oclock o hour hr hrs min mins minute day days week wk wks month year yr fortnight night degree deg c f mph
    time times left remain remaining cm mm inch ft foot"""
)
"""Behind a number these make it no amount that a slot could miss."""

SIZE_WORDS = _words("tall high long wide across deep thick apart round diameter old each")
"""Behind a number and its unit: how large, not how many."""
