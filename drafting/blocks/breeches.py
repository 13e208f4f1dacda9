"""Breeches: a trouser that ends below the knee, gathered there on elastic or a band, with an elastic waist."""

PARTS = {
    "trouser": {
        "waist_finish": "casing",
        "leg": "straight",
        "leg_ends": "below the knee",
        "hip_ease": 80.0,
        "thigh_ease": 110.0,
        "knee_ease": 140.0,
    },
    "knee-band": {},
    "elastic-hem": {},
}
