"""The making plan: everything between the pattern and a finished costume, as bare facts. Layer 5."""
