"""The lamplighter printed, as the tests of the other files have it too."""

from tests.export.conftest import costume, made, sheets

__all__ = ["costume", "made", "sheets"]
