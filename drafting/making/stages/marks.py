"""The signs of a drawing, in units of paper (0.1 mm), y down: arrows, pins, notches, buttons, the iron."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from drafting.export.svg_writer import Svg, element, path_element, svg_joined
from drafting.making.stages.picture import MarkKind


def written_mark(kind: MarkKind, at: complex, way: complex, size: float, count: int) -> Svg:
    """Return one sign as elements."""
    return SIGNS[kind](at, way, size, count)


def _moving(at: complex, way: complex, size: float, count: int) -> Svg:
    """A filled arrow: cloth is moved so."""
    tip = [at, at + (-17 + 8j) * way, at + (-17 - 8j) * way]
    return svg_joined([path_element("a", f"M{_at(at - size * way)}L{_at(at - 12 * way)}"), _polygon("k", tip)])


def _pressing(at: complex, way: complex, size: float, count: int) -> Svg:
    """A broad open arrow: an allowance is pressed so."""
    neck, start, up = at - 16 * way, at - size * way, 1j * way
    corners = [start + 5 * up, neck + 5 * up, neck + 13 * up, at, neck - 13 * up, neck - 5 * up, start - 5 * up]
    return _polygon("p", corners)


def _pin(at: complex, way: complex, size: float, count: int) -> Svg:
    head = at + way * size / 2
    return svg_joined([path_element("s", f"M{_at(at - way * size / 2)}L{_at(head)}"), _disc("k", head, 5)])


def _clip(at: complex, way: complex, size: float, count: int) -> Svg:
    """A clip over the edge: its jaws as a small box, its back as a line across."""
    long, wide = way * size / 2, 0.22j * way * size
    jaws = f"M{_at(at - long - wide)}L{_at(at + long - wide)}L{_at(at + long + wide)}L{_at(at - long + wide)}z"
    return svg_joined([path_element("p", jaws), path_element("s", f"M{_at(at - wide)}L{_at(at + wide)}")])


def _notch(at: complex, way: complex, size: float, count: int) -> Svg:
    ends = [at + 1j * way * 9 * (i - (count - 1) / 2) for i in range(count)]
    return path_element("e", "".join(f"M{_at(end - way * size)}L{_at(end)}" for end in ends))


def _button(at: complex, way: complex, size: float, count: int) -> Svg:
    holes = path_element("e", f"M{_at(at - 3)}h1M{_at(at + 3)}h1")
    return svg_joined([_disc("w", at, size), holes])


def _dot(at: complex, way: complex, size: float, count: int) -> Svg:
    return _disc("k", at, size)


def _iron(at: complex, way: complex, size: float, count: int) -> Svg:
    """The sole of an iron, seen from above."""
    k, side = size, 0.48j * way
    tip, near, far = at + 1.1 * k * way, at + k * (-0.1 * way + side), at + k * (-0.8 * way + side)
    back, front = at + k * (-0.8 * way - side), at + k * (-0.1 * way - side)
    bows = at + k * (0.5 * way + 0.94 * side), at + k * (0.5 * way - 0.94 * side)
    data = f"M{_at(tip)}Q{_at(bows[0])} {_at(near)}L{_at(far)}L{_at(back)}L{_at(front)}Q{_at(bows[1])} {_at(tip)}z"
    handle = f"M{_at(at - 0.55 * k * way)}L{_at(at + 0.15 * k * way)}"
    return svg_joined([path_element("p", data), path_element("a", handle)])


def _grain(at: complex, way: complex, size: float, count: int) -> Svg:
    """A thin arrow along the warp."""
    tip = f"M{_at(at + (-9 + 5j) * way)}L{_at(at)}L{_at(at + (-9 - 5j) * way)}"
    return path_element("s", f"M{_at(at - way * size)}L{_at(at)}{tip}")


WrittenSign = Callable[[complex, complex, float, int], Svg]

SIGNS: dict[MarkKind, WrittenSign] = {
    "move": _moving,
    "press": _pressing,
    "pin": _pin,
    "clip": _clip,
    "notch": _notch,
    "button": _button,
    "dot": _dot,
    "iron": _iron,
    "grain": _grain,
}


def _at(place: complex) -> str:
    return f"{place.real:.0f} {place.imag:.0f}"


def _polygon(kind: str, corners: Iterable[complex]) -> Svg:
    return path_element(kind, f"M{'L'.join(map(_at, corners))}z")


def _disc(kind: str, at: complex, radius: float) -> Svg:
    return element("circle", class_=kind, cx=f"{at.real:.0f}", cy=f"{at.imag:.0f}", r=f"{radius:.0f}")
