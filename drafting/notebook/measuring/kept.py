"""What was typed into the measuring guide and is not in the wearer's file yet, kept beside that file. No widgets.

`wearer.taking` is JSON: the texts of each measure by its name, an empty list where it was taken out. A
save empties it; what is torn or strange in it is passed over.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from drafting.notebook.measuring.order import ORDER
from drafting.notebook.measuring.state import Hands, Taking, changed
from drafting.notebook.whole_files import put_whole

ENDING = ".taking"

LONGEST = 200
"""Letters of a text that is taken up again (ours: what is longer nobody typed)."""


def taking_place(body: Path) -> Path:
    """Return where the typed measures of a body file are kept.

    >>> taking_place(Path("rosa/wearer.toml")).as_posix()
    'rosa/wearer.taking'
    """
    return body.with_suffix(ENDING)


def typed_before(body: Path) -> dict[str, Hands]:
    """Return what was typed and not saved, by measure; nothing where nothing is kept."""
    try:
        rows = json.loads(taking_place(body).read_text("utf-8"))
    except (OSError, ValueError, RecursionError):
        return {}
    return dict(_sound(rows)) if isinstance(rows, dict) else {}


def _sound(rows: dict[str, Any]) -> Iterator[tuple[str, Hands]]:
    for name, texts in rows.items():
        short = isinstance(texts, list) and len(texts) <= 2
        if name in ORDER and short and all(isinstance(one, str) and len(one) <= LONGEST for one in texts):
            yield name, tuple(texts)


def keep_typed(taking: Taking, *names: str) -> None:
    """Keep what the fields of these measures hold where the file says otherwise; raises `OSError`.

    What another page has kept of other measures stays.
    """
    before = typed_before(taking.path)
    apart = set(changed(taking))
    rows = {name: texts for name, texts in before.items() if name not in names}
    rows |= {name: taking.fields.get(name, ()) for name in names if name in apart}
    place = taking_place(taking.path)
    if rows == before:
        return
    if rows:
        put_whole(place, (json.dumps(rows, ensure_ascii=False, indent=1) + "\n").encode())
    else:
        place.unlink(missing_ok=True)
