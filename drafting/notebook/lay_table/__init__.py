"""The lay table: how the pieces lie on each cloth, moved by hand or searched for."""
