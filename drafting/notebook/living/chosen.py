"""Which costumes are at hand, and which one the pages open: remembered for all of them. No widgets.

At hand are the costume files of the folder that the maker works in (and one folder down), and those in
`measurements/costumes`. What she chose stands in a small file in that folder; `DRAFTING_COSTUME`
names what pages open with until she chooses another.
"""

from __future__ import annotations

import codecs
import json
import os
import tomllib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from drafting.ground.names import clean_text
from drafting.ground.shipped import OPEN_WITH, WORK_FOLDER, demo_costume, shipped
from drafting.notebook.files import costume_path
from drafting.notebook.whole_files import put_whole

REMEMBERED = ".drafting-costume.json"
"""The small file that remembers the costume."""

SKIPPED = {"out", "build", "dist", "node_modules", "measurements", "notebooks"}
"""Folders that are not looked into for costumes of hers."""


@dataclass(frozen=True)
class AtHand:
    """A costume to choose: its file, and the title it gives itself."""

    path: Path
    title: str

    @property
    def words(self) -> str:
        """What the chooser shows: its title, and where it stands.

        >>> AtHand(Path("my-coat/costume.toml"), "A coat").words
        'A coat (my-coat/costume.toml)'
        """
        return f"{self.title} ({self.place})"

    @property
    def place(self) -> str:
        """Its file with the folder it stands in."""
        return f"{self.path.parent.name}/{self.path.name}"


def work_folder() -> Path:
    """Return the folder that the maker works in: where she opened the pages, else the one above them."""
    named = os.environ.get(WORK_FOLDER)
    return Path(named) if named else Path.cwd().parent


def costumes_at_hand(folder: Path, more: Iterable[Path] = ()) -> tuple[AtHand, ...]:
    """Return the costumes of a folder, of the folders in it, and in `measurements/costumes`, hers first.

    `more` are files to offer as well, whatever has become of them. Any other file that is no costume is passed
    over; one that cannot be read to its end but has garments is offered, and says what is wrong when it is opened.
    """
    kept = tuple(more)
    kit = shipped("measurements") / "costumes"
    own = folder / "measurements" / "costumes"
    near = Path.cwd().parent / "measurements" / "costumes"
    files = [*kept, *_hers(folder)]
    files += [*_tomls(own), *_tomls(near), *_tomls(kit)]
    found: dict[Path, AtHand] = {}
    named: set[tuple[str, bool]] = set()
    for file in files:
        shared = file.parent in (own, near, kit)
        if file.resolve() in found or (shared and (file.name, shared) in named):
            continue  # her copy of a shipped costume stands for it
        title = _title(file) or (file.stem if file in kept else None)
        if title is not None:
            found[file.resolve()] = AtHand(file, title)
            named.add((file.name, shared))
    return tuple(found.values())


def opens_with(folder: Path, environment: Mapping[str, str] = os.environ) -> Path:
    """Return the costume that pages open: chosen before, else named by the environment, else written last.

    Of the costumes that the maker has in her folder, that is; where she has none, the demo's.
    A choice made while the environment named something else no longer counts.
    """
    wanted = environment.get(OPEN_WITH, "")
    row = _remembered(folder)
    if row.get("over") == wanted and row.get("costume"):
        chosen = folder / row["costume"]
        if chosen.is_file():
            return chosen
    if wanted and (named := _named(folder, wanted)):
        return named
    hers = [file for file in _hers(folder) if _title(file) is not None]
    return max(hers, key=lambda file: file.stat().st_mtime_ns, default=None) or costume_path(demo_costume().stem)


def remember(folder: Path, costume: Path, environment: Mapping[str, str] = os.environ) -> None:
    """Have every page open with this costume; raises `OSError`."""
    try:
        place = costume.resolve().relative_to(folder.resolve()).as_posix()
    except ValueError:
        place = str(costume.resolve())
    row = {"costume": place, "over": environment.get(OPEN_WITH, "")}
    if _remembered(folder) != row:
        put_whole(folder / REMEMBERED, (json.dumps(row, ensure_ascii=False) + "\n").encode())


def _remembered(folder: Path) -> dict[str, str]:
    try:
        row = json.loads((folder / REMEMBERED).read_text("utf-8"))
        return {key: str(row[key]) for key in ("costume", "over")}
    except (OSError, ValueError, KeyError, TypeError):
        return {}


def _named(folder: Path, wanted: str) -> Path | None:
    """Return the file that the environment names: a path, or the bare name of a costume at hand."""
    for place in (Path(wanted), folder / wanted):
        if place.is_file():
            return place
    return next((at.path for at in costumes_at_hand(folder) if at.path.stem == wanted), None)


def _hers(folder: Path) -> list[Path]:
    """Return the TOML files of a maker's folder, and of the folders in it."""
    return [*_tomls(folder), *(file for sub in _folders(folder) for file in _tomls(sub))]


def _tomls(folder: Path) -> list[Path]:
    return sorted(folder.glob("*.toml")) if folder.is_dir() else []


def _folders(folder: Path) -> Iterator[Path]:
    for sub in sorted(folder.iterdir()) if folder.is_dir() else ():
        skipped = SKIPPED.intersection(sub.parts[-1:]) or sub.match(".*")
        if sub.is_dir() and not skipped:
            yield sub


def _title(file: Path) -> str | None:
    """Return the title of a costume file, or None for another kind of file."""
    try:
        raw = file.read_bytes()
    except OSError:
        return None
    marked = raw.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE))
    text = raw.decode("utf-16" if marked else "utf-8-sig", errors="replace")
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        return file.stem if "[garments." in text else None
    if not isinstance(data.get("garments"), dict):
        return None
    title = data.get("title")
    return clean_text(title) if isinstance(title, str) and title.strip() else file.stem
