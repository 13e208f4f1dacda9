"""JupyterLab and Chromium for tests and benchmarks: nothing of the person who runs them is touched."""

from __future__ import annotations

import json
import os
import re
import secrets
import shutil
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from drafting.commands.app import app_flags
from drafting.commands.lab import lab_flags, work_copy

ROOT = Path(__file__).resolve().parents[2]

CHROMIUM_FLAGS = [
    "--no-sandbox",
    "--disable-dev-shm-usage",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-extensions",
    "--disable-default-apps",
    "--mute-audio",
    "--disable-gpu",
    "--force-device-scale-factor=1",
    "--font-render-hinting=none",
    "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
]
"""The last: nothing but this computer is ever reached. A route that stops requests would switch the cache off, and
every page be fetched and compiled anew."""

QUIET = {
    "@jupyterlab/apputils-extension:notification": {
        "fetchNews": "false",
        "checkForUpdates": False,
        "doNotDisturbMode": True,
    },
    "@jupyterlab/notebook-extension:tracker": {"windowingMode": "none"},
    "@jupyterlab/docmanager-extension:plugin": {"autosave": False},
}
"""No news, and every cell in the page whether it is in view or not."""

READY = """() => {
    const shown = window.jupyterapp?.shell?.currentWidget;
    const kernel = shown?.sessionContext?.session?.kernel;
    return shown?.content?.model && kernel?.connectionStatus === 'connected'
        && kernel.status === 'idle';
}"""
"""The kernel's circle says idle before it is connected, so ask the application itself."""

RUN = """() => {
    window.ran = undefined;
    jupyterapp.commands.execute('notebook:run-all-cells')
        .then(done => { window.ran = Boolean(done); }, () => { window.ran = false; });
}"""

RUN_ALL = 120_000
"""ms for all cells of a notebook; what is evaluated in a page has no end of its own."""

WATCH = """() => {
    window.kernelFaults = [];
    const kernel = window.jupyterapp.shell.currentWidget.sessionContext.session.kernel;
    kernel.iopubMessage.connect((_, message) => {
        const said = message.content, kind = message.header.msg_type;
        if (kind === 'error') kernelFaults.push(`${said.ename}: ${said.evalue}`);
        if (kind === 'stream' && said.name === 'stderr') kernelFaults.push(said.text);
    });
}"""
"""What a widget's callback raises is shown nowhere; it passes by as a message of the kernel."""


TURN = """async path => {
    const before = jupyterapp.shell.currentWidget;
    const shown = await jupyterapp.commands.execute('docmanager:open', {path, factory: 'Notebook'});
    jupyterapp.shell.activateById(shown.id);
    if (before && before !== shown) {
        await before.sessionContext.shutdown();
        before.dispose();
    }
}"""
"""Open a notebook as the file browser does; the one before is closed with its kernel."""


CUT_SHORT = "Kernel message validation error: Unexpected token"
"""What JupyterLab itself throws now and then where a kernel is ended while it speaks."""


@dataclass(frozen=True)
class Lab:
    """A running JupyterLab: its address, its token, the folder it serves."""

    url: str
    token: str
    root: Path


@dataclass
class Tab:
    """A browser page, with the faults of its scripts and the addresses it asked for elsewhere."""

    page: Any
    lab: Lab
    faults: list[str] = field(default_factory=list)
    outside: list[str] = field(default_factory=list)

    def open(self, notebook: str) -> None:
        """Open a notebook in a workspace of its own and wait for its kernel."""
        place = f"workspaces/{secrets.token_hex(4)}/tree/{notebook}"
        self.page.goto(f"{self.lab.url}/lab/{place}?token={self.lab.token}&reset")
        self.page.wait_for_function(READY, timeout=60_000)
        self.page.evaluate(WATCH)

    def turn_to(self, notebook: str) -> None:
        """Open a notebook in place of the one that is open, if any, without loading JupyterLab anew."""
        if self.page.url == "about:blank":
            self.open(notebook)
            return
        self.page.evaluate(TURN, notebook)
        self.page.wait_for_function(READY, timeout=60_000)
        self.page.evaluate(WATCH)

    def run_all(self) -> bool:
        """Run every cell; return whether none of them raised."""
        self.page.evaluate(RUN)
        self.page.wait_for_function("window.ran !== undefined", timeout=RUN_ALL)
        return bool(self.page.evaluate("window.ran"))

    def forget_choices(self) -> None:
        """Take away what the pages have kept beside the costumes."""
        for ending in (".journal", ".lays"):
            for kept in self.lab.root.rglob(f"*{ending}"):
                kept.unlink()

    def run_to_bench(self, garment: str = "shirt") -> None:
        """Run the notebook from top to bottom, every choice as its file has it, and scroll to its bench.

        What the pointer finds is drawn a moment after the picture: it is waited for, so that nothing comes later.
        """
        self.forget_choices()
        before = self.page.query_selector(".pattern-preview")
        if not self.run_all():
            raise RuntimeError(f"the notebook does not run: {self.kernel_faults()}")
        if before is not None:  # the picture of an earlier run goes a little after its cell has run
            self.page.wait_for_function("old => !old.isConnected", arg=before, timeout=10_000)
        self.page.locator(".pattern-preview svg path.cut-line").nth(2).wait_for(timeout=10_000)
        which = self.page.locator(".which-garment select")
        if which.count() and which.first.is_visible():
            which.first.select_option(garment)
            self.page.locator(f'.pattern-preview [id="{garment}.front.cut-line"]').wait_for(timeout=10_000)
        self.page.locator(".pattern-preview svg g.seams").wait_for(state="attached", timeout=10_000)
        self.page.evaluate("document.querySelector('.bench').scrollIntoView({block: 'start'})")

    def kernel_faults(self) -> list[str]:
        """Return what the kernel complained of.

        A page that is connected before the kernel has loaded its widgets asks for them once in vain;
        that is no fault of a notebook's.
        """
        said = self.page.evaluate("window.kernelFaults")
        return [fault for fault in said if not fault.startswith("No such comm")]


