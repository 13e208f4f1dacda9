"""`python -m tests`: everything that has to hold, quickest first; stops at the first failure.

What is typed after it goes on to pytest: `python -m tests -k folder`.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent

STEPS = (
    ("ruff", "check", "--quiet", "."),
    ("ruff", "format", "--check", "--quiet", "."),
    ("mypy",),
    ("pytest", "--quiet", "-n", "2", "--dist", "loadgroup", "--durations", "8", "--maxfail", "5", *sys.argv[1:]),
)


def main() -> int:
    """Run the steps from the repository's top and return the first exit code that is not 0."""
    for tool, *arguments in STEPS:
        print("==", tool, *arguments, flush=True)
        code = subprocess.run([sys.executable, "-m", tool, *arguments], cwd=ROOT).returncode
        if code:
            return code
    return 0


if __name__ == "__main__":
    sys.exit(main())
