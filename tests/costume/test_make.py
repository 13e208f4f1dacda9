"""From a costume file to a written folder, on the demo's invented figures."""

from __future__ import annotations

import dataclasses
import json
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from drafting.body import Body, wearer
from drafting.costume.file import read_costume
from drafting.costume.make import Made, draft_garment, make
from drafting.ground.errors import DraftError, InputError
from drafting.ground.findings import worst
from drafting.ground.shipped import demo_costume, shipped
from drafting.output.report import report

BODY = wearer({"height": 1710, "bust_girth": 920, "waist_girth": 760, "hip_girth": 1000})


@pytest.fixture(scope="module")
def demo() -> Made:
    return make(read_costume(demo_costume()))


@pytest.fixture(scope="module")
def record(demo: Made) -> dict[str, Any]:
    return report(demo)


def costume(tmp_path: Path, garments: str) -> Path:
    """Return a costume file on the lamplighter's body and cloth with these garments."""
    files = shipped("measurements").as_posix()
    path = tmp_path / "costume.toml"
    path.write_text(
        f'title = "Test"\nunit = "cm"\nwearer = "{files}/bodies/lamplighter.toml"\n'
        f'[fabrics]\nshell = "{files}/fabrics/striped-shirting.toml"\n{garments}',
        encoding="utf-8",
    )
    return path


# ------------------------------------------------------------------------------- the choices


def test_the_parts_of_a_garment_share_one_set_of_choices() -> None:
    made = draft_garment(BODY, None, "shirt", {"arm_ease": 70})
    assert made.choices["arm_ease"] == (70, "file")
    (girth,) = (g for g in made.draft.girths if g.level == "upper_arm")
    assert girth.asked_ease == 70
    assert made.pattern["front"].allowances["shoulder"] == made.choices["seam_allowance"][0]


def test_a_garment_has_its_own_defaults_and_a_typed_choice_beats_them() -> None:
    plain, shirt = draft_garment(BODY, None, "bodice"), draft_garment(BODY, None, "shirt")
    assert plain.choices["bust_ease"] == (80, "default")
    assert shirt.choices["bust_ease"] == (100, "default")
    assert draft_garment(BODY, None, "shirt", {"bust_ease": 60}).choices["bust_ease"] == (60, "file")


def test_a_dolls_defaults_shrink_and_what_was_typed_does_not() -> None:
    doll = wearer({"height": 760, "bust_girth": 405, "waist_girth": 340, "hip_girth": 445})
    made = draft_garment(doll, None, "shirt", {"waist_ease": 40})
    assert made.choices["bust_ease"][0] == pytest.approx(100 * 405 / 900)
    # Common practice: 6 mm (1/4 in) is the allowance proposed for a doll; a smaller one cannot be sewn.
    assert made.choices["seam_allowance"][0] == 6.0
    assert made.pattern["back"].allowances["hem"] == 20 * 405 / 900
    assert made.choices["waist_ease"] == (40, "file")


def test_an_unknown_choice_is_refused_with_the_nearest_name() -> None:
    with pytest.raises(InputError, match=r"bust_eese: .*did you mean bust_ease"):
        draft_garment(BODY, None, "shirt", {"bust_eese": 60})


def test_every_faulty_choice_is_named_at_once_and_a_shared_one_only_once() -> None:
    with pytest.raises(InputError) as refused:
        draft_garment(BODY, None, "shirt", {"arm_ease": -900, "hem_allowance": 500, "sleeves": 2})
    assert sorted(fault.field for fault in refused.value.faults) == ["arm_ease", "hem_allowance", "sleeves"]


def test_an_unknown_block_is_refused_with_the_nearest_name() -> None:
    with pytest.raises(InputError, match="did you mean shirt"):
        draft_garment(BODY, None, "shrit")


def test_a_bodice_without_sleeves_leaves_its_armholes_open_and_says_so() -> None:
    answered = dataclasses.replace(BODY, figure="womens").changed()  # else a guessed bust is warned about
    made = draft_garment(answered, None, "bodice")
    doubted = {f.check for f in made.findings if f.level in ("warning", "error")}
    assert doubted == {"head passes"}  # it has no closing
    assert {made.draft[p]["armhole"].kind for p in ("front", "back")} == {"opening"}
    assert {f.where for f in made.findings if f.check == "left open"} == {"front.armhole", "back.armhole"}


