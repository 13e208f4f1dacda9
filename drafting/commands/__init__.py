"""The commands: `drafting make | demo | body | blocks | lab | app`."""
