"""A costume that lives: bench, lay, plan, worn view and export of it are one state.

    costume file + journal -> Living.asked -> every view of it

A view `put`s what it is asked, and the others hear that there is something new; nobody else's choice is
lost, as only what changed is put. Pages in other kernels meet in the journal on disk.
"""

from __future__ import annotations

import threading
from collections.abc import Callable
from pathlib import Path
from typing import Any

from drafting.costume.file import CostumeFile, read_costume
from drafting.costume.lays import laid_out, materials
from drafting.costume.make import Made, make
from drafting.costume.telling import Tell, tell_nobody
from drafting.ground.errors import DraftError, Fault, InputError
from drafting.layout import COUNT, Cloth, Lay, Part, hand_row, lay_out
from drafting.notebook.errors_said import sentence
from drafting.notebook.living import journal as jn
from drafting.notebook.living import saving
from drafting.notebook.living.kept import hold_fast, journal_place, keep, kept_moves, let_go
from drafting.notebook.living.lays import keep_lays, kept_lays, lays_place, same_pieces, standing_lays
from drafting.notebook.living.saving import Kept
from drafting.notebook.living.watched import FileMarks, marks_of, named_files
from drafting.notebook.when_resting import Later

HOLD = 0.3
"""Seconds after the last choice at which the journal is brought to the disk itself (ours)."""

LOOK = 1.0
"""Seconds between two looks at what other pages and editors have written (ours)."""

Hears = Callable[[object], None]


