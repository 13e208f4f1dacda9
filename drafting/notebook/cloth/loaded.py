"""The loaded strip on the screen: a weight hung on it, how far it gives, and how stiff that is."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from drafting.export.svg_writer import Svg, element, number, words
from drafting.fabric import Fabric
from drafting.fabric.strip_tests import GRAVITY
from drafting.ground.errors import DraftError
from drafting.ground.lengths import in_unit, told
from drafting.ground.palette import Colour
from drafting.ground.units import show_length, shown_unit
from drafting.notebook.cloth.controls import one_of_these, press, slider
from drafting.notebook.cloth.readings import KeptReadings, readings_beside
from drafting.notebook.cloth.ruled import METRIC, Ruled
from drafting.notebook.cloth.state import begin_cloth, with_test
from drafting.notebook.cloth.swatch import MOST, REST
from drafting.notebook.cloth.trial import Trial
from drafting.notebook.errors_said import plainly
from drafting.worn.cloth.single import LEAST_READ

WAYS = {"across the warp": "stretch_across", "along it": "stretch_along", "on the bias": "stretch_bias"}
"""How the strip is cut, by the key of the cloth's file."""

SEAM_PULL = 0.01
"""The fraction by which the sentence's girth is too small."""

BOUNDS = {
    "stretched": (REST, MOST * REST),
    "released": (REST, MOST * REST),
    "load": (50.0, 2000.0),
    "strip": (10.0, 101.6),
}
"""What can be read: mm of 100, g, mm of width (ours)."""

DRAWN = 0.8
"""Units of the picture that a mm of the strip takes."""


@dataclass(frozen=True)
class Loaded:
    """What was read: how the strip is cut, mm of 100 under the load and let go, the load in g, mm of width."""

    way: str = "stretch_across"
    stretched: float = 112.0
    released: float = 100.5
    load: float = 500.0
    strip: float = 50.0

    @property
    def pull(self) -> float:
        """The load, N per metre of the strip's width."""
        return GRAVITY * self.load / self.strip

    @property
    def stretch(self) -> float:
        return self.stretched / REST - 1

    @property
    def figures(self) -> dict[str, float]:
        """What a hand told, by its names."""
        return {name: getattr(self, name) for name in BOUNDS}

    @property
    def written(self) -> dict[str, str]:
        """The test as a cloth's file holds it."""
        return self.written_in(METRIC)

    def written_in(self, ruled: Ruled) -> dict[str, str]:
        """The test as a cloth's file holds it, its lengths as they were read on this ruler."""
        lengths = {"rest": REST, "stretched": self.stretched, "released": self.released}
        read = {**{name: ruled.even(mm) for name, mm in lengths.items()}, "strip": self.strip}
        return {**{name: ruled.written(mm) for name, mm in read.items()}, "load": f"{self.load:g} g"}


def usual_loaded(ruled: Ruled) -> Loaded:
    """Return a test as the page begins with it, each length on a line of the ruler."""
    wide, usual = ruled.even(REST), Loaded()
    stretched, released = (REST * ruled.nearest(ruled.even(mm)) / wide for mm in (usual.stretched, usual.released))
    return replace(usual, strip=ruled.even(usual.strip), stretched=stretched, released=released)


def first_loaded(cloth: Fabric, now: Loaded) -> Loaded:
    """Return a test of a way that begins where the cloth's file stands, else as `now`."""
    known = getattr(cloth, now.way)
    if not known:
        return now
    stretched = min(round(REST * (1 + known), 1), REST * MOST)
    return replace(now, stretched=stretched, released=min(now.released, stretched))


def loaded_said(test: Loaded, ruled: Ruled = METRIC) -> tuple[str, ...]:
    """Return what a loaded strip says of a cloth, as sentences."""
    own = "in" if ruled.inches else "cm"
    hung = ruled.even(REST)
    found = [
        f"{test.load:g} g on {in_unit(told(test.strip), own)} pull as {test.pull:.0f} N on a metre of width; "
        f"the strip gives {100 * test.stretch:.1f} %."
    ]
    if test.stretch < LEAST_READ:
        return (*found, "That is less than a ruler tells: hang more on it, or mark a longer strip.")
    stiff = test.pull / test.stretch
    pull = stiff * SEAM_PULL
    found.append(f"Its stiffness is {stiff:,.0f} N on a metre, for every doubling of its length.")
    found.append(
        f"A girth that is 1 % too small in this cloth pulls with {pull:.1f} N on each metre of its height: "
        f"as {hung * pull / GRAVITY:.0f} g hung on {show_length(hung, own)}."
    )
    return tuple(found)


def hung_svg(test: Loaded, ruled: Ruled = METRIC) -> Svg:
    """Return the strip hung up, unloaded and loaded, with its two marks."""
    strips = ((150, REST, "at rest"), (330, test.stretched, "loaded"))
    bars = [_hung(x, mm, name, test, ruled) for x, mm, name in strips]
    title = words("title", "The strip at rest and loaded")
    return element("svg", title, *bars, class_="swatch hung-strip", role="img", viewBox="0 0 620 240")


