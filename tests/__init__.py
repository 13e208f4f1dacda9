"""The tests; a package of its own name, since some libraries install a `tests` of theirs."""
