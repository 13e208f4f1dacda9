"""Everything about paper: its sizes, what was wished, pages, the PDF, the first page, the ruler."""
