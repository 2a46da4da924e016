"""A note's prose: Markdown's traps for gardeners, names linked, and nothing that could act."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from leafmould.render.plain import plain_blocks
from leafmould.render.prose import Prose
from pages_garden import hand_made, site_of

SITE = site_of(hand_made())
PROSE = Prose(SITE.mentions, SITE.note_by_file)


def html(text: str, file: str = "notes/2026/x.md") -> str:
    """A body as HTML, seen from a note's page."""
    return str(PROSE.html(text, root="../../", file=file)).strip()


# --- faults met elsewhere ------------------------------------------------------------------------------


def test_f59_a_day_at_a_line_start_keeps_its_number() -> None:
    assert html("14. April 2021 peace\n20. April more") == (
        '<ol start="14">\n<li value="14">April 2021 peace</li>\n<li value="20">April more</li>\n</ol>'
    )
    assert '<li value="2020">was dry' in html("2020. was dry")
    assert '<ol start="14">\n<li value="14">April' in html("- 14. April")
    assert "3. thinned" in html("- sowed\n  3. thinned")


def test_f60_a_sign_at_a_line_start_is_not_lost() -> None:
    assert html("- 4 °C at dawn") == "<ul>\n<li>−4\u00a0°C at dawn</li>\n</ul>"
    assert html("+ 5 plants") == "<ul>\n<li>+ 5 plants</li>\n</ul>"
    assert html("- 12 plants") == "<ul>\n<li>12 plants</li>\n</ul>"


def test_f62_tables_are_tables_and_half_ones_keep_their_words() -> None:
    assert "<table>" in html("| bed | kg |\n|---|---|\n| North | 2 |")
    assert "a | b" in html("a | b\n-----")


def test_f64_a_pipe_in_a_cell_is_written_with_a_backslash() -> None:
    assert "<td>A|B</td>" in html("| x |\n|---|\n| A\\|B |")


def test_f65_pictures_with_spaces_in_their_names_are_pictures() -> None:
    assert (
        html("![the bed](my bed.jpg)") == '<p><span class="picture">Picture: my bed.jpg, the bed</span></p>'
    )
    assert html("![](photos/b.jpg)") == '<p><span class="picture">Picture: b.jpg</span></p>'
    assert html("`![x](my bed.jpg)`") == "<p><code>![x](my bed.jpg)</code></p>"


def test_f67_html_in_a_note_is_shown_and_never_acts() -> None:
    shown = html("<img src=x onerror=alert(1)> <script>alert(1)</script>")
    assert shown == "<p>&lt;img src=x onerror=alert(1)&gt; &lt;script&gt;alert(1)&lt;/script&gt;</p>"


@pytest.mark.parametrize(
    "target",
    [
        "javascript:alert(1)",
        "JavaScript:alert(1)",
        "java&#115;cript:alert(1)",
        "vbscript:x",
        "file:///etc/passwd",
        "data:image/png;base64,AAAA",
        "data:text/html,x",
        "//elsewhere.example/x",
        "http://[::1",
        "https:",
        "http:///",
        "\x01javascript:alert(1)",
    ],
)
def test_f68_only_plain_links_are_links(target: str) -> None:
    assert "<a" not in html(f"[look]({target})")
    assert "<a" not in html(f"[look]: {target}\n\n[look]")


def test_f68_links_to_the_web_stay_and_tell_nobody_where_from() -> None:
    assert html("[seed swap](https://example.org/a?b=1&c=2)") == (
        '<p><a href="https://example.org/a?b=1&amp;c=2" rel="noreferrer">seed swap</a></p>'
    )
    assert 'href="mailto:me@example.org"' in html("<me@example.org>")


def test_a_link_to_another_note_leads_to_its_page_and_any_other_file_stays_words() -> None:
    known = next(iter(sorted(SITE.note_by_file)))
    name = known.rsplit("/", 1)[1]
    assert f'href="../../{SITE.note_by_file[known]}"' in html(f"[before]({name})", file=known)
    assert html("[map](../../garden.yaml)") == "<p>map</p>"
    assert html("[up](#there)") == "<p>up</p>"


