"""Text as it is set: quotes, units, and hyphens."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leafmould.render.typography import set_text, shown


@pytest.mark.parametrize(
    ("written", "set_so"),
    [
        ("picked 1.2 kg tomatoes 'Stupice'", "picked 1.2\u00a0kg tomatoes ‘Stupice’"),
        ("'Gardener's Delight', a row", "‘Gardener’s Delight’, a row"),
        ('he said "not yet."', "he said “not yet.”"),
        ("it's the hens' corner", "it’s the hens’ corner"),
        ("6' x 3', 4\" deep", "6' x 3', 4\" deep"),  # feet and inches
        ("−2 °C, 30 %, 5 m², ½ l", "−2\u00a0°C, 30\u00a0%, 5\u00a0m², ½\u00a0l"),
        ("3 men and 2 girls", "3 men and 2 girls"),  # no metres, no grams
        ("('Meteor')", "(‘Meteor’)"),
        ("nothing of these", "nothing of these"),
    ],
)
def test_quotes_are_curly_and_numbers_keep_to_their_units(written: str, set_so: str) -> None:
    assert set_text(written) == set_so


@given(st.text(alphabet="a'\"1 kgm(.,-s\u00e9", max_size=24))
def test_a_set_text_is_as_long_as_it_was(text: str) -> None:
    assert len(set_text(text)) == len(text)


@pytest.mark.parametrize(
    ("written", "html"),
    [
        ("Lean-to", '<span class="one">Lean-to</span>'),
        ("in the Lean-to & out", 'in the <span class="one">Lean-to</span> &amp; out'),
        ("forget-me-not", "forget-me-not"),  # may go on in the next line
        ("sun-dried tomatoes", '<span class="one">sun-dried</span> tomatoes'),
        ("overwintered-something", "overwintered-something"),
    ],
)
def test_a_short_word_is_not_broken_at_its_hyphen(written: str, html: str) -> None:
    assert shown(written) == html
