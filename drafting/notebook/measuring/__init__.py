"""The measuring guide: a field for each measure, and the figure that shows its tape."""