def test_f69_comments_never_reach_the_page() -> None:
    assert html("seen <!-- private: the key is under the pot --> here") == "<p>seen  here</p>"
    assert "key" not in html("a\n\n<!--\nthe key\n-->\n\nb")
    assert "key" not in html("a <!-- the key")


def test_f70_words_in_angle_brackets_are_not_swallowed() -> None:
    assert html("yield <b> and <5") == "<p>yield &lt;b&gt; and &lt;5</p>"


def test_f72_line_ends_are_kept() -> None:
    assert html("one\ntwo") == "<p>one<br>\ntwo</p>"


WRAPPED = """\
Ninestair is a garden on a slope, with nine flights of stone stairs
and walls between them that somebody built by hand, long before us,
without mortar."""


def test_lines_that_an_editor_broke_flow_as_one_paragraph() -> None:
    assert plain_blocks(WRAPPED) is not None
    assert html(WRAPPED) == f"<p>{WRAPPED}</p>"
    assert html(WRAPPED.replace("by hand", "*by hand*")) == f"<p>{WRAPPED}</p>".replace(
        "by hand", "<em>by hand</em>"
    )


def test_long_lines_of_work_stay_apart() -> None:
    lines = (
        "picked 1.2 kg tomatoes from the Hoop bed and another 400 g out of the Old bed",
        "watered everything twice",
    )
    assert html("\n".join(lines)).count("<br>") == 1


def test_f73_times_signs_struck_words_and_boxes_are_as_written() -> None:
    assert html("2*3*4") == "<p>2*3*4</p>"
    assert html("*dry* and **hot**") == "<p><em>dry</em> and <strong>hot</strong></p>"
    assert html("~~dead~~") == "<p><s>dead</s></p>"
    assert html("[x] done, [f] fleece") == "<p>[x] done, [f] fleece</p>"


def test_p18_and_p52_maps_and_drawings_of_text_are_left_alone() -> None:
    assert html("| B | B |\n|---|---|\n| B[2] | / |").count("<td>") == 2
    assert html("```\n+--+\n| B|\n+--+\n```") == "<pre><code>+--+\n| B|\n+--+\n</code></pre>"


def test_headings_stand_below_the_pages_own() -> None:
    assert html("# One\n\n###### Six") == "<h2>One</h2>\n<h3>Six</h3>"
    assert html("### One\n\n# Two\n\n## Three") == "<h2>One</h2>\n<h2>Two</h2>\n<h3>Three</h3>"


# --- names ---------------------------------------------------------------------------------------------


def test_names_link_themselves_once_a_paragraph() -> None:
    assert html("The Hoop bed is dry. The Hoop bed again.") == (
        '<p>The <a href="../../beds/hoop-bed.html">Hoop bed</a> is dry. The Hoop bed again.</p>'
    )
    assert html("Tomatoes").startswith('<p><a href="../../crops/tomato.html">')


def test_the_longest_name_wins_over_the_shorter_within() -> None:
    assert html("Hurst's Green Shaft") == (
        '<p><a href="../../crops/pea.html#variety-hursts-green-shaft">Hurst’s Green Shaft</a></p>'
    )


def test_names_are_not_linked_inside_links_and_code() -> None:
    assert html("`leek` [leek](https://example.org)").count("<a") == 1


def test_common_words_are_not_taken_for_beds() -> None:
    assert "<a" not in html("We ate under a wooden arch.")
    assert "beds/arch.html" in html("We ate under the arch.")
    assert "beds/arch.html" in html("Arch is dry.")


def test_names_in_a_plain_line_are_escaped_and_do_not_lead_to_their_own_page() -> None:
    line = str(PROSE.names("picked <b>peas</b> & leeks in Arch", "../", "beds/arch.html"))
    assert line == (
        'picked &lt;b&gt;<a href="../crops/pea.html">peas</a>&lt;/b&gt; &amp; '
        '<a href="../crops/leek.html">leeks</a> in Arch'
    )


