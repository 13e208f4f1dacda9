"""The wearer: body dimensions, estimates for the missing ones, doubts about the others."""

from drafting.body.body import Body, bust_level, completed, shorter_back, usual_axilla
from drafting.body.dimensions import DIMENSIONS, Dimension, dimension_name
from drafting.body.estimates import Measure
from drafting.body.reader import read_bodies, read_body
from drafting.body.wearer import wearer

__all__ = [
    "DIMENSIONS",
    "Body",
    "Dimension",
    "Measure",
    "bust_level",
    "completed",
    "dimension_name",
    "read_bodies",
    "read_body",
    "shorter_back",
    "usual_axilla",
    "wearer",
]
