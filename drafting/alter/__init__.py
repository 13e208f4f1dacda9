"""Alterations: a draft goes in, a changed draft comes out. Fullness, flare, puffs, elastic.

One file each, listed beside the blocks: its `Choices` and one function of the file's name that takes
`(draft, body, fabric, choices)`. Seams keep naming real edges, and chains their places.
"""
