"""Would a slip in a figure be found? `python -m tests.faults` plants faults, one at a time.

Each is planted in a copy of the kit, never in this folder, and the tests beside it are run: the files that are
likeliest to find it, and all of its rooms where they do not. A fault that no test finds is *alive*, and printed;
at most two may be. It takes minutes, an hour where something is alive, so CI only asks (`test_faults.py`) that
every fault still has its place.
"""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from tests.shared_data import SHARED

ROOT = Path(__file__).parent.parent
MOST_ALIVE = 2


@dataclass(frozen=True)
class Planted:
    """`was` becomes `now` in a file of the kit; the tests of `rooms` should find it, those of `likely` first."""

    file: str
    was: str
    now: str
    rooms: str
    likely: str = ""

    @property
    def name(self) -> str:
        return f"{self.file}: {self.was} -> {self.now}"


def figure(file: str, name: str, now: str, rooms: str, likely: str = "") -> Planted:
    """Return a fault in a figure that stands by itself on one line, whatever it is today."""
    line = re.search(rf"^{re.escape(name)}(: [^=]+)? = .+$", (ROOT / "drafting" / file).read_text("utf-8"), re.M)
    was = line.group(0) if line else f"{name} = (gone)"
    return Planted(file, was, f"{name} = {now}", rooms, likely=likely)


BOUGHT = (
    "making/test_materials.py making/test_bought_to_the_end.py making/test_thread_by_stitch.py "
    "making/test_bought_from_svg.py making/test_bought_enough.py"
)

PLANTED = (
    # geometry
    Planted("geometry/arc.py", "4 / 3 * math.tan", "1.36 * math.tan", "geometry"),
    Planted("geometry/area.py", "if found[2] > 0]", "if found[2] > 900]", "geometry layout"),
    Planted(
        "geometry/area.py",
        "b in pairs if a < b), default=most",
        "b in pairs if a < b - 1), default=most",
        "geometry",
    ),
    Planted("geometry/curve.py", "math.radians(degrees)", "math.radians(degrees + 0.05)", "geometry"),
    Planted("geometry/offset.py", "3 * s * t * t, t**3)", "3.01 * s * t * t, t**3)", "geometry"),
    # shaping
    figure(
        "shaping/sleeve/easing.py",
        "BACK_SHARE",
        "0.50",
        "blocks",
        "blocks/test_two_piece_sleeve.py blocks/test_sleeve.py blocks/test_published_sleeves.py",
    ),
    figure(
        "shaping/sleeve/pitch.py",
        "BELOW_SEAM",
        "(40.0, 70.0)",
        "blocks",
        "blocks/test_two_piece_sleeve.py blocks/test_published_sleeves.py",
    ),
    figure(
        "shaping/sleeve/two_piece.py",
        "FORE_UNDER",
        "12.0",
        "blocks",
        "blocks/test_two_piece_sleeve.py blocks/test_published_sleeves.py",
    ),
    figure(
        "shaping/torso/ways_out.py",
        "ARM_SHARE",
        "0.20",
        "blocks",
        "blocks/test_unusual_bodies.py blocks/test_sleeve_people.py",
    ),
    figure(
        "shaping/torso/bust_dart.py",
        "SIDE_DART_BELOW",
        "70.0",
        "blocks",
        "blocks/test_bodice.py blocks/test_published_bodices.py",
    ),
    figure(
        "shaping/stretch.py",
        "PULL",
        "0.8",
        "blocks checks",
        "blocks/test_trouser_stretch.py checks/test_girths_darts_curves.py",
    ),
    figure("shaping/stretch.py", "SEAT_STRAIN", "0.12", "blocks checks", "blocks/test_trouser_stretch.py"),
    # finish
    Planted("finish/notches.py", "return min(DEEPEST, width / 2)", "return min(DEEPEST, width)", "finish checks"),
    Planted("finish/notches.py", "notch.at - spread / 2", "notch.at", "finish checks"),
    figure("finish/notches.py", "APART", "9.0", "finish checks"),
    figure("finish/hems.py", "KNIT_HEM", "32.0", "finish"),
    Planted("finish/hems.py", "HemSort.SLEEVE: 35.0", "HemSort.SLEEVE: 28.0", "finish"),
    figure("finish/hems.py", "LEAST_HEM", "8.0", "finish"),
    figure("finish/corners.py", "REACH", "3.0", "finish checks"),
    # layout
    figure("layout/cloth.py", "BUY_STEP", "50.0", "layout"),
    Planted("layout/repeat.py", "round(n * step) - shift", "round(n * step) + shift", "layout"),
    figure("layout/cloth.py", "INTERFACING_WIDTH", "1000.0", "layout"),
    figure("layout/outlines.py", "DRIFT", "3.0", "layout"),
    # making
    figure("making/shopping.py", "SPARE_BUTTONS", "0", "making", likely=BOUGHT),
    figure("making/thread.py", "WASTE", "0.10", "making", likely=BOUGHT),
    figure("making/settings/edges.py", "CAST_WIDE", "8.0", "making", likely=BOUGHT),
    figure("making/stitch_rows.py", "BUTTON", "400.0", "making", likely=BOUGHT),
    figure("making/stitch_rows.py", "UNDERARM", "1 / 4", "making", likely=BOUGHT),
    figure("making/stitch_rows.py", "LONG, TOILE", "5.0, 2.0", "making", likely=BOUGHT),
    Planted(
        "making/stitch_rows.py",
        'return (StitchRow("301", 2 * length),)',
        'return (StitchRow("301", 1 * length),)',
        "making",
        likely=BOUGHT,
    ),
    Planted(
        "making/stitch_rows.py",
        'return (StitchRow("200", length, 4.0, lining=True),)',
        'return (StitchRow("301", length, 4.0, lining=True),)',
        "making",
        likely=BOUGHT,
    ),
    Planted(
        "making/stitch_rows.py",
        'StitchRow("209", length, close, kind',
        'StitchRow("209", 0.9 * length, close, kind',
        "making",
        likely=BOUGHT,
    ),
    Planted("making/stitch_rows.py", '"do.neaten_open": 2', '"do.neaten_open": 1', "making", likely=BOUGHT),
    Planted("making/stitch_rows.py", '"join_crotch": 2.0', '"join_crotch": 1.0', "making", likely=BOUGHT),
    Planted("making/thread.py", '"504": 14.0', '"504": 13.0', "making", likely=BOUGHT),
    Planted("making/thread.py", '"514": 18.0', '"514": 16.0', "making", likely=BOUGHT),
    Planted(
        "making/shopping.py",
        "shelves(boxes, lay.cloth.usable_width) + lay.cloth.wishes.spare",
        "shelves(boxes, lay.cloth.usable_width)",
        "making",
        likely=BOUGHT,
    ),
    Planted("making/shopping.py", '"boning": 10.0', '"boning": 0.0', "making", likely=BOUGHT),
    Planted("making/shopping.py", '"elastic": 20.0', '"elastic": 5.0', "making", likely=BOUGHT),
    Planted("making/times.py", '"bone": 15.0', '"bone": 5.0', "making", likely=BOUGHT),
    Planted(
        "making/seam_lengths.py", "hands(piece) * dart.leg_a", "piece.count * dart.leg_a", "making", likely=BOUGHT
    ),
    figure("making/order/inside.py", "TAPE_ENDS", "0.0", "making", likely=BOUGHT),
    figure("making/order/inside.py", "HEAD", "250.0", "making", likely=BOUGHT),
    figure("making/order/inside.py", "BAR", "6.0", "making", likely=BOUGHT),
    figure("making/order/closings.py", "STRIP_ENDS", "0.0", "making", likely=BOUGHT),
    figure("making/order/open_edges.py", "TAPE_ENDS", "0.0", "making", likely=BOUGHT),
    Planted(
        "making/order/used_up.py", '"tape", BOUND, 2 * length', '"tape", BOUND, length', "making", likely=BOUGHT
    ),
    figure("making/trim_lengths.py", "TRIM_ENDS", "20.0", "making", likely=BOUGHT),
    Planted(
        "making/stretch_trial.py",
        "STRETCHES = 0.10",
        "STRETCHES = 0.3",
        "making",
        likely="making/test_cloth_sorts.py making/test_cloth.py",
    ),
    figure(
        "making/settings/needles.py",
        "BY_MASS",
        "((60.0, 60), (110.0, 70), (150.0, 80), (340.0, 90))",
        "making",
        likely="making/test_settings.py",
    ),
    figure("body/children.py", "SMALL_CHILD", "1200.0", "making", likely="making/test_cloth.py"),
)


