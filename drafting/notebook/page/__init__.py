"""A page about one costume: chosen at its head, and every view below is of it."""
