"""The sewn mesh brought to rest: the place where cloth, weight, elastic and the form are in balance."""
