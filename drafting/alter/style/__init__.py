"""Style lines: what a maker cuts, joins, moves and folds in the pieces of any block, one step after another."""
