"""What every control of the bench shows, as plain data for the page. No widgets."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from drafting.costume.file import CostumeFile
from drafting.ground.choices import Choice
from drafting.ground.units import LengthUnit
from drafting.notebook.bench import state as st
from drafting.notebook.bench.controls import knob, names_by_part, slider_ends, value_shown
from drafting.notebook.bench.reasons import reason
from drafting.notebook.bench.state import Standing
from drafting.notebook.living.parts import garment_of

STAYS = "The picture shows the last that could be drafted."


def groups_of(
    standing: Standing, choices: Mapping[str, Choice], unit: LengthUnit, fold: bool
) -> list[dict[str, Any]]:
    """Return the controls of the garment shown, by part; with `fold` only the first part is open."""
    usual = st.usual_values(standing.asked, standing.garment)
    block = garment_of(standing.asked, standing.garment).block
    return [
        {
            "heading": heading,
            "why": reason(heading),
            "open": not fold or number == 0,
            "knobs": [knob(choices[name], usual[name], unit) for name in names],
        }
        for number, (heading, names) in enumerate(names_by_part(block, tuple(choices)).items())
    ]


def states_of(
    standing: Standing,
    file: CostumeFile,
    choices: Mapping[str, Choice],
    unit: LengthUnit,
    slips: Mapping[str, tuple[str, str]],
    counts: Mapping[str, int],
) -> dict[str, dict[str, Any]]:
    """Return what each control shows.

    `slips` holds texts that could not be read and why, `counts` the last move taken of each.
    """
    values = st.asked_values(standing)
    used = st.values_of(standing.made, standing.garment)
    apart = set(_apart(standing, file))
    return {
        name: {
            **_standing_at(choice, values[name], used[name], unit),
            **_said(name, standing, slips),
            "apart": name in apart or name in slips,
            "n": counts.get(name, 0),
        }
        for name, choice in choices.items()
    }


def _standing_at(choice: Choice, value: Any, used: Any, unit: LengthUnit) -> dict[str, Any]:
    """Return a value as it is shown, with the ends of its slider grown to hold it."""
    if choice.unit in ("word", "yes/no"):
        return {"value": value, "text": value_shown(choice, value, unit), "low": 0, "high": 0}
    low, high = slider_ends(choice, value, used)
    return {"value": value, "text": value_shown(choice, value, unit), "low": low, "high": high}


def _said(name: str, standing: Standing, slips: Mapping[str, tuple[str, str]]) -> dict[str, str]:
    if name in slips:
        text, words = slips[name]
        return {"text": text, "refusal": words}
    refused = standing.refusal and standing.refused == name
    return {"refusal": f"{standing.refusal} {STAYS}" if refused else ""}


def _apart(standing: Standing, file: CostumeFile) -> Iterator[str]:
    """Yield every choice that says something other than its file."""
    worn = garment_of(standing.asked, standing.garment).choices
    written = garment_of(file, standing.garment).choices
    for name in {**worn, **written}:
        if name not in worn or name not in written or worn[name].value != written[name].value:
            yield name
