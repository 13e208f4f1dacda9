"""Tailcoat: close coat body, two-piece sleeve, tails in bias-cut flare panels, collar, lining."""

PARTS = {
    "coat-body": {"arm_ease": 70.0, "button_diameter": 20.0, "button_thickness": 4.0},
    "two-piece-sleeve": {"arm_ease": 70.0, "cap_ease": 30.0},
    "tails": {},
    "turned-cuff": {},
    "coat-collar": {},
    "stiffening": {},
    "coat-lining": {},
}
