"""A real server in a thread of this process, and a real Chromium that talks to it."""

from __future__ import annotations

import asyncio
import shutil
import socket
import threading
import time
from dataclasses import dataclass
from pathlib import Path

import pytest
import uvicorn

from colure.app.web.desk import Desk
from colure.app.web.guard.connections import BoundedProtocol
from colure.app.web.guard.roles import SessionRole
from colure.app.web.jobs import Jobs
from colure.app.web.room import Room
from colure.app.web.server import build

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
#: Software drawing is asked for by name where there is no graphics card.
ARGUMENTS = ["--no-sandbox", "--enable-unsafe-swiftshader"]


@dataclass
class Served:
    """A control room that runs, and the ways into it."""

    room: Room
    port: int
    loop: asyncio.AbstractEventLoop

    @property
    def base(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    def link(self, role: SessionRole = SessionRole.CONFIGURE) -> str:
        return f"{self.base}/launch?code={self.room.sessions.invite(role)}"

    def headers(self, role: SessionRole = SessionRole.CONFIGURE) -> dict[str, str]:
        """Headers of a program that came in as a browser does."""
        session, cookie = self.room.sessions.redeem(self.room.sessions.invite(role))
        return {"Cookie": f"colure-{self.port}={cookie}", "Origin": self.base, "X-Colure-Token": session.token}


class KeptDesk(Desk):
    """Workers that serve one room after the other: every one of them takes a second and a half to start.

    How a room of its own starts and ends its workers is seen in app/web/test_served.py, test_desk.py and the story.
    """

    def close(self) -> None:
        """End only a worker that is still at work: nobody waits for that any more."""
        for kind in list(self._pools):
            if self._pools[kind]._pending_work_items:
                self.end(kind)


_WORKERS = KeptDesk()


@pytest.fixture(scope="session", autouse=True)
def workers_end():
    """The kept workers end with the process that keeps them."""
    yield
    Desk.close(_WORKERS)


def serving(folders: list[Path]):
    """Serve until the generator is closed."""
    listening = socket.socket()
    listening.bind(("127.0.0.1", 0))
    port = listening.getsockname()[1]
    room = Room(folders)
    room.desk = _WORKERS
    room.jobs = Jobs(_WORKERS)
    app = build(room, hosts=frozenset({f"127.0.0.1:{port}"}), cookie=f"colure-{port}")
    server = uvicorn.Server(
        uvicorn.Config(
            app, http=BoundedProtocol, log_level="error", access_log=False, lifespan="on", timeout_graceful_shutdown=2
        )
    )
    room.leaving = lambda: server.should_exit
    loop = asyncio.new_event_loop()
    thread = threading.Thread(target=lambda: loop.run_until_complete(_serve(server, listening)), daemon=True)
    thread.start()
    for _ in range(400):
        if server.started:
            break
        time.sleep(0.025)
    yield Served(room, port, loop)
    server.should_exit = True
    thread.join(timeout=40)
    loop.close()
    listening.close()


async def _serve(server: uvicorn.Server, listening: socket.socket) -> None:
    await server.serve([listening])
    # What still waits belongs to a test that is over.
    rest = [task for task in asyncio.all_tasks() if task is not asyncio.current_task()]
    for task in rest:
        task.cancel()
    await asyncio.gather(*rest, return_exceptions=True)
    await asyncio.sleep(0.05)


@pytest.fixture
def served(tiny_campaign):
    """A control room over the smallest campaign."""
    yield from serving([tiny_campaign])


@pytest.fixture(scope="session")
def browser():
    """One Chromium for all tests of a process."""
    if CHROMIUM is None:
        pytest.fail("no Chromium is installed: the page cannot be looked at")
    from playwright.sync_api import sync_playwright

    with sync_playwright() as play:
        found = play.chromium.launch(executable_path=CHROMIUM, args=ARGUMENTS)
        yield found
        found.close()


@pytest.fixture
def page(browser, served):
    """A fresh browser window whose errors and foreign requests fail the test."""
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    page = context.new_page()
    page.set_default_timeout(60_000)
    trouble: list[str] = []
    # A form that is refused while somebody types is an answer, although the browser notes its status.
    page.on(
        "console", lambda m: trouble.append(m.text) if m.type == "error" and "status of 422" not in m.text else None
    )
    page.on("pageerror", lambda e: trouble.append(str(e)))
    page.on(
        "request",
        lambda r: None if r.url.startswith((served.base, "data:", "blob:")) else trouble.append(f"foreign: {r.url}"),
    )
    yield page
    context.close()
    assert not trouble, trouble
