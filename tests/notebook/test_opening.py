"""What the opening of a page waits for: nothing that only another page needs."""

from __future__ import annotations

import subprocess
import sys

SLOW = ("matplotlib", "reportlab", "ezdxf", "scipy.ndimage", "drafting.worn.form", "drafting.worn.settled")
"""What draws pictures of the form, writes PDF and DXF, reckons cloth: over half of what importing all takes."""

ASKS = f"""
import sys
from drafting.notebook import CostumePage
print([name for name in {SLOW!r} if name in sys.modules])
from drafting.notebook import WornView
print("drafting.worn.form" in sys.modules)
"""


def test_the_start_page_opens_without_what_only_the_worn_page_and_writing_need() -> None:
    done = subprocess.run([sys.executable, "-c", ASKS], capture_output=True, text=True, check=True, timeout=120)
    assert done.stdout.split("\n")[:2] == ["[]", "True"]
