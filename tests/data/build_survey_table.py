"""Remake `drafting/body/survey_table.json` from the body survey: python -m tests.data.build_survey_table

The means and covariances of the women and of the men of ANSUR II (Gordon et al. 2014, NATICK/TR-15/007,
released to the public by the US government), a random half of its public files, which lie in
`../shared/data` beside the repository. No person's row is kept.
"""

from __future__ import annotations

import json
from typing import Any

import numpy as np

from drafting.body.rules import FLEXED
from drafting.body.survey import TABLE
from tests.body.survey import by_figure, survey_people
from tests.data.build_survey_statistics import SOURCE

KEPT = """
    height nape_height neck_girth neck_base_girth bust_girth waist_girth hip_girth back_waist_length
    shoulder_length shoulder_drop across_back_width across_back_low_width axilla_depth bust_level flexed_arm
    forearm_girth wrist_girth hand_girth arm_length upper_arm_length waist_to_hip outside_leg_length
    inside_leg_length total_crotch_length back_crotch_length thigh_girth lower_thigh_girth calf_girth
    ankle_girth heel_girth knee_height
"""
"""What a tape takes and the survey has; the widths and depths of sections serve the form alone."""


def of_figure(people: Any) -> dict[str, Any]:
    """Return count, means (mm) and the covariance (mm^2) on and below the diagonal, row by row."""
    table = people[KEPT.split()].to_numpy(float)
    spread = np.cov(table.T, bias=True)
    return {
        "count": len(people),
        "mean": [round(float(mm), 3) for mm in table.mean(axis=0)],
        "covariance": [[round(float(one), 2) for one in row[: i + 1]] for i, row in enumerate(spread)],
    }


def survey_table() -> dict[str, Any]:
    people = survey_people()
    people = people.assign(flexed_arm=people.upper_arm_girth * FLEXED)
    groups = {figure: of_figure(by_figure(people, figure)) for figure in ("womens", "mens")}
    return {"source": SOURCE, "unit": "mm", "measures": KEPT.split(), **groups}


def text(found: dict[str, Any]) -> str:
    """Return JSON with one line a row, so that a change can be read."""
    lines = []
    for key, value in found.items():
        if isinstance(value, dict):
            rows = ",\n      ".join(json.dumps(row) for row in value["covariance"])
            head = f'"count": {value["count"]},\n    "mean": {json.dumps(value["mean"])},\n    '
            lines.append(f'  "{key}": {{\n    {head}"covariance": [\n      {rows}\n    ]\n  }}')
        else:
            lines.append(f'  "{key}": {json.dumps(value)}')
    return "{\n" + ",\n".join(lines) + "\n}\n"


if __name__ == "__main__":
    TABLE.write_text(text(survey_table()), encoding="utf-8")
