"""The lines of the entries of a TOML list that is written over several lines."""

from __future__ import annotations

import re
from collections.abc import Iterator

Keys = tuple[str, ...]
"""The keys of a value, from the top of its file; an entry of a list goes by its number, from 0."""

QUOTED = r'"""|\'\'\'|"(?:\\.|[^"\\\n])*"|' + r"'[^'\n]*'|#[^\n]*"
"""Texts and remarks: whatever may hold brackets that are none."""

_LIST_TOKEN = re.compile(rf"{QUOTED}|[\[\]{{}},]|\s+|[^\[\]{{}},\s\"'#]+|[\"']")


def entry_lines(keys: Keys, rows: list[str], first: int) -> Iterator[tuple[Keys, int]]:
    """Yield the line on which each entry of a list over several lines begins."""
    depth, awaited, count, quote = 0, False, 0, ""
    rows = [rows[0].partition("=")[2], *rows[1:]]
    for line, row in enumerate(rows, first):
        at = 0
        while token := _LIST_TOKEN.search(row, at):
            at, mark = token.end(), token[0]
            if mark.isspace() or mark[0] == "#":
                continue
            if quote:
                quote = "" if mark == quote else quote
                continue
            if awaited and depth == 1 and mark not in ",]":
                yield (*keys, str(count)), line
                count, awaited = count + 1, False
            awaited = awaited or (depth == 0 and mark == "[") or (depth == 1 and mark == ",")
            depth += (mark in "[{") - (mark in "]}")
            quote = mark if mark in ('"""', "'''") else ""
