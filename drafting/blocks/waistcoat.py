"""Waistcoat: fitted fronts with a V neck and points, a back in lining with a strap, faced and lined."""

PARTS = {"waistcoat-body": {"button_thickness": 3.0}, "waistcoat-inside": {}}
