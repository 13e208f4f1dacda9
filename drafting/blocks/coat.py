"""Coat: single-breasted with a step lapel, going on below the waist to a level hem; sleeve, collar, lining."""

PARTS = {
    "coat-body": {
        "arm_ease": 70.0,
        "button_diameter": 20.0,
        "button_thickness": 4.0,
        "breasted": "single",
        "lapel_style": "step",
    },
    "two-piece-sleeve": {"arm_ease": 70.0, "cap_ease": 30.0},
    "coat-skirt": {},
    "turned-cuff": {},
    "coat-collar": {},
    "stiffening": {},
    "stiff-hem": {},
    "coat-lining": {},
}
