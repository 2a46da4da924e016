"""What a layout prints is written out just as Jinja would write it, only quicker."""

from __future__ import annotations

import pytest
from jinja2 import StrictUndefined, UndefinedError
from markupsafe import Markup, escape

from leafmould.render.environment import open_layouts
from leafmould.render.pieces import Written

THINGS = (
    "Arch",
    "a <b> & \"c\" 'd'",
    "",
    3,
    2.5,
    True,
    None,
    Markup("<i>x</i>"),
    Written("<b>y</b>"),
    ("<",),
)


@pytest.mark.parametrize("thing", THINGS)
def test_a_value_is_printed_as_it_is_escaped(thing: object) -> None:
    layout = open_layouts(None, {}).from_string("{{ it }}{% if it %}{{ it }}{% endif %}")
    assert layout.render(it=thing) == str(escape(thing)) * (2 if thing else 1)


def test_a_filter_without_marks_of_its_own_is_escaped_too() -> None:
    layouts = open_layouts(None, {"ready": lambda text: Written(f"<b>{escape(text)}</b>")})
    assert (
        layouts.from_string("{{ it | upper }}{{ it | ready }}").render(it="<i>")
        == "&lt;I&gt;<b>&lt;i&gt;</b>"
    )


def test_what_is_not_there_is_a_fault() -> None:
    layouts = open_layouts(None, {})
    assert layouts.undefined is StrictUndefined
    with pytest.raises(UndefinedError, match="'bed' is undefined"):
        layouts.from_string("{{ bed }}").render()


def test_what_is_ready_stays_so_and_what_is_added_to_it_is_escaped() -> None:
    ready = Written("<b>")
    assert ready + "<" == "<b>&lt;"
    assert Written("<b>{}</b>").format("<") == "<b>&lt;</b>"
    assert isinstance(ready, Markup)
