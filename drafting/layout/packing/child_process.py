"""Start, hear and end the child process of the packing library."""

from __future__ import annotations

import json
import subprocess
import sys
import threading
from contextlib import suppress
from importlib.util import find_spec
from pathlib import Path
from typing import Any

CHILD = Path(__file__).with_name("child.py")

PATIENCE = 5.0
"""Seconds a child may run over its time before it is ended (ours)."""


def library_there() -> bool:
    """Return whether the packing library is installed; it comes with the package's extra `search`."""
    return find_spec("spyrrow") is not None


class Child:
    """One run of the library; `lines` are the layouts heard so far, the best one last.

    Whatever happens in it (the library ends its process on input it does not like) ends the child
    alone: then `ended` is true and `lines` holds what was heard before.
    """

    def __init__(self, asked: dict[str, Any]) -> None:
        self.lines: list[dict[str, Any]] = []
        command = [sys.executable, "-P", str(CHILD)]
        self._process = subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True
        )
        self._reader = threading.Thread(target=self._hear, args=(json.dumps(asked),), daemon=True)
        self._reader.start()

    def _hear(self, asked: str) -> None:
        assert self._process.stdin
        assert self._process.stdout
        with suppress(OSError):  # a child that died before it read all of it
            self._process.stdin.write(asked)
            self._process.stdin.close()
        for line in self._process.stdout:
            with suppress(ValueError):
                self.lines.append(json.loads(line))

    @property
    def ended(self) -> bool:
        return self._process.poll() is not None and not self._reader.is_alive()

    @property
    def code(self) -> int | None:
        """The exit code: None while it runs, not 0 where the library gave up."""
        return self._process.poll()

    def stop(self) -> None:
        """End the child at once; what was heard stays."""
        if self._process.poll() is None:
            self._process.kill()
        self._process.wait()
        self._reader.join(PATIENCE)
