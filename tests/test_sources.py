"""Every figure names a source that a maker can follow; nothing names a list of our own."""

from __future__ import annotations

import html
import io
import re
from collections.abc import Iterator
from contextlib import redirect_stdout
from pathlib import Path

import pytest

from drafting.blocks import Block, all_blocks
from drafting.body.dimensions import DIMENSIONS
from drafting.body.figure_rules import FIGURES
from drafting.body.rule_table import RULES
from drafting.commands.cli import main
from drafting.costume.choices import garment_choices
from drafting.ground.choices import choices_of
from drafting.ground.sources import Cited, Source, Sources, cite, ours, printed, works
from drafting.layout import LayWishes
from drafting.making.page.sections import source_list
from drafting.making.plan_sources import PLAN

ROOT = Path(__file__).resolve().parents[1]
READ = ("drafting", "tests", "notebooks", "measurements", "README.md", "DEVELOPERS.md")
TEXTS = {".py", ".toml", ".md", ".js", ".css", ".ipynb"}

# A letter and two digits, or two letters and one, head the lists that the kit was built from. Not so
# parts of standards' numbers (Y14.1), versions of DXF (R12), pages of a print (B12).
CODES = re.compile(
    r"(?<![#\w])(?:(?!B12)[A-QS-Z]\d\d(?!\.\d)"
    r"|(?:ME|FA|DR|SL|TR|CO|FL|GA|EL|SE|NO|AL|PR|LA|MA|NB|FI|SA)\d)\b"
)
LISTS = re.compile(
    r"(?<![a-z])stud(?:y|ies)(?![a-z])|check[ -]values?|block(?:s')?[ ]demands|\brows?[ ](?=[A-Z]{1,2}\d)"
    r"|\b(?:blocks|contracts|style|fitting|troubles|recipes|words|bodice|trouser|coat)\.(?:md|csv)",
    re.IGNORECASE,
)
KEYS = re.compile(r'"[^"\s]*"')


def internal(text: str) -> Iterator[tuple[int, str]]:
    """Yield the line and the words of every reference that says nothing outside the project.

    A file that still reads the folder shared beside the repository may hold that folder's keys and
    names as bare strings; its words may not.
    """
    shared = "shared_data" in text or '"shared"' in text
    for number, line in enumerate(text.splitlines(), 1):
        told = KEYS.sub("", line) if shared else line
        for pattern in (CODES, LISTS):
            yield from ((number, found[0]) for found in pattern.finditer(told))


def texts() -> Iterator[Path]:
    for name in READ:
        place = ROOT / name
        found = [place] if place.is_file() else place.rglob("*")
        yield from sorted(path for path in found if path.suffix in TEXTS)


def test_nothing_names_a_list_of_our_own() -> None:
    found = [
        f"{path.relative_to(ROOT)}:{line}: {words}"
        for path in texts()
        for line, words in internal(path.read_text("utf-8"))
    ]
    assert not found, "name the work behind it, see drafting/ground/sources.py:\n" + "\n".join(found)


# Put together so as not to find themselves.
@pytest.mark.parametrize(
    "words",
    [
        f"row E{40}",
        f"rows W{45}-W{47}",
        f"(F{16})",
        f"trouble SL{3}",
        f"K{12}",
        f"P{'05'}",
        f"T{11}",
        "bodice stu" + "dy",
        "the coat stu" + "dy's figure",
        "def stu" + "dy_job",
        "STU" + "DY = 1",
        "blocks" + ".md",
        "contracts" + ".md",
        "see check" + "-values",
        "check" + " value",
        "block " + "demands",
        "troubles" + ".csv",
    ],
)
def test_a_code_or_a_list_is_found_with_its_line(words: str) -> None:
    assert [line for line, _ in internal(f"A first line.\n{words}\n")][:1] == [2]


@pytest.mark.parametrize(
    "words",
    [
        "A4, A3 and A0 paper",
        "an M3 screw",
        "ISO 4915 301",
        "EN 13402-3",
        "DIN 66000",
        "ANSI/ASME Y14.1",
        "ASTM D5585-11e1",
        "ASTM D3107-07",
        "# noqa: E501",
        "R12 and R2000",
        "page B12",
        "a row of buttons",
        "#E40E40",
        "student",
        "sturdy",
        "UTF-8",
        "rows A",
        "NATICK/TR-15/007",
        "ISO 3758:2012",
        "SVG 1.1",
    ],
)
def test_real_names_are_no_alarm(words: str) -> None:
    assert list(internal(words)) == []


