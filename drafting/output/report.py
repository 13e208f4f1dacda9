"""The record of a costume as plain data: `report.json`, schema 1.

Lengths in mm, areas in mm2, angles in degrees, numbers unrounded; sentences in the unit that the
costume's maker reads. A half piece on the fold is reported as drawn. Only `timings` may differ between two runs.
"""

from __future__ import annotations

import platform
from collections.abc import Iterator, Mapping
from importlib.metadata import PackageNotFoundError, version

from drafting.body import Body
from drafting.checks.girths import finished_girth
from drafting.costume.choices import block_named, garment_choices
from drafting.costume.make import Made, MadeGarment
from drafting.draft.draft import Girth, Notion, Seam
from drafting.draft.pattern import CutPiece
from drafting.draft.walk import walk
from drafting.ground.findings import Finding
from drafting.ground.lengths import in_unit
from drafting.ground.sources import printed, works
from drafting.ground.units import ShownUnit
from drafting.layout import lay_row
from drafting.making.model import Plan, Setting
from drafting.making.order.holes import holes
from drafting.output.fit_record import fit_record
from drafting.output.report_fitting import fitting_rows
from drafting.output.report_steps import Record, step_row

SCHEMA = 1

DISTRIBUTIONS = (
    "drafting-kit",
    "numpy",
    "scipy",
    "shapely",
    "fonttools",
    "matplotlib",
    "pyclipper",
    "spyrrow",
    "reportlab",
    "ezdxf",
    "jinja2",
)


def report(made: Made, plan: Plan | None = None) -> Record:
    """Return everything known about `made`, ready for JSON; `plan` gives stitches and steps."""
    sewn = plan.settings if plan else {}
    costume = made.costume
    garments, unit = made.garments, made.costume.told_in
    return {
        "schema": SCHEMA,
        "costume": _costume(made),
        "made_with": made_with(),
        "choices": {g.name: _choices(g) for g in garments},
        "body": _body(costume.wearer, unit),
        "pieces": [_piece(g, cut) for g in garments for cut in g.pattern.pieces],
        "seams": [_seam(g, seam, sewn) for g in garments for seam in g.draft.seams],
        "girths": [_girth(g, girth) for g in garments for girth in g.draft.girths],
        "fit": [fit_record(made, garment) for garment in garments],
        "checks": [_check(finding, unit) for finding in made.findings],
        "layout": [lay_row(lay) for lay in made.lays],
        "notions": [_notion(g, notion, unit) for g in garments for notion in g.draft.notions],
        "buttonholes": [row for g in garments for row in _buttonholes(g)],
        "fitting": fitting_rows(made),
        "steps": [step_row(made, step, unit) for step in plan.steps] if plan else [],
        "sources": _sources(made, plan),
        "timings": dict(made.timings),
    }


def _notion(garment: MadeGarment, notion: Notion, unit: ShownUnit) -> Record:
    return {
        "garment": garment.name,
        "what": notion.what,
        "where": notion.where,
        "count": notion.count,
        "cut_length": notion.cut_length,
        "note": in_unit(notion.note, unit),
        "kind": notion.kind,
        "size": notion.size,
    }


def _buttonholes(garment: MadeGarment) -> Iterator[Record]:
    """The buttonholes drawn, alike ones of a piece in one row; the plan sews as many."""
    for row in holes(garment.draft):
        yield {
            "garment": garment.name,
            "piece": row.piece,
            "hand": row.side,
            "lie": row.lie,
            "length": row.length,
            "count": row.count,
        }


def piece_file(garment: str, piece: str) -> str:
    """Return where a piece's SVG lies, relative to the output folder."""
    return f"pieces/{garment}.{piece}.svg"


def _costume(made: Made) -> Record:
    costume, wearer = made.costume, made.costume.wearer
    return {
        "title": costume.title,
        "wearer": wearer.title,
        "unit": costume.told_in,
        "measured_on": wearer.measured_on,
        "waist_level": wearer.waist_level,
        "taken_over": wearer.taken_over,
        "figure": wearer.figure,
        "fabrics": {role: fabric.title for role, fabric in costume.fabrics.items()},
        "garments": {g.name: {"block": g.block, "fabric": g.fabric} for g in made.garments},
    }


def made_with() -> dict[str, str]:
    """Return the versions of Python, of the kit and of what it reckons with, by name."""
    found = {"python": platform.python_version()}
    for name in DISTRIBUTIONS:
        try:
            found[name] = version(name)
        except PackageNotFoundError:  # run from a checkout that was never installed
            found[name] = "not installed"
    return found


