"""Where the kit's figures come from: every work once, by its id, and how it is printed.

A figure names its source by the id, so a slip of the pen is an error: `cite(Source.ISO_3758)`. What
no work stands behind says so in three words: *common practice* (the trade does it so, no one work
is followed), *from memory* (recalled, not looked up again) and *ours* (chosen here, and what it was
found on). A work that was recalled, not read again, says *from memory* after its title.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, unique
from typing import Literal

Kind = Literal["standard", "handbook", "survey", "paper", "common practice", "from memory", "ours"]


@dataclass(frozen=True, slots=True)
class Work:
    """One work: who wrote or issued it, its title, year (None: not known) and the place in it."""

    kind: Kind
    by: str = ""
    title: str = ""
    year: int | None = None
    place: str = ""


@unique
class Source(Enum):
    """The id of every source; its value is the work."""

    COMMON_PRACTICE = Work("common practice")
    MEMORY = Work("from memory")
    OURS = Work("ours")

    ANSUR_II = Work(
        "survey",
        "Gordon and others",
        "2012 Anthropometric Survey of US Army Personnel (ANSUR II)",
        2014,
        "NATICK/TR-15/007",
    )
    BDIMS = Work(
        "survey",
        "Heinz, Peterson, Johnson and Kerk",
        "Exploring Relationships in Body Dimensions",
        2003,
        "Journal of Statistics Education 11(2), data set bdims",
    )

    ISO_8559 = Work(
        "standard", "ISO 8559-1", "Size designation of clothes: definitions for body measurement", 2017
    )
    ASTM_D5585 = Work(
        "standard", "ASTM D5585-11e1", "Body measurements for adult female misses figure type", 2011, "table 1"
    )
    ISO_5077 = Work("standard", "ISO 5077", "Dimensional change in washing and drying", 2007)
    ASTM_D3107 = Work("standard", "ASTM D3107-07", "Stretch properties of fabrics woven from stretch yarns", 2007)
    ASTM_D2594 = Work("from memory", "ASTM D2594", "Stretch properties of knitted fabrics having low power")
    ISO_20932 = Work("standard", "ISO 20932-1", "Elasticity of fabrics, strip tests", 2018)
    ISO_3758 = Work("standard", "ISO 3758", "Care labelling code using symbols", 2012)
    ISO_4915 = Work("standard", "ISO 4915", "Stitch types: classification and terminology", 1991)
    ISO_4916 = Work("standard", "ISO 4916", "Seam types: classification and terminology", 1991)
    EN_14682 = Work("standard", "EN 14682", "Safety of children's clothing: cords and drawstrings", 2014)
    CPSC_CORDS = Work(
        "standard",
        "US Consumer Product Safety Commission",
        "Drawstrings in children's upper outerwear (16 CFR 1120, ASTM F1816)",
    )
    ISO_216 = Work("standard", "ISO 216", "Writing paper and certain classes of printed matter")
    ASME_Y14_1 = Work("standard", "ANSI/ASME Y14.1", "Drawing sheet size and format")
    ISO_32000 = Work("standard", "ISO 32000", "Portable document format")
    W3C_CSS = Work("standard", "W3C", "CSS Values and Units; SVG 1.1")
    ASTM_D6673 = Work("from memory", "ASTM D6673-10", "Sewn products pattern data interchange, data format", 2010)

    EASE_IN_CLOTHING = Work("handbook", "a university's text on costume construction", "Ease in clothing")
    PLAIN_TROUSERS = Work(
        "handbook", "a professional cutter", "Basic trouser draft (plain fronts)", None, "bespoke cutters' forum"
    )
    VINCENT = Work("handbook", "W. D. F. Vincent", "Systems of Cutting All Kinds of Tailor-Made Garments")
    FROCK_COAT = Work("handbook", "a course in historical tailoring", "Frock coat by the proportions of the 1860s")
    ALDRICH = Work("from memory", "W. Aldrich", "Metric Pattern Cutting")
    BUNKA = Work("from memory", "Bunka Fashion College", "the women's bodice and sleeve blocks")
    TEXTBOOK_FORK = Work("from memory", "an American college textbook", "fork of trousers by quarters")
    THREAD_GUIDE = Work("handbook", "a thread maker", "stitch guide: thread by length of seam")
    PRINTER_DRIVERS = Work("handbook", "makers of printers", "driver documents: unprintable edges")
    STAGE_SAFETY = Work("handbook", "a university's performing arts department", "Costume safety")
    FIRE_COSTUME = Work("handbook", "fire artists", "guidance on costume near a flame")
    PYROTECHNICS = Work("handbook", "a journal of the theatre", "on pyrotechnics on the stage")

    DRILLIS_CONTINI = Work(
        "from memory",
        "Drillis and Contini",
        "Body Segment Parameters",
        1966,
        "figure in Winter, Biomechanics of Human Movement",
    )
    KIRK_IBRAHIM = Work(
        "from memory",
        "Kirk and Ibrahim",
        "Fabric extensibility, anthropometric requirements and garment performance",
        1966,
        "Textile Research Journal 36",
    )
    HOBBY = Work(
        "paper",
        "J. D. Hobby",
        "Smooth, Easy to Compute Interpolating Splines",
        1986,
        "Discrete and Computational Geometry 1",
    )


@dataclass(frozen=True, slots=True)
class Cited:
    """A source and what it says here; for *ours*, what the figure was found on."""

    source: Source
    note: str = ""


Sources = tuple[Cited, ...]


def cite(source: Source, note: str = "") -> Cited:
    """Return a citation; raises `ValueError` for *ours* that does not say what it was found on."""
    if source is Source.OURS and not note:
        raise ValueError("a figure of ours says what it was found on")
    return Cited(source, note)


def practice(note: str = "") -> Cited:
    """Return a citation of the trade's habit."""
    return cite(Source.COMMON_PRACTICE, note)


def memory(note: str = "") -> Cited:
    """Return a citation of what was recalled, not looked up."""
    return cite(Source.MEMORY, note)


def ours(found_on: str) -> Cited:
    """Return a citation of a figure of our own; `found_on` is half a sentence."""
    return cite(Source.OURS, found_on)


BY_EYE = ours("by eye, on drafts of measured people")
AS_ASKED = ours("nothing unless it is asked for")
TRIED = ours("by eye, and by how many of the 3,541 people of ANSUR II and bdims draft well")


def printed(*cited: Cited) -> str:
    """Return the sources as the published works they are, each with what it says.

    >>> printed(practice("10 to 15 plain"), cite(Source.ISO_5077))
    'common practice: 10 to 15 plain; ISO 5077, Dimensional change in washing and drying, 2007'
    """
    return "; ".join(_printed(one) for one in cited)


def _printed(cited: Cited) -> str:
    work = cited.source.value
    year = "" if work.year is None else str(work.year)
    recalled = work.kind if work.kind in ("from memory", "common practice", "ours") else ""
    named = ", ".join(filter(None, (work.by, work.title, work.place, year, recalled)))
    return f"{named}: {cited.note}" if cited.note else named
