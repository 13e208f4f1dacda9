"""Where the kit's figures come from: every work once, by its id, and how it is printed.

A figure names its source by the id, so a slip of the pen is an error: `cite(Source.ISO_3758)`. What
no work stands behind says so in three words: *common practice* (the trade does it so, no one work
is followed), *from memory* (recalled, not looked up again) and *ours* (chosen here, and what it was
found on). A work that was recalled, not read again, says *from memory* after its name.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum, unique

from drafting.ground.works import Work


@unique
class Source(Enum):
    """The id of every source; its value is the work."""

    COMMON_PRACTICE = Work("common practice", "common practice")
    MEMORY = Work("from memory", "from memory")
    OURS = Work("ours", "ours")

    ANSUR_II = Work(
        "survey",
        "ANSUR II, Gordon and others 2014",
        "C. C. Gordon and others",
        "2012 Anthropometric Survey of US Army Personnel: Methods and Summary Statistics",
        2014,
        "NATICK/TR-15/007; a random half of its public files, 3,034 adults",
    )
    BDIMS = Work(
        "survey",
        "Heinz and others 2003",
        "G. Heinz, L. J. Peterson, R. W. Johnson and C. J. Kerk",
        "Exploring Relationships in Body Dimensions",
        2003,
        "Journal of Statistics Education 11(2); data set bdims, 507 adults",
    )

    ISO_8559 = Work(
        "standard",
        "ISO 8559-1:2017",
        "ISO",
        "Size designation of clothes: anthropometric definitions for body measurement",
        2017,
    )
    ASTM_D5585 = Work(
        "standard",
        "ASTM D5585-11e1",
        "ASTM International",
        "Body measurements for adult female misses figure type",
        2011,
        "table 1",
    )
    ISO_5077 = Work(
        "standard",
        "ISO 5077",
        "ISO",
        "Dimensional change in washing and drying",
        None,
        "as a test laboratory gives it",
    )
    ASTM_D3107 = Work(
        "standard",
        "ASTM D3107-07",
        "ASTM International",
        "Stretch properties of fabrics woven from stretch yarns",
        2007,
        "scope",
    )
    ASTM_D2594 = Work(
        "from memory", "ASTM D2594", "ASTM International", "Stretch properties of knitted fabrics having low power"
    )
    ASTM_D1388 = Work(
        "from memory", "ASTM D1388", "ASTM International", "Stiffness of fabrics: bending length by overhang"
    )
    ISO_20932 = Work(
        "standard",
        "ISO 20932-1:2018",
        "ISO",
        "Elasticity of fabrics: strip tests",
        2018,
        "as a test house sums it up",
    )
    ISO_3758 = Work("standard", "ISO 3758:2012", "ISO", "Care labelling code using symbols", 2012)
    ISO_4915 = Work("standard", "ISO 4915", "ISO", "Stitch types", None, "as it is taught")
    ISO_4916 = Work("standard", "ISO 4916:1991", "ISO", "Seam types", 1991, "as it is summed up")
    EN_14682 = Work(
        "standard",
        "EN 14682",
        "CEN",
        "Safety of children's clothing: cords and drawstrings",
        None,
        "as the Finnish product safety authority and a test laboratory give it",
    )
    CPSC_CORDS = Work(
        "standard",
        "16 CFR 1120",
        "US Consumer Product Safety Commission",
        "Drawstrings in children's upper outerwear (ASTM F1816)",
    )
    ISO_216 = Work("standard", "ISO 216", "ISO", "Writing paper: trimmed sizes, A and B series")
    ASME_Y14_1 = Work("standard", "ANSI/ASME Y14.1", "ASME", "Drawing sheet size and format")
    ISO_32000 = Work("standard", "ISO 32000", "ISO", "Portable document format")
    ASTM_D6673 = Work(
        "from memory",
        "ASTM D6673-10",
        "ASTM International",
        "Sewn products pattern data interchange: data format",
        2010,
    )

    EASE_IN_CLOTHING = Work(
        "handbook", "Ease in clothing", "a university's text on costume construction", "Ease in clothing"
    )
    PLAIN_TROUSERS = Work(
        "handbook",
        "Basic trouser draft",
        "a professional cutter",
        "Basic trouser draft (plain fronts)",
        None,
        "a forum of bespoke cutters",
    )
    FROCK_COAT = Work(
        "handbook",
        "Frock coat of the 1860s",
        "a course in historical tailoring",
        "Frock coat by the proportions of the 1860s",
    )
    ALDRICH = Work("from memory", "Aldrich", "W. Aldrich", "Metric Pattern Cutting")
    BUNKA = Work("from memory", "Bunka block", "Bunka Fashion College", "bodice and sleeve block")
    TEXTBOOK_FORK = Work(
        "from memory",
        "a college textbook",
        "an American college textbook",
        "fork of the trouser by quarters of the hip",
    )
    THREAD_GUIDE = Work(
        "handbook", "a thread maker's guide", "a thread maker", "stitch guide: thread by length of seam"
    )
    PRINTER_DRIVERS = Work(
        "handbook", "printer drivers", "makers of printers", "driver documents: unprintable edges"
    )
    STAGE_SAFETY = Work(
        "handbook", "Costume safety", "a university's department of performing arts", "Costume safety"
    )
    FIRE_COSTUME = Work("handbook", "fire artists' guidance", "fire artists", "guidance on costume near a flame")
    PYROTECHNICS = Work("handbook", "stage pyrotechnics", "a theatre article", "pyrotechnics on the stage")

    DRILLIS_CONTINI = Work(
        "from memory",
        "Drillis and Contini 1966",
        "R. Drillis and R. Contini",
        "Body Segment Parameters",
        1966,
        "figure in Winter, Biomechanics of Human Movement",
    )
    KIRK_IBRAHIM = Work(
        "from memory",
        "Kirk and Ibrahim 1966",
        "W. Kirk and S. M. Ibrahim",
        "Fabric extensibility, anthropometric requirements and garment performance",
        1966,
        "Textile Research Journal 36",
    )
    PEIRCE = Work(
        "from memory",
        "Peirce 1930",
        "F. T. Peirce",
        "The handle of cloth as a measurable quantity",
        1930,
        "Journal of the Textile Institute 21",
    )
    KIM_LAMINATE = Work(
        "from memory",
        "Kim and others 2012",
        "K. Kim, S. Inui and M. Takatera",
        "Bending rigidity of laminated fabric with fused interlining",
        2012,
        "Textile Research Journal 82(4)",
    )
    GREENHILL = Work(
        "from memory",
        "Greenhill 1881",
        "A. G. Greenhill",
        "The greatest height consistent with stability of a vertical pole",
        1881,
        "Proceedings of the Cambridge Philosophical Society 4",
    )
    ELEMENTS_OF_DRAPING = Work(
        "paper",
        "Cerda and others 2004",
        "E. Cerda, L. Mahadevan and J. M. Pasini",
        "The elements of draping",
        2004,
        "Proceedings of the National Academy of Sciences 101",
    )
    HOBBY = Work(
        "paper",
        "Hobby 1986",
        "J. D. Hobby",
        "Smooth, Easy to Compute Interpolating Splines",
        1986,
        "Discrete and Computational Geometry 1",
    )


@dataclass(frozen=True, slots=True)
class Cited:
    """A source and what it says here; for *ours*, what the figure was found on.

    `source` is an id of the table; a block from outside the kit may cite a work of its own.
    """

    source: Source | Work
    note: str = ""

    @property
    def work(self) -> Work:
        return self.source.value if isinstance(self.source, Source) else self.source


Sources = tuple[Cited, ...]


def cite(source: Source, note: str = "") -> Cited:
    """Return a citation; raises `ValueError` for *ours* that does not say what it was found on."""
    if source is Source.OURS and not note:
        raise ValueError("a figure of ours says what it was found on")
    return Cited(source, note)


def in_words(text: str) -> Cited:
    """Return the citation of a maker who names her source in her own words, printed as it stands."""
    return Cited(Work("in words", text.strip()))


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
    """Return the sources as they stand in a line, each with what it says.

    >>> printed(practice("10 to 15 plain"), cite(Source.ASTM_D2594))
    'common practice: 10 to 15 plain; ASTM D2594, from memory'
    """
    return "; ".join(_in_line(one) for one in cited)


def _in_line(cited: Cited) -> str:
    work = cited.work
    named = f"{work.name}, from memory" if work.by and work.kind == "from memory" else work.name
    return f"{named}: {cited.note}" if cited.note else named


def works(cited: Iterable[Cited]) -> tuple[str, ...]:
    """Return each published work among the sources once, in full, by its name in a line.

    >>> works([cite(Source.ISO_3758), practice(), cite(Source.ISO_3758, "the dots")])
    ('ISO 3758:2012: ISO, Care labelling code using symbols, 2012',)
    """
    found = {one.work for one in cited}
    return tuple(sorted(_in_full(work) for work in found if work.by))


def _in_full(work: Work) -> str:
    year = "" if work.year is None else str(work.year)
    return f"{work.name}: {', '.join(filter(None, (work.by, work.title, year, work.place)))}"
