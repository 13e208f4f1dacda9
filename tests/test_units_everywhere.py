"""One costume in inches, the same in cm: no text of the kit tells a length in the other's unit.

What may stay in another unit is declared in `ALLOWED`, and nothing else.
"""

from __future__ import annotations

import html
import json
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

import pypdfium2
import pytest

from drafting import laid_out, make, read_costume, write_output
from drafting.blocks import all_blocks
from drafting.commands.texts import blocks_text, body_text, made_text
from drafting.costume.file import CostumeFile
from drafting.costume.next_measure import garments_of, next_measures
from drafting.notebook import ClothTold, LoadedStrip, OverhangTest, SwatchTest
from drafting.notebook.bench.changes import changed_html, changes_html
from drafting.notebook.bench.controls import choice_meaning
from drafting.notebook.bench.findings import findings_html
from drafting.notebook.bench.girths import girths_html
from drafting.notebook.bench.measures import measures_html
from drafting.notebook.lay_table.words import lay_html, widths_html
from drafting.notebook.measuring.guide import MeasuringGuide
from drafting.notebook.measuring.words import placeholder, said_beside
from drafting.worn.stands.words import _texts  # the words as they stand in their file

METRIC = re.compile(r"(?<![\w.])[-+]?[0-9][0-9.,]* ?(?:mm|cm|m)\b(?! width)|\b(?:milli|centi)met(?:re|er)s?\b")
NOT_IN = "the|a|an|all|each|its|one|two|front|left|woven|every"  # as in "12 in all"
IMPERIAL = re.compile(rf"(?<![\w.])[0-9][0-9/ ]* (?:in|yd)\b(?! (?:{NOT_IN})\b)|\binch(?:es)?\b")

ALLOWED = (
    r"inner square 100 mm, outer 4 in: measure both ways",  # both squares stand on every page
    r"Measure the 100 mm square, or the 4 in one,",
    r"100 mm Measure both ways|4 in Measure both ways|(?:100 mm|4 in)$",
    r"squares below: 100 mm, and 4 in\. More than half a millimetre off",
    r"one unit is 1 mm",  # what an SVG's numbers are
    r"[0-9.]+ mm long(?: and [0-9.]+ mm wide)?(?= \(seam)",  # stitches, as machines are marked
    r"long stitches \([0-9.]+ mm|stitches of [0-9.]+ mm",
    r"0\.[0-9]+ mm",  # a check's tenths of a mm
    r"\(formulas in mm\)",
    r"\(from memory: [^()]*\)",  # what a guess was recalled from, as it was recalled
    r"roll, (?:36|24) in wide|roll, 90 cm wide",  # papers by the names that she asked for
)
_ALLOWED = re.compile("|".join(ALLOWED))

OF_SOURCES = ("sources", "rule", "value", "wanted")
"""Keys of the record that quote works and formulas, or hold bare figures for programs."""


