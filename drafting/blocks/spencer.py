"""Spencer: a close coat that ends at the waist, with a step lapel, two-piece sleeve, collar and lining."""

PARTS = {
    "coat-body": {"arm_ease": 70.0, "button_diameter": 20.0, "button_thickness": 4.0, "lapel_style": "step"},
    "two-piece-sleeve": {"arm_ease": 70.0, "cap_ease": 30.0},
    "turned-cuff": {},
    "coat-collar": {},
    "stiffening": {},
    "coat-lining": {},
}
