"""Pictures of the coordinates page, drawn with the functions that the program itself uses."""

from __future__ import annotations

import numpy as np

from colure.geometry import Geometry, sighting, unit_vector
from colure.geometry.directions import phi_hat, theta_hat
from colure.report.drawing import Drawing
from colure.report.look import CO, CROSS, GRID, INK, MUTED, canvas, styled

#: From where the sphere is seen: to the right, above and before it.
VIEW = np.array([0.62, 0.42, 1.0]) / np.linalg.norm([0.62, 0.42, 1.0])


def _screen(points: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Return (right, up, towards the viewer) of points (..., 3); y is up."""
    right = np.cross([0.0, 1.0, 0.0], VIEW)
    right /= np.linalg.norm(right)
    up = np.cross(VIEW, right)
    return points @ right, points @ up, points @ VIEW


def _line(ax, points: np.ndarray, colour: str, width: float = 0.8, label: str | None = None) -> None:
    """Draw a line on the sphere: solid in front, faint behind."""
    x, y, depth = _screen(points)
    for front, alpha in ((True, 1.0), (False, 0.25)):
        kept = (depth >= 0.0) == front
        ax.plot(
            np.where(kept, x, np.nan),
            np.where(kept, y, np.nan),
            color=colour,
            linewidth=width,
            alpha=alpha,
            label=label if front else None,
        )


def _arrow(ax, at: np.ndarray, way: np.ndarray, colour: str, text: str = "", width: float = 1.8) -> None:
    (x0, x1), (y0, y1), _ = _screen(np.stack([at, at + way]))
    ax.annotate(
        "",
        (x1, y1),
        (x0, y0),
        arrowprops={"arrowstyle": "-|>", "color": colour, "linewidth": width, "shrinkA": 0, "shrinkB": 0},
    )
    if text:
        ax.text(
            x1 + 0.04 * np.sign(x1 - x0 + 1e-9),
            y1 + 0.03,
            text,
            color=colour,
            ha="left" if x1 >= x0 else "right",
            fontsize=10,
        )


def _bare(ax, size: float = 1.32) -> None:
    ax.set_aspect("equal")
    ax.set_xlim(-size, size)
    ax.set_ylim(-size, size)
    ax.axis("off")


def _globe(ax) -> None:
    angle = np.linspace(0, 2 * np.pi, 181)
    for theta in np.deg2rad([30, 60, 90, 120, 150]):
        _line(ax, unit_vector(theta=theta + 0 * angle, phi=angle), GRID)
    for phi in np.deg2rad(np.arange(0, 180, 30)):
        _line(ax, unit_vector(theta=angle, phi=phi + 0 * angle), GRID)
    ax.plot(np.cos(angle), np.sin(angle), color=MUTED, linewidth=0.8)


def sphere() -> Drawing:
    """Axes, theta and phi of one direction, and its unit vectors."""
    with styled():
        figure = canvas(4.6, 4.2)
        ax = figure.subplots()
        _globe(ax)
        for way, name in (([1.25, 0, 0], "x"), ([0, 1.25, 0], "y"), ([0, 0, 1.35], "z, boresight")):
            _arrow(ax, np.zeros(3), np.array(way), INK, name, 1.2)
        t, p = np.deg2rad(62.0), np.deg2rad(78.0)
        d = unit_vector(theta=t, phi=p)
        _line(ax, unit_vector(theta=np.linspace(0, t, 40), phi=np.full(40, p)), CO, 2.2)
        _line(ax, 0.55 * unit_vector(theta=np.full(40, np.pi / 2), phi=np.linspace(0, p, 40)), CROSS, 2.2)
        _arrow(ax, np.zeros(3), d, INK, "", 1.4)
        _arrow(ax, d, 0.36 * theta_hat(theta=t, phi=p), CO, "\u03b8\u0302")
        _arrow(ax, d, 0.36 * phi_hat(theta=t, phi=p), CROSS, "\u03c6\u0302")
        for point, text, colour in (
            (1.08 * unit_vector(theta=0.45 * t, phi=p + 0.25), "\u03b8", CO),
            (0.68 * unit_vector(theta=np.pi / 2, phi=0.45 * p), "\u03c6", CROSS),
        ):
            x, y, _ = _screen(point)
            ax.text(x, y, text, color=colour, fontsize=12, ha="center", va="center")
        _bare(ax)
        return figure


def grids() -> Drawing:
    """Lines of constant readouts of three positioners over the front half sphere, seen from the probe."""
    with styled():
        figure = canvas(7.4, 2.9)
        for ax, geometry in zip(figure.subplots(1, 3), Geometry, strict=True):
            fine = np.deg2rad(np.linspace(-90, 90, 181))
            steps = np.deg2rad(np.arange(-75, 76, 15))
            if geometry is Geometry.ROLL_OVER_AZIMUTH:
                rings, slices = np.deg2rad(np.arange(15, 91, 15)), np.deg2rad(np.arange(0, 180, 15))
                first = [(np.full_like(fine, t), 2 * fine) for t in rings]
                second = [(fine, np.full_like(fine, p)) for p in slices]
            else:
                first = [(np.full_like(fine, a), fine) for a in steps]
                second = [(fine, np.full_like(fine, a)) for a in steps]
            for lines, colour in ((first, CO), (second, CROSS)):
                for one, two in lines:
                    d = sighting(geometry, first=one, second=two).direction
                    d = np.where(d[:, 2:] >= -1e-9, d, np.nan)
                    ax.plot(d[:, 0], d[:, 1], color=colour, linewidth=0.9)
            ax.plot(np.cos(2 * fine), np.sin(2 * fine), color=MUTED, linewidth=0.9)
            ax.set_title(geometry.value.replace("-", " "), fontsize=9)
            names = geometry.axis_names
            ax.text(-1.05, -1.22, f"{names[0]} fixed", color=CO, fontsize=8)
            ax.text(1.05, -1.22, f"{names[1]} fixed", color=CROSS, fontsize=8, ha="right")
            _bare(ax, 1.3)
        return figure


def vectors() -> Drawing:
    """Theta^ and phi^, and Ludwig's pair, about the boresight, seen from the probe."""
    with styled():
        figure = canvas(6.4, 3.2)
        for ax, ludwig in zip(figure.subplots(1, 2), (False, True), strict=True):
            for t in np.deg2rad([18, 40, 62]):
                for p in np.deg2rad(np.arange(0, 360, 45)):
                    d, one, two = unit_vector(theta=t, phi=p), theta_hat(theta=t, phi=p), phi_hat(theta=t, phi=p)
                    if ludwig:
                        one, two = np.cos(p) * one - np.sin(p) * two, np.sin(p) * one + np.cos(p) * two
                    for way, colour in ((one, CO), (two, CROSS)):
                        ax.annotate(
                            "",
                            d[:2] + 0.15 * way[:2],
                            d[:2],
                            arrowprops={
                                "arrowstyle": "-|>",
                                "color": colour,
                                "linewidth": 1.2,
                                "shrinkA": 0,
                                "shrinkB": 0,
                            },
                        )
            angle = np.linspace(0, 2 * np.pi, 181)
            ax.plot(np.cos(angle), np.sin(angle), color=MUTED, linewidth=0.8)
            ax.set_title("Ludwig 3: x3 and y3" if ludwig else "theta and phi", fontsize=10)
            _bare(ax, 1.12)
        return figure


def probe() -> Drawing:
    """What a standing and a following probe see along four slices, in the device's frame, seen from the probe."""
    with styled():
        figure = canvas(6.4, 3.3)
        for ax, follows in zip(figure.subplots(1, 2), (False, True), strict=True):
            for p in np.deg2rad([0, 45, 90, 135]):
                fine = np.deg2rad(np.linspace(-80, 80, 81))
                ax.plot(np.sin(fine) * np.cos(p), np.sin(fine) * np.sin(p), color=GRID, linewidth=1.0)
                for t in np.deg2rad([-70, -45, -20, 20, 45, 70]):
                    # Along a slice theta^ goes straight on through the pole.
                    d, one, two = unit_vector(theta=t, phi=p), theta_hat(theta=t, phi=p), phi_hat(theta=t, phi=p)
                    seen = np.cos(p) * one - np.sin(p) * two if follows else one
                    ax.annotate(
                        "",
                        d[:2] + 0.17 * seen[:2],
                        d[:2],
                        arrowprops={
                            "arrowstyle": "-|>",
                            "color": CO if follows else CROSS,
                            "linewidth": 1.4,
                            "shrinkA": 0,
                            "shrinkB": 0,
                        },
                    )
            ax.set_title(
                "the probe follows: \u03c7 = \u2212\u03c6" if follows else "the probe stands: \u03c7 = 0", fontsize=10
            )
            _bare(ax, 1.15)
        return figure


PICTURES = {"sphere": sphere, "grids": grids, "vectors": vectors, "probe": probe}