def costume_in(unit: str, folder: Path) -> Path:
    """Write a costume in `unit`: uneven shoulders, a coat, a zip behind, stretch cloth, a fly; invented."""

    def size(cm: float) -> str:
        return f"{cm / 2.54 if unit == 'in' else cm:.3f}"

    head = f'unit = "{unit}"\n'
    (folder / "wearer.toml").write_text(
        f'title = "The piper, invented"\n{head}[measures]\nheight = {size(171)}\nbust_girth = {size(98)}\n'
        f"high_bust_girth = {size(92)}\nwaist_girth = {size(80)}\nhip_girth = {size(103)}\n"
        f"shoulder_drop = {{ left = {size(4)}, right = {size(6)} }}\n"
    )
    stretch = "".join(
        f"stretch_{way} = {{ rest = {size(10)}, stretched = {size(at)} }}\n"
        for way, at in (("along", 13), ("across", 15))
    )
    for name, more in (("wool", "woven"), ("shirting", "woven"), ("jersey", "knit")):
        text = f'title = "{name}"\n{head}width = {size(150)}\nweave = "{more}"\nsort = "plain"\n'
        (folder / f"{name}.toml").write_text(text + (stretch if name == "jersey" else "pretreated = false\n"))
    garments = {
        "coat": ("tailcoat", "wool", ""),
        "top": ("fitted-top", "shirting", '[garments.top.choices]\nfastening = "zip"\n'),
        "close": ("puffed-top", "jersey", ""),
        "trousers": ("trousers", "shirting", ""),
    }
    lines = [
        f'title = "The piper"\n{head}wearer = "wearer.toml"\n[fabrics]',
        *(f'{role} = "{role}.toml"' for role in ("wool", "shirting", "jersey")),
        'lining = "shirting.toml"\ninterfacing = "shirting.toml"',
        *(
            f'[garments.{name}]\nblock = "{block}"\nfabric = "{cloth}"\n{more}'
            for name, (block, cloth, more) in garments.items()
        ),
        f'[[garments.coat.trims]]\nedge = "front.lapel"\nkind = "braid"\nwidth = {size(1.2)}\ncut = "bought"',
        '[print]\npapers = ["a4", "letter", "roll", "roll 24 in" ]' if unit == "in" else "",
        '[print]\npapers = ["a4", "letter", "roll 90 cm"]' if unit == "cm" else "",
        'pieces = ["coat.back-left", "top.back-left", "close.front", "trousers.front"]',
    ]
    path = folder / "costume.toml"
    path.write_text("\n".join(lines))
    return path


@dataclass(frozen=True)
class Told:
    """A costume made and written, and where its files lie."""

    unit: str
    costume: CostumeFile
    texts: tuple[tuple[str, str], ...]