def test_a_sleeve_cannot_be_drafted_without_armholes_and_the_way_out_is_said() -> None:
    with pytest.raises(DraftError, match=r"front armhole and back armhole.*whole garment"):
        draft_garment(BODY, None, "sleeve")


# ---------------------------------------------------------------------------------- the flow


def test_the_demo_is_made_and_every_check_holds(demo: Made) -> None:
    assert [f.message for f in demo.findings if f.level == "error"] == []
    assert sum(f.level == "ok" for f in demo.findings) > 50
    assert set(demo.timings) == {"draft", "finish", "check"}


def test_i03_back_shoulder_less_front_shoulder_is_the_stated_ease(demo: Made) -> None:
    # Common practice: 0 beside dart and ease, within 0.1 cm.
    shirt = next(g for g in demo.garments if g.name == "shirt")
    back, front = shirt.draft["back"]["shoulder"].length, shirt.draft["front"]["shoulder"].length
    assert back - front - shirt.choices["shoulder_ease"][0] == pytest.approx(0, abs=1)


def test_a_costume_of_two_garments_says_which_one_it_speaks_of(tmp_path: Path) -> None:
    garments = '[garments.shirt]\nblock = "shirt"\n[garments.vest]\nblock = "bodice"\n'
    made = make(read_costume(costume(tmp_path, garments)))
    assert [g.name for g in made.garments] == ["shirt", "vest"]
    assert worst(made.findings) != "error"
    assert {f.where.split(":")[0] for f in made.findings if ": " in f.where} == {"shirt", "vest"}


def test_the_faults_of_all_garments_come_at_once_with_file_and_line(tmp_path: Path) -> None:
    garments = '[garments.shirt]\nblock = "shirt"\nchoices = {bust_eese = 4}\n[garments.vest]\nblock = "bodise"\n'
    path = costume(tmp_path, garments)
    with pytest.raises(InputError) as refused:
        make(read_costume(path))
    said = str(refused.value)
    assert "garments.shirt.choices.bust_eese" in said
    assert "did you mean bodice" in said
    assert all(fault.file == str(path) and fault.line for fault in refused.value.faults)


def test_a_garment_that_cannot_be_drafted_is_named(tmp_path: Path) -> None:
    garments = '[garments.arms]\nblock = "sleeve"\n[garments.shirt]\nblock = "shirt"\n'
    with pytest.raises(InputError, match=r"costume\.toml:6: garments\.arms: .*armhole"):
        make(read_costume(costume(tmp_path, garments)))


def test_the_kite_wears_the_lamplighters_costume() -> None:
    kite = shipped("measurements") / "bodies" / "kite.toml"
    made = make(read_costume(demo_costume(), wearer=kite))
    assert [f.message for f in made.findings if f.level == "error"] == []


# -------------------------------------------------------------------------------- the record


def test_the_record_has_the_parts_of_schema_1_and_is_json(record: dict[str, Any]) -> None:
    assert list(record) == [
        "schema",
        "costume",
        "made_with",
        "choices",
        "body",
        "pieces",
        "seams",
        "girths",
        "fit",
        "checks",
        "layout",
        "notions",
        "buttonholes",
        "fitting",
        "steps",
        "sources",
        "timings",
    ]
    assert record["schema"] == 1
    assert json.loads(json.dumps(record, allow_nan=False)) == record


PIECE_KEYS = {
    "garment",
    "piece",
    "role",
    "file",
    "fabric",
    "count",
    "mirrored_pair",
    "fold_edge",
    "grain_deg",
    "stretch_deg",
    "stitch_area",
    "cut_area",
    "edges",
    "darts",
}
SEAM_KEYS = {
    "garment",
    "seam",
    "kind",
    "a",
    "b",
    "a_length",
    "b_length",
    "a_sewn",
    "b_sewn",
    "declared_ease",
    "gather_ratio",
    "corner_angles",
    "stitch",
    "ok",
}


def test_every_piece_seam_girth_and_check_has_its_keys(record: dict[str, Any]) -> None:
    assert all(set(row) >= PIECE_KEYS for row in record["pieces"])
    assert all(set(row) == SEAM_KEYS for row in record["seams"])
    girth = {"garment", "level", "body", "garment_finished", "asked_ease", "settled_ease"}
    assert all(set(row) >= girth | {"fabric_stretch_used"} for row in record["girths"])
    check = {"check", "level", "where", "value", "wanted", "message"}
    assert all(set(row) == check for row in record["checks"])


