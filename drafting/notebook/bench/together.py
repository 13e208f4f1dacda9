"""What a bench shares with the other views of its costume: followed, told, saved, handed on to be written."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

from drafting.costume.file import CostumeFile
from drafting.ground.errors import DraftError
from drafting.notebook.bench import state as st
from drafting.notebook.bench.history import History
from drafting.notebook.living.journal import changed_words
from drafting.notebook.living.living import Living


class Together(ABC):
    """The part of a bench that knows of the `living` costume. A bench shows by `_show` and `_come_to`."""

    living: Living
    history: History
    widgets: Any

    @abstractmethod
    def safely(self, do: Callable[[], None]) -> None:
        """Do it; what is refused is said."""

    @abstractmethod
    def _show(self) -> None:
        """Show what stands."""

    @abstractmethod
    def _show_states(self) -> None:
        """Show how each control stands."""

    @abstractmethod
    def _come_to(self, history: History) -> None:
        """Take up another history, and show it."""

    @property
    def view(self) -> Any:
        """All that is shown of the bench."""
        return self.widgets.view

    def close(self) -> None:
        """Let the bench go: it hears of no more changes."""
        self.living.leave(self.heard)

    @property
    def costume(self) -> CostumeFile:
        """The costume as its file has it."""
        return self.living.file

    @property
    def standing(self) -> st.Standing:
        """What is asked for now, and what was made of it."""
        return self.history.now

    @property
    def garment(self) -> str:
        """The name of the garment that is shown."""
        return self.standing.garment

    def save(self, to: Path | str | None = None) -> Path:
        """Write the choices back into the costume file, or into a copy; return where they stand.

        Comments and order stay. Raises `DraftError` where what is asked cannot be drafted,
        `InputError` where the very choice has changed in the file meanwhile, or it cannot be written.
        """
        self.follow()
        self._refuse_if_refused("nothing was saved")
        place = self.living.save(None if to is None else Path(to), self)
        now = st.written_down(self.standing, self.living.asked)
        self.history = self.history.turned(now)
        self._show()
        return place

    def follow(self) -> None:
        """Take over what was chosen elsewhere; nothing where this bench shows the latest."""
        asked, now = self.living.asked, self.standing.asked
        if not self.stale:
            return
        new = st.following(self.standing, asked)
        files_stay = (asked.wearer, asked.fabrics) == (now.wearer, now.fabrics)
        self._come_to(self.history.moved(new) if files_stay else History(new))

    @property
    def stale(self) -> tuple[str, ...]:
        """What was changed elsewhere and is not shown here yet, in words."""
        return changed_words(self.standing.asked, self.living.asked)

    def heard(self, by: object) -> None:
        """Tell what another view has changed, and offer to follow; another garment is followed at once."""
        self.safely(partial(self._heard, by))

    def _heard(self, by: object) -> None:
        asked, shown = self.living.asked, self.garment
        if by is not self:
            mine = (st.only_garment(costume, shown) for costume in (self.standing.asked, asked))
            if not changed_words(*mine):
                self.history = self.history.turned(replace(self.standing, asked=asked))
            self._show_states()
        self.widgets.bar.tell(self.living, self.stale)

    def wanted(self) -> CostumeFile:
        """Return the costume as the controls say; raises `DraftError` where that is refused."""
        self.follow()
        self._refuse_if_refused("nothing was written")
        return self.standing.asked

    def _refuse_if_refused(self, nothing: str) -> None:
        if self.standing.refusal:
            raise DraftError(
                f"{nothing}, as what the controls ask for cannot be drafted", turn="move the last one back first"
            )
