"""The checks: one question per function, answered with findings; none ever raises.

outlines   one simple ring, anticlockwise, no sliver, square at folds
seams      lengths, notches, joined corners, each edge sewn once
ease       the least ease, where the cloth does not give
levels     each level line runs to the outline
girths     finished girth off the outline at its level; asked against settled ease
darts      equal legs; the bust dart's tip and aim
curves     inflections; the cap laid on its armhole
trouser    a trouser's waist and crotch: one bend, square centres, the length asked for
cut        the cut line around the outline at its allowance
stiff_hems what stiffens a hem lies in its godets too
"""

from __future__ import annotations

from collections.abc import Iterator

from drafting.checks import curves, cut, darts, girths, levels, notches, outlines, seams, stiff_hems, trouser
from drafting.checks.table import summary
from drafting.draft.draft import Draft
from drafting.draft.pattern import Pattern
from drafting.ground.findings import Finding
from drafting.ground.scale import Measured, body_scale

__all__ = ["check_all", "check_draft", "check_pattern", "summary"]


def check_all(draft: Draft, pattern: Pattern, body: Measured) -> tuple[Finding, ...]:
    """Return what every check finds in a draft and the pattern finished from it; never raises.

    `body` is asked for single measures in mm, by name. `garment.draft_garment` shows the whole way.

    >>> check_all(Draft(), Pattern("bag", "shell", (), ()), {"bust_girth": 900.0})
    ()
    """
    return (*check_draft(draft, body), *check_pattern(pattern))


def check_draft(draft: Draft, body: Measured) -> tuple[Finding, ...]:
    """Return what the checks of stitching lines and seams find."""
    scale = body_scale(body)
    return _answers(
        outlines.outlines_simple(draft),
        outlines.outlines_anticlockwise(draft),
        outlines.edges_long_enough(draft, scale),
        outlines.folds_square(draft),
        seams.seams_name_edges(draft),
        seams.edges_sewn_once(draft),
        seams.sewn_to_another(draft),
        seams.seams_match(draft),
        notches.notches_meet(draft),
        notches.notches_tell_front_from_back(draft),
        notches.notches_in_place(draft),
        notches.long_seams_notched(draft),
        notches.notches_apart(draft),
        seams.corners_join(draft),
        levels.levels_reach_edges(draft),
        girths.girths_finished(draft),
        girths.eases_settled(draft),
        stiff_hems.godets_stiffened(draft),
        darts.dart_legs_equal(draft),
        darts.bust_dart_tips(draft, scale),
        curves.curves_bend_right(draft),
        curves.cap_lies_on_armhole(draft, scale),
        trouser.waists_bend_one_way(draft),
        trouser.centres_square(draft),
        trouser.crotch_length_kept(draft),
    )


def check_pattern(pattern: Pattern) -> tuple[Finding, ...]:
    """Return what the checks of cut lines find."""
    return _answers(cut.cut_lines_sound(pattern), cut.cut_lines_around(pattern), cut.allowances_kept(pattern))


def _answers(*questions: Iterator[Finding]) -> tuple[Finding, ...]:
    return tuple(finding for question in questions for finding in _answered(question))


def _answered(question: Iterator[Finding]) -> Iterator[Finding]:
    """Yield the findings; lines too broken to be measured give an error finding, not a crash."""
    try:
        yield from question
    except Exception as error:  # whatever geometry says of broken lines, a check never raises
        name = getattr(question, "__name__", "a check").replace("_", " ")
        said = f"{name[:1].upper()}{name[1:]}: the lines are too broken to be measured ({error})"
        yield Finding(name, "error", "", None, None, said)
