"""The search for the shortest layout: outlines and a strip in, poses out. Knows no garment."""
