"""The fitting page: notes taken at the body, and the pieces before and after them."""
