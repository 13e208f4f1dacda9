"""Fitted top: woven bodice to the hip with a set-in sleeve, its neck faced, and a real closing."""

PARTS = {
    "bodice": {"bust_ease": 70.0, "waist_ease": 45.0, "hip_ease": 60.0, "opening": "back", "length": "hip"},
    "sleeve": {},
    "turned-cuff": {},
    "facings": {},
    "binding": {},
    "closing": {},
}
