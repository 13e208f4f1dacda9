"""The server of the start page: a token, this computer's own addresses, and no kernel that nobody uses.

Imported only where voila (the extra `app`) is installed.
"""

from __future__ import annotations

from typing import Any

from jupyter_server.base.handlers import JupyterHandler
from tornado.web import StaticFileHandler, authenticated
from voila.app import Voila
from voila.static_file_handler import AllowListFileHandler

OWN_NAMES = ("localhost",)
"""What this computer is called in an address, beside its numbers; any other name may be a foreign page's."""


class _OwnFiles(JupyterHandler, AllowListFileHandler):  # type: ignore[misc]
    """A maker's files, for who has the token."""

    @authenticated
    async def get(self, path: str, include_body: bool = True) -> None:
        await StaticFileHandler.get(self, path, include_body)

    @authenticated
    async def head(self, path: str) -> None:
        await StaticFileHandler.get(self, path, include_body=False)


class StartPage(Voila):  # type: ignore[misc]
    """voila as the kit serves it: a request by a name that is not this computer's is refused.

    With a token asked for and the name checked, a websocket opens to a page of this very server alone.
    """

    def init_settings(self) -> dict[str, Any]:
        """Return what every handler knows."""
        return {**super().init_settings(), "allow_remote_access": False, "local_hostnames": list(OWN_NAMES)}

    def init_handlers(self) -> list[Any]:
        """Return who answers to which path; files are handed out behind the token too."""
        handlers: list[Any] = super().init_handlers()
        return [
            (path, _OwnFiles, *more) if handler is AllowListFileHandler else (path, handler, *more)
            for path, handler, *more in handlers
        ]
