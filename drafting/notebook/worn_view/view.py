"""The worn page: a garment on the wearer's form beside its controls; it follows when the hand rests."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from typing import Any

import ipywidgets as widgets

from drafting.costume.file import CostumeFile
from drafting.costume.make import checked
from drafting.costume.wearing.raised import form_so, worn_so
from drafting.costume.wearing.worn import form_words
from drafting.ground.choices import Choice
from drafting.ground.templates import beside
from drafting.ground.units import LengthUnit
from drafting.notebook.bench import state as st
from drafting.notebook.bench.controls import moved_value
from drafting.notebook.bench.exporting import Errand, Stopped
from drafting.notebook.bench.field_states import groups_of, states_of
from drafting.notebook.bench.fields import Knobs
from drafting.notebook.errors_said import plainly
from drafting.notebook.living.living import Living, living_of
from drafting.notebook.living.parts import choices_in
from drafting.notebook.picture.place import PicturePlace
from drafting.notebook.progress import Progress
from drafting.notebook.said import paragraphs_html, refused_html, style_html
from drafting.notebook.when_resting import Later
from drafting.notebook.worn_view.pictured import Pictured
from drafting.notebook.worn_view.standing import ARMS, COLOURS, VIEWS, WornStanding, begin_worn, picture, worn_anew
from drafting.worn.form import Stance, wearers_form
from drafting.worn.stands.words import remark, worded

RESTS = 0.25
"""Seconds without a new value after which a hand rests: sewing up takes a second (ours)."""

SETTLE, STOP = "Settle it in full", "Stop settling"


class WornView:
    """Garments of a costume on its wearer's form, one shown at a time, with controls for its `choices`.

    Show it as the last line of a cell. A coarse shape follows the controls when the hand rests, with the one
    before beside it; the button settles it in full and tells what it finds. What is chosen here or on a bench
    is one state. Raises `InputError` where the first garment cannot be drafted as it stands in its file.
    """

    keeps = True
    """What is chosen is in the journal."""

    def __init__(
        self, costume: CostumeFile | Living, garments: str | Sequence[str], choices: Sequence[str] | None = None
    ) -> None:
        self.living, self.named = living_of(costume), choices
        names = (garments,) if isinstance(garments, str) else tuple(garments)
        self.unit: LengthUnit = "in" if self.costume.told_in == "in" else "cm"
        self.form = wearers_form(self.living.asked.wearer)
        self.worn = begin_worn(self.costume, names[0], self.form, self.living.asked)
        self.standing = self.worn.standing
        self.slips: dict[str, tuple[str, str]] = {}
        self.counts: dict[str, int] = {}
        self.knobs = Knobs()
        self.before, self.now = Pictured("before"), Pictured("now")
        self.words, self.refused = widgets.HTML(), widgets.HTML()
        self.rests = Later(partial(self.safely, self._settle), RESTS)
        self.side = self._chosen("Seen from", list(VIEWS))
        self.colours = self._chosen("Colours", list(COLOURS))
        self.settle = widgets.Button(description=SETTLE, layout=widgets.Layout(width="auto"))
        self.settle.add_class("settle-in-full")
        self.settle.on_click(lambda _: self.safely(self.tell_in_full))
        self.errand, self.progress, self.ended = Errand(), Progress(), ""
        self.arms = self._chosen("Arms", list(ARMS), self.hold_arms)
        self.dress = self._chosen("Garment", list(names), self.show_garment)
        self.dress.layout.display = None if len(names) > 1 else "none"
        self.view = self._laid_out()
        self._show_controls()
        self.knobs.observe(lambda change: self.take(change["new"]), names="moves")
        self.living.hear(self.heard)
        self._show()

    def _repr_mimebundle_(self, **asked: Any) -> Any:
        return self.view._repr_mimebundle_(**asked)

    @property
    def costume(self) -> CostumeFile:
        """The costume as its file has it."""
        return self.living.file

    def close(self) -> None:
        """Let the view go: it hears of no more changes."""
        self.errand.stop()
        self.living.leave(self.heard)

    def heard(self, by: object) -> None:
        """Follow what another view has changed."""
        if by is not self:
            self.safely(lambda: self._stand(st.following(self.standing, self.living.asked)))

    def show_garment(self, name: str) -> None:
        """Show another garment; nothing is beside it yet."""
        self.errand.stop()
        self.worn = begin_worn(self.costume, name, self.form, self.living.asked)
        self.standing, self.slips = self.worn.standing, {}
        self._show_controls()
        self._show()

    def hold_arms(self, how: str) -> None:
        """Show the garment shown on a wearer who holds the arms so."""
        self.form = form_so(self.living.asked.wearer, ARMS[how])
        self.show_garment(self.standing.garment)

    @property
    def controls(self) -> Mapping[str, Choice]:
        """What there is a control for, by name."""
        known = choices_in(self.costume, self.standing.garment)
        return {name: known[name] for name in self.named or () if name in known} or known

    def ask(self, choice: str, value: Any, stroke: int = 0) -> None:
        """Take a new value for one choice; the shape follows when the hand rests."""
        self.slips.pop(choice, None)
        self._stand(st.asked_for(self.standing, self.standing.garment, choice, value, stroke))

    def take(self, moves: Mapping[str, Any]) -> None:
        """Take what the hand did to the controls, in its order."""
        for name, move in self.knobs.take(moves, max(self.counts.values(), default=0)):
            self.counts[name] = move["n"]
            self.safely(partial(self._take, name, move))

    def _take(self, name: str, move: Mapping[str, Any]) -> None:
        stroke = int(move["stroke"])
        if move.get("back"):
            self._stand(st.put_back(self.standing, self.costume, self.standing.garment, name, stroke))
            return
        kept = st.asked_values(self.standing)[name]
        value, read = moved_value(self.controls[name], move, kept, self.unit, self.slips)
        if read:
            self.ask(name, value, stroke)
        else:
            self._show_states()

    def _stand(self, standing: st.Standing) -> None:
        if standing.asked != self.standing.asked:
            self.errand.stop()
        self.standing = standing
        self.living.put(standing.asked, self)
        self._show_states()
        self.rests.ask()

    def _settle(self) -> None:
        """Sew up what is asked for and let it fall: a shape only."""
        self.worn = worn_anew(self.worn, self.standing, self.form)
        self._show()

    def tell_in_full(self) -> None:
        """Settle the garment shown on a fine mesh and tell in words what is found; pressed again, stop.

        It takes a while, beside the kernel's own work: what is chosen meanwhile stops it too.
        """
        if self.errand.busy:
            self.errand.stop()
            return
        self.settle.description = STOP
        self.progress.begin()
        self.errand.start(partial(self._in_full, self.worn, ARMS[self.arms.value]))

    def _in_full(self, shown: WornStanding, stance: Stance) -> None:
        self.ended = ""
        try:
            plainly(partial(self._found, shown, stance), self.say, self.unit)
        finally:
            self.progress.end(self.ended)
            self.settle.description = SETTLE

    def _tell(self, words: str, share: float) -> None:
        if self.errand.halted():
            raise Stopped
        self.progress.tell(words, share)

    def _found(self, shown: WornStanding, stance: Stance) -> None:
        try:
            found = worn_so(checked(shown.shown), stance, self._tell)
            if self.errand.halted() or self.worn is not shown:
                raise Stopped
        except Stopped:
            self.ended = "Stopped: the coarse shape stands."
            return
        (garment,) = found.garments or (None,)
        said = [worded(words, self.unit) for words in (*(garment.words if garment else ()), *form_words(found))]
        self.words.value = paragraphs_html(said)
        if garment:
            self.worn = replace(self.worn, now=garment)
            self._show_pictures()

    def _show(self) -> None:
        self._show_pictures()
        self._show_states()
        beside = self.standing.refusal and self.standing.refused in self.controls
        self.refused.value = refused_html("" if beside else self.worn.refusal)
        shown = (remark("always.form"), remark("shape.coarse"))
        self.words.value = paragraphs_html([worded(said, self.unit) for said in shown])

    def _show_pictures(self) -> None:
        drawn = picture(self.worn, self.form, self.side.value, self.colours.value)
        for place, png in zip((self.before, self.now), drawn, strict=True):
            there = f"worn, seen from: {self.side.value}, {place.name}; colours: {self.colours.value}"
            none = place is self.before and self.worn.before is None
            place.view.layout.visibility = "hidden" if none else "visible"
            place.show(png, "Nothing yet: what was before stands here" if none else f"{self.dress.value} {there}")

    def _show_states(self) -> None:
        self.knobs.states = states_of(
            self.standing, self.costume, self.controls, self.unit, self.slips, self.counts
        )

    def _show_controls(self) -> None:
        self.knobs.garment = self.standing.garment
        self.knobs.groups = groups_of(self.standing, self.controls, self.unit, self.named is None)

    def _chosen(self, words: str, options: list[str], do: Callable[[str], None] | None = None) -> Any:
        looks = {"layout": widgets.Layout(width="190px"), "style": {"description_width": "72px"}}
        chosen = widgets.Dropdown(options=options, description=words, **looks)
        chosen.add_class(words.lower().replace(" ", "-"))

        def told(change: Any) -> None:
            self.safely(self._show_pictures if do is None else partial(do, change["new"]))

        chosen.observe(told, names="value")
        return chosen

    def say(self, words: str) -> None:
        """Say what could not be done."""
        self.refused.value = refused_html(words)

    def safely(self, do: Callable[[], None]) -> None:
        """Run what a control asks for; whatever goes wrong is told in words."""
        plainly(do, self.say, self.unit)

    def _laid_out(self) -> Any:
        tools = widgets.HBox([self.dress, self.side, self.arms, self.colours, self.settle])
        pictures = widgets.HBox([self.now.view, self.before.view])
        foot = widgets.VBox([widgets.HBox([self.progress.bar, self.progress.words]), self.refused, self.words])
        right = widgets.VBox([tools, pictures, foot])
        style = widgets.HTML(style_html(beside(__file__, ".css")), layout=widgets.Layout(display="none"))
        stage = widgets.HBox([self.knobs, right, PicturePlace(), style])
        named = ((tools, "tools"), (pictures, "pictures"), (foot, "foot"), (right, "right"), (stage, "view"))
        for part, name in named:
            part.add_class(f"worn-{name}")
        return stage
