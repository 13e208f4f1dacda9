"""Flare and fullness: bent panels, spread pieces, gathers, elastic."""
