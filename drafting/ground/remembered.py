"""Remember what a pure function gave for a value, told apart by identity.

A slider leaves most pieces of a garment as they were, and a piece is frozen: the same object again
has the same answer. Asking whether two pieces are equal would cost more than many an answer.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from functools import lru_cache, wraps
from typing import Any, TypeVar, cast

_Asked = TypeVar("_Asked", bound=Callable[..., Any])
_Key = TypeVar("_Key", bound=Hashable)
_Answer = TypeVar("_Answer")


class _Same:
    """A value that equals nothing but itself; kept as long as its answer, so no id comes twice."""

    __slots__ = ("it",)

    def __init__(self, it: Any) -> None:
        self.it = it

    def __hash__(self) -> int:
        return id(self.it)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and self.it is other.it


def remembered(most: int) -> Callable[[_Asked], _Asked]:
    """Return a decorator that keeps the last `most` answers of a pure function of a frozen value.

    The first argument counts as itself, further ones by equality (they must be hashable, and given
    by place).
    """

    def around(do: _Asked) -> _Asked:
        @lru_cache(maxsize=most)
        def kept(same: _Same, *rest: Any) -> Any:
            return do(same.it, *rest)

        @wraps(do)
        def asked(it: Any, *rest: Any) -> Any:
            return kept(_Same(it), *rest)

        return cast(_Asked, asked)

    return around


def remembered_each(
    most: int,
) -> Callable[[Callable[[list[_Key]], list[_Answer]]], Callable[[Sequence[_Key]], list[_Answer]]]:
    """Return a decorator for a pure function from many values to as many answers (none is None).

    Values are told apart by equality. Those not among the last `most` are asked for all together.
    """

    def around(do: Callable[[list[_Key]], list[_Answer]]) -> Callable[[Sequence[_Key]], list[_Answer]]:
        kept: dict[_Key, _Answer] = {}

        @wraps(do)
        def asked(keys: Sequence[_Key]) -> list[_Answer]:
            old = [kept.pop(key, None) for key in keys]
            new = [key for key, answer in zip(keys, old, strict=True) if answer is None]
            fresh = iter(do(new) if new else [])
            answers = [next(fresh) if answer is None else answer for answer in old]
            kept.update(zip(keys, answers, strict=True))  # those asked for last come last
            for key in list(kept)[: max(0, len(kept) - most)]:
                kept.pop(key, None)
            return answers

        return asked

    return around
