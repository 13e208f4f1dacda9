"""Sleeveless top: woven bodice with faced neck and armholes, and a real closing."""

PARTS = {
    "bodice": {
        "bust_ease": 60.0,
        "waist_ease": 45.0,
        "hip_ease": 60.0,
        "armhole_for": "a bare arm",
        "armhole_drop": 20.0,
        "opening": "back",
        "length": "hip",
    },
    "facings": {"facings": "neck and armholes"},
    "binding": {},
    "closing": {},
}
