"""The bar of a long work: it never says less than was done, and guesses the time left as it went so far."""

from __future__ import annotations

import itertools
from pathlib import Path

from drafting.notebook.living.living import living_costume
from drafting.notebook.plan.view import WORKING, PlanView
from drafting.notebook.progress import FINEST, Progress
from tests.notebook.trials import trial_costumes


def test_it_says_what_is_done_how_far_and_what_is_left() -> None:
    clock = itertools.count(step=10)  # s
    shown = Progress(lambda: float(next(clock)))
    assert shown.bar.layout.visibility == "hidden"
    shown.begin()
    shown.tell("Laying", 0.25)
    assert (shown.bar.value, shown.bar.layout.visibility) == (0.25, "visible")
    assert "Laying" in shown.words.value
    assert "about 30 s left" in shown.words.value  # a quarter took 10 s
    shown.end("Stopped.")
    assert shown.bar.layout.visibility == "hidden"
    assert "Stopped." in shown.words.value


def test_a_step_too_fine_to_see_is_not_sent() -> None:
    shown, sent = Progress(), list[float]()
    shown.bar.observe(lambda change: sent.append(change["new"]), names="value")
    for step in range(1, 1001):
        shown.tell("Laying", step / 1000)
    assert len(sent) <= 1 / FINEST
    shown.tell("Writing", shown.bar.value)
    assert "Writing" in shown.words.value


def test_a_plan_says_which_cloth_is_laid_and_how_far_it_is(tmp_path: Path) -> None:
    living = living_costume(trial_costumes(tmp_path)["no-coat"])
    cloth = tmp_path / "no-coat" / "cloth.toml"
    cloth.write_text(cloth.read_text().replace("Cotton drill", "<b>Drill</b> & twill"))
    living.look()
    told: list[tuple[str, float]] = []
    living.laid(lambda words, share: told.append((words, share)))
    assert told[0] == ("laying the pieces on <b>Drill</b> & twill, invented", 0.0)
    assert [share for _, share in told] == sorted(share for _, share in told)
    plan, said = PlanView(living), list[str]()
    plan.view.observe(lambda change: said.append(change["new"]), names="value")
    plan._work_out()
    assert f"{WORKING}, 0 %: laying the pieces on &lt;b&gt;Drill" in said[0]
    assert "<iframe" in said[-1]
