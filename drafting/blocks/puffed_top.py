"""Puffed top: the close stretch torso with short puffed cap sleeves, gathered below on elastic."""

PARTS = {
    "close-torso": {"length": "hip"},
    "sleeve": {
        "stretch_share": 0.25,
        "arm_ease": 10.0,
        "wrist_ease": 30.0,
        "cap_ease": 0.0,
        "elbow_bend": 0.0,
        "sleeve_share": 0.30,
        "overhang": 20.0,
    },
    "puff-cap": {"puff_width": 130.0, "puff_height": 45.0},
    "elastic-hem": {},
    "binding": {},
    "closing": {},
}