def _choices(garment: MadeGarment) -> Record:
    pairs = garment.choices.items()
    return {name: {"value": value, "source": source} for name, (value, source) in pairs}


def _sources(made: Made, plan: Plan | None) -> Record:
    """Return what stands behind each choice, and every work in full, those of the plan too."""
    choices = {g.name: garment_choices(block_named(g.block)) for g in made.garments}
    cited = [cited for own in choices.values() for choice in own for cited in choice.source]
    cited += [cited for m in made.costume.wearer.measures.values() for cited in m.cited]
    unit = made.costume.told_in
    return {
        "choices": {
            garment: {choice.name: in_unit(printed(*choice.source), unit) for choice in own}
            for garment, own in choices.items()
        },
        "works": list(works([*cited, *(plan.sources if plan else ())])),
    }


def _body(body: Body, unit: ShownUnit) -> Record:
    rows = {}
    for name, measure in body.measures.items():
        row: Record = {"mm": measure.mm, "source": measure.source}
        if measure.source == "estimated":
            off = None if measure.sd is None else 2 * measure.sd
            row |= {"rule": in_unit(measure.rule, unit), "sd": measure.sd, "off": off}
        if measure.left is not None and measure.right is not None:
            row |= {"left": measure.left, "right": measure.right}
        rows[name] = row
    return rows


def _piece(garment: MadeGarment, cut: CutPiece) -> Record:
    piece, fold = cut.piece, cut.piece.fold_edge
    return {
        "garment": garment.name,
        "piece": piece.name,
        "role": piece.role.value,
        "number": cut.number,
        "file": piece_file(garment.name, piece.name),
        "fabric": cut.piece.cut_from or garment.fabric,
        "count": piece.count,
        "mirrored_pair": piece.pair,
        "hand": piece.hand or None,
        "fold_edge": fold.name if fold else None,
        "lies_behind": list(piece.lines),
        "grain_deg": piece.grain,
        "stretch_deg": piece.stretch,
        "stitch_area": piece.area,
        "cut_area": cut.cut.area,
        "edges": list(_edges(cut)),
        "darts": [
            {"dart": dart.name, "leg_a": dart.leg_a.length, "leg_b": dart.leg_b.length} for dart in piece.darts
        ],
    }


def _edges(cut: CutPiece) -> Iterator[Record]:
    for edge in cut.piece.edges:
        yield {
            "edge": edge.name,
            "length": edge.length,
            "sewn_length": edge.sewn_length,
            "allowance": cut.allowances.get(edge.name, 0.0),
            "kind": edge.kind.value,
            "role": edge.role.value,
            "notches": [{"notch": n.name, "at": n.at, "strokes": n.count} for n in edge.notches],
        }


def _seam(garment: MadeGarment, seam: Seam, sewn: Mapping[tuple[str, str], Setting]) -> Record:
    setting = sewn.get((garment.name, seam.name))
    walked = walk(garment.draft, seam)
    wrong = [f for f in garment.findings if f.level == "error" and _is_about(f, seam)]
    return {
        "garment": garment.name,
        "seam": seam.name,
        "kind": seam.kind.value,
        "a": [list(ref) for ref in seam.a],
        "b": [list(ref) for ref in seam.b],
        "a_length": walked.a_length,
        "b_length": walked.b_length,
        "a_sewn": walked.a_sewn,
        "b_sewn": walked.b_sewn,
        "declared_ease": seam.ease,
        "gather_ratio": walked.gather_ratio,
        "corner_angles": list(walked.angles),
        "stitch": setting.stitch if setting else None,
        "ok": not wrong,
    }


def _is_about(finding: Finding, seam: Seam) -> bool:
    return finding.where in (seam.name, f"{seam.name}.start", f"{seam.name}.end")


def _girth(garment: MadeGarment, girth: Girth) -> Record:
    row: Record = {"garment": garment.name, "level": girth.level, "body": girth.body}
    if girth.side:
        row["side"] = girth.side
    return row | {
        "garment_finished": finished_girth(garment.draft, girth.level, girth.side),
        "asked_ease": girth.asked_ease,
        "settled_ease": girth.settled_ease,
        "fabric_stretch_used": girth.stretch_used,
    }


def _check(finding: Finding, unit: ShownUnit) -> Record:
    return {
        "check": finding.check,
        "level": finding.level,
        "where": finding.where,
        "value": finding.value,
        "wanted": finding.wanted,
        "message": finding.said(unit),
    }
