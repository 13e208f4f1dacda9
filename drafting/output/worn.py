"""`drafting worn`: the costume on the wearer's form, in a folder of its own: pictures, words, record."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

import numpy as np

from drafting.costume.wearing.signs import signs_worn
from drafting.costume.wearing.worn import Worn, WornGarment, form_words, left_out_words, look_of
from drafting.export.figure import overview_png
from drafting.export.svg import svg_text
from drafting.export.wavefront import wavefront
from drafting.export.worn_views import Scale, views_png
from drafting.ground.names import name_in_words
from drafting.ground.units import LengthUnit, show_length
from drafting.output.folder import WORN, swap_in
from drafting.sheet import Sheet
from drafting.sheet.hems_above import HemFromAbove, hems_sheet
from drafting.worn.picture.draw import Image, drawn
from drafting.worn.picture.dressed import Look, dressed_scene, off_scene, pull_scene
from drafting.worn.picture.scene import PictureScene
from drafting.worn.picture.turned import scales, turned_page
from drafting.worn.picture.view import ABOVE, BACK, FRONT, SIDE, Eye, frame_for
from drafting.worn.stands.hems import hem_lines, hems_of
from drafting.worn.stands.model import GarmentWorn
from drafting.worn.stands.treated import TreatedHem
from drafting.worn.stands.words import Remark, in_a_row, remark, worded

SCHEMA = 1

WIDE, HIGH = 600, 900
"""Pixels of a view."""


def write_worn(costume: Worn, out: Path | str) -> None:
    """Write pictures, page and record beside `out` and swap them in whole; what was there stays if it fails.

    Raises `InputError` where `out` is a file, or a folder that holds anything else.
    """
    swap_in(Path(out), lambda folder: _fill(costume, folder), WORN)


def _fill(costume: Worn, folder: Path) -> dict[str, Any]:
    """Fill a folder; return its record."""
    looks = tuple(look_of(garment, costume.form) for garment in costume.garments)
    for name, data in pictures(costume, looks):
        (folder / name).write_bytes(data)
    sheet = above_sheet(costume)
    if sheet:
        overview_png(sheet, folder / "above.png")
        (folder / "above.svg").write_text(svg_text(sheet), encoding="utf-8", newline="\n")
    (folder / "turn.html").write_text(turn_page(costume, looks), encoding="utf-8", newline="\n")
    (folder / "meshes").mkdir()
    for garment in costume.garments:
        mesh = folder / "meshes" / f"{garment.name}.obj"
        mesh.write_text(wavefront(garment.rest), encoding="utf-8", newline="\n")
    return worn_record(costume)


def unit_of_costume(costume: Worn) -> LengthUnit:
    """Return the unit that the maker's file is written in."""
    return "in" if costume.made.costume.unit in ("in", "inch", "inches") else "cm"


def pictures(costume: Worn, looks: tuple[Look, ...]) -> Iterator[tuple[str, bytes]]:
    """Yield each picture by its file's name: three views, where it pulls, where it stands off."""
    scene, words = dressed_scene(costume.form.surface, looks), (*shape_only(costume), *not_shown(costume))
    for view in (FRONT, SIDE, BACK):
        yield f"{view.name}.png", views_png(_views(costume, scene, view), words)
    if above_sheet(costume) is None:
        yield "above.png", views_png(_views(costume, scene, ABOVE), words)
    maps = (("pulls", pull_scene), ("stands-off", off_scene))
    for (name, told), scale in zip(maps, scales(unit_of_costume(costume)), strict=True):
        views = _views(costume, told(costume.form.surface, looks), FRONT, SIDE, BACK)
        heading = scale["words"][:1].upper() + scale["words"][1:]
        yield (
            f"{name}.png",
            views_png(views, (scale["note"], *words), Scale(heading, scale["shades"], scale["ends"])),
        )


def _views(costume: Worn, scene: PictureScene, *views: Eye) -> list[tuple[str, Image]]:
    frame = frame_for(costume.form.surface.points, WIDE, HIGH)
    return [(view.name, drawn(scene, view, frame)) for view in views]


