"""`python -m drafting ...` is the same as `drafting ...`."""

import sys

from drafting.cli import main

sys.exit(main())
