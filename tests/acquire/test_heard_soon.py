"""A word on a pipe is heard soon by a process whose other threads work without a pause."""

from __future__ import annotations

import subprocess
import sys

import pytest

from colure.acquire.control import hear_stops_soon

CHILD = """
import sys, threading, time
from colure.acquire.control import hear_stops_soon
if sys.argv[1] == "soon":
    hear_stops_soon()
def work():
    while True:
        sum(range(50))
for _ in range(3):
    threading.Thread(target=work, daemon=True).start()
print("ready", flush=True)
for line in sys.stdin:
    print(time.clock_gettime(time.CLOCK_MONOTONIC), flush=True)
"""


def heard_s(kind: str, words: int = 25) -> float:
    """Return the median time from a word to its being read, seconds."""
    import time

    child = subprocess.Popen(
        [sys.executable, "-c", CHILD, kind], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, bufsize=1
    )
    assert child.stdin and child.stdout and child.stdout.readline() == "ready\n"
    times = []
    for _ in range(words):
        time.sleep(0.01)
        begin = time.clock_gettime(time.CLOCK_MONOTONIC)
        child.stdin.write("stop\n")
        times.append(float(child.stdout.readline()) - begin)
    child.kill()
    child.communicate()
    return sorted(times)[words // 2]


@pytest.mark.skipif(sys.platform == "win32", reason="one clock for two processes")
def test_a_word_is_heard_sooner_than_the_interpreter_would(nightly):
    """Three busy threads at 5 ms each keep a word waiting for 15 ms and more (docs.python.org, `sys.setswitchinterval`)."""
    assert heard_s("soon") < 0.6 * heard_s("as it is")


def test_threads_of_a_process_that_hears_stops_take_turns_five_times_as_often():
    before = sys.getswitchinterval()
    try:
        hear_stops_soon()
        assert (
            sys.getswitchinterval() <= 0.001
        )  # the interpreter's own: 0.005 (docs.python.org, `sys.getswitchinterval`)
    finally:
        sys.setswitchinterval(before)