def side_by_side(costume: Worn, looks: tuple[Look, ...], high: int) -> Image:
    """Return front, side and back in one picture, `high` pixels high."""
    frame = frame_for(costume.form.surface.points, high * WIDE // HIGH, high)
    scene = dressed_scene(costume.form.surface, looks)
    return np.hstack([drawn(scene, view, frame) for view in (FRONT, SIDE, BACK)])


def shape_only(costume: Worn) -> tuple[str, ...]:
    """Return what stands under every picture: that it is a form, and what is shown as a shape only."""
    unsettled = [garment.found for garment in costume.garments if not garment.found.settled]
    said = [remark("always.form"), *(remark("shape.only", garment=found.garment) for found in unsettled)]
    return tuple(worded(sentence, unit_of_costume(costume)) for sentence in said)


def not_shown(costume: Worn) -> tuple[str, ...]:
    """Return what stands under every picture of a costume with a garment that could not be put on the form."""
    names = [name_in_words(name) for name, _ in costume.left_out]
    return tuple(worded(remark("shape.not_shown", garment=name), unit_of_costume(costume)) for name in names)


def above_sheet(costume: Worn) -> Sheet | None:
    """Return the hems from above: under each treatment where any hangs, else each garment's own; None without."""
    unit = unit_of_costume(costume)
    treated = [(garment, one) for garment in costume.garments for one in garment.treated if one.hem]
    hems = [_treated_above(one, unit) for _, one in treated]
    if not hems:
        hems = [one for garment in costume.garments for one in _own_above(costume, garment, unit)]
    if not hems:
        return None
    seat = costume.form.contour(costume.form.levels["hip"])
    title = f"{costume.made.costume.title}: hems from above"
    return hems_sheet(hems, seat, title, "the wearer's back", "the wearer's front")


def _treated_above(one: TreatedHem, unit: LengthUnit) -> HemFromAbove:
    assert one.hem is not None
    words = [f"{show_length(one.hem.width, unit)} wide"]
    low, high = (show_length(width, unit) for width in one.hem.range)
    if low != high:
        words.append(f"({low} to {high})")
    words.append(f"{show_length(one.hem.back_reach, unit)} behind the seat")
    lines = tuple(line[:, :2] for line in one.lines)
    return HemFromAbove(worded(remark(f"treated.{one.name}"), unit), tuple(words), lines)


def _own_above(costume: Worn, garment: WornGarment, unit: LengthUnit) -> Iterator[HemFromAbove]:
    lines = hem_lines(garment.rest, hems_of(costume.made[garment.name].draft))
    if lines and garment.found.hem and garment.found.settled:
        words = (f"{show_length(garment.found.hem.width, unit)} wide",)
        yield HemFromAbove(name_in_words(garment.name), words, tuple(line[:, :2] for line in lines))


def turn_page(costume: Worn, looks: tuple[Look, ...]) -> str:
    """Return `turn.html`: the costume turned by hand, with everything that is said of it."""
    unit = unit_of_costume(costume)
    caution, *unsettled = shape_only(costume)
    told = [(in_a_row([look.name]).capitalize(), _worded(g.words, unit)) for look, g in _paired(costume, looks)]
    general = _worded(form_words(costume)[1:], unit)
    return turned_page(
        costume.form.surface,
        looks,
        title=costume.made.costume.title,
        caution=caution,
        unsettled=unsettled,
        told=[*told, ("Not told", general)],
        unit=unit,
    )


def _paired(costume: Worn, looks: tuple[Look, ...]) -> Iterator[tuple[Look, WornGarment]]:
    yield from zip(looks, costume.garments, strict=True)


def _worded(words: Iterable[Remark], unit: LengthUnit) -> list[str]:
    return [worded(sentence, unit) for sentence in words]


def worn_text(costume: Worn) -> str:
    """Return what `drafting worn` says in the end, in the maker's unit."""
    unit = unit_of_costume(costume)
    lines: list[str] = []
    for garment in costume.garments:
        signs = [f"  As at a fitting: {seen['seen']}." for seen in _signs(costume, garment)]
        lines += [name_in_words(garment.name), *(f"  {row}" for row in _worded(garment.words, unit)), *signs, ""]
    return "\n".join([*lines, *_worded(form_words(costume), unit)])


def worn_record(costume: Worn) -> dict[str, Any]:
    """Return `worn.json` as plain data: mm, N, degrees; strain a fraction; null where nothing came to rest.

    `not_shown` stands there where a garment could not be put on the form, `arms` where they are raised.
    """
    unit = unit_of_costume(costume)
    report = [{"name": m.name, "wanted": m.wanted, "got": m.got} for m in costume.form.report]
    garments = [
        _garment(one.found, _worded(one.words, unit))
        | {"treatments": [_treatment(hem) for hem in one.treated], "signs": list(_signs(costume, one))}
        for one in costume.garments
    ]
    missing = [
        {"garment": name, "why": why}
        for (name, _), why in zip(costume.left_out, _worded(left_out_words(costume), unit), strict=True)
    ]
    record = {"schema": SCHEMA, "form": report, "garments": garments, "seconds": costume.seconds}
    record |= {"arms": "raised"} if costume.raised else {}
    return record | ({"not_shown": missing} if missing else {})


def _treatment(one: TreatedHem) -> dict[str, Any]:
    """Return what a treatment makes of a hem: its numbers null where it did not come to rest."""
    hem = one.hem
    return {
        "treatment": one.name,
        "converged": hem is not None,
        "width": hem and hem.width,
        "back_reach": hem and hem.back_reach,
        "range": [None, None] if hem is None else list(hem.range),
    }


def _signs(costume: Worn, garment: WornGarment) -> Iterator[dict[str, Any]]:
    """Yield the signs of a fitting that a garment at rest shows, each with its number; none with the arms up."""
    for seen in () if costume.raised else signs_worn(garment, costume.made[garment.name].draft):
        shown = seen.sign.worn
        assert shown is not None
        yield {"sign": seen.sign.name, "seen": seen.sign.seen, "number": shown.number, "value": seen.value}


def _garment(found: GarmentWorn, words: list[str]) -> dict[str, Any]:
    def known(value: float) -> float | None:
        return value if found.settled else None

    hem = found.hem
    return {
        "garment": found.garment,
        "converged": found.settled,
        "residual": found.residual,
        "vertices": found.vertices,
        "slid": found.slid,
        "girths": [
            {"level": lv.name, "drafted": lv.drafted, "worn": known(lv.worn), "slack": known(lv.slack)}
            for lv in found.levels
        ],
        "stands_off": [
            {"level": lv.name, "where": off.where, "mm": known(off.mm)}
            for lv in found.levels
            for off in lv.stands_off
        ],
        "strain": [
            {"level": lv.name, "mean": known(lv.strain.mean), "p95": known(lv.strain.p95)} for lv in found.levels
        ],
        "hem": hem
        and {
            "width": known(hem.width),
            "back_reach": known(hem.back_reach),
            "range": [known(width) for width in hem.range],
        },
        "words": words,
    }
