"""Make an environment under a dot folder, install into it what a lock names with hashes, and run in it.

    python3 .ci/start.py drafting demo --out out     the kit alone, in .venv; any drafting command
    python3 .ci/start.py tests                       with all that the tests need, in .venv-tests

Needs nothing but Python 3.11 or newer; run again, it installs only what has changed.
"""

from __future__ import annotations

import os
import subprocess
import sys
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
LOCKS = {"drafting": (".venv", "requirements-kit.lock"), "tests": (".venv-tests", "requirements.lock")}
UNKEPT = "PYTHONDONTWRITEBYTECODE"
"""Where it is set, each of the hundreds of processes that the tests start would compile every module anew."""
SCRIPTS = "Scripts" if os.name == "nt" else "bin"


def main(asked: list[str]) -> int:
    """Install for the first word of what is asked, and run it; return its exit code."""
    if not asked or asked[0] not in LOCKS:
        print(__doc__, file=sys.stderr)
        return 2
    if sys.version_info < (3, 11):  # noqa: UP036 (it may be started by any)
        print(f"This is Python {sys.version.split()[0]}; the kit needs 3.11 or newer.", file=sys.stderr)
        return 2
    folder, lock = LOCKS[asked[0]]
    place = ROOT / folder
    python = place / SCRIPTS / ("python.exe" if os.name == "nt" else "python")
    if not python.exists():
        venv.create(place, with_pip=True, symlinks=os.name != "nt")
    pip = [str(python), "-m", "pip", "--disable-pip-version-check", "install", "-q", "--no-compile"]
    subprocess.run(
        [*pip, "--only-binary", ":all:", "--require-hashes", "-r", str(ROOT / ".ci" / lock)], check=True
    )
    subprocess.run([*pip, "--no-build-isolation", "--no-deps", "-e", str(ROOT)], check=True)
    module = "tests" if asked[0] == "tests" else "drafting"
    where = ROOT if asked[0] == "tests" else None
    environment = {name: value for name, value in os.environ.items() if name != UNKEPT}
    run = subprocess.run([str(python), "-m", module, *asked[1:]], cwd=where, env=environment, check=False)
    return run.returncode


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except subprocess.CalledProcessError as failed:
        print(f"Installing did not work: {' '.join(map(str, failed.cmd))}", file=sys.stderr)
        sys.exit(failed.returncode)
