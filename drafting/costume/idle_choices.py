"""Choices that a maker wrote and that nothing follows from: her coat has no tails, or another choice settles it.

Told, never refused: nothing is wrong with the draft, but she meant something by it. A garment is drafted without
such a choice; where the draft is the same, what keeps it idle is looked for by drafting too.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import islice
from typing import Any

from drafting.blocks import all_blocks
from drafting.costume.choices import Chosen, block_named, parts_of
from drafting.costume.file import CostumeFile, Garment
from drafting.costume.garment import drafted
from drafting.costume.refused import chosen_on_wearer
from drafting.draft.draft import Draft
from drafting.ground.choices import Choice
from drafting.ground.errors import DraftError, InputError
from drafting.ground.findings import Finding
from drafting.reading.given import Given, Origin

TRIES = 40
"""Drafts of one garment tried to learn what keeps a choice idle, before it is told without (ours)."""


def idle_choices(costume: CostumeFile, garment: Garment, values: Mapping[str, Any]) -> Iterator[Finding]:
    """Yield a note for each choice of a block that was typed and changes nothing; `values` are those in use.

    A choice that is what it would be untyped is none, nor one that draws what the figure gets untyped and another
    value of which counts; nor is one of the finish, which the plan reads too. Never raises.
    """
    ask = _Asked(costume, garment, {name: Given(values[name]) for name in garment.choices if name in values})
    usual = ask.drafted(ask.given)
    for name, given in ask.given.items():
        without = ask.chosen({one: other for one, other in ask.given.items() if one != name})
        known = next((choice for choice in ask.block.choices if choice.name == name), None)
        if known is None or usual is None or without is None or without.values[name][0] == given.value:
            continue
        if ask.draft(without) == usual and not ask.another_counts(known, usual):
            yield _said(known, given.value, garment, ask.kept_by(name))


class _Asked:
    """A garment to be drafted with other choices than were written; `given` those, in mm, degrees, words."""

    def __init__(self, costume: CostumeFile, garment: Garment, given: Mapping[str, Given]) -> None:
        self.costume, self.garment, self.given = costume, garment, dict(given)
        self.block = block_named(garment.block)

    def chosen(self, given: Mapping[str, Given]) -> Chosen | None:
        """Return the choices filled, or None where they cannot be."""
        try:
            return chosen_on_wearer(self.costume, self.garment, self.block, given, Origin())
        except InputError:
            return None

    def draft(self, chosen: Chosen | None) -> Draft | None:
        """Return the draft of these choices without a wish or a note, or None where there is none."""
        costume = self.costume
        try:
            cloth = costume.fabrics.get(self.garment.fabric)
            return None if chosen is None else drafted(costume.wearer, cloth, self.block, chosen)
        except DraftError:
            return None

    def drafted(self, given: Mapping[str, Given]) -> Draft | None:
        """Return the draft of what is given."""
        return self.draft(self.chosen(given))

    def counts(self, name: str, given: Mapping[str, Given]) -> bool:
        """Return whether the choice of this name changes the draft beside the others given."""
        with_it = self.drafted({**given, name: self.given[name]})
        without = self.drafted({one: other for one, other in given.items() if one != name})
        return None not in (with_it, without) and with_it != without

    def another_counts(self, choice: Choice, usual: Draft) -> bool:
        """Return whether another value of a choice draws anything else than the usual."""
        others = _beside(choice, self.given[choice.name].value)
        drafts = (self.drafted({**self.given, choice.name: Given(value)}) for value in others)
        return any(draft is not None and draft != usual for draft in drafts)

    def kept_by(self, name: str) -> tuple[str, str]:
        """Return what was chosen that keeps a choice idle, or what would have it count; ("", "") unknown."""
        for other in self.given:
            rest = {one: given for one, given in self.given.items() if one != other}
            if other != name and self.counts(name, rest):
                return "settled", other
        for choice, value in islice(self._switches(name), TRIES):
            if self.counts(name, {**self.given, choice.name: Given(value)}):
                return "counts", _chosen_so(choice, value)
        return "", ""

    def _switches(self, name: str) -> Iterator[tuple[Choice, Any]]:
        """Yield what may bring a choice in: words, yes and no, a width that is 0; those of its own part first."""
        choices = {choice.name: choice for choice in self.block.choices}
        blocks = all_blocks()
        parts = [[choice.name for choice in blocks[part].choices] for part in parts_of(self.block)]
        near = sorted(parts, key=lambda names: name not in names)
        for one in dict.fromkeys(other for names in near for other in names):
            if one not in self.given:
                yield from ((choices[one], value) for value in _other_values(choices[one]))


def _other_values(choice: Choice) -> tuple[Any, ...]:
    """Return what a choice of words or of yes and no may be beside its default, or one of a width that is 0."""
    if choice.unit == "yes/no":
        return (not choice.default,)
    if choice.unit == "count" and choice.high:
        return (int(choice.high),)
    if choice.default == 0 and choice.high:
        return (0.3 * choice.high,)
    return tuple(word for word in choice.words if word != choice.default)


def _beside(choice: Choice, value: Any) -> tuple[Any, ...]:
    """Return the other words of a choice, or what lies half-way from its value to either end."""
    if choice.unit == "yes/no":
        return ()
    if choice.low is None or choice.high is None:
        return tuple(word for word in choice.words if word != value)
    between = [(value + end) / 2 for end in (choice.low, choice.high)]
    return tuple(round(one) if choice.unit == "count" else one for one in between)


def _chosen_so(choice: Choice, value: object) -> str:
    if isinstance(value, str):
        return f'`{choice.name} = "{value}"`'
    if isinstance(value, bool):
        return f"`{choice.name} = {str(value).lower()}`"
    return f"more `{choice.name}`" if choice.unit == "count" else f"a `{choice.name}`"


def _said(choice: Choice, value: object, garment: Garment, kept: tuple[str, str]) -> Finding:
    """Return what is said of a choice that nothing follows from."""
    why, other = kept
    because = {
        "settled": f"`{other}`, which you chose too, settles it. Leave one of the two out.",
        "counts": f"it counts with {other}. Choose that as well, or leave this out.",
        "": "with what else is chosen, every piece on this wearer is the same without it. Leave it out, or see by "
        f"`drafting blocks {garment.block}` what it belongs to.",
    }[why]
    sentence = f"`{choice.name}` ({choice.meaning}) changes nothing on this {garment.block}: {because}"
    return Finding("idle choice", "note", choice.name, value if isinstance(value, str) else None, None, sentence)