@contextmanager
def running_lab(root: Path, home: Path) -> Iterator[Lab]:
    """Serve the maker's copy, made in `root` as `drafting lab` makes it from an installed kit."""
    work_copy(root)
    overrides = home / "labconfig" / "default_setting_overrides.json"
    overrides.parent.mkdir(parents=True)
    overrides.write_text(json.dumps(QUIET))
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    lab = Lab(f"http://127.0.0.1:{port}", secrets.token_hex(16), root)
    flags = [*lab_flags(root, port=port, browser=False), "--LabApp.expose_app_in_browser=True"]
    with (home / "log").open("wb") as log:
        server = subprocess.Popen(
            [sys.executable, "-m", "jupyterlab", *flags],
            stdout=log,
            stderr=subprocess.STDOUT,
            env=_environment(home, lab.token),
            cwd=root,
        )
    try:
        _wait_until_answered(f"{lab.url}/api/status?token={lab.token}", server, home / "log")
        yield lab
    finally:
        server.terminate()
        server.wait(20)


def kept_to(page: Any, address: str) -> None:
    """Have a page ask nobody but the server of its own address (which may end in a token)."""
    server = address.partition("?")[0]
    page.route("**/*", lambda route: route.continue_() if route.request.url.startswith(server) else route.abort())


SERVES = "import json, sys; from drafting.commands.app import serve; serve(json.loads(sys.argv[1]))"


@contextmanager
def running_app(root: Path, home: Path, folder: Path) -> Iterator[str]:
    """Serve the start page without its code as `drafting app` does for a maker in `folder`; give its address."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    url = f"http://127.0.0.1:{port}"
    environment = _environment(home, "") | {"DRAFTING_FOLDER": str(folder)}
    del environment["JUPYTER_TOKEN"]  # the app makes one of its own
    with (home / "log").open("wb") as log:
        server = subprocess.Popen(
            [sys.executable, "-c", SERVES, json.dumps(app_flags(root, port=port, browser=False))],
            stdout=log,
            stderr=subprocess.STDOUT,
            cwd=folder,
            env=environment,
        )
    try:
        _wait_until_answered(f"{url}/voila/static/", server, home / "log")
        printed = re.search(rf"{re.escape(url)}/\?token=[0-9a-f]{{32,}}", (home / "log").read_text())
        assert printed, (home / "log").read_text()
        yield printed[0]
    finally:
        server.terminate()
        server.wait(20)


@contextmanager
def running_chromium() -> Iterator[Any]:
    """Start the Chromium on the PATH; nothing is downloaded."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as started:
        browser = started.chromium.launch(
            executable_path=shutil.which("chromium"), headless=True, args=CHROMIUM_FLAGS
        )
        yield browser
        browser.close()


@contextmanager
def new_tab(browser: Any, lab: Lab) -> Iterator[Tab]:
    """Open a page of its own; requests that would leave this computer are noted."""
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    tab = Tab(context.new_page(), lab)

    def note(request: Any) -> None:
        if not request.url.startswith(("http://127.0.0.1:", "data:", "blob:")):
            tab.outside.append(request.url)

    context.on("request", note)
    tab.page.on("pageerror", lambda error: None if CUT_SHORT in str(error) else tab.faults.append(str(error)))
    yield tab
    context.close()


def _environment(home: Path, token: str) -> dict[str, str]:
    folders = (
        "HOME",
        "JUPYTER_CONFIG_DIR",
        "JUPYTER_DATA_DIR",
        "JUPYTER_RUNTIME_DIR",
        "IPYTHONDIR",
        "MPLCONFIGDIR",
    )
    path = os.pathsep.join(filter(None, [str(ROOT), os.environ.get("PYTHONPATH")]))
    own = {name: str(home) for name in folders}
    return os.environ | own | {"PYTHONPATH": path, "JUPYTER_TOKEN": token}


def _wait_until_answered(url: str, server: subprocess.Popen[bytes], log: Path, seconds: float = 90) -> None:
    """Wait until something is answered, if only a refusal."""
    end = time.monotonic() + seconds
    while True:
        try:
            urllib.request.urlopen(url, timeout=5).close()
            return
        except urllib.error.HTTPError:
            return
        except OSError:
            if server.poll() is not None or time.monotonic() > end:
                raise RuntimeError(f"nothing answers at {url}:\n{log.read_text()}") from None
            time.sleep(0.1)
