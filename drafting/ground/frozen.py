"""Read-only mappings for frozen nouns: what a noun holds cannot be edited behind its back.

What is drafted is remembered and handed out again (`remembered`): an edit of one answer would come
back with every later one. A change makes a new noun (`dataclasses.replace`) from `{**old, ...}`.
"""

from __future__ import annotations

from typing import Any, NoReturn, TypeVar

_Key = TypeVar("_Key")
_Value = TypeVar("_Value")


class FrozenDict(dict[_Key, _Value]):
    """A dict as it was made: read, compared, joined (`|`), copied and pickled like any other.

    >>> held = FrozenDict(waist=700.0)
    >>> held["waist"], held == {"waist": 700.0}, {**held, "hip": 950.0}
    (700.0, True, {'waist': 700.0, 'hip': 950.0})
    >>> held["waist"] = 710.0
    Traceback (most recent call last):
    TypeError: this mapping is read-only: make a new one from {**old, ...}
    """

    __slots__ = ()

    def _refused(self, *_: Any, **__: Any) -> NoReturn:
        raise TypeError("this mapping is read-only: make a new one from {**old, ...}")

    __setitem__ = __delitem__ = __ior__ = _refused
    update = setdefault = pop = popitem = clear = _refused

    def __hash__(self) -> int:  # type: ignore[override]
        return hash(frozenset(self))

    def __reduce__(self) -> tuple[type, tuple[dict[_Key, _Value]]]:
        return type(self), (dict(self),)


def freeze(noun: object, *fields: str) -> None:
    """Make the dicts in these fields of a new noun read-only, those inside them too.

    For the `__post_init__` of a frozen dataclass.
    """
    for name in fields:
        held = getattr(noun, name)
        if type(held) is not FrozenDict:
            object.__setattr__(noun, name, _frozen(held))


def _frozen(held: dict[Any, Any]) -> FrozenDict[Any, Any]:
    return FrozenDict((key, _frozen(value) if type(value) is dict else value) for key, value in held.items())