def misplaced() -> list[str]:
    """Return the faults whose place is not found exactly once in today's kit."""
    return [
        fault.name
        for fault in PLANTED
        if (ROOT / "drafting" / fault.file).read_text("utf-8").count(fault.was) != 1
    ]


def failing(copy: Path, tests: str) -> bool:
    """Return whether a test fails in `copy`, of the files or folders of `tests`."""
    asked = [sys.executable, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider"]
    folders = [f"tests/{each}" for each in tests.split()]
    return subprocess.run([*asked, *folders], cwd=copy, capture_output=True, check=False).returncode != 0


@cache
def sound_before(copy: Path, tests: str) -> bool:
    """Return True; ends the run where tests fail before anything is planted."""
    if failing(copy, tests):
        sys.exit(f"the tests of {tests} fail before anything is planted")
    return True


def found(fault: Planted, copy: Path) -> bool:
    """Return whether the fault's tests fail once it is planted in `copy`."""
    path = copy / "drafting" / fault.file
    sound = path.read_text("utf-8")
    for tests in filter(None, (fault.likely, fault.rooms)):
        sound_before(copy, tests)
        path.write_text(sound.replace(fault.was, fault.now), "utf-8")
        try:
            if failing(copy, tests):
                return True
        finally:
            path.write_text(sound, "utf-8")
    return False


def main(wanted: str = "") -> int:
    """Plant every fault whose name holds `wanted`; return how many too many are alive."""
    tried = [fault for fault in PLANTED if wanted in fault.name]
    alive = []
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "kit"
        shutil.copytree(ROOT, copy, ignore=shutil.ignore_patterns(".git", ".venv*", "__pycache__"))
        if SHARED.is_dir():  # without the surveys beside it the tests that read them would be passed over
            (Path(folder) / SHARED.name).symlink_to(SHARED.resolve())
        for fault in tried:
            seen = found(fault, copy)
            print("found" if seen else "ALIVE", fault.name, flush=True)
            alive += [] if seen else [fault]
    print(f"{len(alive)} alive of {len(tried)}")
    return max(0, len(alive) - MOST_ALIVE)


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:2]))
