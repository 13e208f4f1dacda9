"""The waistcoat: a torso without sleeves, its V neck, pointed fronts, back with a strap, and what lies inside."""
