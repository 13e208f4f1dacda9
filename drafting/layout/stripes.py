"""On which line of a repeat across the cloth the pieces are matched: the one that takes less cloth."""

from __future__ import annotations

from dataclasses import replace

from drafting.layout.packing.job import ROUGH, Kit
from drafting.layout.packing.model import Job
from drafting.layout.packing.search import Searcher

FEW = 6
"""A cloth that holds more repeats side by side loses little by where they begin (ours)."""

QUICK = 120
"""Outlines placed to choose between both lines (ours)."""


def on_better_stripe(job: Job) -> Job:
    """Return the job with its stripes counted from where its pieces lie shorter.

    A pattern that is alike to both sides has two lines a repeat in which it mirrors itself, and one of them
    lies on the middle of the cloth (common practice): pieces are matched on those, or on the ones between. On
    a cloth that is hardly two repeats wide the one gives a single column of pieces, the other two.
    """
    strip = job.strip
    step = strip.repeat_across
    if not step or strip.width >= FEW * step or not job.copies:
        return job
    middle = strip.width / 2
    tried = [
        replace(job, strip=replace(strip, stripe=at % step, blocked=())) for at in (middle, middle + step / 2)
    ]
    lengths = [Searcher(Kit(one, ROUGH), QUICK).run().length for one in tried]
    better = tried[lengths.index(min(lengths))]
    return replace(job, strip=replace(strip, stripe=better.strip.stripe))
