"""Which hatch a family's mark has in a drawing: the same as in its line of the styles.

Styles hatch small boxes of text with gradients; a drawing has to know the hatch itself. Tests hold the two
together.
"""

from __future__ import annotations

ORDER = (
    "Ni Cb Pe Be Ca On Cu Da Gr Mi Ro Rh Cr He As Gv Ma Ki El Ic Mg Pw Ar Dl Ms Ha Bo Ho Hs Pp Bi Ya "
    "Pm Sb Bc Ir Wa By Li Eg Fl Pg Wp Mu Ba My Ol Ox Py Po Pf Pl Sl Pu Bu Ci Wi Te Na Ve Vi Gi "
)
"""Marks as the styles have them, the most met first."""
HATCHES = 24
"""Eight kinds of lines, each fine, wide and heavy."""


def hatch_of(mark: str) -> int:
    """The number of a mark's hatch, from 1; 0 for a family the styles do not know."""
    place = ORDER.find(f"{mark} ")
    return 0 if place < 0 else place // 3 % HATCHES + 1
