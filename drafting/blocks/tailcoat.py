"""Tailcoat: close coat body, two-piece sleeve, and tails in bias-cut flare panels."""

PARTS = {
    "coat-body": {"arm_ease": 70.0},
    "two-piece-sleeve": {"arm_ease": 70.0, "cap_ease": 30.0},
    "tails": {},
}
