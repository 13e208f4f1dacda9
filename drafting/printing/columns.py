"""Words set in columns: wrapped by their estimated width, and carried on where a column is full."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from drafting.geometry.path import Box
from drafting.sheet import LEADING, Text, text_width

LEAD_IN = 0.35
"""Of its size that is left free above a row (ours)."""


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Words of one kind, to be wrapped: `size` mm."""

    size: float
    words: str
    bold: bool = False


def wrapped(words: str, size: float, bold: bool, width: float) -> tuple[str, ...]:
    """Return the words in lines no wider than `width` mm by estimate.

    >>> wrapped("one two three", 10.0, False, 45.0)
    ('one two', 'three')
    """
    lines = [""]
    for word in words.split():
        longer = f"{lines[-1]} {word}".strip()
        if lines[-1] and text_width(Text(0j, size, (longer,), bold=bold)) > width:
            lines.append(word)
        else:
            lines[-1] = longer
    return tuple(lines)


def column(rows: Sequence[Paragraph], box: Box) -> tuple[list[Text], list[Paragraph]]:
    """Return the texts that fit under each other into a box (mm), and the rows that are left over."""
    left, low, right, top = box
    texts: list[Text] = []
    for n, row in enumerate(rows):
        lines = wrapped(row.words, row.size, row.bold, right - left)
        top -= LEAD_IN * row.size
        text = Text(complex(left, top - 0.8 * row.size), row.size, lines, bold=row.bold)
        if text.bounds[1] < low:
            return texts, list(rows[n:])
        texts.append(text)
        top -= LEADING * row.size * len(lines)
    return texts, []
