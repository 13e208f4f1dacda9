"""The releases of DXF that pieces are written in."""

VERSIONS = ("R2000", "R12")
"""The first is written where nothing is asked for."""
