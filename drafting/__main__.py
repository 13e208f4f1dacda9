"""`python -m drafting ...` is the same as `drafting ...`."""

import sys

from drafting.commands.cli import main

sys.exit(main())
