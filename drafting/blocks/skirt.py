"""Skirt: straight with darts, in gores, a part of a circle or in tiers, on a waistband, with a zip."""

PARTS = {"skirt-body": {}, "waistband": {"band_underlap": 30.0}, "loop-up": {}, "stiff-hem": {}, "hung-lining": {}}
