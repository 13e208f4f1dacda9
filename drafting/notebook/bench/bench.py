"""The bench: controls on the left, the pieces and what is to be said of them on the right."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from pathlib import Path
from typing import Any

from drafting.costume.file import CostumeFile
from drafting.costume.make import Made, checked
from drafting.ground.choices import Choice
from drafting.ground.errors import DraftError
from drafting.ground.units import LengthUnit
from drafting.notebook.bench import state as st
from drafting.notebook.bench.ahead import Ahead, HandStep, step_of, steps_from
from drafting.notebook.bench.changes import changed_html, changes_html
from drafting.notebook.bench.controls import key_step, moved_value
from drafting.notebook.bench.field_states import groups_of, states_of
from drafting.notebook.bench.findings import findings_html
from drafting.notebook.bench.girths import girths_html
from drafting.notebook.bench.history import History
from drafting.notebook.bench.linked import Linked
from drafting.notebook.bench.measures import folded_html, measures_html
from drafting.notebook.bench.page import BenchPage
from drafting.notebook.bench.together import Together
from drafting.notebook.errors_said import plainly
from drafting.notebook.living.living import Living, living_of
from drafting.notebook.living.parts import choice_of, choices_in, garment_of
from drafting.notebook.memory import spare_what_stands
from drafting.notebook.picture import garment_svg
from drafting.notebook.said import refused_html
from drafting.notebook.when_resting import Later

MEASURES = "The measures it is drafted from"

HELD = 0.25
"""Seconds after which a hand that came to another control stays there: Tab passes by many (ours)."""

AHEAD = 0.02
"""Seconds after the findings: what the page sends meanwhile is heard first."""


class Bench(Together):
    """Garments of a costume, one shown at a time, with a control for each of its `choices`.

    Show it as the last line of a cell. `garment` names one garment, several, or (None) all; `choices`
    names the controls wanted, or (None) all there are. `out` is the folder that the button writes
    as `drafting make` does, or (None) one of the costume's own beside the notebooks, `out-NAME`. What the bench
    knows is `history`; the widgets only show it.
    Raises `InputError` where the first garment cannot be drafted as it stands in its file.
    """

    def __init__(
        self,
        costume: CostumeFile | Living,
        garment: str | Sequence[str] | None = None,
        choices: Sequence[str] | None = None,
        out: Path | str | None = None,
    ) -> None:
        self.living = living_of(costume)
        names = _garments(self.costume, garment)
        self.named, self.out = choices, None if out is None else Path(out)
        self.history = History(st.begin_standing(self.costume, names[0], self.living.asked))
        self.unit: LengthUnit = "in" if self.costume.told_in == "in" else "cm"
        self.slips: dict[str, tuple[str, str]] = {}
        self.counts: dict[str, int] = {}
        self.drawn: tuple[Any, ...] = ()
        self.linked = Linked(self)
        self.widgets = BenchPage(self, names)
        self.picture, self.knobs = self.widgets.picture, self.widgets.knobs
        self.checks = Later(partial(self.safely, self._show_findings))
        self.ahead = Ahead()
        self.step: HandStep | None = None
        self.looks = Later(partial(self.safely, self._look_ahead), AHEAD, needed=False)
        self.held = Later(partial(self.safely, self._look_beside), HELD, needed=False)
        self.knobs.observe(lambda _: self.held.ask(), names="held")
        self._show_controls()
        self._show()
        self._show_findings()
        self.living.hear(self.heard)
        spare_what_stands()

    def _repr_mimebundle_(self, **asked: Any) -> Any:
        return self.widgets.view._repr_mimebundle_(**asked)

    @property
    def made(self) -> Made:
        """What the picture shows, checked."""
        return checked(self.standing.made)

    @property
    def controls(self) -> Mapping[str, Choice]:
        """What the garment shown has a control for, by name."""
        known = choices_in(self.costume, self.garment)
        if self.named is None:
            return known
        if len(self.widgets.names) == 1:
            return {name: choice_of(self.costume, self.garment, name) for name in self.named}
        return {name: known[name] for name in self.named if name in known} or known

    def choice(self, name: str) -> Any:
        """Return a choice of the garment shown as a widget of `ipywidgets`, to observe, link or set.

        Its `value` (mm, degrees, a word, yes or no) and the bench follow each other. Raises `InputError`
        for a choice that there is not.
        """
        return self.linked.widget(name)

    def ask(self, choice: str, value: Any, stroke: int = 0) -> None:
        """Take a new value (mm, degrees, a word, yes or no) for one choice, and show what it gives.

        What cannot be drafted is said beside its control, and the last picture stays. Values of one
        `stroke` are one step of undo.
        """
        self.follow()
        self.slips.pop(choice, None)
        self.step = step_of(choice, st.asked_values(self.standing).get(choice), value)
        drafted = self.ahead.finished
        self._stand(st.asked_for(self.standing, self.garment, choice, value, stroke, drafted))

    def reset(self, choice: str = "", stroke: int = 0) -> None:
        """Put one choice, or all of the garment shown, back to what the file says."""
        self.follow()
        self.slips = {} if not choice else {n: s for n, s in self.slips.items() if n != choice}
        self._stand(st.put_back(self.standing, self.costume, self.garment, choice, stroke))

    def undo(self) -> None:
        """Go back one step, wherever it was made; nothing where there is none."""
        self.follow()
        self._come_to(self.history.undone())

    def redo(self) -> None:
        """Take the last step back again."""
        self.follow()
        self._come_to(self.history.redone())

    def show_garment(self, name: str) -> None:
        """Show another garment of the costume; what was chosen for each stays."""
        if name == self.garment:
            return
        self.follow()
        try:
            self._come_to(self.history.turned(st.showing_garment(self.standing, name)))
        except DraftError:
            self.widgets.show_buttons()  # the list names the one that is shown
            raise

    def show_in(self, unit: LengthUnit) -> None:
        """Show lengths in cm or in inches; no value changes."""
        self.unit = unit
        self._show_controls()
        self._show()
        self._show_findings()

    def take(self, moves: Mapping[str, Any]) -> None:
        """Take what the hand did to the controls, in its order."""
        for name, move in self.knobs.take(moves, max(self.counts.values(), default=0)):
            self.counts[name] = move["n"]
            self.safely(partial(self._take, name, move))

    def _take(self, name: str, move: Mapping[str, Any]) -> None:
        if move.get("garment", self.garment) != self.garment:
            return  # made before another garment was shown
        stroke = int(move["stroke"])
        if move.get("back"):
            self.reset(name, stroke)
            return
        kept = st.asked_values(self.standing)[name]
        value, read = moved_value(self.controls[name], move, kept, self.unit, self.slips)
        if not read:
            self._show_states()
        elif value == kept:
            self.slips.pop(name, None)
            self._show_states()
        else:
            self.ask(name, value, stroke)

    def _stand(self, new: st.Standing) -> None:
        self.history = self.history.moved(new)
        self.living.put(new.asked, self)
        self._show()

    def _come_to(self, history: History) -> None:
        turned = history.now.garment != self.garment
        self.history, self.slips = history, {}
        self.living.put(history.now.asked, self)
        if turned:
            self._show_controls()
        self._show()

    def _show_controls(self) -> None:
        groups = groups_of(self.standing, self.controls, self.unit, self.named is None)
        with self.knobs.hold_sync():
            self.knobs.garment, self.knobs.groups = self.garment, groups

    def _show(self) -> None:
        """Draw what stands. A refusal leaves picture, findings and girths as they are."""
        standing = self.standing
        stays = standing.refusal and self.drawn and self.drawn[0] is standing.made
        new = not stays or self.drawn[2] != self.unit
        if new:
            self._draw()
        self._show_states()
        self.widgets.show_buttons()
        beside = standing.refused in self.controls
        self.say("" if beside else standing.refusal)
        if new:
            self.looks.drop()
            self.checks.ask()

    def _draw(self) -> None:
        made, before = self.standing.made, self.standing.before
        self.widgets.preview.show(made, self.garment, before, self.unit, moving=True)
        self.drawn = (made, before, self.unit)

    def _show_findings(self) -> None:
        """Measure and check what is shown: the picture does not wait for it."""
        made, before, page = self.standing.made, self.standing.before, self.widgets
        garment, earlier = made[self.garment], None if before is None else before[self.garment]
        page.preview.rest()
        page.changed.value = changed_html(earlier, garment, self.unit)
        page.girths.value = girths_html(garment, made.costume.wearer, self.unit)
        page.changes.value = changes_html(earlier, garment, self.unit)
        page.measures.value = folded_html(MEASURES, measures_html(made.costume.wearer, self.unit))
        page.findings.value = findings_html(self.made.findings, self.unit)
        self.looks.ask()

    def _look_ahead(self) -> None:
        """Draft and draw one more step of the hand the same way, to be shown if it is asked for."""
        step, standing = self.step, self.standing
        if step is None or st.asked_values(standing).get(step.choice) != step.value:
            return
        self._draft_ahead(step.choice, step.further)

    def _look_beside(self) -> None:
        """Draft and draw a step either way at the control that the hand came to from another."""
        choice = self.controls.get(self.knobs.held)
        if choice is None or choice.unit == "count" or (self.step and self.step.choice == choice.name):
            return
        for value in steps_from(st.asked_values(self.standing)[choice.name], key_step(choice, self.unit)):
            self._draft_ahead(choice.name, value)

    def _draft_ahead(self, choice: str, value: float) -> None:
        asked = st.with_choice(self.standing.asked, self.garment, choice, value)
        look = partial(garment_svg, garment=self.garment, **self.widgets.preview.ways)
        self.ahead.look(st.only_garment(asked, self.garment), look)

    def _show_states(self) -> None:
        self.knobs.states = states_of(
            self.standing, self.costume, self.controls, self.unit, self.slips, self.counts
        )
        self.linked.follow()

    def say(self, words: str) -> None:
        """Say what could not be done, where it is not about one control."""
        self.widgets.said.value = refused_html(words)

    def safely(self, do: Callable[[], None]) -> None:
        """Run what a control asks for; whatever goes wrong is told in words."""
        plainly(do, self.say, self.costume.told_in)


def _garments(costume: CostumeFile, asked: str | Sequence[str] | None) -> tuple[str, ...]:
    """Return the names of the garments to show; raises `InputError` for one that there is not."""
    if asked is None:
        return tuple(garment.name for garment in costume.garments)
    names = (asked,) if isinstance(asked, str) else tuple(asked)
    return tuple(garment_of(costume, name).name for name in names)
