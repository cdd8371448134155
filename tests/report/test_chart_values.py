"""The values beside a chart are what is drawn, and pictures stay small."""

from __future__ import annotations

import csv
import io

import numpy as np
from PIL import Image

from colure.report.charts import sphere_map
from colure.report.document import chart, drawn_values
from colure.report.look import canvas


def test_lines_over_the_same_x_share_its_column_and_gaps_are_left_out():
    figure = canvas(3.0, 3.0)
    ax = figure.subplots()
    ax.set_xlabel("angle / deg")
    ax.set_ylabel("gain / dBi")
    ax.set_title("E plane", loc="left")
    x = np.array([-2.0, -1.0, 0.0, 1.0])
    ax.plot(x, [np.nan, 1.5, 2.25, np.nan], label="co")
    ax.plot(x, [np.nan, np.nan, -20.0, -21.0])
    ax.plot([0.0, 5.0], [7.0, 8.0], label="limit")
    rows = list(csv.reader(io.StringIO(drawn_values(figure))))
    assert rows == [
        ["angle / deg", "E plane: co, gain / dBi", "E plane: line 2, gain / dBi", "angle / deg", "E plane: limit, gain / dBi"],
        ["-1", "1.5", "", "0", "7"],
        ["0", "2.25", "-20", "5", "8"],
        ["1", "", "-21", "", ""],
    ]  # fmt: skip


def test_a_smooth_map_is_small_and_keeps_its_colours():
    """Colours against the canvas' own pixels: 256 of them, 5 of 255 rms at most (the eye tells about 8)."""
    theta, phi = np.arange(0.0, 181.0, 2.0), np.arange(0.0, 360.0, 2.0)
    t, p = np.deg2rad(np.meshgrid(theta, phi, indexing="ij"))
    field = np.exp(3j * np.sin(t) * np.cos(p)) + np.exp(-9j * np.sin(t) * np.sin(p)) * np.cos(t)
    figure = sphere_map(theta_deg=theta, phi_deg=phi, field=np.stack([field, 0.3j * field])).figure
    packed = chart(figure, "Map.", dense=True)
    seen = np.asarray(Image.open(io.BytesIO(packed.data)).convert("RGB"), float)
    drawn = np.asarray(figure.canvas.buffer_rgba(), float)[..., :3]
    assert len(packed.data) < 300_000
    assert np.sqrt(np.mean((seen - drawn) ** 2)) < 5.0