def test_keys_of_the_shared_folder_pass_only_where_it_is_read() -> None:
    key = f'value("E{40}")'
    assert list(internal(key)) != []
    assert list(internal(f"from tests.shared_data import value\n{key}\n")) == []
    assert list(internal(f"from tests.shared_data import value\n{key}  # E{41}\n")) != []


def resolves(cited: Sources) -> bool:
    """Say whether something is cited, by ids of the table, and *ours* with what it was found on."""
    named = all(isinstance(one, Cited) and isinstance(one.source, Source) for one in cited)
    return bool(cited) and named and all(one.note for one in cited if one.source is Source.OURS)


@pytest.mark.parametrize("block", all_blocks().values(), ids=lambda block: block.name)
def test_every_choice_has_a_source(block: Block) -> None:
    assert [c.name for c in garment_choices(block) if not resolves(c.source)] == []


def test_every_wish_for_a_lay_every_estimate_and_the_plan_have_a_source() -> None:
    assert all(resolves(choice.source) for choice in choices_of(LayWishes))
    rules = (*RULES, *(rule for sharper in FIGURES.values() for rule in sharper))
    assert [rule.name for rule in rules if not resolves(rule.source)] == []
    assert {d.source for d in DIMENSIONS.values()} == {Source.BDIMS, Source.MEMORY}
    assert resolves(PLAN)


def test_the_plan_and_its_page_name_the_works_in_full() -> None:
    shown = html.unescape(source_list(PLAN))
    assert "ISO 3758:2012: ISO, Care labelling code using symbols, 2012" in shown
    assert [work for work in works(PLAN) if work not in shown] == []
    assert printed(*PLAN[:1]) in shown
    assert source_list(()) == ""


def test_what_is_ours_says_what_it_was_found_on() -> None:
    with pytest.raises(ValueError, match="what it was found on"):
        ours("")
    with pytest.raises(ValueError, match="what it was found on"):
        cite(Source.OURS)


@pytest.fixture(scope="module")
def listing() -> str:
    """What `drafting blocks all` prints."""
    with redirect_stdout(io.StringIO()) as said:
        assert main(["blocks", "all"]) == 0
    return said.getvalue()


def test_the_blocks_are_listed_without_a_code_and_with_each_work_in_full(listing: str) -> None:
    assert list(internal(listing)) == []
    told = " ".join(listing.split())
    cited = [one for b in all_blocks().values() for choice in b.choices for one in choice.source]
    assert works(cited)
    assert [work for work in works(cited) if work not in told] == []
    assert all(f"Source: {kind}" in told for kind in ("common practice", "from memory", "ours"))


WORKS = [source for source in Source if source.value.by]


@pytest.mark.parametrize("source", WORKS, ids=lambda source: source.name)
def test_a_work_can_be_followed_and_a_recalled_one_says_so(source: Source) -> None:
    work = source.value
    assert work.title
    assert printed(cite(source, "a figure")).startswith(work.name)
    assert ("from memory" in printed(cite(source))) == (work.kind == "from memory")
    assert works([cite(source)])[0].startswith(f"{work.name}: {work.by}, {work.title}")


def test_what_no_work_stands_behind_is_said_in_three_words_and_no_two_works_share_a_name() -> None:
    others = {source.value.name for source in Source} - {source.value.name for source in WORKS}
    assert others == {"common practice", "from memory", "ours"}
    assert len({source.value.name for source in Source}) == len(Source)


def named() -> Iterator[tuple[str, str]]:
    """Yield the file of each `Source.NAME` in the kit's code, docstrings and comments, and the name."""
    for path in sorted((ROOT / "drafting").rglob("*.py")):
        for name in re.findall(r"\bSource\.([A-Z][A-Z0-9_]*)", path.read_text("utf-8")):
            yield path.relative_to(ROOT).as_posix(), name


def test_every_id_named_in_the_kit_is_in_the_table_and_every_one_of_the_table_is_used() -> None:
    found = list(named())
    assert [(file, name) for file, name in found if name not in Source.__members__] == []
    used = {name for _, name in found}
    assert set(Source.__members__) - used == set()
