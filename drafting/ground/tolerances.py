"""Every tolerance under a name, with its reason. mm and degrees.

Those without a source are ours: what scissors and pins cannot tell apart; tests use these names.
"""

EXACT = 1e-3
"""mm: what a length is computed to; a thousandth of what a ruler shows."""

CLOSED = 1e-6
"""mm: how far two edges may miss each other where one ends and the next begins."""

FLAT = 0.02
"""mm: greatest gap between a curve and its polyline where shapely needs one."""

OFFSET_FIT = 0.01
"""mm: greatest error of a curve drawn beside another (an offset of a cubic is no cubic)."""

SEAM_MATCH = 0.5
"""mm: sewn partners may differ by this much from their declared ease, whole and notch to notch."""

NOTCH_MATCH = 0.5
"""mm: facing notches, measured from the seam's end, less the ease that lies between."""

ONE_NOTCH = 3.0
"""mm: two notches nearer than this on one edge would be cut as one."""

JOIN_ANGLE = 2.0
"""degrees: two corners joined in a seam make 180 within this."""

SQUARE_ANGLE = 1.0
"""degrees: a corner on a fold or centre line is 90 within this."""

GIRTH_MATCH = 1.0
"""mm: finished girth against body + settled ease."""

LEG_MATCH = 0.2
"""mm: the two legs of a dart."""

LEAST_EDGE = 3.0
"""mm at adult scale: no edge shorter than this."""

LEAST_DART = 8.0
"""mm at adult scale: a smaller dart is left out, its amount goes to the neighbouring seams."""

TURN_MATTERS = 1.0
"""degrees: a run that turns less than this on one side is no inflection."""

TRUED_TURN = 3.0
"""degrees: the hollow that truing puts beside a dart's mouth, so that the closed seam is smooth, is no
inflection (the seam is straight there once the dart is sewn)."""

COINCIDE = 1.0
"""mm: cap and armhole laid on each other from the underarm to the notch."""

DART_AIM = 1.0
"""degrees: the centre line of a bust dart aims at the bust point within this."""

CROTCH_MATCH = 2.0
"""mm: a trouser's crotch seam against total crotch length and ease."""
