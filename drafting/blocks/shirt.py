"""Shirt: woven torso to the hip, set-in sleeve with a low cap ease, button front, cuff and collar."""

PARTS = {
    "bodice": {
        "bust_ease": 100.0,
        "waist_ease": 80.0,
        "hip_ease": 90.0,
        "neck_ease": 0.0,
        "opening": "front",
        "length": "hip",
    },
    "shirt-yoke": {},
    "back-pleat": {},
    "shirt-tails": {},
    "sleeve": {"cap_ease": 10.0, "elbow_bend": 0.0, "wrist_ease": 40.0, "cuff_depth": 60.0},
    "sleeve-placket": {},
    "shirt-front": {},
    "cuff": {},
    "collar": {},
}
