"""The trouser block's construction: what is asked, the legs, the rise, the waist, the pieces.

asked    girths and lengths asked for: eases, or the share of the cloth's stretch that is used
frame    levels and widths of one leg, before the fork is known
legs     fork, inside seams and side seam for one width of fork; the thigh they give
rise     front rise, seat angle and fork settled together to the crotch length
waist    side height, darts and one smooth waistline over the closed side seam
hem      lower leg, calf, hem and flare
pieces   rings of named edges, level lines

Both pieces are drafted with the side at -x and the crease on x = 0, y up, the crotch line at 0; the
front is mirrored at the end. Constants marked *ours* were chosen by eye and by how many of the
3,034 people of `Source.ANSUR_II` they fit.
"""
