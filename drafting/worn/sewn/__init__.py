"""A draft sewn up as one mesh: pieces cut back to their folds, meshed one by one, seams merged."""

from drafting.worn.sewn.mesh import sewn_mesh

__all__ = ["sewn_mesh"]
