"""Capes: a part of a circle on the neck line, its shoulder darted or seamed, cut in panels; the hood."""
