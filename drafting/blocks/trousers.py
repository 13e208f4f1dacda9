"""Trousers: woven trouser with darts, a waistband that buttons or hooks, and a zip fly in front."""

from collections.abc import Mapping
from typing import Any

PARTS: Mapping[str, Mapping[str, Any]] = {
    "trouser": {},
    "waistband": {},
    "fly": {},
    "fall-front": {},
    "braces": {},
}
