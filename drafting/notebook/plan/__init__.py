"""The making plan on a notebook page."""
