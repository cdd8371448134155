"""Dialects that nobody chose: each is connected from its profile alone and measured with rightly, or refused by name."""

from __future__ import annotations

import copy
import os
import random

import pytest

from colure.acquire.clocks import SystemClock
from colure.errors import InputError, InstrumentError
from colure.instruments.line_axes import LineAxes
from colure.instruments.line_profile import LineProfile
from colure.instruments.protocols import unwatched
from colure.model.loading import validate
from tests.instruments.grammar import NAMES, Dialect, Drawn
from tests.instruments.peers import AXES, Motors, Tcp, Terminal

pytestmark = pytest.mark.skipif(os.name == "nt", reason="pseudo-terminals")

#: Words without which a profile may be refused, and words that the refusal may name instead.
WORDS = {
    "acknowledge": ("acknowledge", "sync"), "busy": ("busy",), "arrived": ("arrived", "messages"),
    "position_pattern": ("position_pattern",), "move": ("move",), "hold": ("hold",), "position": ("position",),
    "identity": ("identity",), "line.messages": ("messages",), "line.greeting": ("greeting", "messages"),
    "line.echo": ("echo",), "line.read_end": ("line end", "read_end"), "line.write_end": ("line end", "write_end"),
}  # fmt: skip


def measure(dialect: Dialect, table: dict, points: int) -> None:
    """Connect and go to positions; whatever is accepted must be right."""
    words = validate(LineProfile, table, source="drawn.toml")
    motors = Motors(20000.0)
    server = (Tcp if dialect.choice["link"] == "tcp" else Terminal)(lambda: Drawn(dialect, motors))
    axes = None
    draw = random.Random(dialect.seed)
    try:
        axes = LineAxes(server.resource, words, AXES, timeout_s=0.6, timer=SystemClock())
        for _ in range(points):
            wanted = {name: round(draw.uniform(-150.0, 150.0), 2) for name in NAMES}
            axes.begin(wanted)
            status = axes.finish(0.0, unwatched, limit_s=3.0)
            true = {name: motors.at(name) for name in NAMES}
            assert not motors.moving() and true == pytest.approx(wanted, abs=0.006), dialect
            assert status.positions_deg == pytest.approx(wanted, abs=0.006), dialect
        axes.hold()
        axes.release()
        assert not axes.status().held and not motors.held
    finally:
        if axes is not None:
            axes.close()
        server.close()


def without(table: dict, word: str) -> dict | None:
    """Return the table without a word; None if it does not have it."""
    table, (*above, key) = copy.deepcopy(table), word.split(".")
    owner = table
    for part in above:
        owner = owner.get(part, {})
    if not owner.get(key):
        return None
    del owner[key]
    return table


def require_right_or_refused(seed: int, points: int) -> str:
    """Measure as drawn, then without one of its words; return that word."""
    dialect = Dialect(seed)
    table = dialect.words()
    measure(dialect, table, points)
    word = random.Random(seed).choice([word for word in WORDS if without(table, word)])
    try:
        measure(dialect, without(table, word), 2)
    except (InputError, InstrumentError) as error:
        assert any(name in str(error) for name in WORDS[word]), (seed, word, str(error))
    return word


@pytest.mark.parametrize("seed", range(5))
def test_a_drawn_dialect_is_measured_with_rightly_or_refused_by_name(seed):
    require_right_or_refused(seed, 5)


@pytest.mark.nightly
def test_two_hundred_drawn_dialects(request):
    if not request.config.getoption("--nightly"):
        pytest.skip("nightly: five by default")
    for seed in range(100, 300):
        require_right_or_refused(seed, 20)
