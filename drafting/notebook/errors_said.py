"""Errors as sentences: no callback may fail in silence, no maker has to read a traceback."""

from __future__ import annotations

from collections.abc import Callable

from drafting.checks.words import capital
from drafting.ground.errors import DraftError, InputError

OURS = "This is a fault of the kit, not of yours, and nothing was changed"


def sentence(error: DraftError, unit: str | None = None) -> str:
    """Return what is wrong and what would be right, without file and line; lengths in `unit` (None: cm).

    >>> sentence(DraftError("the cap cannot fit", value="70 cm", turn="less arm ease"))
    'The cap cannot fit, given 70 cm; less arm ease.'
    """
    if isinstance(error, InputError):
        faults = [fault.in_unit(unit) for fault in error.faults]
        said = [f"{f.what}; {f.right}" if f.right else f.what for f in faults]
    else:
        said = [error.said(unit)]
    return " ".join(f"{capital(text).rstrip('.')}." for text in said)


def plainly(do: Callable[[], None], tell: Callable[[str], None], unit: str | None = None) -> None:
    """Run a widget's callback; whatever goes wrong is told in words, lengths in `unit` (None: cm).

    Jupyter drops what a callback raises. A refusal, or a file that cannot be used, ends here; a
    fault of ours is told too, then goes on to Jupyter's log.
    """
    try:
        do()
    except DraftError as error:
        tell(sentence(error, unit))
    except OSError as error:
        name = f"{error.filename}: " if error.filename else ""
        tell(f"{name}cannot be used ({error.strerror or error}).")
    except Exception as error:
        tell(f"{OURS} ({type(error).__name__}: {error}).")
        raise


def show_refusals_plainly() -> None:
    """Have a notebook show a `DraftError` as its sentences alone.

    IPython asks an error for `_render_traceback_` (its `InteractiveShell.showtraceback`) before it
    prints one of its own; the cell fails all the same, and what stands below it does not run.
    """
    DraftError._render_traceback_ = lambda self: self.said(None).splitlines()  # type: ignore[attr-defined]
