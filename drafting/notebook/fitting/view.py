"""The fitting page: a note typed or its edge clicked, what it does before it is written down, and what is next."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from typing import Any

import ipywidgets as widgets

from drafting.checks.words import plain
from drafting.costume.file import CostumeFile
from drafting.fitting.file import LEVELS, FittingFile
from drafting.fitting.note import AmountAs, Note, NoteKind, NoteSide, NoteState, Verb
from drafting.ground.errors import DraftError
from drafting.ground.lengths import in_unit
from drafting.ground.templates import beside, macros
from drafting.ground.units import LengthUnit, ShownUnit, show_length
from drafting.notebook.edge_clicks import EdgeClicks
from drafting.notebook.errors_said import plainly, sentence
from drafting.notebook.fitting import state as fs
from drafting.notebook.fitting.guide import chart_html, signs_html
from drafting.notebook.fitting.kept import keep_note, name_in, new_place, take_back, tell_cloth
from drafting.notebook.fitting.picture import before_after
from drafting.notebook.living.bar import LivingBar
from drafting.notebook.living.living import Living
from drafting.notebook.picture import Preview
from drafting.notebook.said import paragraphs_html, refused_html, status_html, style_html
from drafting.notebook.stage import in_two_columns, stage_style
from drafting.notebook.when_resting import Later

RESTS = 0.25
"""Seconds without a new value after which a note is tried (ours)."""

COUNTED = {"pinched, half the cloth": AmountAs.PINCH, "in all": AmountAs.TOTAL, "on each edge": AmountAs.SEAM}
FROM_HEM = {False: "4 cm", True: "1 1/2 in"}

KINDS = {
    "the body: her measures": NoteKind.BODY,
    "the style: this costume's line": NoteKind.STYLE,
    "the cloth": NoteKind.CLOTH,
    "an accident": NoteKind.ACCIDENT,
}


class FittingView:
    """Notes of a fitting, taken and tried. Show it as the last line of a cell.

    A note is tried as it is typed, and changes nothing until it is written down: then it stands in the
    fitting file, whole, before anything else happens. Raises `DraftError` where the costume cannot be drafted.
    """

    def __init__(self, living: Living) -> None:
        self.living = living
        costume = living.asked
        self.unit: ShownUnit = costume.told_in
        self.fitting: FittingFile | None = costume.fittings.held[-1] if self._own(costume) else None
        self.place = Path(self.fitting.path) if self.fitting else new_place(living.path)
        self.written = 0
        self.taken_back: list[Note] = []
        self.fields = self._fields()
        self.echo, self.refused, self.saved = widgets.HTML(), widgets.HTML(), widgets.HTML()
        self.pairs, self.lengths, self.next = (widgets.HTML() for _ in range(3))
        self.preview = Preview(self.safely, self._garments())
        self.picture = self.preview.html
        self.chart, self.signs = widgets.HTML(), widgets.HTML()
        self.clicks, self.bar = EdgeClicks(page="fitting-page"), LivingBar()
        self.clicks.observe(lambda change: self.safely(partial(self._clicked, change["new"])), names="place")
        self.write = self._button("Write it down", self.write_down)
        self.undo = self._button("Take the last note back", self.take_last_back)
        self.redo = self._button("Write it down again", self.write_again)
        self.other = self._button("Begin another fitting", self.begin_another)
        self.rests = Later(partial(self.safely, self.try_it), RESTS)
        self.view = self._laid_out()
        self.fitted = fs.fitted_at(costume, self.fitting)
        self._show()
        for field in self.fields.values():
            field.observe(lambda _: self.rests.ask(), names="value")
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
    def typed(self) -> fs.Typed:
        """The note as the fields have it."""
        value = {name: field.value for name, field in self.fields.items()}
        return fs.Typed(**value)

    @property
    def garment(self) -> str:
        """The garment that is looked at."""
        return str(self.fields["garment"].value)

    def try_it(self) -> None:
        """Show what the typed note would do, without writing it down; an unfinished one is told as such."""
        typed = self.typed
        complete = typed.where.strip() and (typed.amount.strip() or typed.verb in (Verb.LEAVE, Verb.CLIP))
        try:
            more = [fs.note_of(typed, self.unit, self._garments())] if complete else []
            self.fitted = fs.fitted_at(self.living.asked, self.fitting, more)
            self.refused.value = ""
        except DraftError as error:
            self.refused.value = refused_html(sentence(error, self.unit))
            return
        done = self.fitted.done()
        said = [
            in_unit(done_one.said, self.unit) for done_one in done if more and done_one.note.where == more[0].where
        ]
        self.echo.value = status_html(f"Tried, not written down yet: {said[-1]}." if said else "")
        if more:  # what was written down before is another note
            self.saved.value = ""
        self._show()

    def write_down(self) -> None:
        """Put the typed note into the fitting file, name the file in the costume, and follow it."""
        self.taken_back.clear()
        self._write(fs.note_of(self.typed, self.unit, self._garments()))
        self.fields["amount"].value = ""

    def write_again(self) -> None:
        """Write down the note that was taken back last, as it was."""
        if self.taken_back:
            self._write(self.taken_back[-1])
            self.taken_back.pop()
            self._stand()

    def _write(self, note: Note) -> None:
        self.fitted = fs.fitted_at(self.living.asked, self.fitting, [note])
        title = f"{self.living.asked.title}, fitting"
        keep_note(self.place, note, self.unit, title)
        name_in(self.living.path, self.place)
        told = self._told_of_cloth(note)
        self.written += 1
        self.saved.value = status_html(f"Written into {self.place.name}{told}.")
        self.living.look(self)
        self._stand()

    def _told_of_cloth(self, note: Note) -> str:
        """Put a note about the cloth into the cloth's file as well, and say so."""
        if note.kind is not NoteKind.CLOTH:
            return ""
        file = tell_cloth(self.living.path, note.garment, fs.said_of_cloth(note, self.unit))
        return f", and into {file.name}" if file else ""

    def take_last_back(self) -> None:
        """Take the last note of this fitting out of its file again; it can be written down once more."""
        last = self.fitting.notes[-1:] if self.fitting else ()
        take_back(self.place)
        self.taken_back.extend(last)
        self.saved.value = status_html(f"The last note is out of {self.place.name} again.")
        self.living.look(self)
        self._stand()

    def begin_another(self) -> None:
        """Write what comes next into a fitting file of its own."""
        self.place, self.fitting = new_place(self.living.path), None
        self.taken_back.clear()
        self._stand()
        self.saved.value = status_html(f"What you write down next begins {self.place.name}.")

    def _stand(self) -> None:
        """Take over the costume as it stands now."""
        held = self.living.asked.fittings.held
        self.fitting = next((one for one in held if Path(one.path).resolve() == self.place.resolve()), None)
        self.fitted, self.echo.value = fs.fitted_at(self.living.asked, self.fitting), ""
        self.bar.tell(self.living, ())
        self._show()

    def _own(self, costume: CostumeFile) -> bool:
        held = costume.fittings.held
        return bool(held) and Path(held[-1].path).is_file()

    def _garments(self) -> list[str]:
        return [garment.name for garment in self.living.asked.garments]

    def _clicked(self, place: dict[str, Any]) -> None:
        """Put an edge that was clicked into the field of the place; where hands are apart, its side too."""
        piece, _, name = str(place.get("edge", "")).partition(".")
        draft = self.fitted.after[self.garment].draft
        if piece in draft and name in draft[piece]:
            own, clicked = draft[piece], draft[piece][name]
            self.fields["where"].value = f"{own.base or own.name}.{clicked.base or name}"
            hand = own.hand or clicked.hand
            if hand in tuple(NoteSide):
                self.fields["side"].value = hand

    def _show(self) -> None:
        unit: LengthUnit = "in" if self.unit == "in" else "cm"
        before, after = self.fitted.before[self.garment], self.fitted.after[self.garment]
        shown = self.fitted.after
        self.preview.show(shown, self.garment, self.fitted.before, unit)
        found = tuple(fs.pairs(before, after))
        self.pairs.value = before_after(found, self.unit) if found else paragraphs_html(["No line has moved yet."])
        self.lengths.value = macros(__file__).lengths(
            [self._row(one) for one in fs.changed_lengths(before, after)]
        )
        again = fs.next_list(self.fitted.after.costume, self.unit)
        empty = "Nothing is noted, or all was seen right."
        self.next.value = macros(__file__).listed("To look at again at the next fitting", again, empty)
        self.chart.value, self.signs.value = chart_html(shown, after), signs_html(shown, after)
        self.redo.disabled = not self.taken_back
        self.undo.disabled = not (self.fitting and self.fitting.notes)
        edges = [f"{p.base or p.name}.{e.base or e.name}" for p in after.draft.pieces for e in p.edges]
        self.fields["where"].options = tuple(dict.fromkeys((*LEVELS, *edges)))

    def _row(self, change: fs.ChangedLength) -> tuple[str, ...]:
        edge = f"{plain(change.ref[0])} {plain(change.ref[1])}"
        there = "" if change.there is None else show_length(change.there, self.unit)
        lengths = (show_length(mm, self.unit, finer=True) for mm in (change.before, change.after))
        return (edge, *lengths, change.partner, there)

    def _fields(self) -> dict[str, Any]:
        names = self._garments()
        return {
            "garment": _chosen("Garment", [(plain(name), name) for name in names]),
            "side": _chosen("Side, hers", list(NoteSide), NoteSide.BOTH),
            "where": _text("Where", "click an edge, or type a level", widgets.Combobox),
            "at": _text("At", f"e.g. {FROM_HEM[self.unit == 'in']} from hem"),
            "verb": _chosen("What to do", list(Verb)),
            "amount": _text("How much", f"e.g. 1 {self.unit}"),
            "counted": _chosen("Counted", list(COUNTED.items())),
            "kind": _chosen("Lies with", list(KINDS.items()), NoteKind.STYLE),
            "state": _chosen("State", list(NoteState), NoteState.PINNED),
        }

    def _button(self, words: str, do: Callable[[], None]) -> Any:
        button = widgets.Button(description=words, layout=widgets.Layout(width="auto"))
        button.add_class(words.lower().replace(" ", "-"))
        button.on_click(lambda _: self.safely(do))
        return button

    def say(self, words: str) -> None:
        """Say what could not be done."""
        self.refused.value = refused_html(words)

    def safely(self, do: Callable[[], None]) -> None:
        """Run what a control asks for; whatever goes wrong is told in words."""
        plainly(do, self.say, self.unit)

    def _laid_out(self) -> Any:
        styles = style_html(stage_style(), beside(__file__, ".css"))
        style = widgets.HTML(styles, layout=widgets.Layout(display="none"))
        left = widgets.VBox([*self.fields.values(), widgets.HBox([self.write, self.undo]), self.redo, self.other])
        right = widgets.VBox([self.preview.tools, self.picture, self.refused, self.echo, self.saved])
        stage = in_two_columns(left, right)
        guide = widgets.VBox([self.chart, self.signs])
        view = widgets.VBox([style, self.clicks, self.bar, stage, self.pairs, self.lengths, self.next, guide])
        named = {"fitting-stage": stage, "fitting-page": view}
        named |= {
            "before-after": self.pairs,
            "next-fitting": self.next,
            "fit-guide": guide,
            "fitting-lengths": self.lengths,
        }
        for name, part in named.items():
            part.add_class(name)
        view.add_class("living-view")
        return view


def _chosen(words: str, options: Sequence[Any], value: Any = None) -> Any:
    found = [(str(one), str(one)) if isinstance(one, str) else (one[0], str(one[1])) for one in options]
    return widgets.Dropdown(
        options=found,
        value=found[0][1] if value is None else str(value),
        description=words,
        style={"description_width": "80px"},
        layout=widgets.Layout(width="350px"),
    )


def _text(words: str, hint: str, kind: type[Any] = widgets.Text) -> Any:
    return kind(
        description=words,
        placeholder=hint,
        continuous_update=False,
        style={"description_width": "80px"},
        layout=widgets.Layout(width="350px"),
    )
