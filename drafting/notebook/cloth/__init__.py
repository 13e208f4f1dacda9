"""The swatch test on the screen."""
