"""Write a folder beside its place and swap it in whole.

A run fills a sibling `.NAME.new-...`, renames it `.NAME.ready-...` once it is complete and on disk,
then exchanges the two names in one step where the system can. Where it cannot, two renames do it,
by way of `.NAME.old-...`. A run that fails or is killed leaves what was there; what it leaves
beside is finished or cleared away at the start of the next run.
"""

from __future__ import annotations

import ctypes
import errno
import json
import os
import secrets
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from drafting.ground.errors import Fault, InputError

try:
    import fcntl
except ImportError:  # a system without file locks: two runs at once are then the maker's to avoid
    fcntl = None  # type: ignore[assignment]

REPORT, WORN, MOCK_UP = "report.json", "worn.json", "mock-up.json"
RECORDS = {"`drafting make`": REPORT, "`drafting worn`": WORN, "`drafting mock-up`": MOCK_UP}
"""What a folder is known for ours by, and which command writes it."""

WRITTEN = {
    REPORT: {"schema", "made_with"},
    WORN: {"schema", "form", "garments"},
    MOCK_UP: {"schema", "cloths", "garments"},
}
"""Keys that each record has."""

AT_FDCWD, RENAME_EXCHANGE = -100, 2  # linux/fcntl.h, linux/fs.h
CANNOT = (errno.ENOSYS, errno.EINVAL, errno.ENOTSUP)


def swap_in(out: Path, fill: Callable[[Path], None], record: str = REPORT) -> None:
    """Let `fill` write into a new folder, then put that folder in the place of `out`.

    `record` names the file by which a folder of this kind is known for ours.
    Raises InputError, before `fill` is called, where `out` cannot or must not be replaced; whatever
    `fill` raises goes through, with `out` as it was.
    """
    place = check_out(out, record)
    with _sole_user(place.parent):
        _finish_killed_runs(place)
    fresh = _new_folder(place)
    try:
        with _held(fresh):
            fill(fresh)
            _to_disk(fresh)
            ready = _beside(place, "ready")
            os.rename(fresh, ready)
            fresh = ready
            with _sole_user(place.parent):
                check_out(out, record)
                _swap(ready, place)
    finally:
        shutil.rmtree(fresh, ignore_errors=True)


def check_out(out: Path, record: str = REPORT) -> Path:
    """Return the real path that `out` stands for, a link followed.

    Raises InputError where `out` may not be replaced: it is a file, holds the current folder, lies
    in a folder that is missing or cannot be written, or holds something that we did not make.
    """
    try:
        place = out.resolve()
    except (OSError, RuntimeError):
        raise _refused(out, "is a link that leads back to itself", "name a folder") from None
    if place.exists() and not place.is_dir():
        raise _refused(out, "is a file", "name a folder of its own")
    if place == Path.cwd() or place in Path.cwd().parents:
        right = f"name a folder of its own, for example {out / 'out'}"
        raise _refused(out, "is the folder you stand in, or one above it", right)
    if os.path.ismount(place):
        raise _refused(out, "is a whole disk", f"name a folder on it, for example {out / 'out'}")
    if not place.parent.is_dir():
        raise _refused(out, f"there is no folder {place.parent}", "make that folder first")
    if not os.access(place.parent, os.W_OK | os.X_OK):
        right = "name a folder in a place you may write to"
        raise _refused(out, f"the folder {place.parent} cannot be written to", right)
    if place.is_dir() and any(place.iterdir()) and not _is_ours(place, record):
        right = "name a new or empty folder, or one that an earlier run made"
        other = next((f"holds what {run} made" for run, name in RECORDS.items() if _is_ours(place, name)), "")
        raise _refused(out, other or "holds files that this kit did not make", right)
    return place


def _is_ours(place: Path, record: str) -> bool:
    """Return whether `place` holds a record of this name written by this kit."""
    try:
        report = json.loads((place / record).read_bytes())
    except (OSError, ValueError):
        return False
    return isinstance(report, dict) and WRITTEN[record] <= report.keys()


def _swap(ready: Path, place: Path) -> None:
    """Put `ready` where `place` is; the old folder, if any, is gone afterwards."""
    if not place.exists():
        os.rename(ready, place)
    elif _exchange(ready, place):
        shutil.rmtree(ready, ignore_errors=True)
    else:
        old = _beside(place, "old")
        os.rename(place, old)
        os.rename(ready, place)
        shutil.rmtree(old, ignore_errors=True)
    _sync(place.parent)


def _exchange(one: Path, other: Path) -> bool:
    """Exchange two names in one step; return False where the system cannot."""
    try:
        rename = ctypes.CDLL(None, use_errno=True).renameat2
    except (AttributeError, OSError, TypeError):
        return False
    if rename(AT_FDCWD, os.fsencode(one), AT_FDCWD, os.fsencode(other), RENAME_EXCHANGE) == 0:
        return True
    code = ctypes.get_errno()
    if code in CANNOT:
        return False
    raise OSError(code, os.strerror(code), str(other))


def _finish_killed_runs(place: Path) -> None:
    """Finish a swap that was cut off between two renames, and clear what killed runs left."""
    left = {stage: _leftovers(place, stage) for stage in ("ready", "old", "new")}
    if not place.exists():
        for whole in (left["ready"] or left["old"])[:1]:
            os.rename(whole, place)
    for folder in (*left["ready"], *left["old"], *left["new"]):
        shutil.rmtree(folder, ignore_errors=True)


def _leftovers(place: Path, stage: str) -> list[Path]:
    """Return the folders of that stage beside `place` that no running process holds."""
    start = f".{place.name}.{stage}-"
    found = (path for path in place.parent.iterdir() if path.name.startswith(start))
    return sorted(path for path in found if path.is_dir() and not _is_held(path))


def _beside(place: Path, stage: str) -> Path:
    return place.with_name(f".{place.name}.{stage}-{secrets.token_hex(4)}")


def _new_folder(place: Path) -> Path:
    fresh = _beside(place, "new")
    try:
        fresh.mkdir()
    except OSError as error:
        right = "name a folder in a place you may write to"
        raise _refused(place, f"nothing can be made beside it ({error.strerror})", right) from None
    return fresh


@contextmanager
def _held(folder: Path, wait: bool = False) -> Iterator[bool]:
    """Lock `folder` while the block runs; a killed process lets go by itself.

    Yields False where the lock cannot be had (held by another, and not waited for).
    """
    if fcntl is None:
        yield True
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        yield _lock(handle, fcntl.LOCK_EX | (0 if wait else fcntl.LOCK_NB))
    finally:
        os.close(handle)


def _lock(handle: int, how: int) -> bool:
    try:
        fcntl.flock(handle, how)
    except BlockingIOError:
        return False
    except OSError:  # a file system without locks
        return True
    return True


@contextmanager
def _sole_user(parent: Path) -> Iterator[None]:
    """Be the only run that renames folders in `parent` while the block runs."""
    with _held(parent, wait=True):
        yield


def _is_held(folder: Path) -> bool:
    with _held(folder) as free:
        return not free


def _to_disk(folder: Path) -> None:
    """Have every file of a folder on disk before the folder takes its name."""
    for path in (*folder.rglob("*"), folder):
        _sync(path)


def _sync(path: Path) -> None:
    """Flush one file or folder, where the system lets a reader do so (a full disk is said here)."""
    if os.name != "posix":
        return
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    except OSError as error:
        if error.errno not in CANNOT:
            raise
    finally:
        os.close(handle)


def _refused(out: Path, what: str, right: str) -> InputError:
    return InputError((Fault(what, right, file=str(out)),))
