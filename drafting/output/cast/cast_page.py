"""`cast.html` and the call sheets: what a head of workshop, and whoever fits, reads and prints."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from drafting.body import DIMENSIONS
from drafting.costume.cast import Cast, CastWearer
from drafting.finish.label import spoken
from drafting.ground import palette
from drafting.ground.frozen import freeze
from drafting.ground.lengths import counted, in_unit, told
from drafting.ground.templates import Html, beside, macros, page_policy
from drafting.ground.units import ShownUnit, show_length
from drafting.making.shopping import total_cost
from drafting.making.words import text
from drafting.output.cast.let_out import WORTH
from drafting.output.cast.over_all import DIFFERS, Bought, Records, differs, for_whom
from drafting.output.cast.place import CALL_SHEETS
from drafting.output.cast.told import MADE

MOST_SAID = 6
"""Lines of a sort on a call sheet, so that it stays one page (ours); the plan of the wearer has them all."""


@dataclass(frozen=True)
class CastTold:
    """A cast with all that its pages tell: records, what is bought, rows and pictures of lays together."""

    cast: Cast
    records: Records
    bought: tuple[Bought, ...]
    lays: tuple[dict[str, Any], ...]
    pictures: Mapping[str, bytes]

    def __post_init__(self) -> None:
        freeze(self, "pictures")

    @property
    def unit(self) -> ShownUnit:
        return self.cast.told_in


def call_sheet_file(wearer: CastWearer) -> str:
    """Return where a wearer's call sheet lies, in the folder of the cast."""
    return f"{CALL_SHEETS}/{wearer.folder}.html"


def call_sheet(it: CastTold, wearer: CastWearer) -> str:
    """Return the call sheet of a wearer who was made: one page."""
    record, parts = it.records[wearer.folder], macros(__file__)
    other = it.cast.beside(wearer)
    about = [
        it.cast.title,
        f"measured {record['measured_on']}" if record["measured_on"] else "day of measuring not said",
    ]
    by = differs(it.cast, wearer, it.records) if _made(it, other) else {}
    body = parts.call_sheet(
        head=wearer.name,
        about=[*about, f"folder {wearer.folder}/"],
        role=_role(wearer) or "role not said",
        wears=parts.table(
            ("garment", "cloth", "pieces", "finished, over the body"), map(_worn, record["garments"])
        ),
        taken=[(_words(name), _value(m)) for name, m in record["measures"].items() if m["source"] == "measured"],
        doubted=_said(((("", where, what)) for where, what in record["doubted"]), "Nothing doubtful."),
        take=parts.take(map(_taken, record["take"]))
        if record["take"]
        else "Nothing: all that is drafted was taken.",
        let_out=parts.table(("garment", "by", "seams"), _let_out(record)),
        differs=_differing(other, by),
        checks=_said(record["checks"], "") if record["checks"] else "",
    )
    return _whole(it, f"{wearer.name}, {it.cast.title}", body, "portrait")


def _made(it: CastTold, wearer: CastWearer | None) -> bool:
    return wearer is not None and it.records[wearer.folder]["status"] == MADE


def _whole(it: CastTold, title: str, body: Html, way: str) -> str:
    paper = f"{'letter' if it.unit == 'in' else 'A4'} {way}"
    style = Html(palette.css() + beside(__file__, ".css"))
    whole = macros(__file__).whole(title=title, policy=page_policy(""), style=style, paper=paper, body=body)
    return in_unit(str(whole), it.unit)


def _words(name: str) -> str:
    return name.replace("_", " ")


def _value(measure: Mapping[str, Any]) -> str:
    if "left" in measure and measure["left"] != measure["right"]:
        return f"L {told(measure['left'])}, R {told(measure['right'])}"
    return told(measure["mm"])


def _worn(held: Mapping[str, Any]) -> tuple[str, ...]:
    girths = ", ".join(f"{level.replace('_', ' ')} {told(now)}" for level, _, now in held["girths"])
    return spoken(held["garment"]), held["cloth"], str(held["pieces"]), girths


def _taken(row: Mapping[str, Any]) -> tuple[str, ...]:
    return _words(row["measure"]), told(row["mm"]), f"± {told(row['off'])}" if row["off"] else "not known"


def _let_out(record: Mapping[str, Any]) -> Iterator[tuple[str, ...]]:
    for held in record["garments"]:
        for by, seams in held["let_out"]:
            yield spoken(held["garment"]), told(by), seams
        if not held["let_out"]:
            yield spoken(held["garment"]), f"under {told(WORTH)}", "every seam"


def _said(rows: Any, none: str) -> Html | str:
    every = list(rows)
    left = len(every) - MOST_SAID
    more = f"and {left} more in plan.html and report.json of the wearer" if left > 0 else ""
    return macros(__file__).said(every[:MOST_SAID], more) if every else none


