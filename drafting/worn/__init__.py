"""The drafted pieces sewn by computation and settled on the wearer's own form: a form, not a fitting."""