def test_the_record_says_what_pieces_edges_and_seams_are(record: dict[str, Any]) -> None:
    roles = {(p["garment"], p["piece"]): p["role"] for p in record["pieces"]}
    assert roles["coat", "under-sleeve"] == "under sleeve"
    assert roles["coat", "under-sleeve-lining"] == "under sleeve"  # its fabric says it is a lining
    edges = {(p["garment"], p["piece"], e["edge"]): e["role"] for p in record["pieces"] for e in p["edges"]}
    assert edges["coat", "front", "lapel_top"] == "lapel"
    assert edges["shirt", "sleeve", "cap_front"] == "cap"
    seams = {(s["garment"], s["seam"]): s["kind"] for s in record["seams"]}
    assert seams["shirt", "front armhole"] == "set in"
    assert seams["breeches", "front crotch"] == "crotch"


def test_every_seam_or_dart_edge_stands_in_exactly_one_seam(record: dict[str, Any]) -> None:
    # an edge sewn to its own mirror image or twin is named on both sides of its one seam
    sides = [{(s["garment"], *ref) for ref in s["a"] + s["b"]} for s in record["seams"]]
    uses = Counter(ref for refs in sides for ref in refs)
    for piece in record["pieces"]:
        for edge in piece["edges"]:
            wanted = 1 if edge["kind"] in ("seam", "dart") else 0
            name = piece["garment"], piece["piece"], edge["edge"]
            assert uses[name] == wanted, name


def test_seams_and_girths_of_the_record_add_up_by_its_own_edges(record: dict[str, Any]) -> None:
    length = {
        (p["garment"], p["piece"], e["edge"]): (e["length"], e["sewn_length"])
        for p in record["pieces"]
        for e in p["edges"]
    }
    for seam in record["seams"]:
        for side in "ab":
            found = [length[seam["garment"], *ref] for ref in seam[side]]
            assert sum(f[0] for f in found) == pytest.approx(seam[f"{side}_length"], abs=1e-9)
            assert sum(f[1] for f in found) == pytest.approx(seam[f"{side}_sewn"], abs=1e-9)
        assert seam["a_sewn"] - seam["b_sewn"] == pytest.approx(seam["declared_ease"], abs=0.5)
        assert seam["ok"] is True
    for girth in record["girths"]:
        wanted = girth["body"] + girth["settled_ease"]
        assert girth["garment_finished"] == pytest.approx(wanted, abs=1), girth["level"]


def test_the_record_tells_measured_from_estimated_with_rule_and_spread(record: dict[str, Any]) -> None:
    assert record["body"]["bust_girth"]["source"] == "measured"
    guessed = [row for row in record["body"].values() if row["source"] == "estimated"]
    assert guessed
    assert all(row["rule"] for row in guessed)
    assert any(row["sd"] and row["sd"] > 0 for row in guessed)


def test_every_choice_is_recorded_with_its_source(record: dict[str, Any]) -> None:
    chosen = record["choices"]["shirt"]
    assert chosen["waist_ease"] == {"value": 90.0, "source": "file"}
    assert chosen["seam_allowance"] == {"value": 10.0, "source": "default"}


def test_the_record_names_the_works_that_its_choices_and_estimates_follow(record: dict[str, Any]) -> None:
    told = record["sources"]
    for garment, chosen in record["choices"].items():
        assert told["choices"][garment].keys() == chosen.keys()
    assert told["choices"]["shirt"]["waist_ease"].startswith("Ease in clothing: 1.9 cm to 2.5 cm")
    assert any("2012 Anthropometric Survey of US Army Personnel" in work for work in told["works"])


def test_a_seam_that_fails_is_not_ok_in_the_record(demo: Made) -> None:
    shirt = next(g for g in demo.garments if g.name == "shirt")
    odd = tuple(
        dataclasses.replace(f, level="error") if (f.check, f.where) == ("seam length", "side") else f
        for f in shirt.findings
    )
    broken = dataclasses.replace(demo, garments=(dataclasses.replace(shirt, findings=odd),))
    assert [s["seam"] for s in report(broken)["seams"] if not s["ok"]] == ["side"]


# --------------------------------------------------------------------------------- speed


def test_a_body_can_be_drafted_without_files_in_well_under_a_second(demo: Made) -> None:
    body: Body = demo.costume.wearer
    assert sum(draft_garment(body, None, "shirt").seconds.values()) < 0.5
