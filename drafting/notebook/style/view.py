"""The page of style lines: places clicked on the pieces, each line seen before it is cut, and taken back."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

import ipywidgets as widgets

from drafting.checks.words import plain
from drafting.ground.errors import DraftError
from drafting.ground.templates import beside
from drafting.ground.units import ShownUnit
from drafting.notebook.errors_said import plainly, sentence
from drafting.notebook.living.bar import LivingBar
from drafting.notebook.living.living import Living
from drafting.notebook.said import refused_html, status_html, style_html
from drafting.notebook.style import state as ss
from drafting.notebook.style.clicks import PlaceClicks
from drafting.notebook.style.kept import keep_step, take_back_step
from drafting.notebook.style.picture import clickable
from drafting.notebook.when_resting import Later
from drafting.reading.style import DEEDS, PLEATS

RESTS = 0.25
"""Seconds without a new value after which a step is tried (ours)."""

NEEDED = {
    "cut": ("from", "to", "name"),
    "join": ("edge",),
    "move dart": ("dart", "to"),
    "gather dart": ("dart",),
    "pleat": ("from", "to", "depth"),
    "move edge": ("edge",),
}
"""The fields that a step is not whole without, beside its piece."""

FIELDS = {
    "cut": ("from", "to", "name", "holds", "bow"),
    "join": ("edge",),
    "move dart": ("dart", "to"),
    "gather dart": ("dart",),
    "pleat": ("from", "to", "kind", "depth", "number", "apart", "towards", "stitched"),
    "move edge": ("edge", "start", "end"),
}
"""The fields that each step has, by their keys in the costume file."""

WHOLE_EDGES = frozenset({"join", "move edge"})
"""Steps that name an edge with its piece."""

TYPED = {
    "from": ("From", "click an edge, or e.g. armhole 50 %"),
    "to": ("To", "click another"),
    "edge": ("Edge", "click one, as in back-yoke.shoulder"),
    "dart": ("Dart", "e.g. bust_dart"),
    "name": ("New piece", "e.g. front-yoke"),
    "holds": ("It holds", "an edge of the new piece, e.g. neck"),
    "bow": ("Bow", "e.g. 5 mm, to the left"),
    "depth": ("Depth", "e.g. 15 mm"),
    "number": ("Number", "e.g. 2"),
    "apart": ("Apart", "from fold to fold, e.g. 30 mm"),
    "start": ("At its start", "out by, e.g. 2 cm"),
    "end": ("At its end", "out by, e.g. 4 cm"),
    "stitched": ("Stitched", "so far down, e.g. 5 cm"),
}


class StyleView:
    """Style lines of a costume. Show it as the last line of a cell.

    A step is tried as it is typed or clicked, and changes nothing until it is done: then it stands in the
    costume file. Raises `DraftError` where the costume cannot be drafted.
    """

    def __init__(self, living: Living) -> None:
        self.living = living
        self.unit: ShownUnit = living.asked.told_in
        self.taken_back: list[str] = []
        self.said, self.refused, self.picture, self.after = (widgets.HTML() for _ in range(4))
        self.clicks, self.bar = PlaceClicks(), LivingBar()
        self.fields = self._fields()
        self.do = self._button("Do it", "do-step", self.do_it)
        self.undo = self._button("Take the last step back", "undo-step", self.take_back)
        self.redo = self._button("Do it again", "redo-step", self.do_again)
        self.rests = Later(partial(self.safely, self.try_it), RESTS)
        self.made = ss.with_steps(living.asked, self.garment, ())
        self.view = self._laid_out()
        self._show()
        self.clicks.observe(lambda change: self.safely(partial(self._clicked, change["new"])), names="place")
        for field in self.fields.values():
            field.observe(lambda _: self._typed(), names="value")
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
    def typed(self) -> ss.StepTyped:
        """The step as the fields have it."""
        deed = str(self.fields["do"].value)
        values = {"do": deed} | ({} if deed in WHOLE_EDGES else {"piece": self.fields["piece"].value})
        values |= {key: self.fields[key].value for key in FIELDS[deed]}
        return ss.StepTyped(self.garment, values)

    def try_it(self) -> None:
        """Show the line that the typed step would cut, and the pieces after it; an unfinished one is only told."""
        typed = self.typed
        lacks = [key for key in NEEDED[typed.values["do"]] if not typed.values[key].strip()]
        self.refused.value, self.after.value = "", ""
        if lacks:
            self._show()
            return
        try:
            wish = ss.typed_step(typed, self.unit)
            draft = self.made[self.garment].draft
            self._show(ss.lines_of(draft, wish), ss.ends_of_step(draft, wish))
            tried = ss.with_steps(self.living.asked, self.garment, (wish,))
        except DraftError as error:
            self.refused.value = refused_html(sentence(error, self.unit))
            return
        self.after.value = clickable(tried[self.garment].draft, {})
        self.said.value = status_html(
            "Tried, not done yet: the line is dashed above, the pieces after it stand below."
        )

    def do_it(self) -> None:
        """Put the typed step into the costume file, and follow it."""
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
        self.said.value = status_html(f"The last step is out of {self.living.path.name} again.")
        self._follow()

    def _keep(self, step: str) -> None:
        keep_step(self.living.path, step)
        self.said.value = status_html(f"Done, and written into {self.living.path.name}.")
        for key in ("from", "to", "edge", "name"):
            self.fields[key].value = ""
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

    def _clicked(self, place: dict[str, Any]) -> None:
        """Put a place that was clicked where the step wants one next."""
        piece, _, edge = str(place.get("edge", "")).partition(".")
        if piece not in self.made[self.garment].draft:
            return
        own = self.made[self.garment].draft[piece]
        edge = own[edge].base or edge if edge in own else edge
        piece, deed = own.base or own.name, self.fields["do"].value
        if deed in WHOLE_EDGES:
            self.fields["edge"].value = f"{piece}.{edge}"
            return
        text = f"{edge} {100 * float(place['share']):.4g} %"
        begins = "from" in FIELDS[deed] and (
            not self.fields["from"].value or self.fields["to"].value or self.fields["piece"].value != piece
        )
        self.fields["piece"].value = piece
        if begins:
            self.fields["to"].value = ""
        self.fields["from" if begins else "to"].value = text

    def _show(self, lines: Any = None, places: Any = ()) -> None:
        draft = self.made[self.garment].draft
        self.picture.value = clickable(draft, lines or {}, places)
        self.fields["piece"].options = tuple(p.name for p in draft.pieces if not p.material)
        self.undo.disabled = not self.made.costume.garments[0].style
        self.redo.disabled = not self.taken_back
        self._show_fields()

    def _show_fields(self) -> None:
        deed = self.fields["do"].value
        for key, field in self.fields.items():
            always = key in ("garment", "do") or (key == "piece" and deed not in WHOLE_EDGES)
            field.layout.display = None if always or key in FIELDS[deed] else "none"

    def _fields(self) -> dict[str, Any]:
        names = [garment.name for garment in self.living.asked.garments]
        found: dict[str, Any] = {
            "garment": _chosen("Garment", [(plain(name), name) for name in names]),
            "do": _chosen("What to do", [(deed, deed) for deed in DEEDS]),
            "piece": _typed("Piece", "click on one", widgets.Combobox),
            "kind": _chosen("Kind", [(kind, kind) for kind in PLEATS]),
            "towards": _chosen("Laid", [("to the edge's end", "end"), ("to its start", "start")]),
        }
        return found | {key: _typed(*words) for key, words in TYPED.items()}

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
        style = widgets.HTML(style_html(beside(__file__, ".css")), layout=widgets.Layout(display="none"))
        order = ("garment", "do", "piece", *TYPED, "kind", "towards")
        buttons = widgets.HBox([self.do, self.undo, self.redo])
        left = widgets.VBox([*(self.fields[key] for key in order), buttons])
        right = widgets.VBox([self.picture, self.refused, self.said, self.after])
        stage = widgets.HBox([left, right])
        view = widgets.VBox([style, self.clicks, self.bar, stage])
        named = {"style-fields": left, "style-shown": right, "style-stage": stage, "style-page": view}
        named |= {"style-pieces": self.picture, "style-after": self.after, "style-said": self.said}
        for name, part in named.items():
            part.add_class(name)
        for key, field in self.fields.items():
            field.add_class(f"style-{key}")
        view.add_class("living-view")
        return view


def _chosen(words: str, options: list[tuple[str, str]]) -> Any:
    looks = {"style": {"description_width": "80px"}, "layout": widgets.Layout(width="350px")}
    return widgets.Dropdown(options=options, value=options[0][1], description=words, **looks)


def _typed(words: str, hint: str, kind: type[Any] = widgets.Text) -> Any:
    looks = {"style": {"description_width": "80px"}, "layout": widgets.Layout(width="350px")}
    return kind(description=words, placeholder=hint, continuous_update=False, **looks)
