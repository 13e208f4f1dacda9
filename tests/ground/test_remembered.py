"""What is remembered is the answer for the same object, and for no other."""

from __future__ import annotations

from drafting.geometry import Path
from drafting.ground.remembered import remembered, remembered_each


def square(side: float) -> Path:
    return Path.polygon(0j, side + 0j, complex(side, side), 1j * side)


def test_the_same_object_is_answered_once_and_an_equal_one_anew() -> None:
    asked: list[Path] = []

    @remembered(4)
    def doubled(path: Path, times: int) -> float:
        asked.append(path)
        return path.area * times

    one, twin = square(2), square(2)
    assert [doubled(one, 2), doubled(one, 2), doubled(twin, 2), doubled(one, 3)] == [8, 8, 8, 12]
    assert [path is one for path in asked] == [True, False, True]


def test_only_the_last_answers_are_kept_and_an_old_object_is_never_taken_for_a_new_one() -> None:
    @remembered(2)
    def area(path: Path) -> float:
        return path.area

    assert [area(square(side)) for side in range(1, 60)] == [side**2 for side in range(1, 60)]


def test_of_many_values_only_those_not_remembered_are_asked_for_and_all_at_once() -> None:
    asked: list[list[int]] = []

    @remembered_each(3)
    def squares(sides: list[int]) -> list[int]:
        asked.append(sides)
        return [side * side for side in sides]

    assert [squares([1, 2, 3]), squares([2, 4, 3]), squares([4, 2])] == [[1, 4, 9], [4, 16, 9], [16, 4]]
    assert squares([1]) == [1]  # let go when 4 came, as it had not been asked for since
    assert asked == [[1, 2, 3], [4], [1]]
