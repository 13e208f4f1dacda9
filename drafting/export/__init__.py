"""Files from sheets: SVG, figure, and the folder they go into. Knows no pieces."""
