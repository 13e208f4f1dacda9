"""Costumes that are not shipped, invented here to try the pages with: none is a real person's."""

from __future__ import annotations

from pathlib import Path

CLOTH = """title = "Cotton drill, invented"
unit = "cm"
usable_width = 140
weave = "woven"
sort = "plain"
mass = 220
"""

FIRM_KNIT = """title = "Firm knit, invented"
unit = "cm"
usable_width = 150
weave = "knit"
sort = "plain"
stretch_along = { rest = 10, stretched = 11.5 }
stretch_across = { rest = 10, stretched = 13 }
"""

WEARER = """title = "Somebody, invented"
unit = "cm"

[measures]
height = 172
bust_girth = 96
high_bust_girth = 92
waist_girth = 80
hip_girth = 102
"""

UNEVEN = """title = "Uneven shoulders, in inches, invented"
unit = "in"
figure = "womens"

[measures]
height = 66
bust_girth = 37
high_bust_girth = 35.5
waist_girth = "30 1/2"
hip_girth = 40
shoulder_length = { left = 5, right = "4 5/8" }
shoulder_drop = { left = 1.5, right = 2 }
"""

CHILD = """title = "A child, invented"
unit = "cm"

[measures]
height = 122
bust_girth = 62
waist_girth = 57
hip_girth = 66
"""

COSTUMES = {
    "inches": ("in", UNEVEN, {"shirt": ("shirt", "shell", 'bust_ease = "4 1/2 in"\n')}),
    "no-coat": (
        "cm",
        WEARER,
        {"shirt": ("shirt", "shell", "bust_ease = 11\n"), "legs": ("trousers", "shell", "")},
    ),
    "one-trouser": ("cm", WEARER, {"slacks": ("trouser", "shell", "hem_width = 42\n")}),
    "child": ("cm", CHILD, {"legs": ("trousers", "shell", "hip_ease = 6\n")}),
    "faulty": ("cm", WEARER, {"shirt": ("shirt", "shell", "bust_ease = 11\nbust_easse = 3\nlength = 'hip\n")}),
}
"""By name: the unit, the body file, the garments with block, cloth and choices. The last cannot be read."""


def trial_costumes(folder: Path) -> dict[str, Path]:
    """Write the costumes, a folder each as a maker begins them; return their files."""
    return {name: _written(folder / name, *what) for name, what in COSTUMES.items()}


def _written(folder: Path, unit: str, body: str, garments: dict[str, tuple[str, str, str]]) -> Path:
    folder.mkdir(parents=True)
    (folder / "wearer.toml").write_text(body)
    (folder / "cloth.toml").write_text(CLOTH)
    (folder / "knit.toml").write_text(FIRM_KNIT)
    rows = [f'title = "The costume {folder.name}"', f'unit = "{unit}"', 'wearer = "wearer.toml"', "[fabrics]"]
    rows += ['shell = "cloth.toml"', 'knit = "knit.toml"']
    for name, (block, cloth, choices) in garments.items():
        rows += [f"[garments.{name}]", f'block = "{block}"', f'fabric = "{cloth}"']
        rows += [f"[garments.{name}.choices]    # hers", choices] if choices else []
    file = folder / "costume.toml"
    file.write_text("\n".join(rows) + "\n")
    return file
