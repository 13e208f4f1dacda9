"""The head of a page: which costume it is about. Every view below is made of that one, and made again with it."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

import ipywidgets as widgets

from drafting.ground.errors import DraftError, Fault, InputError
from drafting.ground.templates import beside
from drafting.notebook.bench.bench import Bench
from drafting.notebook.cloth.swatch import SwatchTest
from drafting.notebook.errors_said import plainly
from drafting.notebook.lay_table.table import LayTable
from drafting.notebook.living.bar import watching_bar
from drafting.notebook.living.chosen import AtHand, costumes_at_hand, opens_with, remember, work_folder
from drafting.notebook.living.living import Living, living_costume
from drafting.notebook.measuring.guide import MeasuringGuide
from drafting.notebook.page import named, told
from drafting.notebook.page.cloths import OfCloth
from drafting.notebook.page.gallery import Gallery
from drafting.notebook.page.keys import OwnKeys
from drafting.notebook.page.ruler import PrintedSquare
from drafting.notebook.page.view import Folded, Following, NothingToShow, PageView, Sentences
from drafting.notebook.page.writing import Writing
from drafting.notebook.plan.view import PlanView
from drafting.notebook.said import notebook_only_html, paragraphs_html, refused_html, style_html

if TYPE_CHECKING:
    from drafting.notebook.worn_view.view import WornView

TORSOS = ("bodice", "close-torso", "coat-body")
"""The parts that go round the bust."""

KEPT_WORD = notebook_only_html("This page keeps its word.")

_OPEN: list[CostumePage] = []


class CostumePage:
    """A chooser of costumes, remembered for all pages, and the views of the one that is chosen.

    Show it as the last line of a cell, at the head of the page. A costume that cannot be read is
    said in words, here and in every view; nothing raises.
    """

    def __init__(self) -> None:
        for earlier in _OPEN:
            earlier.close()
        _OPEN[:] = [self]
        self.folder, self.views = work_folder(), list[PageView]()
        self.path = opens_with(self.folder)
        self.refusal, self._filling = "", False
        self._living: Living | None = None
        self.said, self.refused = widgets.HTML(), widgets.HTML()
        self.chooser = widgets.Dropdown(description="Costume", layout=widgets.Layout(width="460px"))
        self.chooser.style.description_width = "70px"
        self.chooser.add_class("which-costume")
        self.again = widgets.Button(description="Read it again", layout=widgets.Layout(width="auto"))
        self.again.add_class("read-again")
        self.again.on_click(lambda _: self._safely(self.read_again))
        row = widgets.HBox([self.chooser, self.again, self.said])
        row.layout.flex_flow, row.layout.align_items = "row wrap", "center"
        style = widgets.HTML(style_html(beside(__file__, ".css")), layout=widgets.Layout(display="none"))
        self.view = widgets.VBox([watching_bar(keeps=True), style, row, self.refused, OwnKeys()])
        for name in ("costume-page", "living-view"):
            self.view.add_class(name)
        self._read()
        self._show_chooser()
        self.chooser.observe(lambda change: self._safely(partial(self.choose, change["new"])), names="value")

    def _repr_mimebundle_(self, **asked: Any) -> Any:
        return self.view._repr_mimebundle_(**asked)

    @property
    def living(self) -> Living:
        """The costume that is chosen; raises `InputError` where it cannot be read."""
        if self._living is None:
            right = "see what is said at the head of the page"
            raise InputError([Fault("this costume cannot be read yet", right, "", str(self.path))])
        return self._living

    def choose(self, path: Path) -> None:
        """Have this page, and every page opened from now on, be about another costume."""
        if self._filling or path == self.path:
            return
        self.path = path
        remember(self.folder, path)
        self._read()
        self._show_chooser()
        for view in self.views:
            gallery = isinstance(view.shown, Gallery) and view.shown.chose(self.path)
            if not gallery:  # the card that was pressed stays under the hand
                view.renew()

    def read_again(self) -> None:
        """Read the costume file again and make every view anew."""
        self._read()
        self._show_chooser()
        for view in self.views:
            view.renew()

    def close(self) -> None:
        """Let the views go: another page has taken their place."""
        for view in self.views:
            view.close()

    def _read(self) -> None:
        self._living, self.refusal = None, ""
        try:
            self._living = living_costume(self.path)
        except DraftError as error:
            self.refusal = str(error)

    def _show_chooser(self) -> None:
        found = costumes_at_hand(self.folder, (self.path,))
        self.path = next(at.path for at in found if at.path.resolve() == self.path.resolve())
        self._filling = True
        self._offer([(at.words, at.path) for at in found])
        self.chooser.value = self.path
        self._filling = False
        self.said.value = paragraphs_html([str(self.path)])
        self.refused.value = refused_html(self.refusal, "Mend this costume first.") if self.refusal else ""

    def _offer(self, found: list[tuple[str, Path]]) -> None:
        """Offer costumes in the order in which they stood: a page says by its place which one was chosen."""
        stood = [path for _, path in self.chooser.options]
        found.sort(key=lambda one: stood.index(one[1]) if one[1] in stood else len(stood))
        if list(self.chooser.options) != found:
            self.chooser.options = found

    def _view(self, build: Callable[[], Any]) -> PageView:
        view = PageView(build, self._unit)
        self.views.append(view)
        return view

    def _safely(self, do: Callable[[], None]) -> None:
        def tell(words: str) -> None:
            self.refused.value = refused_html(words)

        plainly(do, tell, self._unit())

    def _unit(self) -> str | None:
        """Return the unit of the costume that is chosen, None while it cannot be read."""
        return self._living.asked.told_in if self._living else None

    # What a page can show of its costume.

    def gallery(self) -> PageView:
        """Return the costumes at hand, each with its pieces; a press chooses one."""
        return self._view(lambda: Gallery(costumes_at_hand(self.folder, (self.path,)), self.path, self._pick))

    def _pick(self, at: AtHand) -> None:
        self.chooser.value = next(path for _, path in self.chooser.options if path == at.path)

    def bench(self, *choices: str, part: str | tuple[str, ...] = (), every: bool = False) -> PageView:
        """Return a bench of the garments that have one of these choices, and one of the parts named.

        With no choices named, all that the garment has. `every` brings those that have none of these choices as
        well, with all that they have.
        """
        return self._of_garments(Bench, choices, part, every)

    def worn(self, *choices: str, part: str | tuple[str, ...] = (), every: bool = False) -> PageView:
        """Return the garments on the wearer's form; which, and with which choices, as `bench` does."""
        from drafting.notebook.worn_view.view import WornView  # slow to open: only where one is shown

        return self._of_garments(WornView, choices, part, every)

    def _of_garments(
        self, shown: type[Bench | WornView], choices: tuple[str, ...], part: str | tuple[str, ...], every: bool
    ) -> PageView:
        parts = (part,) if isinstance(part, str) else part

        def build() -> Bench | WornView:
            living = self.living
            garments = named.garments_with(living.asked, choices, parts, every=every)
            if not garments:
                raise NothingToShow(named.nothing_words(living.asked, choices, parts))
            return shown(living, garments, named.known_choices(living.asked, garments, choices) or None)

        return self._view(build)

    def lay(self) -> PageView:
        """Return the lay table."""
        return self._view(lambda: LayTable(self.living))

    def plan(self, height: str = "760px") -> PageView:
        """Return the making plan."""
        return self._view(lambda: Following(self.living, lambda living: PlanView(living, height)))

    def write(self) -> PageView:
        """Return the button that writes the whole costume out, and links to open and print it."""
        return self._view(lambda: Writing(self.living))

    def told(self, what: str) -> PageView:
        """Return sentences about the costume: `shopping`, `workroom`, `cloths`, `making ready`."""
        return self._view(lambda: Following(self.living, lambda living: Sentences(*told.TOLD[what](living))))

    def measures(self) -> PageView:
        """Return the measuring guide of the wearer, who may lack measures still."""
        return self._view(self._guide)

    def measures_folded(self) -> PageView:
        """Return a key that opens the measuring guide."""
        return self._view(lambda: Folded("Measures of the wearer", self._guide))

    def _guide(self) -> MeasuringGuide:
        return MeasuringGuide(named.wearer_file(self.path))

    def fitting(self) -> PageView:
        """Return the notes of a fitting: typed or clicked, tried, written down, and what is next."""
        from drafting.notebook.fitting.view import FittingView  # slow to open: only where one is shown

        return self._view(lambda: FittingView(self.living))

    def style(self) -> PageView:
        """Return the style lines: places clicked on the pieces, the line seen before it is cut."""
        from drafting.notebook.style.view import StyleView  # slow to open: only where one is shown

        return self._view(lambda: StyleView(self.living))

    def swatch(self) -> PageView:
        """Return the strip that is stretched and let go, for this wearer."""

        def swatch() -> SwatchTest:
            asked = self.living.asked
            girth = "bust_girth" if named.garments_with(asked, (), TORSOS) else "hip_girth"
            return SwatchTest(asked.wearer, unit=asked.told_in, girth=girth, at=self.path)

        return self._view(swatch)

    def cloth(self, shows: Callable[..., Any]) -> PageView:
        """Return a trial of one of the costume's cloths, with a choice of which: `OverhangTest`, for one."""
        return self._view(lambda: OfCloth(named.cloth_files(self.path), shows, self.living.asked.told_in))

    def printed_square(self) -> PageView:
        """Return two fields for what a ruler says of the printed square, and what to do about it."""

        def square() -> PrintedSquare:
            asked = self.living.asked
            return PrintedSquare(asked.wearer["bust_girth"], asked.told_in)

        return self._view(square)

    @property
    def word(self) -> Any:
        """What stands at the end of a page that did all it promised; a page without code says nothing."""
        return widgets.HTML(KEPT_WORD)

    @property
    def broken_word(self) -> str:
        """What the page promised and does not show, in words; empty where it keeps its word."""
        said = [view.trouble for view in self.views]
        for view in self.views:
            if isinstance(view.shown, Bench):
                said.append(named.not_drawn(view.shown.standing.made, view.shown.picture.value))
        return " ".join(filter(None, said))
