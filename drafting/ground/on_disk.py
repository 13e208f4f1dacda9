"""What has to reach the disk itself, against a machine that loses its power."""

from __future__ import annotations

import errno
import os
from pathlib import Path

CANNOT = (errno.ENOSYS, errno.EINVAL, errno.ENOTSUP)
"""What a system says that does not know how."""


def to_disk(path: Path) -> None:
    """Flush one file or folder, where the system lets a reader do so; raises `OSError` (a full disk)."""
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
