"""The live picture of a garment: the overview that is exported, with what helps the eye on a screen.

    made, view, unit -> page_of -> framed -> pieces + ground (grid, bar) + seams (what lies under the pointer)

`garment_svg` does all of it and knows no widgets; `Preview` puts the picture and its view controls into a
notebook. The pointer is answered by the style sheet alone, without the kernel.
"""

from drafting.notebook.picture.drawing import garment_svg
from drafting.notebook.picture.preview import Preview
from drafting.notebook.picture.view import View

__all__ = ["Preview", "View", "garment_svg"]
