"""The page of style lines: places clicked on the pieces, each line seen before it is cut, and taken back."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

import ipywidgets as widgets

from drafting.alter.style.rings import free_name
from drafting.checks.words import plain
from drafting.draft.piece import EdgeKind
from drafting.ground.errors import DraftError
from drafting.ground.templates import beside
from drafting.ground.units import ShownUnit
from drafting.notebook.edge_clicks import EdgeClicks
from drafting.notebook.errors_said import plainly, sentence
from drafting.notebook.living.bar import LivingBar
from drafting.notebook.living.living import Living
from drafting.notebook.said import refused_html, status_html, style_html
from drafting.notebook.stage import in_two_columns, stage_style
from drafting.notebook.style import fields as sf
from drafting.notebook.style import state as ss
from drafting.notebook.style.click import Click, click_on
from drafting.notebook.style.controls import ORDER, fields_of
from drafting.notebook.style.kept import keep_step, take_back_step
from drafting.notebook.style.picture import clickable
from drafting.notebook.style.seen import ends_of_step, lines_of
from drafting.notebook.when_resting import Later

RESTS = 0.25
"""Seconds without a new value after which a step is tried (ours)."""


class StyleView:
    """Style lines of a costume. Show it as the last line of a cell.

    A step is tried as it is typed or clicked, and changes nothing until it is done: then it stands in the
    costume file. Raises `DraftError` where the costume cannot be drafted.
    """

    def __init__(self, living: Living) -> None:
        self.living = living
        self.unit: ShownUnit = living.asked.told_in
        self.taken_back: list[str] = []
        self.done = ""
        self.said, self.refused, self.picture, self.after = (widgets.HTML() for _ in range(4))
        self.clicks, self.bar = EdgeClicks(page="style-page"), LivingBar()
        self.fields = fields_of([one.name for one in living.asked.garments], self.unit)
        self.do = self._button("Do it", "do-step", self.do_it)
        self.undo = self._button("Take the last step back", "undo-step", self.take_back)
        self.redo = self._button("Do it again", "redo-step", self.do_again)
        self.rests = Later(partial(self.safely, self.try_it), RESTS)
        self.made = ss.with_steps(living.asked, self.garment, ())
        self.view = self._laid_out()
        self._show()
        self.clicks.observe(lambda change: self.safely(partial(self._clicked, change["new"])), names="place")
        self.fields["garment"].observe(
            lambda change: self.safely(partial(self._turn, change["old"])), names="value"
        )
        self.fields["do"].observe(lambda _: self.safely(self._begin), names="value")
        for key, field in self.fields.items():
            if key != "garment":
                field.observe(lambda _: self._typed(), names="value")
        self._begin()
        living.hear(self.heard)

    def _repr_mimebundle_(self, **asked: Any) -> Any:
        return self.view._repr_mimebundle_(**asked)

    def close(self) -> None:
        """Let the view go: it hears of no more changes."""
        self.rests.drop()
        self.living.leave(self.heard)

    def heard(self, by: object) -> None:
        """Follow what another view or another hand has changed."""
        if by is not self:
            self.safely(self._stand)

    @property
    def garment(self) -> str:
        """The garment that is looked at."""
        return str(self.fields["garment"].value)

    @property
    def deed(self) -> str:
        """What is to be done."""
        return str(self.fields["do"].value)

    @property
    def typed(self) -> ss.StepTyped:
        """The step as the fields have it."""
        keys = [key for key in sf.FIELDS[self.deed] if key not in ("edge", "edges", "from", "to")]
        ends = [key for key in sf.FIELDS[self.deed] if key not in keys]
        in_seam = self.deed == "godet" and self.fields["edge"].value.strip()
        own = () if self.deed in sf.WHOLE_EDGES or in_seam else ("piece",)
        ends = [key for key in ends if not (in_seam and key == "from")]
        return ss.StepTyped(
            self.garment, {key: self.fields[key].value for key in ("do", *own, *ends, *keys, "hand")}
        )

    @property
    def lacks(self) -> list[str]:
        """What the step is not whole without, as the page calls it."""
        lacks = [key for key in sf.NEEDED[self.deed] if not self.fields[key].value.strip()]
        if self.deed == "godet" and not (self.fields["edge"].value.strip() or self.fields["from"].value.strip()):
            lacks.append("from")
        return [sf.TYPED[key][0].lower() for key in lacks]

    def try_it(self) -> None:
        """Show the line that the typed step would cut, and the pieces after it; an unfinished one is only told."""
        self.refused.value, self.after.value = "", ""
        if self.lacks:
            wanted = f"{sf.CLICKED[self.deed]} Still wanted: {', '.join(self.lacks)}."
            self.said.value = status_html(" ".join(part for part in (self.done, wanted) if part))
            self._show()
            return
        draft, self.done = self.made[self.garment].draft, ""
        try:
            wish = ss.typed_step(self.typed, self.unit)
            self._show((), ends_of_step(draft, wish))
            self._show(lines_of(draft, wish), ends_of_step(draft, wish))
            tried = ss.with_steps(self.living.asked, self.garment, (wish,))
        except DraftError as error:
            self.said.value = ""
            self.refused.value = refused_html(sentence(error, self.unit))
            return
        self.after.value = clickable(tried[self.garment].draft, {})
        self.said.value = status_html(
            "Tried, not done yet: the line is dashed above, the pieces after it stand below. Do it writes it down."
        )

    def do_it(self) -> None:
        """Put the typed step into the costume file, and follow it."""
        if self.lacks:
            raise DraftError(
                f"the step is not whole yet: {', '.join(self.lacks)} is wanted", turn=sf.CLICKED[self.deed]
            )
        typed = self.typed
        ss.with_steps(self.living.asked, self.garment, (ss.typed_step(typed, self.unit),))
        self.taken_back.clear()
        self._keep(typed.toml(self.unit))

    def do_again(self) -> None:
        """Do the step again that was taken back last."""
        if self.taken_back:
            self._keep(self.taken_back[-1])
            self.taken_back.pop()
            self._show()

    def take_back(self) -> None:
        """Take the last step of the garment out of the costume file; it can be done again."""
        self.taken_back.append(take_back_step(self.living.path, self.garment))
        self.done = f"The last step is out of {self.living.path.name} again."
        self.said.value = status_html(self.done)
        self._follow()

    def _keep(self, step: str) -> None:
        keep_step(self.living.path, step)
        self.done = f"Done, and written into {self.living.path.name}."
        self.said.value = status_html(self.done)
        self._clear()
        self._follow()

    def _follow(self) -> None:
        self.living.look(self)
        self._stand()

    def _stand(self) -> None:
        """Take over the costume as it stands now."""
        self.bar.tell(self.living, ())
        self.made = ss.with_steps(self.living.asked, self.garment, ())
        self.refused.value, self.after.value = "", ""
        self._show()

    def _typed(self) -> None:
        self._show_fields()
        self.rests.ask()

    def _turn(self, old: str) -> None:
        """Show another garment, nothing chosen on it yet; the `old` one where this cannot be drafted."""
        if self.garment in {one.name for one in self.made.garments}:
            return
        try:
            self.made = ss.with_steps(self.living.asked, self.garment, ())
        except DraftError:
            self.fields["garment"].value = old
            raise
        self.fields["piece"].value = self.done = ""
        self._clear()
        self.try_it()

    def _begin(self) -> None:
        """Begin another sort of step: nothing is chosen yet, lengths stand as they usually are."""
        self._clear()
        for key, value in sf.first_values(self.deed, self.unit).items():
            self.fields[key].value = value
        self.try_it()

    def _clear(self) -> None:
        for key in ("from", "to", "edge", "edges", "beside", "dart", "name", "holds"):
            self.fields[key].value = ""

    def _clicked(self, place: dict[str, Any]) -> None:
        """Put a place that was clicked where the step wants one next."""
        called = click_on(self.made[self.garment].draft, place)
        if called is None:
            return
        keys = sf.FIELDS[self.deed]
        if called.edge.kind is EdgeKind.DART and "dart" in keys:
            self.fields["piece"].value, self.fields["dart"].value = called.piece_name, called.dart
        elif "beside" in keys:
            self.fields["edge"].value, self.fields["beside"].value = called.ref, called.beside
        elif "edges" in keys:
            self._toggle(called.ref)
        elif self.deed == "godet":
            self.fields["edge"].value = called.ref if called.sewn else ""
            self.fields["from"].value = "" if called.sewn else called.place
            self.fields["piece"].value = called.piece_name
        elif self.deed in sf.WHOLE_EDGES:
            self.fields["edge"].value = called.ref
        else:
            self._put(called)

    def _toggle(self, ref: str) -> None:
        """Put an edge to those chosen, or take it away again."""
        chosen = [one.strip() for one in self.fields["edges"].value.split(",") if one.strip()]
        chosen = [one for one in chosen if one != ref] if ref in chosen else [*chosen, ref]
        self.fields["edges"].value = ", ".join(chosen)

    def _put(self, click: Click) -> None:
        """Put a place into the field that is wanted next, the other one of a line cleared where it begins anew."""
        if (
            self.deed == "move dart"
            and self.fields["dart"].value
            and self.fields["piece"].value != click.piece_name
        ):
            own = plain(self.fields["piece"].value)
            raise DraftError(f"the dart opens in its own piece, the {own}", turn="click one of its edges")
        if self.deed == sf.POCKET and self.fields["inside"].value in sf.inside_values(self.unit):
            self.fields["inside"].value = sf.inside_values(self.unit)[click.upright]
        keys = [key for key in ("from", "to") if key in sf.FIELDS[self.deed]]
        if not keys:
            raise DraftError("what was clicked is no leg of a dart", turn="click one of the dart's two legs")
        again = self.fields["piece"].value != click.piece_name or all(self.fields[key].value for key in keys)
        begins = len(keys) == 1 or again or not self.fields["from"].value
        self.fields["piece"].value = click.piece_name
        if begins and len(keys) == 2:
            self.fields["to"].value = ""
        self.fields[keys[0] if begins else keys[1]].value = click.place
        if not begins and "name" in sf.FIELDS[self.deed] and not self.fields["name"].value:
            taken = [one.base or one.name for one in self.made[self.garment].draft.pieces]
            self.fields["name"].value = free_name(f"{click.piece_name}-part", taken).replace("_", "-")

    def _show(self, lines: Any = None, places: Any = ()) -> None:
        draft = self.made[self.garment].draft
        self.picture.value = clickable(draft, lines or {}, places)
        self.fields["piece"].options = tuple(p.name for p in draft.pieces if not p.material)
        own = self.made.costume.garments[0]
        self.undo.disabled = not (own.style or own.pockets)
        self.redo.disabled = not self.taken_back
        self._show_fields()

    def _show_fields(self) -> None:
        for key, field in self.fields.items():
            always = key in ("garment", "do") or (key == "piece" and self.deed not in sf.WHOLE_EDGES)
            always = always or key == "hand"
            field.layout.display = None if always or key in sf.FIELDS[self.deed] else "none"

    def _button(self, words: str, name: str, do: Callable[[], None]) -> Any:
        button = widgets.Button(description=words, layout=widgets.Layout(width="auto"))
        button.add_class(name)
        button.on_click(lambda _: self.safely(do))
        return button

    def say(self, words: str) -> None:
        """Say what could not be done."""
        self.refused.value = refused_html(words)

    def safely(self, do: Callable[[], None]) -> None:
        """Run what a control asks for; whatever goes wrong is told in words."""
        plainly(do, self.say, self.unit)

    def _laid_out(self) -> Any:
        style = widgets.HTML(style_html(stage_style(), beside(__file__, ".css")), layout={"display": "none"})
        buttons = widgets.HBox([self.do, self.undo, self.redo])
        left = widgets.VBox([*(self.fields[key] for key in ORDER), buttons])
        right = widgets.VBox([self.picture, self.refused, self.said, self.after])
        stage = in_two_columns(left, right)
        view = widgets.VBox([style, self.clicks, self.bar, stage])
        named = {"style-fields": left, "style-stage": stage, "style-page": view}
        named |= {"style-pieces": self.picture, "style-after": self.after, "style-said": self.said}
        for name, part in named.items():
            part.add_class(name)
        for key, field in self.fields.items():
            field.add_class(f"style-{key}")
        view.add_class("living-view")
        return view
