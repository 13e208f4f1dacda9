"""The palette: one file, read well, told apart in grey.

Contrast is reckoned as W3C's Web Content Accessibility Guidelines 2.2 define relative luminance and
contrast ratio; the ratios wanted are those of its success criteria 1.4.3 (text, 4.5) and 1.4.11
(graphics, 3.0).
"""

from __future__ import annotations

import ast
import re
from itertools import pairwise
from pathlib import Path

import pytest

from drafting.ground.palette import DYES, Colour, css, css_name
from drafting.sheet import Layer
from drafting.sheet.faces import FACES, OWN
from drafting.sheet.style import STYLES, TEXT_COLOURS

PACKAGE = Path(__file__).resolve().parents[2] / "drafting"
PALETTE = PACKAGE / "ground/palette.py"
TEXT, GRAPHIC = 4.5, 3.0

NIGHT = "#111111"
"""The ground of JupyterLab's dark theme (its --jp-layout-color1)."""

SHEETS = (Colour.PAPER, Colour.PAPER_AT_NIGHT, Colour.PAGE, Colour.CLOTH)
PIECES = (*OWN, *(shade for shades in FACES.values() for shade in shades))


def channels(colour: str) -> tuple[float, ...]:
    return tuple(int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5))


def luminance(part: tuple[float, ...]) -> float:
    r, g, b = (v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4 for v in part)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def ratio(one: tuple[float, ...], other: tuple[float, ...]) -> float:
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def contrast(one: str, other: str) -> float:
    return ratio(channels(one), channels(other))


def test_the_contrast_is_that_of_the_guidelines() -> None:
    # The guidelines' own ends: 21 between black and white, 1 between equals; #767676 on white is
    # the lightest grey that passes for text (W3C's understanding of 1.4.3: 4.54).
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#808080", "#808080") == 1
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)


@pytest.mark.parametrize("ground", [*SHEETS, *PIECES, Colour.SKIN])
@pytest.mark.parametrize("words", [Colour.INK, Colour.SOFT])
def test_words_are_read_on_every_ground(words: Colour, ground: Colour) -> None:
    assert contrast(words, ground) >= TEXT


@pytest.mark.parametrize("layer", list(Layer))
def test_words_of_a_layer_are_read_on_the_sheet(layer: Layer) -> None:
    for ground in (Colour.PAPER, Colour.PAPER_AT_NIGHT, Colour.CLOTH):
        assert contrast(TEXT_COLOURS.get(layer, Colour.INK), ground) >= TEXT, ground


@pytest.mark.parametrize("layer", list(Layer))
def test_a_line_is_seen_on_paper_and_on_every_face(layer: Layer) -> None:
    for ground in (*SHEETS, *PIECES):
        assert contrast(STYLES[layer].colour, ground) >= GRAPHIC, ground


@pytest.mark.parametrize("band", [Colour.PICK, Colour.PARTNER])
def test_a_lit_edge_is_seen_on_paper_and_on_every_face(band: Colour) -> None:
    """The style sheet multiplies the band with what lies under it, channel by channel."""
    for ground in (Colour.PAPER, Colour.PAPER_AT_NIGHT, *PIECES):
        laid = tuple(a * b for a, b in zip(channels(band), channels(ground), strict=True))
        assert ratio(laid, channels(ground)) >= GRAPHIC, ground


@pytest.mark.parametrize("sign", [Colour.ERROR, Colour.WARNING, Colour.HAND, Colour.TAPE])
def test_a_sign_is_seen_in_a_light_page_and_in_a_dark_one(sign: Colour) -> None:
    for ground in (*SHEETS, Colour.SKIN, NIGHT):
        assert contrast(sign, ground) >= GRAPHIC, ground


@pytest.mark.parametrize("words", [Colour.HAND, Colour.TAPE])
def test_links_and_the_names_of_tapes_are_read_as_text(words: Colour) -> None:
    assert contrast(words, Colour.PAPER) >= TEXT
    assert contrast(words, Colour.PAGE) >= TEXT


