"""Bishop top: a fitted top with bishop sleeves, full at the wrist and gathered to a buttoned cuff."""

PARTS = {
    "bodice": {"bust_ease": 70.0, "waist_ease": 45.0, "hip_ease": 60.0, "opening": "back", "length": "hip"},
    "sleeve": {"hem_fullness": 2.0, "overhang": 40.0, "elbow_bend": 0.0, "wrist_ease": 30.0, "cuff_depth": 60.0},
    "facings": {},
    "binding": {},
    "cuff": {},
    "closing": {},
}
