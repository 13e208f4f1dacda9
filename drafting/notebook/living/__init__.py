"""One costume that all pages share: what is asked of it, kept on disk as it is asked."""
