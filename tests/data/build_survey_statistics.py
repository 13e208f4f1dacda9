"""Remake `survey_statistics.json` from the body survey: python -m tests.data.build_survey_statistics

Means, standard deviations, skewness, percentiles and correlations of the women and of the men of ANSUR II
(Gordon et al. 2014, NATICK/TR-15/007, released to the public by the US government), a random half
of its public files, which lie in `../shared/data` beside the repository. No person's row is kept.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import numpy as np

from tests.body.survey import by_figure, survey_people

STATISTICS = Path(__file__).with_name("survey_statistics.json")
SOURCE = (
    "2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), Gordon et al. 2014, "
    "NATICK/TR-15/007, public release: figures derived from a random half of its public files"
)
PERCENT = (1, 5, 25, 50, 75, 95, 99)


def of_group(people: Any) -> dict[str, Any]:
    """Return the figures of one group: mm, and the correlations below the diagonal, row by row."""
    names = list(people.columns.drop("figure"))
    percentiles = np.percentile(people[names], PERCENT, axis=0).T
    together = np.corrcoef(people[names].to_numpy().T)
    return {
        "count": len(people),
        "measures": {
            name: {
                "mean": round(float(people[name].mean()), 3),
                "sd": round(float(people[name].std()), 3),
                "skew": round(float(people[name].skew()), 3),
                "percentiles": [round(float(mm), 1) for mm in row],
            }
            for name, row in zip(names, percentiles, strict=True)
        },
        "correlations": [[round(float(one), 5) for one in row[:i]] for i, row in enumerate(together)],
    }


def statistics() -> dict[str, Any]:
    people = survey_people()
    groups = {figure: of_group(by_figure(people, figure)) for figure in ("womens", "mens")}
    return {"source": SOURCE, "unit": "mm", "percent": list(PERCENT), **groups}


def text(found: Any, depth: int = 0) -> str:
    """Return JSON with a line for each measure and each row, so that a change can be read."""
    inner = "  " * (depth + 1)
    if isinstance(found, dict) and "mean" not in found:
        lines = [f"{inner}{json.dumps(k)}: {text(v, depth + 1)}" for k, v in found.items()]
        return "{\n" + ",\n".join(lines) + "\n" + "  " * depth + "}"
    if isinstance(found, list) and found and isinstance(found[0], list):
        return "[\n" + ",\n".join(inner + json.dumps(v) for v in found) + "\n" + "  " * depth + "]"
    return json.dumps(found)


if __name__ == "__main__":
    STATISTICS.write_text(text(statistics()) + "\n", encoding="utf-8")