@pytest.mark.parametrize("shades", [OWN, *FACES.values()])
def test_grey_tells_the_garments_of_a_lay_apart(shades: tuple[Colour, ...]) -> None:
    """Luma by the weights of ITU-R BT.709, as a grey print or an old eye sees it."""
    grey = [0.2126 * r + 0.7152 * g + 0.0722 * b for r, g, b in map(channels, shades)]
    assert all(a - b > 0.05 for a, b in pairwise(grey)), grey


def test_the_palette_is_small_and_no_colour_stands_twice() -> None:
    assert len(Colour) <= 30
    assert len(re.findall(r"#[0-9a-f]{6}", PALETTE.read_text("utf-8"))) == len(Colour) + len(DYES)
    assert len(set(Colour) | set(DYES.values())) == len(Colour) + len(DYES)


def test_each_colour_says_why_in_one_line() -> None:
    (kind,) = (n for n in ast.parse(PALETTE.read_text("utf-8")).body if isinstance(n, ast.ClassDef))
    for colour, why in zip(kind.body[1::2], kind.body[2::2], strict=True):
        assert isinstance(colour, ast.Assign)
        assert isinstance(why, ast.Expr)
        assert isinstance(why.value, ast.Constant)
        assert "\n" not in str(why.value.value)


def test_a_style_sheet_is_handed_every_colour() -> None:
    assert re.findall(r"(--kit-[a-z0-9-]+): (#[0-9a-f]{6});", css()) == [
        (css_name(colour), str(colour)) for colour in Colour
    ]


NAMED_HERE = re.compile(
    r"#(?:[0-9a-f]{8}|[0-9a-f]{6}|[0-9a-f]{3,4})\b(?![\w-])"
    r"|\b(?:rgba?|hsla?|oklch|color-mix)\("
    r"|[:=]\s*[\"']?(?:white|black|gr[ae]y|red|green|blue|orange|yellow|purple|brown|pink|silver)\b",
    re.IGNORECASE,
)
"""A colour by its figures, or by a name that a style sheet or a drawing library knows."""

ENDINGS = {".py", ".css", ".js", ".jinja"}


def colours_in(text: str) -> list[str]:
    """Return every colour named in a file, as `line: what`."""
    return [f"{n}: {found[0]}" for n, row in enumerate(text.splitlines(), 1) for found in NAMED_HERE.finditer(row)]


def test_no_other_file_names_a_colour() -> None:
    files = [p for p in sorted(PACKAGE.rglob("*")) if p.suffix in ENDINGS and p != PALETTE]
    assert {p.suffix for p in files} == ENDINGS
    named = {
        p.relative_to(PACKAGE).as_posix(): found for p in files if (found := colours_in(p.read_text("utf-8")))
    }
    assert named == {}, "a colour stands in drafting/ground/palette.py alone, and is called by its meaning"


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("a { color: #b3261e; }", ["1: #b3261e"]),
        ("border: 1px solid var(--x, #CCC)", ["1: #CCC"]),
        ("\nfill = 'white'", ["2: = 'white"]),
        ("background: rgb(1 2 3)", ["1: rgb("]),
        ("cast.csv#Anna, #steps, red thread", []),
        ("stroke: var(--kit-ink); fill: none; stroke: currentColor", []),
    ],
)
def test_a_colour_is_found_and_a_word_is_none(text: str, found: list[str]) -> None:
    assert colours_in(text) == found


def test_every_colour_is_called_somewhere_and_every_call_has_its_colour() -> None:
    files = [p for p in PACKAGE.rglob("*") if p.suffix in ENDINGS and p != PALETTE]
    text = "\n".join(p.read_text("utf-8") for p in files)
    called = set(re.findall(r"var\((--kit-[a-z0-9-]+)", text))
    assert called <= {css_name(colour) for colour in Colour}
    idle = [c.name for c in Colour if f"Colour.{c.name}" not in text and css_name(c) not in called]
    assert idle == []
