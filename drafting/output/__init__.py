"""Everything that is written into the output folder, and the folder itself."""