@pytest.fixture(scope="module", params=["in", "cm"])
def everything(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Told:
    unit = request.param
    folder = tmp_path_factory.mktemp(f"units-{unit}")
    path = costume_in(unit, folder)
    made = laid_out(make(read_costume(path)), count=20)  # how short the lays are changes no sentence
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr("drafting.output.write.overview_png", lambda *_: None)  # pixels hold no text
        printed = write_output(made, folder / "out")
    texts = [*written(folder / "out"), *console(made, printed, folder), *pages(made, folder)]
    return Told(unit, made.costume, tuple(texts))


def bare(marked: str) -> str:
    """Return what is read of a page or a picture: no tags, styles, scripts."""
    text = re.sub(r"<(style|script)[^>]*>.*?</\1>", " ", marked, flags=re.DOTALL)
    return " ".join(html.unescape(re.sub(r"<[^>]*>", " ", text)).split())


def written(out: Path) -> Iterator[tuple[str, str]]:
    """Yield the texts of an output folder: pieces, lays, plan, shopping, record, printed sheets."""
    for path in sorted(out.rglob("*.svg")):
        for line in re.findall(r">([^<>]+)<", path.read_text()):
            yield path.name, " ".join(html.unescape(line).split())
    plan = (out / "plan.html").read_text()
    yield "plan.html", bare(plan.partition('id="sources"')[0])
    yield "shopping.csv", (out / "shopping.csv").read_text()
    yield from sentences_of(json.loads((out / "report.json").read_text()), "report")
    for path in sorted(out.rglob("*.pdf")):
        for page in pypdfium2.PdfDocument(path):
            yield path.name, " ".join(page.get_textpage().get_text_range().split())


def sentences_of(record: object, at: str) -> Iterator[tuple[str, str]]:
    if isinstance(record, dict):
        for key, value in record.items():
            if key not in OF_SOURCES:
                yield from sentences_of(value, f"{at}.{key}")
    elif isinstance(record, list):
        for value in record:
            yield from sentences_of(value, at)
    elif isinstance(record, str):
        yield at, record


def console(made: object, printed: object, folder: Path) -> Iterator[tuple[str, str]]:
    """Yield what the commands print."""
    costume = made.costume  # type: ignore[attr-defined]
    # Of the second garment: drafting the first, a coat, again for each measure takes longer.
    gains = next_measures(costume.wearer, garments=garments_of(costume, costume.wearer)[1:2])
    yield "made", made_text((*made.findings, *printed), folder, costume.told_in)  # type: ignore[attr-defined, misc]
    body = body_text(costume.wearer, gains)
    estimates, _, rest = body.partition("How the estimates are made (formulas in mm)")
    yield "body", estimates + rest.partition("Measure next")[2]
    listed = blocks_text(all_blocks().values(), costume.unit).partition("\nSources\n")[0]
    yield "blocks", re.sub(r"Source: .*?(?=\n  \S|\n\n)", "", listed, flags=re.DOTALL)


def pages(made: object, folder: Path) -> Iterator[tuple[str, str]]:
    """Yield what the notebook's pages say."""
    costume = made.costume  # type: ignore[attr-defined]
    unit, wearer = costume.told_in, costume.wearer
    cloths = tuple(folder / f"{name}.toml" for name in ("wool", "jersey"))
    yield (
        "measures",
        re.sub(r"<td>[^<]*formula[^<]*</td>", "", bare(measures_html(replace(wearer, measures={}), unit))),
    )
    for garment in made.garments:  # type: ignore[attr-defined]
        other = next(g for g in made.garments if g is not garment)  # type: ignore[attr-defined]
        for view in (
            findings_html(garment.findings, unit),
            girths_html(garment, wearer, unit),
            changes_html(other, garment, unit),
            changed_html(other, garment, unit),
        ):
            yield f"bench, {garment.name}", bare(view)
        for choice in all_blocks()[garment.block].choices:
            yield f"choice {choice.name}", choice_meaning(choice, choice.default, unit)
    for lay in made.lays:  # type: ignore[attr-defined]
        yield "lay table", bare(lay_html(lay, lay, unit) + widths_html(lay, unit))
    for shown in (
        SwatchTest(wearer, unit=unit),
        *(t(c, unit=unit) for c in cloths for t in (LoadedStrip, OverhangTest)),
    ):
        controls = " ".join(control.description for control in shown.controls.values())
        yield type(shown).__name__, f"{controls} {bare(shown.picture.value)} {bare(shown.said.value)}"
    for cloth in cloths:
        yield "cloth told", bare(ClothTold(cloth, unit=unit).view.value)
    guide = MeasuringGuide(folder / "wearer.toml")
    yield "measuring guide", " ".join([bare(guide.picture.value), *(told_beside(guide))])
    card = OverhangTest(cloths[0], cards=folder / "cards", unit=unit)
    card.write_card()
    yield "card", bare((folder / "cards" / "overhang-card.svg").read_text())


def told_beside(guide: MeasuringGuide) -> Iterator[str]:
    """Yield what stands in and beside the fields of the measuring guide."""
    for found in said_beside(guide.taking).values():
        yield from (str(note) for note in found)
    yield from (placeholder(guide.taking, name) for name in guide.fields)


def test_no_text_tells_a_length_in_the_other_unit(everything: Told) -> None:
    other = METRIC if everything.unit == "in" else IMPERIAL
    found = {}
    for place, text in everything.texts:
        kept = _ALLOWED.sub(" ", " ".join(text.split()))
        for slip in other.finditer(kept):
            found.setdefault(kept[max(0, slip.start() - 60) : slip.end() + 20], place)
    assert not found, "\n".join(f"{place}: …{said}" for said, place in found.items())


def test_what_is_read_is_much_and_in_her_unit(everything: Told) -> None:
    places = {place for place, _ in everything.texts}
    assert {"plan.html", "shopping.csv", "made", "body", "blocks", "card", "SwatchTest", "lay table"} <= places
    own = IMPERIAL if everything.unit == "in" else METRIC
    assert sum(len(own.findall(text)) for _, text in everything.texts) > 1500


def test_the_words_of_the_worn_view_fix_no_unit() -> None:
    for key, text in _texts().items():
        assert not [found for way in (METRIC, IMPERIAL) for found in way.findall(text)], key
