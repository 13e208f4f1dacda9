"""READ FIRST: from a costume file to checked pieces. The whole flow is `make.make`."""
