"""The bench: controls on the left, the pieces and what is to be said of them on the right."""
