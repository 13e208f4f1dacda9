"""Skirts: what all cuts are planned from, straight with darts, in gores, in parts of a circle, in tiers."""
