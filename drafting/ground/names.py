"""Texts and names from a maker's files, made harmless.

A title may hold anything a keyboard or a spreadsheet can write. `clean_text` makes it fit to print
in any script, `safe_id` fit to be an id.
"""

from __future__ import annotations

import re
import unicodedata

TEXT_LIMIT = 200
"""Characters kept of one text (ours: longer than any title, shorter than a page)."""

_JOINERS = "\u200c\u200d"  # needed inside words of several scripts


def clean_text(text: str, limit: int = TEXT_LIMIT) -> str:
    """Return `text` on one line: no control or direction characters, spaces single, cut at `limit`.

    >>> clean_text("The\\x00 kite\\n <b>")
    'The kite <b>'
    """
    head = unicodedata.normalize("NFC", text[: 8 * limit])
    kept = "".join(" " if c.isspace() else c for c in head if c.isspace() or _prints(c))
    kept = " ".join(kept.split())
    return kept if len(kept) <= limit else kept[: limit - 1].rstrip() + "…"


def safe_id(text: str) -> str:
    """Return `text` as an id: ASCII letters, digits, `.`, `_`, `-`, the first of them a letter.

    >>> safe_id("front.side seam"), safe_id('"/><x')
    ('front.side-seam', 'x')
    """
    kept = re.sub(r"[^A-Za-z0-9._-]+", "-", text).strip("-.")
    return kept if kept[:1].isalpha() else f"n{kept}"


def _prints(character: str) -> bool:
    category = unicodedata.category(character)
    return character in _JOINERS or category not in ("Cc", "Cf", "Cs", "Cn", "Co")
