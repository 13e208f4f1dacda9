"""Write a folder beside its place and swap it in whole.

A run fills a sibling `.NAME.new-...`, renames it `.NAME.ready-...` once it is complete and on disk,
then exchanges the two names in one step where the system can. Where it cannot, two renames do it,
by way of `.NAME.old-...`. What has to go is named `.NAME.gone-...` before the first file of it is
deleted. A run that fails or is killed leaves what was there; what it leaves beside is finished or
cleared away at the start of the next run. A folder of ours lists its files in its record; one that
holds any other is never replaced.
"""

from __future__ import annotations

import ctypes
import json
import os
import secrets
import shutil
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from drafting.ground.errors import Fault, InputError
from drafting.ground.names import clean_text
from drafting.ground.on_disk import CANNOT, to_disk
from drafting.ground.units import SHOWN

try:
    import fcntl
except ImportError:  # a system without file locks: two runs at once are then the maker's to avoid
    fcntl = None  # type: ignore[assignment]

REPORT, WORN, MOCK_UP, CAST = "report.json", "worn.json", "mock-up.json", "cast.json"
RECORDS = {
    "`drafting make`": REPORT,
    "`drafting worn`": WORN,
    "`drafting mock-up`": MOCK_UP,
    "`drafting cast`": CAST,
}
"""What a folder is known for ours by, and which command writes it."""

WRITTEN = {
    REPORT: {"schema", "made_with"},
    WORN: {"schema", "form", "garments"},
    MOCK_UP: {"schema", "cloths", "garments"},
    CAST: {"schema", "cast", "wearers"},
}
"""Keys that each record has."""

FILES = "files"
"""The key of a record under which it lists all that its folder holds."""

LEFT_BY_SYSTEMS = frozenset({".DS_Store", "Thumbs.db", "desktop.ini"})
"""What file browsers leave in a folder that was only looked at (from memory)."""

NAMED = 3
"""Files named of those that a folder should not hold (ours)."""

Filled = Mapping[str, Any] | None
"""The record of a folder that was filled; None where it keeps none."""

AT_FDCWD, RENAME_EXCHANGE = -100, 2  # linux/fcntl.h, linux/fs.h


def swap_in(out: Path, fill: Callable[[Path], Filled], record: str = REPORT) -> None:
    """Let `fill` write into a new folder, then put that folder in the place of `out`.

    `record` names the file by which a folder of this kind is known for ours; what `fill` returns is
    written there, with the list of all files.
    Raises InputError, before `fill` is called, where `out` cannot or must not be replaced; whatever
    `fill` raises goes through, with `out` as it was.
    """
    place = check_out(out, record)
    with _sole_user(place.parent):
        _finish_killed_runs(place)
    fresh = _new_folder(place)
    try:
        with _held(fresh):
            _record(fresh, record, fill(fresh))
            _to_disk(fresh)
            ready = _beside(place, "ready")
            os.rename(fresh, ready)
            fresh = ready
            with _sole_user(place.parent):
                check_out(out, record)
                _swap(ready, place)
    finally:
        _clear(fresh, place)


def _record(folder: Path, record: str, data: Filled) -> None:
    """Write a folder's record, with the list of its files."""
    if data is None:
        return
    whole = {**data, FILES: sorted([*_files_in(folder), record])}
    text = json.dumps(whole, indent=1, ensure_ascii=False, allow_nan=False)
    (folder / record).write_text(text + "\n", encoding="utf-8", newline="\n")


def _files_in(folder: Path) -> list[str]:
    """Return every file and link in a folder and the folders in it, by its path from there."""
    found = []
    for top, folders, files in os.walk(folder):
        links = [name for name in folders if os.path.islink(os.path.join(top, name))]
        found += [Path(top, name).relative_to(folder).as_posix() for name in (*files, *links)]
    return found


def check_out(out: Path, record: str = REPORT, inputs: Iterable[Path | None] = ()) -> Path:
    """Return the real path that `out` stands for, a link followed.

    Raises InputError where `out` may not be replaced: it is a file, holds the current folder or one of
    the `inputs`, lies in a folder that is missing or cannot be written, or holds anything that the
    record of an earlier run does not list.
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
    for one in inputs:
        if one is not None and place in (*Path(os.path.abspath(one)).parents, *_real(one).parents):
            what = f"holds {clean_text(one.name, SHOWN)}, which is read for it, and is replaced as a whole"
            raise _refused(out, what, "name a folder that holds nothing of yours; nothing was touched")
    _check_held(out, place, record)
    return place


def _real(path: Path) -> Path:
    try:
        return path.resolve()
    except (OSError, RuntimeError):
        return path


def _check_held(out: Path, place: Path, record: str) -> None:
    """Raise InputError where a folder holds what the record of an earlier run does not list."""
    if not place.is_dir() or all(path.name in LEFT_BY_SYSTEMS for path in place.iterdir()):
        return
    ours = listed_in(place, record)
    if ours is None:
        right = "name a new or empty folder, or one that an earlier run made"
        others = (run for run, name in RECORDS.items() if listed_in(place, name) is not None)
        other = next((f"holds what {run} made" for run in others), "")
        raise _refused(out, other or "holds files that this kit did not make", right)
    strange = sorted(
        name for name in _files_in(place) if name not in ours and Path(name).name not in LEFT_BY_SYSTEMS
    )
    if strange:
        named = ", ".join(clean_text(name, SHOWN) for name in strange[:NAMED])
        more = f" and {len(strange) - NAMED} more" if len(strange) > NAMED else ""
        what = f"holds {named}{more}, which no run made"
        raise _refused(out, what, "move it elsewhere, or name another folder; nothing was touched")


def listed_in(place: Path, record: str) -> frozenset[str] | None:
    """Return the files that a record of this kit lists, None where there is no such record."""
    try:
        report = json.loads((place / record).read_bytes())
    except (OSError, ValueError, RecursionError):
        return None
    if not isinstance(report, dict) or not WRITTEN[record] <= report.keys():
        return None
    files = report.get(FILES)
    names = files if isinstance(files, list) else ()
    return frozenset(name for name in names if isinstance(name, str)) | {record}


def _swap(ready: Path, place: Path) -> None:
    """Put `ready` where `place` is; the old folder, if any, is gone afterwards."""
    if not place.exists():
        os.rename(ready, place)
    elif _exchange(ready, place):
        _clear(ready, place)
    else:
        old = _beside(place, "old")
        os.rename(place, old)
        os.rename(ready, place)
        _clear(old, place)
    to_disk(place.parent)


def _clear(folder: Path, place: Path) -> None:
    """Delete a folder beside `place`, named as going first: half deleted it must not be taken for whole."""
    gone = _beside(place, "gone")
    try:
        os.rename(folder, gone)
    except OSError:
        return  # it is gone, or has its place already
    shutil.rmtree(gone, ignore_errors=True)


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
    left = {stage: _leftovers(place, stage) for stage in ("ready", "old", "new", "gone")}
    if not place.exists():
        for whole in (left["ready"] or left["old"])[:1]:
            os.rename(whole, place)
    for folder in (found for stage in left.values() for found in stage):
        _clear(folder, place)


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
        to_disk(path)


def _refused(out: Path, what: str, right: str) -> InputError:
    return InputError((Fault(what, right, file=str(out)),))