def _differing(other: CastWearer | None, by: Mapping[str, float]) -> tuple[str, str] | None:
    if other is None or not by:
        return None
    return f"Differs from {other.name}", ", ".join(f"{_words(name)} {_signed(mm)}" for name, mm in by.items())


def _signed(mm: float) -> str:
    return f"{'+' if mm > 0 else '−'}{told(abs(mm))}"


def cast_page(it: CastTold) -> str:
    """Return `cast.html`: who is made and who is not, who differs, what to buy, what is laid together."""
    cast, parts = it.cast, macros(__file__)
    made = [one for one in cast.wearers if it.records[one.folder]["status"] == MADE]
    lost = [one for one in cast.wearers if one not in made]
    heads, rows = _who_differs(it, made)
    body = parts.cast(
        title=cast.title,
        about=f"{len(made)} of {len(cast.wearers)} wearers drafted" + (f", {len(lost)} not" if lost else ""),
        refused=[(one.name, one.role, it.records[one.folder]["reasons"]) for one in lost],
        wearers=parts.table(WEARERS, (_wearer_row(it, one) for one in made)),
        beside=_beside_words(it.unit),
        heads=[_words(name) for name in heads],
        differing=rows,
        shopping=parts.table(("what", "detail", "amount", "for"), (_bought_row(it, one) for one in it.bought)),
        cost=_cost(it.bought),
        lays=[_lay(it, row) for row in it.lays],
    )
    return _whole(it, cast.title, body, "landscape")


WEARERS = ("wearer", "role", "checks", "to measure again", "estimates to take", "open")


def _beside_words(unit: ShownUnit) -> str:
    return (
        f"Measures that were taken and differ by {show_length(DIFFERS, unit)} or more from those of the first "
        "wearer or, for an understudy, of whom she understudies; below each, her own."
    )


def _role(wearer: CastWearer) -> str:
    understudy = f"understudy of {wearer.understudies}" if wearer.understudies else ""
    return ", ".join(filter(None, (wearer.role, understudy)))


def _wearer_row(it: CastTold, wearer: CastWearer) -> tuple[Any, ...]:
    record, parts = it.records[wearer.folder], macros(__file__)
    counts = {level: sum(row[0] == level for row in record["checks"]) for level in ("error", "warning")}
    checks = ", ".join(f"{n} {level}{'s' if n > 1 else ''}" for level, n in counts.items() if n) or "all hold"
    links = (
        (call_sheet_file(wearer), "call sheet"),
        (f"{wearer.folder}/plan.html", "plan"),
        (f"{wearer.folder}/overview.png", "pieces"),
    )
    doubted = ", ".join(dict.fromkeys(_words(where) for where, _ in record["doubted"])) or "nothing"
    take = ", ".join(_words(row["measure"]) for row in record["take"][:3]) or "none"
    return wearer.name, _role(wearer), checks, doubted, take, Html(" · ").join(parts.link(*one) for one in links)


def _who_differs(it: CastTold, made: Sequence[CastWearer]) -> tuple[list[str], list[Any]]:
    """Return the measures that differ for anybody, and for each who differs a row of changes and values."""
    found = {one.folder: differs(it.cast, one, it.records) for one in made if _made(it, it.cast.beside(one))}
    heads = [name for name in DIMENSIONS if any(name in by for by in found.values())]
    rows = []
    for one in made:
        by, other = found.get(one.folder), it.cast.beside(one)
        if by and other is not None:
            measures = it.records[one.folder]["measures"]
            cells = [(_signed(by[name]), _value(measures[name])) if name in by else ("", "") for name in heads]
            rows.append((one.name, other.name, cells))
    return heads, rows


def _bought_row(it: CastTold, one: Bought) -> tuple[str, ...]:
    names = {w.folder: w.name for w in it.cast.wearers if it.records[w.folder]["status"] == MADE}
    row = one.row
    amount = (
        told(row.amount, "bought")
        if row.unit == "mm"
        else f"{row.amount:g} {row.unit}{'s' if row.amount != 1 else ''}"
    )
    return row.what, text(row.detail), amount, for_whom(one, names)


def _cost(bought: Sequence[Bought]) -> str:
    cost, without = total_cost(tuple(one.row for one in bought))
    if not cost:
        return "Every wearer's list added up; no prices are known."
    rest = f"; {counted(without, 'line has', 'lines have')} no price" if without else ""
    return f"Every wearer's list added up: {cost:.2f}{rest}."


def _lay(it: CastTold, row: Mapping[str, Any]) -> tuple[str, str, str]:
    words = (
        f"{row['cloth']}, {len(row['wearers'])} wearers: {told(row['cloth_length'], 'bought')} together, "
        f"{told(row['one_by_one'], 'bought')} one by one; buy {told(row['buy_length'], 'bought')}."
    )
    return words, row["file"], f"data:image/png;base64,{b64encode(it.pictures[row['name']]).decode()}"
