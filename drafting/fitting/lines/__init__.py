"""The alterations of the line: a draft as it is, an amount, and the draft that has been altered."""
