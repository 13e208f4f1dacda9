"""The lamplighter printed, as the tests of the other files have it too."""

from tests.export.conftest import costume, made, sheet, sheets

__all__ = ["costume", "made", "sheet", "sheets"]
