"""The nouns of a draft: edges, pieces, seams, and what is asked of them.

An **edge** is one named side of a piece; a **piece** a ring of edges; a **chain** a run of edges that
goes on over several pieces; a **seam** sews one chain to another. A `Draft` is pieces on their stitching
lines with the seams between them; a `Pattern` the same pieces finished for cutting.
"""

from drafting.draft.draft import Corner, Draft, EdgeRef, Girth, Notion, Seam, SeamNotch

__all__ = ["Corner", "Draft", "EdgeRef", "Girth", "Notion", "Seam", "SeamNotch"]
