"""What the lay table shares with the other views of its costume: pieces taken up, followed, let go."""

from __future__ import annotations

import threading
from abc import ABC, abstractmethod
from typing import Any

from drafting.costume.file import CostumeFile
from drafting.costume.lays import materials
from drafting.costume.make import Made
from drafting.layout import Cloth, Lay, lay_out
from drafting.notebook.lay_table import state as ls
from drafting.notebook.living.bar import LivingBar
from drafting.notebook.living.journal import changed_words
from drafting.notebook.living.living import Living

FIRST = 40
"""Outlines placed for the lay that shows at once; a better one follows (ours: under half a second)."""

SET_ASIDE = "Set aside:"


class LivingTable(ABC):
    """The part of a lay table that knows of the `living` costume, if it was handed one."""

    living: Living | None
    asked: CostumeFile
    draft: Made
    parts: dict[str, Any]
    lays: ls.Lays
    lock: threading.RLock
    stop: threading.Event
    following: threading.Thread
    living_bar: LivingBar
    cloth: Any

    @property
    def role(self) -> str:
        """The role of the cloth that is shown."""
        return str(self.cloth.value)

    @abstractmethod
    def _show(self) -> None:
        """Show the lay that stands."""

    @abstractmethod
    def _say(self, words: str, head: str = "") -> None:
        """Say what was refused."""

    @abstractmethod
    def _quick(self, role: str, count: float = FIRST) -> Lay:
        """Return a first lay of a cloth."""

    @abstractmethod
    def _look_on(self, roles: tuple[str, ...], after: threading.Thread | None = None) -> threading.Thread:
        """Look for better lays, after the work before."""

    def _take_up(self, made: Made | None) -> None:
        """Put the pieces of a costume on the table; a lay that stands for them already stays."""
        if self.living:
            self.asked, made = self.living.asked, self.living.made
        assert made is not None
        standing = self.living.standing_lays(made) if self.living else {}
        self.draft = made
        self.parts = {cloth.role: (cloth, parts) for cloth, parts in materials(made)}
        quick = [self._quick(role, FIRST if n == 0 else 0) for n, role in enumerate(self.parts)]
        self.lays = ls.lays_of(tuple(quick))
        for role, lay in standing.items():
            self.parts[role] = (lay.cloth, self.parts[role][1])
            by_hand = self.living is not None and role in self.living.hand_rows
            self.lays = self.lays.with_lay(lay) if by_hand else self.lays.renewed(lay)

    def heard(self, _: object) -> None:
        """Tell that these are the pieces of an earlier costume, and offer to lay the new ones."""
        if self.living:
            self.living_bar.tell(self.living, changed_words(self.asked, self.living.asked))

    def follow(self) -> None:
        """Lay the pieces as they are now; a hand's lay stays where they still fit so."""
        if self.living is None or not changed_words(self.asked, self.living.asked):
            return
        self.stop.set()
        role = self.role
        lost = set(self.living.hand_rows) - set(self.living.standing_lays(self.living.made))
        with self.lock:
            self._take_up(None)
        roles = list(self.parts)
        self.cloth.options = [(f"{r}: {self.parts[r][0].title}", r) for r in roles]
        self.cloth.value = role if role in roles else roles[0]
        self._show()
        self.heard(None)
        if lost:
            names = ", ".join(sorted(lost))
            self._say(
                f"the pieces on {names} no longer fit the lay your hand had made; it was laid anew", SET_ASIDE
            )
        self.following = self._look_on(tuple(roles), self.following)

    def close(self) -> None:
        """Let the table go: searches stop, and it hears of no more changes."""
        self.stop.set()
        if self.living:
            self.living.leave(self.heard)

    def _found(self, cloth: Cloth, parts: Any, count: float) -> Lay:
        return self.living.found_lay(cloth, parts, count) if self.living else lay_out(parts, cloth, count=count)

    def _written_faults(self, role: str) -> Any:
        return self.draft.costume.lays.get(role, (None, ()))[1]
