"""The hands of a garment drafted part by part, with its notes: `part`, then `both`, then `fitted`."""
