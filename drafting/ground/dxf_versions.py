"""The releases of DXF that pieces are written in."""

VERSIONS = ("R12", "R2000")
"""The first is written where nothing is asked for."""
