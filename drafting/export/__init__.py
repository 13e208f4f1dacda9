"""Files from sheets: SVG, figure, and the folder they go into. Layer 5; knows no pieces."""
