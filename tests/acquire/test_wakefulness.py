"""A run asks the system to stay awake, lets go afterwards, and says so when it cannot ask."""

from __future__ import annotations

import os
import sys
import time

import pytest

from colure.acquire.wakefulness import kept_awake

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="stands in for one system's command")


def test_the_inhibitor_lives_as_long_as_the_run(tmp_path, monkeypatch):
    script = tmp_path / "systemd-inhibit"
    script.write_text(f'#!/bin/sh\necho "$$ $*" > {tmp_path}/called\nexec sleep 60\n', encoding="utf-8")
    script.chmod(0o755)
    monkeypatch.setenv("PATH", f"{tmp_path}{os.pathsep}{os.environ['PATH']}")
    with kept_awake("antenna measurement") as warning:
        assert warning == ""
        words = (tmp_path / "called").read_text(encoding="utf-8").split()
        assert "--what=sleep:idle" in words and f"--pid={os.getpid()}" in words
        os.kill(int(words[0]), 0)
    time.sleep(0.05)
    with pytest.raises(ProcessLookupError):
        os.kill(int(words[0]), 0)


def test_a_system_that_cannot_be_asked_is_a_warning(tmp_path, monkeypatch):
    monkeypatch.setenv("PATH", str(tmp_path))
    with kept_awake("antenna measurement") as warning:
        assert "switch its sleep off" in warning


def test_an_inhibitor_that_is_refused_is_a_warning(tmp_path, monkeypatch):
    script = tmp_path / "systemd-inhibit"
    script.write_text("#!/bin/sh\nexit 1\n", encoding="utf-8")
    script.chmod(0o755)
    monkeypatch.setenv("PATH", f"{tmp_path}{os.pathsep}{os.environ['PATH']}")
    with kept_awake("antenna measurement") as warning:
        assert "code 1" in warning
