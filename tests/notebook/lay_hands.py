"""A hand on the lay table: where it can take a piece, and how it drags it."""

from __future__ import annotations

from tests.notebook.lab import Tab

GRIP = """
name => {
    const path = document.querySelector(`.lay-table path.cut-line[id="${name}"]`)
    path.scrollIntoView({block: "nearest"})
    const box = path.getBoundingClientRect()
    for (const across of [0.5, 0.33, 0.67, 0.2, 0.8, 0.1, 0.9])
        for (const down of [0.5, 0.33, 0.67, 0.2, 0.8, 0.1, 0.9]) {
            const x = box.x + across * box.width, y = box.y + down * box.height
            if (document.elementFromPoint(x, y) === path) return [x, y]
        }
}
"""
"""Where a hand can take a piece: the middle of a strip that lies aslant is beside it."""


STILL = """
name => new Promise(done => {
    let last = "", same = 0
    const look = () => {
        const path = document.querySelector(`.lay-table path.cut-line[id="${name}"]`)
        const box = path ? JSON.stringify(path.getBoundingClientRect()) : ""
        same = box && box === last ? same + 1 : 0, last = box
        same > 15 ? done() : requestAnimationFrame(look)
    }; look()
})
"""
"""A page that is still being laid out moves a piece away from under the hand."""


def grip(tab: Tab, outline: str) -> tuple[float, float]:
    tab.page.evaluate(STILL, outline)
    x, y = tab.page.wait_for_function(GRIP, arg=outline, timeout=30_000).json_value()
    return x, y


def drag(tab: Tab, outline: str, dx: float, dy: float) -> None:
    x, y = grip(tab, outline)
    tab.page.mouse.move(x, y)
    tab.page.mouse.down()
    tab.page.mouse.move(x + dx, y + dy, steps=12)
    tab.page.mouse.up()
