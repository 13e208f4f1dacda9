"""The page of style lines: clicked on the picture, seen before they are cut, written down, taken back."""
