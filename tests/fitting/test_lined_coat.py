"""What is noted on a lined coat is carried out on shell and lining: on the whole garment, not its body alone."""

from __future__ import annotations

from pathlib import Path

import pytest

from drafting.costume.file import read_costume
from drafting.costume.make import make
from drafting.draft.roles import EdgeRole
from drafting.fitting.lines.lengths import body_length, waist_level
from drafting.ground.shipped import shipped
from tests.worn.garments import drafted

NOTED = (
    ("front.shoulder", "lower", 0.8),
    ("front.shoulder", "lengthen", 0.6),
    ("back.shoulder", "raise", 0.6),
    ("front.armhole", "clip", 0.6),
    ("back.armhole", "shorten", 0.6),
)


@pytest.mark.parametrize(("where", "verb", "amount"), NOTED)
@pytest.mark.parametrize("block", ["coat", "tailcoat"])
def test_shoulder_and_armhole_of_a_lined_coat_are_altered(
    block: str, where: str, verb: str, amount: float, tmp_path: Path
) -> None:
    """The lining's front missed its facing by 0.0007 mm, and a coat refused the note in figures of its outline."""
    data = shipped("measurements")
    (tmp_path / "noted.toml").write_text(
        f'title = "first try"\non = 2026-11-09\nunit = "cm"\n[[notes]]\ngarment = "coat"\nwhere = "{where}"\n'
        f'verb = "{verb}"\namount = {amount}\nkind = "style"\nstate = "pinned"\n',
        "utf-8",
    )
    costume = tmp_path / "costume.toml"
    costume.write_text(
        f'title = "A coat"\nunit = "cm"\nwearer = "{data / "bodies" / "lamplighter.toml"}"\n'
        f'fittings = ["noted.toml"]\n[fabrics]\nshell = "{data / "fabrics" / "velveteen.toml"}"\n'
        f'[garments.coat]\nblock = "{block}"\nfabric = "shell"\n',
        "utf-8",
    )
    made = make(read_costume(costume))
    (coat,) = made.garments
    assert [one.message for one in coat.findings if one.level == "error"] == []
    assert any(piece.material == "lining" for piece in coat.draft.pieces)


@pytest.mark.parametrize("block", ["coat", "waistcoat"])
def test_a_lining_that_ends_on_a_facing_goes_down_with_it(block: str) -> None:
    """Its corner there lies inside the front, on no edge of it, and stayed: the hem of the lining then slanted.

    Common practice: a lining is let down by as much as the cloth.
    """
    draft = drafted(block)
    for altered in (body_length(draft, 20.0), waist_level(draft, 20.0)):
        was, now = ({p.name: p for p in one.pieces} for one in (draft, altered.draft))
        for name in ("front-facing", "front-lining"):
            assert now[name]["inner"].length - was[name]["inner"].length == pytest.approx(20.0, abs=0.8)
        (hem,) = [e.name for e in was["front-lining"].edges if e.role is EdgeRole.HEM]
        for end in ("start", "end"):
            fell = getattr(was["front-lining"][hem].path, end) - getattr(now["front-lining"][hem].path, end)
            assert fell.imag == pytest.approx(20.0, abs=0.8)
