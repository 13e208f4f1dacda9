"""What several pages of the notebook say: a refusal, how something stands, plain sentences, a style."""

from __future__ import annotations

from collections.abc import Iterable

from drafting.ground import palette
from drafting.ground.templates import Html, macros

SAID = macros(__file__)

NOT_POSSIBLE = "Not possible."


def refused_html(words: str, head: str = NOT_POSSIBLE) -> Html:
    """Return a refusal; nothing stands in it where there are no words.

    >>> str(refused_html("The hem is < 0."))
    '<div class="refusal" role="alert"><b>Not possible.</b> The hem is &lt; 0.</div>'
    """
    return Html(SAID.refused(head, words))


def status_html(words: str) -> Html:
    """Return how something stands, which a screen reader tells when it changes."""
    return Html(SAID.status(words))


def paragraphs_html(rows: Iterable[str]) -> Html:
    """Return each sentence as a paragraph of its own."""
    return Html(SAID.paragraphs(list(rows)))


def notebook_only_html(words: str) -> Html:
    """Return a sentence that the page without code leaves away."""
    return Html(SAID.notebook_only(words))


def style_html(*sheets: str) -> Html:
    """Return style sheets for a page, the colours before them."""
    return Html(SAID.style(Html("".join((palette.css(), *sheets)))))
