"""The torso: settled numbers, armhole, neckline, darts and panels, then pieces and seams."""