class Living:
    """A costume as it is asked for now. `journal` is None where nothing is to be kept on disk.

    `file` is the costume as its file has it, `asked` the same with every choice made since; `clashing`
    are the choices that both changed, until a save has asked about them. Raises `InputError` for a
    file that cannot be read.
    """

    def __init__(self, costume: CostumeFile, journal: Path | None = None) -> None:
        self.file, self.journal = costume, journal
        self.path = Path(costume.path)
        self.read = _kept(costume)
        self.asked = costume if journal is None else jn.laid_over(costume, kept_moves(journal))
        self.restored = len(jn.apart(self.asked, costume))
        self.trouble = self.unkept = ""
        self.clashing: tuple[jn.Named, ...] = ()
        self.names = named_files(self.path) if journal is not None else ()
        self.lays_file = lays_place(self.path) if journal is not None else None
        self.hand_rows: dict[str, Any] = kept_lays(self.lays_file) if self.lays_file else {}
        self.found: dict[str, Lay] = {}
        self.laying = threading.RLock()
        self.hearers: list[Hears] = []
        self.looks: FileMarks = self._marks()
        self._made: tuple[CostumeFile, Made] | None = None
        self.held = Later(self._hold, HOLD, needed=False)
        self.watch = Later(self._watch, LOOK, needed=False)
        if journal is not None:
            self.watch.ask()

    def hear(self, hears: Hears) -> None:
        """Have a view hear of every change; it is handed the view that made it, or None."""
        self.hearers.append(hears)

    def leave(self, hears: Hears) -> None:
        """Let a view go."""
        self.hearers = [one for one in self.hearers if one != hears]

    @property
    def made(self) -> Made:
        """The costume as asked, drafted and checked; raises `DraftError` where it cannot be."""
        if self._made is None or self._made[0] is not self.asked:
            self._made = (self.asked, make(self.asked))
        return self._made[1]

    def standing_lays(self, made: Made) -> dict[str, Lay]:
        """Return the lays that stand for these pieces already: a hand's, else one that was found."""
        rows = kept_lays(self.lays_file) if self.lays_file else self.hand_rows
        return standing_lays(made, rows, self.found)

    def put_lay(self, lay: Lay, by_hand: bool, by: object = None) -> None:
        """Take the lay of one cloth as it stands; a hand's is kept on disk until another takes its place."""
        rows = {role: row for role, row in self.hand_rows.items() if role != lay.role}
        if by_hand:
            rows[lay.role] = hand_row(lay)
        if rows == self.hand_rows:
            return
        self.hand_rows = rows
        try:
            if self.lays_file:
                keep_lays(self.lays_file, rows)
        except OSError as error:
            self.unkept = f"The lay cannot be kept beside the costume ({error.strerror})."
        self._tell(by)

    def laid(self, tell: Tell = tell_nobody) -> Made:
        """Return the costume as asked, with its lays: those that stand, else the ones found; `tell` hears each."""
        made = self.made
        standing = self.standing_lays(made)
        wanted = list(materials(made))
        whole = sum(len(parts) ** 2 for _, parts in wanted) or 1
        done = 0
        for cloth, parts in wanted:
            tell(f"laying the pieces on {cloth.title}", done / whole)
            done += len(parts) ** 2
            if cloth.role not in standing:
                standing[cloth.role] = self.found_lay(cloth, parts, COUNT * len(parts) ** 2 / whole)
        return laid_out(made, standing=standing)

    def found_lay(self, cloth: Cloth, parts: tuple[Part, ...], count: float) -> Lay:
        """Return the lay that a search finds: the one found before for these very pieces, or a new one."""
        with self.laying:
            old = self.found.get(cloth.role)
            if old is not None and old.cloth == cloth and same_pieces(old, parts):
                return old
            lay = lay_out(parts, cloth, count=count)
            self.found = {**self.found, cloth.role: lay}
            return lay

    @property
    def unsaved(self) -> tuple[jn.Named, ...]:
        """Every choice that stands in the journal and not in the file."""
        return jn.apart(self.asked, self.file)

    def put(self, asked: CostumeFile, by: object = None) -> None:
        """Take what a view asks for, keep it on disk, and tell the others.

        What cannot be kept is told by `unkept`; it is asked for all the same.
        """
        moves = jn.differences(self.asked, asked, self.file)
        self.asked = asked
        if moves:
            self._keep(moves)
            self._tell(by)

    def _keep(self, moves: tuple[jn.JournalLine, ...]) -> None:
        if self.journal is None:
            return
        alone = self._marks() == self.looks
        try:
            keep(self.journal, moves)
            self.unkept = ""
        except OSError as error:
            self.unkept = f"Choices cannot be kept beside the costume ({error.strerror}): save them soon."
        if alone:
            self.looks = self._marks()
        self.held.ask()

    def _hold(self) -> None:
        if self.journal is not None:
            hold_fast(self.journal)

    def save(self, to: Path | None = None, by: object = None) -> Path:
        """Write the choices into the costume file, or into a copy, comments kept; return where.

        The file is read again first, so that what others wrote meanwhile stays. Raises `InputError`
        where another has changed the very choice that would be written, or nothing can be written.
        """
        if to is None:
            clash = self._clashes()
            if clash:
                raise clash
        if isinstance(self.read, InputError):
            raise self.read
        if to is not None:
            self.file, self.read = saving.save_copy(self.asked, self.file, self.read, to)
            self.path, self.journal = to, journal_place(to) if self.journal else None
            self.asked, self.clashing = self.file, ()
            self._tell(by)
            return to
        written = jn.differences(self.file, self.asked, self.file)
        self.file, self.read = saving.save(self.asked, self.file, self.read)
        self.asked = jn.laid_over(self.file, ())
        self._let_go(written)
        self.looks = self._marks()
        self._tell(by)
        return self.path

    def _let_go(self, written: tuple[jn.JournalLine, ...]) -> None:
        """Clear what now stands in the file from what is kept beside it; that this fails undoes no save."""
        if self.journal is None:
            return
        try:
            let_go(self.journal, written)
            self.unkept = ""
        except OSError as error:
            self.unkept = f"The choices are saved; beside the costume nothing can be kept ({error.strerror})."

    def _clashes(self) -> InputError | None:
        """Read the file again; return a refusal, once, where it changed what would be written."""
        self.look()
        if self.trouble:
            if isinstance(self.read, InputError):
                return self.read
            return InputError(
                [Fault(self.trouble.rstrip("."), "mend the file, then save again", "", str(self.path))]
            )
        theirs, self.clashing = self.clashing, ()
        if not theirs:
            return None
        names = ", ".join(f"{choice.replace('_', ' ')} of {garment}" for garment, choice in theirs)
        what = f"{self.path.name}: {names} was changed in the file meanwhile, and nothing was written"
        right = "Save again puts yours in its place, Reset takes what the file says"
        return InputError([Fault(what, right, "", str(self.path))])

    def look(self, by: object = None) -> None:
        """Read again what others have written; views hear of it where something is new."""
        before, was, file = self.asked, self.file, self._file_now()
        mine = jn.differences(self.file, self.asked, self.file) if self.journal is None or self.unkept else ()
        self.file = file
        kept = () if self.journal is None else kept_moves(self.journal)
        self.asked = jn.laid_over(file, (*kept, *mine))
        changed = {*self.clashing, *jn.apart(file, was)}
        self.clashing = tuple(named for named in self.unsaved if named in changed)
        self.looks = self._marks()
        if jn.changed_words(before, self.asked):
            self._tell(by)
        else:
            self.asked = before if before == self.asked else self.asked

    def _file_now(self) -> CostumeFile:
        """Return the costume file as it reads now; the last that could be read where it cannot be."""
        try:
            file = read_costume(self.path)
            self.read, self.trouble = _kept(file), ""
            self.names = named_files(self.path) if self.journal is not None else ()
        except DraftError as error:
            self.trouble = (
                f"The costume file cannot be read as it stands now: {sentence(error, self.file.told_in)}"
            )
            return self.file
        return self.file if file == self.file else file

    def _watch(self) -> None:
        self.watch.ask()
        if self.hearers and self._marks() != self.looks:
            self.look()

    def _marks(self) -> FileMarks:
        return marks_of((*self.names, *([self.journal] if self.journal else [])))

    def _tell(self, by: object) -> None:
        for hears in tuple(self.hearers):
            hears(by)


_OPEN: dict[Path, Living] = {}


def living_costume(path: Path | str) -> Living:
    """Return the one living costume of a file: whoever asks in this kernel gets the same.

    Raises `InputError` for a file that cannot be read.
    """
    place = Path(path).resolve()
    found = _OPEN.get(place)
    if found is None:
        found = _OPEN[place] = Living(read_costume(path), journal_place(path))
    else:
        found.look()
    return found


def living_of(costume: CostumeFile | Living) -> Living:
    """Return a living costume; one that was handed over as read lives by itself and keeps no journal."""
    return costume if isinstance(costume, Living) else Living(costume)


def _kept(costume: CostumeFile) -> Any:
    try:
        return saving.kept(costume)
    except InputError as error:
        return error


__all__ = ["Kept", "Living", "living_costume", "living_of"]