def _hung(x: float, mm: float, name: str, test: Loaded, ruled: Ruled) -> Svg:
    wide, long = DRAWN * test.strip, DRAWN * mm
    left, foot = x - wide / 2, 24 + long + 20
    marks = [
        element("path", class_="mark", d=f"M {number(left - 8, 1)} {number(y, 1)} h {number(wide + 16, 1)}")
        for y in (34.0, 34.0 + long)
    ]
    said = f"{name}: {ruled.said(ruled.even(mm))}"
    read = words("text", said, x=number(x + wide / 2 + 14, 1), y=number(34 + long / 2, 1))
    parts = [
        element(
            "rect",
            class_="hung",
            data_mm=number(mm, 1),
            x=number(left, 1),
            y="24",
            width=number(wide, 1),
            height=number(long + 20, 1),
            fill=Colour.OWN_3,
        ),
        *marks,
        read,
    ]
    if name == "loaded":
        clip = element(
            "rect",
            class_="clip",
            x=number(left - 4, 1),
            y=number(foot, 1),
            width=number(wide + 8, 1),
            height="14",
            rx="2",
        )
        load = words("text", f"{test.load:g} g", x=number(x + wide / 2 + 14, 1), y=number(foot + 11, 1))
        parts += [clip, load]
    return element("g", *parts)


class LoadedStrip(Trial):
    """Sliders for the load, the strip and the ruler; the strip and its stiffness change with them.

    `file` is the cloth's file, which the button writes to; `test` holds the figures.
    """

    def __init__(self, file: Path | str, unit: str | None = None) -> None:
        self.file = begin_cloth(file)
        self.ruled = ruled = Ruled("in" if shown_unit(unit) == "in" else "mm")
        even, most = ruled.even, ruled.even(MOST * REST)
        self.readings = KeptReadings(
            readings_beside(self.file.path), "loaded", BOUNDS, ("stretched", "released", "strip")
        )
        self.usual = usual_loaded(ruled)
        last = [self.usual.way, *(way for way in self.readings.before() if way in WAYS.values())][-1]
        self.test = self._begun(replace(self.usual, way=last))
        of = f"of {'4' if ruled.inches else '100'}"
        controls = {
            "way": one_of_these("The strip is cut", WAYS, self.test.way),
            "load": slider("Load, g", self.test.load, 50, 2000, 50),
            "strip": ruled.slider("Width of the strip", self.test.strip, even(10), even(100), 5),
            "stretched": ruled.slider(f"Loaded, {of}", even(self.test.stretched), even(REST), most, 0.5),
            "released": ruled.slider(f"Let go, {of}", even(self.test.released), even(REST), most, 0.5),
        }
        save = press(
            "Save to the cloth's file", "save-loaded", lambda: plainly(self.save, self.say, self.ruled.unit)
        )
        super().__init__("loaded", controls, self.ask, (save,))
        self._show()
        self.tell_kept(self.test.way)

    def ask(self, name: str, value: Any) -> None:
        """Take one figure of the test; another way brings what the file knows of it.

        What no strip can do is said, and the picture stays.
        """
        if name == "strip":
            value = self.ruled.mm(value)
        elif name in ("stretched", "released"):
            value = REST * self.ruled.mm(value) / self.ruled.even(REST)
        new = replace(self.test, **{name: value})
        if name == "way":
            new = self._begun(new)
        if new.released > new.stretched:
            raise DraftError("a strip that is let go cannot be longer than it was under its load")
        self.test = new
        if name == "way":
            read, even = self.ruled.read, self.ruled.even
            strips = {"load": new.load, "strip": read(new.strip)}
            self.bring({**strips, **{mark: read(even(getattr(new, mark))) for mark in ("released", "stretched")}})
        self._show()
        if name == "way":
            self.tell_kept(value)
            return
        stood = first_loaded(self.file.cloth, replace(self.usual, way=self.test.way))
        self.keep(self.test.way, self.test.figures, stood.figures)

    def save(self) -> None:
        """Write the test to the cloth's file, its comments kept; raises `DraftError`."""
        self.file = with_test(self.file, self.test.way, self.test.written_in(self.ruled))
        self.readings.keep(self.test.way, None)
        self.tell(f"Saved to {self.file.path.name}: {self.test.way}.")

    def _begun(self, now: Loaded) -> Loaded:
        """Return the test of a way as it was told and not saved, else as the cloth's file and `now` have it."""
        told: Any = self.readings.before().get(now.way)
        return replace(now, **told) if told else first_loaded(self.file.cloth, now)

    def _show(self) -> None:
        self.show(hung_svg(self.test, self.ruled), loaded_said(self.test, self.ruled))
