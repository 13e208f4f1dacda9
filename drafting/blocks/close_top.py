"""Close top: the close stretch torso with a close sleeve."""

PARTS = {
    "close-torso": {"length": "hip"},
    "sleeve": {"stretch_share": 0.25, "arm_ease": 0.0, "wrist_ease": 0.0, "cap_ease": 0.0, "elbow_bend": 0.0},
    "binding": {},
    "closing": {},
}
