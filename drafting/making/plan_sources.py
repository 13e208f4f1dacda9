"""What the figures of a making plan rest on, told at its end."""

from __future__ import annotations

from drafting.ground.sources import Source, Sources, cite, memory, ours, practice

PLAN: Sources = (
    cite(Source.ISO_4915, "the numbers of the stitches"),
    cite(Source.ISO_4916, "the classes of the seams"),
    cite(Source.ISO_3758, "heat by the dots of the iron"),
    cite(Source.ISO_5077, "shrinkage from two marks"),
    cite(Source.ISO_20932, "how a strip lies before it is stretched"),
    cite(Source.ASTM_D2594, "how far a knit is stretched to see what stays"),
    cite(Source.THREAD_GUIDE, "thread of 101, 103, 301 and 304; other stitches from memory"),
    cite(Source.EN_14682, "cords on a child's costume"),
    cite(Source.CPSC_CORDS, "cords on a child's costume"),
    cite(Source.STAGE_SAFETY, "fire, heat and falls"),
    cite(Source.FIRE_COSTUME, "cloth near a flame"),
    cite(Source.PYROTECHNICS, "venue and fire rules come first"),
    practice("needles by cloth, lengths of stitches, the order of work, hems, cautions of the workshop"),
    memory("most fusibles want two dots; thread shanks"),
    ours("minutes of work, guessed step by step"),
)
