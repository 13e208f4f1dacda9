"""Overskirt: half a circle worn over another skirt, looped up at sides and back by tapes inside."""

PARTS = {
    "skirt-body": {"skirt_cut": "half circle", "skirt_ends": "mid-calf", "waist_ease": 36.0},
    "waistband": {"band_depth": 25.0, "band_underlap": 30.0},
    "loop-up": {"loop_places": "sides and back"},
    "stiff-hem": {},
    "hung-lining": {},
}
