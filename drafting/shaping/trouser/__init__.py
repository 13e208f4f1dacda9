"""The trouser block's construction: what is asked, the legs, the rise, the waist, the pieces.

asked    girths and lengths asked for: eases, or the share of the cloth's stretch that is used
frame    levels and widths of one leg, before the fork is known
legs     fork, inside seams and side seam for one width of fork; the thigh they give
centre   the two centre edges and their crotch curves
rise     front rise, seat angle and fork settled together to the crotch length
seat     the hip on the outline: how far the seat is drawn in for curves that have begun there
waist    side height, darts and one smooth waistline over the closed side seam
hem      lower leg, calf, hem and flare
fly      how long a fly may be, and its lines
pieces   rings of named edges, level lines
notches  crotch seams and their notches
sound    outlines that would cross are refused

Both pieces are drafted with the side at -x and the crease on x = 0, y up, the crotch line at 0; the
front is mirrored at the end. Constants marked *ours* were chosen by eye and by how many of the
3,034 people of `Source.ANSUR_II` they fit.
"""
