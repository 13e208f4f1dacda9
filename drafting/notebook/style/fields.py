"""The fields of the page of style lines: which step has which, what they ask for, what stands in them at first."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from drafting.ground.units import ShownUnit, show_length
from drafting.reading.style import DEEDS
from drafting.reading.style_made import EDGINGS

POCKET = "pocket"
"""The one step that stands in a table of its own."""

STEPS = (*DEEDS, POCKET)

FIELDS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "cut": ("from", "to", "name", "holds", "bow"),
        "join": ("edge",),
        "move dart": ("dart", "to"),
        "gather dart": ("dart",),
        "pleat": ("from", "to", "kind", "depth", "number", "apart", "towards", "stitched"),
        "move edge": ("edge", "start", "end"),
        "godet": ("edge", "from", "height", "width", "name"),
        "round corner": ("edge", "beside", "radius"),
        "square corner": ("edge", "beside"),
        **dict.fromkeys(EDGINGS, ("edges", "width", "interfacing", "name")),
        "binding": ("edges", "width", "name"),
        POCKET: ("from", "pocket", "width", "height", "inside", "corners"),
    }
)
"""The fields that each step has, by their keys in the costume file."""

NEEDED: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "cut": ("from", "to", "name"),
        "join": ("edge",),
        "move dart": ("dart", "to"),
        "gather dart": ("dart",),
        "pleat": ("from", "to", "depth"),
        "move edge": ("edge",),
        "godet": ("height", "width"),
        "round corner": ("edge", "beside", "radius"),
        "square corner": ("edge", "beside"),
        **dict.fromkeys(EDGINGS, ("edges", "width")),
        POCKET: ("from", "width", "inside"),
    }
)
"""The fields that a step is not whole without, beside its piece."""

WHOLE_EDGES = frozenset({"join", "move edge", "round corner", "square corner", *EDGINGS})
"""Steps that name an edge with its piece."""

TYPED: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        "from": ("From", "click an edge, or e.g. armhole 50 %"),
        "to": ("To", "click another"),
        "edge": ("Edge", "click one, as in back-yoke.shoulder"),
        "edges": ("Edges", "click one, or several that run on"),
        "beside": ("Meets", "click the corner, or type the other edge"),
        "dart": ("Dart", "click a leg of it"),
        "name": ("New piece", "e.g. front-yoke"),
        "holds": ("It holds", "an edge of the new piece, e.g. neck"),
        "bow": ("Bow", "e.g. {5}, to the left"),
        "radius": ("Radius", "e.g. {30}"),
        "depth": ("Depth", "e.g. {15}"),
        "number": ("Number", "e.g. 2"),
        "apart": ("Apart", "from fold to fold, e.g. {30}"),
        "start": ("At its start", "out by, e.g. {20}"),
        "end": ("At its end", "out by, e.g. {40}"),
        "stitched": ("Stitched", "so far down, e.g. {50}"),
        "height": ("Height", "e.g. {200}"),
        "width": ("Width", "e.g. {50}"),
        "inside": ("Inside", "its top so far in from the edge, e.g. {30}"),
    }
)
"""What each field that is typed is called, and its hint; lengths in braces, mm."""

FIRST: Mapping[str, Mapping[str, float]] = MappingProxyType(
    {
        "pleat": {"depth": 15.0},
        "move edge": {"end": 20.0},
        "godet": {"height": 200.0, "width": 200.0},
        "round corner": {"radius": 30.0},
        **{kind: {"width": width} for kind, width in EDGINGS.items()},
        POCKET: {"width": 120.0, "inside": 30.0},
    }
)
"""What stands in a step's fields at first, mm, so that clicks alone will do (ours; widths as in the file)."""

CLEAR = 40.0
"""mm: a pocket beside an upright edge is clear of it by so much at first (ours)."""

LENGTHS = frozenset({"bow", "radius", "depth", "apart", "start", "end", "stitched", "height", "width", "inside"})
"""Keys whose values are lengths."""

CLICKED: Mapping[str, str] = MappingProxyType(
    {
        "cut": "Click where the line begins, then where it ends.",
        "join": "Click the seam that is to go.",
        "move dart": "Click a leg of the dart, then where it is to open.",
        "gather dart": "Click a leg of the dart.",
        "pleat": "Click where the pleat begins, then where it ends: across the piece, as from a yoke to the hem.",
        "move edge": "Click an edge that is sewn to nothing, such as a hem.",
        "godet": "Click a seam that ends at a hem, or the place on a hem where it is to be slashed.",
        "round corner": "Click the corner.",
        "square corner": "Click the round corner.",
        "facing": "Click the edge; more edges that run on from it may follow, a second click takes one away.",
        "hem facing": "Click each part of the hem, in any order.",
        "binding": "Click each edge that is to be bound.",
        "band": "Click each edge that the band is sewn along.",
        "cuff": "Click every edge round the opening.",
        POCKET: "Click the edge above the pocket: it hangs so far inside.",
    }
)
"""What is to be clicked for each step."""


def hint(key: str, unit: ShownUnit) -> str:
    """Return what a field asks for, its lengths in her unit.

    >>> hint("depth", "in"), hint("depth", "cm"), hint("to", "cm")
    ('e.g. 5/8 in', 'e.g. 1.5 cm', 'click another')
    """
    text = TYPED[key][1]
    before, brace, rest = text.partition("{")
    length, _, after = rest.partition("}")
    return f"{before}{show_length(float(length), unit)}{after}" if brace else text


def inside_values(unit: ShownUnit) -> tuple[str, str]:
    """Return how far inside a level edge, and an upright one, a pocket stands at first: clear of the edge."""
    return show_length(FIRST[POCKET]["inside"], unit), show_length(FIRST[POCKET]["width"] / 2 + CLEAR, unit)


def first_values(deed: str, unit: ShownUnit) -> dict[str, str]:
    """Return what stands in a step's fields at first, in her unit."""
    return {key: show_length(mm, unit) for key, mm in FIRST.get(deed, {}).items()}
