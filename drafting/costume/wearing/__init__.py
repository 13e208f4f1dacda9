"""A costume put on its wearer's form: sewn, settled, arms raised, hems treated, signs read, dressed."""
