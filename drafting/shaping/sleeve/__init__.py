"""The sleeve: its cap, what lies below it, how it is set in, and the two-piece sleeve."""
