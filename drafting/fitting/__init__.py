"""Fitting: notes taken at the body, and the draft that follows them."""
