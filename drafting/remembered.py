"""Remember what a pure function gave for a value, told apart by identity. Layer 0.

A slider leaves most pieces of a garment as they were, and a piece is frozen: the same object again
has the same answer. Asking whether two pieces are equal would cost more than many an answer.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache, wraps
from typing import Any, TypeVar, cast

Asked = TypeVar("Asked", bound=Callable[..., Any])


class _Same:
    """A value that equals nothing but itself; kept as long as its answer, so no id comes twice."""

    __slots__ = ("it",)

    def __init__(self, it: Any) -> None:
        self.it = it

    def __hash__(self) -> int:
        return id(self.it)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and self.it is other.it


def remembered(most: int) -> Callable[[Asked], Asked]:
    """Return a decorator that keeps the last `most` answers of a pure function of a frozen value.

    The first argument counts as itself, further ones by equality (they must be hashable, and given
    by place).
    """

    def around(do: Asked) -> Asked:
        @lru_cache(maxsize=most)
        def kept(same: _Same, *rest: Any) -> Any:
            return do(same.it, *rest)

        @wraps(do)
        def asked(it: Any, *rest: Any) -> Any:
            return kept(_Same(it), *rest)

        return cast(Asked, asked)

    return around