# --- plain bodies, read without the parser -------------------------------------------------------------


@pytest.mark.parametrize(
    ("body", "shown"),
    [
        ("It's dry.", "<p>It’s dry.</p>"),
        ('dry\nand "warm"\n\n\n5 > 4', "<p>dry<br>\nand “warm”</p>\n<p>5 &gt; 4</p>"),
        ("- sowed it\n- watered", "<ul>\n<li>sowed it</li>\n<li>watered</li>\n</ul>"),
        ("Done:\n\n- sowed", "<p>Done:</p>\n<ul>\n<li>sowed</li>\n</ul>"),
    ],
)
def test_plain_bodies_are_read_without_the_parser(body: str, shown: str) -> None:
    assert plain_blocks(body) is not None
    assert html(body) == shown


@pytest.mark.parametrize(
    "body",
    ["*dry*", "a_b_c", "14. April", "3) more", "- 4 °C", "- a\n\n- b", "- a\nb", "a\n- b", " a", "a  \nb",
     "a\n---", "a\n===", "# a", "a | b", "[a](b)", "a & b", "a\tb", "> a", "+ a", "a\n ", "a\u00a0"],
)  # fmt: skip
def test_what_may_be_markdown_is_left_to_the_parser(body: str) -> None:
    assert plain_blocks(body) is None


LETTERS = "abPea Arch. ,;:?'\"()/%°=+>–…-1é4\n"


@settings(max_examples=2000)
@given(
    st.lists(
        st.sampled_from(["Arch", "peas", "in the ", "- ", "\n- ", "\n\n", "\n", "3. ", "4 °C"])
        | st.text(alphabet=st.sampled_from(LETTERS), max_size=9),
        max_size=14,
    ).map("".join)
)
def test_plain_bodies_come_out_as_the_parser_would_write_them(body: str) -> None:
    by_parser = str(PROSE.by_parser(body, root="../../", file="notes/2026/x.md")).strip()
    assert html(body) == by_parser


# --- hostile bodies ------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "body",
    [
        "[" * 900,
        "[" * 900 + "x" + "](y)" * 900,
        "![" * 900,
        ">" * 5000 + " deep",
        "- " * 500 + "deep",
        "\n".join("  " * n + "- x" for n in range(300)),
        "*" * 3000 + "a" + "_" * 3000,
        "`" * 2999 + "a",
        "<" * 3000,
        "&" * 3000,
        "| a |\n|---|\n" + "| b |\n" * 3000,
        "x" * 200_000,
        "a\x00b\ufeffc\u202ed\ud800",
    ],
)
def test_hostile_bodies_are_shown_without_harm(body: str) -> None:
    shown = html(body)
    assert "<script" not in shown
    assert shown


def test_what_is_too_deep_is_shown_as_typed_and_not_lost() -> None:
    assert html(">" * 200 + " the last word") == (f'<pre class="as-typed">{"&gt;" * 200} the last word</pre>')


@given(st.text(alphabet=st.sampled_from("abPea Arch[]()!*_`~<>&\"'|#-+1.9\n:/\\"), max_size=120))
def test_any_text_is_shown_and_holds_no_tag_but_ours(text: str) -> None:
    from bs4 import BeautifulSoup

    ours = {
        "p", "br", "a", "em", "strong", "s", "code", "pre", "ul", "ol", "li", "blockquote", "hr", "span",
        "h2", "h3", "h4", "h5", "h6", "table", "thead", "tbody", "tr", "th", "td", "div",
    }  # fmt: skip
    tree = BeautifulSoup(html(text), "html.parser")
    assert {tag.name for tag in tree.find_all(True)} <= ours
    for link in tree.find_all("a"):
        assert str(link["href"]).startswith(("../../", "http:", "https:", "mailto:", "tel:"))
