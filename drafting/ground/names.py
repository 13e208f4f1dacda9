"""Texts and names from a maker's files, made harmless.

A title may hold anything a keyboard or a spreadsheet can write. `clean_text` makes it fit to print
in any script, `safe_name` fit to be a file name on every system, `safe_id` fit to be an id.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from functools import lru_cache

TEXT_LIMIT = 200
"""Characters kept of one text (ours: longer than any title, shorter than a page)."""

NAME_BYTES = 80
"""UTF-8 bytes kept of a file name (common file systems take 255; an ending is still to come)."""

_JOINERS = "\u200c\u200d"  # needed inside words of several scripts
_RESERVED = re.compile(r"(con|prn|aux|nul|conin|conout|clock|com[0-9¹²³]|lpt[0-9¹²³])", re.IGNORECASE)


@lru_cache(maxsize=4096)
def clean_text(text: str, limit: int = TEXT_LIMIT) -> str:
    """Return `text` on one line: no control or direction characters, spaces single, cut at `limit`.

    >>> clean_text("The\\x00 kite\\n <b>")
    'The kite <b>'
    """
    head = unicodedata.normalize("NFC", text[: 8 * limit])
    kept = "".join(" " if c.isspace() else c for c in head if c.isspace() or _prints(c))
    kept = " ".join(kept.split())
    return kept if len(kept) <= limit else kept[: limit - 1].rstrip() + "…"


def as_sentences(parts: Iterable[str]) -> str:
    """Return what is said as sentences with one stop each.

    >>> as_sentences(("True scale", "A starting draft.", ""))
    'True scale. A starting draft.'
    """
    return " ".join(f"{part.rstrip('. ')}." for part in parts if part.strip(". "))


TWICE = re.compile(r"^(\w+) \1-")
"""A garment, and a piece that is named after it."""


def name_in_words(name: str) -> str:
    """Return the name of an outline, or of an edge with its piece, as a sentence says it.

    Number and hand of an outline (`coat.top-sleeve.both.1`) are left out, and a garment that its piece is named
    after.

    >>> name_in_words("coat.top-sleeve.both.1"), name_in_words("front.cap_front"), name_in_words("waist")
    ('coat top sleeve', 'front cap front', 'waist')
    >>> name_in_words("cape.cape-front.left.1")
    'cape front'
    """
    words = TWICE.sub(r"\1-", " ".join(name.split(".")[:2]))
    return words.replace("-", " ").replace("_", " ")


def safe_name(text: str) -> str:
    """Return `text` as a lower-case file name (no extension): letters, digits, `-` and `_` only.

    Letters of any script stay. Names that some system keeps for itself get a `-` behind them, and
    an empty one becomes `unnamed`.

    >>> safe_name("The Kite / red..."), safe_name("NUL"), safe_name("../..")
    ('the-kite-red', 'nul-', 'unnamed')
    """
    words = unicodedata.normalize("NFKC", clean_text(text)).casefold()
    # Case folding can pull a letter apart again, so the form is made once more.
    kept = re.sub(r"[^\w-]+", "-", unicodedata.normalize("NFC", words))
    kept = re.sub(r"-{2,}", "-", kept).strip("-")
    kept = kept.encode()[:NAME_BYTES].decode(errors="ignore").strip("-")
    if _RESERVED.fullmatch(kept):
        return f"{kept}-"
    return kept or "unnamed"


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
