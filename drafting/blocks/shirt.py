"""Shirt: the woven torso and a plain set-in sleeve with a low cap ease."""

PARTS = {
    "bodice": {"bust_ease": 100.0, "waist_ease": 80.0, "opening": "front"},
    "sleeve": {"cap_ease": 10.0, "elbow_bend": 0.0},
}
