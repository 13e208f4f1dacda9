"""Mutton top: a fitted top with leg-of-mutton sleeves, full above the elbow and close on the forearm."""

PARTS = {
    "bodice": {"bust_ease": 70.0, "waist_ease": 45.0, "hip_ease": 60.0, "opening": "back", "length": "waist"},
    "sleeve": {"wrist_ease": 50.0},
    "puff-cap": {"puff_reach": "elbow", "puff_width": 220.0, "puff_height": 80.0},
    "facings": {},
    "binding": {},
    "closing": {},
}
