"""Small parts: bands, button stands, buttons, collar lines."""
