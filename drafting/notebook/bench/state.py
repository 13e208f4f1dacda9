"""What stands on the bench, as plain data: what is asked for, what was made of it. No widgets."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from decimal import Decimal
from typing import Any

from drafting.costume.choices import block_named, choose, sewn_so
from drafting.costume.file import CostumeFile, Garment
from drafting.costume.make import Made, finished
from drafting.costume.proportion import in_proportion
from drafting.ground.choices import Choice
from drafting.ground.errors import DraftError, InputError
from drafting.ground.frozen import freeze
from drafting.ground.scale import body_scale, style_growth
from drafting.ground.units import shown_unit
from drafting.ground.written_lengths import written_length
from drafting.notebook.errors_said import sentence
from drafting.notebook.living.parts import choice_of, choices_in, garment_of
from drafting.reading.choices import read_values
from drafting.reading.given import Given, Origin

Moving = tuple[str, str, int]
"""Garment, choice, and the number of the stroke: a whole drag is one stroke."""


@dataclass(frozen=True)
class Standing:
    """One state of the bench; every change gives a new one.

    `asked` is the costume as the controls say; `made` the garment on the bench as it could last be
    drafted, not yet checked; `before` what stood when the stroke `moving` began; `refusal` says why `asked` cannot
    be drafted, beside the choice `refused`, and is empty where `made` is made of it. `kept` holds
    the other garments as they could last be drafted.
    """

    asked: CostumeFile
    made: Made
    before: Made | None = None
    moving: Moving | None = None
    refusal: str = ""
    refused: str = ""
    kept: Mapping[str, Made] = field(default_factory=dict)

    def __post_init__(self) -> None:
        freeze(self, "kept")

    @property
    def garment(self) -> str:
        """The name of the garment that is shown."""
        return self.made.garments[0].name


def begin_standing(costume: CostumeFile, garment: str, asked: CostumeFile | None = None) -> Standing:
    """Return a garment as its file has it, or as it is `asked` by now; raises `InputError` where neither can
    be drafted."""
    if asked is None:
        return Standing(costume, finished(only_garment(costume, garment)))
    try:
        return Standing(asked, finished(only_garment(asked, garment)))
    except DraftError as error:
        made = finished(only_garment(costume, garment))
        return Standing(asked, made, refusal=sentence(error, asked.told_in))


def following(standing: Standing, asked: CostumeFile) -> Standing:
    """Return what stands once all that was asked elsewhere is taken over.

    Raises `InputError` where the garment shown is no longer there.
    """
    return _asking(standing, asked, (standing.garment, "", 0))


def only_garment(costume: CostumeFile, garment: str) -> CostumeFile:
    """Return the costume with this garment alone."""
    return replace(costume, garments=(garment_of(costume, garment),))


def showing_garment(standing: Standing, garment: str) -> Standing:
    """Return another garment of the same costume, every choice as it was asked.

    Raises `InputError` where it can neither be drafted now nor could be before.
    """
    kept = {**standing.kept, standing.garment: standing.made}
    try:
        made, refusal = finished(only_garment(standing.asked, garment)), ""
    except DraftError as error:
        if garment not in kept:
            raise
        made, refusal = kept[garment], sentence(error, standing.asked.told_in)
    return Standing(standing.asked, made, refusal=refusal, kept=kept)


def asked_for(
    standing: Standing,
    garment: str,
    choice: str,
    value: Any,
    stroke: int = 0,
    made_of: Callable[[CostumeFile], Made] = finished,
) -> Standing:
    """Return what stands once `choice` of `garment` is `value` (mm, degrees, a word, a yes or no).

    A garment that cannot be drafted leaves `made` as it was and fills `refusal`. `made_of` drafts a
    costume. Raises `InputError` for a garment or choice that there is not.
    """
    asked = with_choice(standing.asked, garment, choice, value)
    return _asking(standing, asked, (garment, choice, stroke), made_of)


def put_back(standing: Standing, file: CostumeFile, garment: str, choice: str = "", stroke: int = 0) -> Standing:
    """Return what stands once a choice (or, with none named, all) is as `file` has it."""
    worn, written = garment_of(standing.asked, garment), garment_of(file, garment).choices
    wanted = dict(written)
    if choice:
        others = {name: given for name, given in worn.choices.items() if name != choice}
        wanted = others | {n: given for n, given in written.items() if n == choice}
    asked = _with_choices(standing.asked, worn, wanted)
    return _asking(standing, asked, (garment, choice, stroke))


def written_down(standing: Standing, file: CostumeFile) -> Standing:
    """Return what stands once all that was asked stands in `file`."""
    asked = replace(standing.asked, garments=file.garments, path=file.path)
    return replace(standing, asked=asked, moving=None)


def _asking(
    standing: Standing, asked: CostumeFile, moving: Moving, made_of: Callable[[CostumeFile], Made] = finished
) -> Standing:
    before = standing.before if moving == standing.moving else standing.made
    try:
        made = made_of(only_garment(asked, moving[0]))
    except DraftError as error:
        words = sentence(error, asked.told_in)
        said = replace(standing, asked=asked, before=before, moving=moving, refusal=words)
        return replace(said, refused=_beside(error, standing, moving))
    return Standing(asked, made, before, moving, kept=standing.kept)


def _beside(error: DraftError, standing: Standing, moving: Moving) -> str:
    """Return the choice that a refusal belongs to: the one it names, else the one moved into it.

    It stays there until it is mended, whatever else is moved meanwhile.
    """
    faults = error.faults if isinstance(error, InputError) else ()
    for fault in faults:
        if ".choices." in fault.field:
            return fault.field.rpartition(".choices.")[2]
    return standing.refused if standing.refusal and standing.refused else moving[1]


def with_choice(costume: CostumeFile, garment: str, choice: str, value: Any) -> CostumeFile:
    """Return the costume with one choice set by hand; all others stay as they were written."""
    worn = garment_of(costume, garment)
    kind = choice_of(costume, garment, choice)
    return _with_choices(costume, worn, {**worn.choices, choice: _given(kind, value, costume.unit)})


def _with_choices(costume: CostumeFile, worn: Garment, choices: dict[str, Given]) -> CostumeFile:
    new = replace(worn, choices=choices)
    return replace(costume, garments=tuple(new if g is worn else g for g in costume.garments))


def values_of(made: Made, garment: str) -> dict[str, Any]:
    """Return the value in use of every choice of a garment (mm, degrees, words)."""
    return {name: value for name, (value, _) in made[garment].choices.items()}


def asked_values(standing: Standing) -> dict[str, Any]:
    """Return the value asked for of every choice shown, though it may be out of its range."""
    costume, garment = standing.asked, standing.garment
    used = values_of(standing.made, garment)
    if not standing.refusal:
        return used
    usual = usual_values(costume, garment)
    worn = garment_of(costume, garment)
    free = [replace(c, low=None, high=None) for c in choices_in(costume, garment).values()]
    origin = Origin(costume.path, costume.unit)
    sized = in_proportion(free, worn.choices, costume.wearer, origin)
    read, _ = read_values(free, sized, origin)
    return {n: read[n] if n in worn.choices else usual.get(n, used[n]) for n in used}


def usual_values(costume: CostumeFile, garment: str) -> Mapping[str, Any]:
    """Return what every choice of a garment is on this body where the maker says nothing."""
    worn = garment_of(costume, garment)
    sewn = sewn_so(costume.wearer, costume.fabrics.get(worn.fabric))
    scale, growth = body_scale(costume.wearer), style_growth(costume.wearer)
    chosen = choose(block_named(worn.block), {}, scale, Origin(), sewn, growth)
    return {name: value for name, (value, _) in chosen.values.items()}


def _given(choice: Choice, value: Any, unit: str | None) -> Given:
    """Return a value as a costume file would give it, every digit kept and its unit beside it."""
    exact = value
    if choice.unit == "mm":
        mm = Decimal(repr(float(value)))
        exact = written_length(mm, "in") if shown_unit(unit) == "in" else f"{mm:f} mm"
    return Given(exact, source="notebook")
