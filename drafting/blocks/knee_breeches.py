"""Knee breeches: woven, with a waistband and a fly, the legs gathered onto bands that open at the side."""

PARTS = {
    "trouser": {
        "leg_ends": "below the knee",
        "hip_ease": 80.0,
        "thigh_ease": 110.0,
        "knee_ease": 110.0,
        "leg_slit": 100.0,
    },
    "knee-band": {"knee_finish": "band"},
    "waistband": {},
    "fly": {},
    "fall-front": {},
    "braces": {},
}
