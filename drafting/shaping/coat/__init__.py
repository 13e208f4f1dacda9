"""The tailcoat's construction: body panels, lapel, sleeve, collar, tails, flare, stiffening.

plain_tail   the tail without flare: waist edge, hem and the straight rulings between them
flare        flare as a bend: rulings and waist edge keep their lengths, only the turn grows
grain        one warp a panel: which seams lie on the true bias, and how far off the others are
ways         other ways to the same hem: shaped seams, godets, uncut cloth

Coat frame while drawing: x from the centre back towards the front, nape at 0, y up, mm; pieces are
mirrored at the end, so that they lie as the wearer's left side seen from outside. Constants marked
*ours* were chosen by eye and tried on 300 people of `Source.ANSUR_II`.
"""
