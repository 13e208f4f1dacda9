"""Peplum top: woven bodice to the waist with a set-in sleeve, faced neck, a zip, and a peplum from the waist."""

PARTS = {
    "bodice": {"bust_ease": 80.0, "waist_ease": 45.0, "opening": "back", "length": "waist"},
    "sleeve": {},
    "peplum": {},
    "stiff-hem": {},
    "facings": {},
    "binding": {},
    "closing": {},
}
