"""Maps over direction cosines, frequency and coverage."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from colure.analysis.figures.cuts import FarField, components
from colure.analysis.figures.sphere import coverage
from colure.geometry.conventions import ComplexArray, FloatArray, Handedness, amplitude_db, power_db
from colure.report.charts import HANDS, POLE_DEG
from colure.report.drawing import OnAxes, Panels, panels
from colure.report.halves import shown_halves
from colure.report.look import CO, CROSS, FIELD_MAP, INK, canvas, styled

if TYPE_CHECKING:
    from colure.analysis.figures.cuts import GreatCircleCut
    from colure.report.drawing import Drawing

FLOOR_DB = -45.0
#: Axial ratios above this are drawn as this: linear for all purposes.
MOST_AXIAL_DB = 30.0
#: Below this level re the peak an axial ratio is that of noise and echoes.
LEAST_LEVEL_DB = -20.0
CELLS = 141


def front_maps(
    coefficients: ComplexArray,
    *,
    slant: float,
    hand: Handedness = 0,
    reach: float = 1.0,
    back: bool = False,
    region: float = np.pi,
    peak: float | None = None,
    ax: OnAxes = None,
) -> Panels:
    """Draw co- and cross-polar level and the axial ratio over direction cosines of the front half (u^2 + v^2 <= reach^2).

    hand
        Levels of this hand and of the other one instead of co- and cross-polar.
    back, region
        True: of the back half (z below 0), up to the angle `region` from +z (rad).
    peak
        Amplitude that levels refer to; the highest of the half if None.
    """
    u = np.linspace(-reach, reach, CELLS)
    uu, vv = np.meshgrid(u, u, indexing="xy")
    z = (-1.0 if back else 1.0) * np.sqrt(np.maximum(1.0 - uu**2 - vv**2, 0.0))
    inside = (uu**2 + vv**2 <= reach**2) & (z >= np.cos(region) - 1e-9)
    d = np.stack([uu[inside], vv[inside], z[inside]], axis=-1)
    field = FarField(coefficients).at(d)
    co, cross = components(field, d, slant, 0)
    peak = float(np.sqrt(np.max(np.abs(co) ** 2 + np.abs(cross) ** 2))) if peak is None else peak
    # Opposite to the boresight Ludwig's third definition has no directions.
    defined = (d[:, 2] > -np.cos(np.deg2rad(POLE_DEG))) | bool(hand)
    own, other = components(field, d, slant, hand)
    with styled():
        axes = panels(ax, [*HANDS[hand], "axial ratio"], (7.2, 2.75), columns=3, sharey=True)
        values = (
            (np.where(defined, _level(own / peak), np.nan), FLOOR_DB, 0.0, f"{HANDS[hand][0]} / dB re peak", FIELD_MAP),
            (
                np.where(defined, _level(other / peak), np.nan),
                FLOOR_DB,
                0.0,
                f"{HANDS[hand][1]} / dB re peak",
                FIELD_MAP,
            ),
            (_axial(co, cross, peak), 0.0, MOST_AXIAL_DB, "axial ratio / dB", "cividis_r"),
        )
        for one, (level, low, high, name, colours) in zip(axes, values, strict=True):
            grid = np.full(uu.shape, np.nan)
            grid[inside] = level
            mesh = one.pcolormesh(u, u, grid, cmap=colours, vmin=low, vmax=high, shading="nearest", rasterized=True)
            one.set_aspect("equal")
            one.grid(visible=False)
            one.set_xlabel("u")
            axes.figure.colorbar(mesh, ax=one, label=name, location="bottom", shrink=0.9)
        axes[0].set_ylabel("v")
        return axes


def beam_maps(
    coefficients: ComplexArray, *, slant: float, region: float, hand: Handedness = 0
) -> list[tuple[Panels, bool]]:
    """Draw the maps of the half of the sphere that holds the beam, or of both where each is within 3 dB of the peak.

    region
        Angle from +z up to which the field is known, rad.

    Returns
    -------
    (picture, whether it shows the back half), levels of all relative to the same peak.
    """
    shown, peak = shown_halves(coefficients, region=region)
    reach = float(np.sin(min(region, 0.5 * np.pi)))
    level = None if len(shown) == 1 else peak
    return [
        (front_maps(coefficients, slant=slant, hand=hand, reach=reach, back=back, region=region, peak=level), back)
        for back in shown
    ]


def _level(ratio: ComplexArray) -> FloatArray:
    return amplitude_db(ratio, least=1e-6)


def _axial(co: ComplexArray, cross: ComplexArray, peak: float) -> FloatArray:
    size = np.abs(co) ** 2 + np.abs(cross) ** 2
    circularity = np.clip(2.0 * (co * np.conj(cross)).imag / np.maximum(size, 1e-300), -1.0, 1.0)
    ratio = np.abs(np.tan(0.5 * np.arcsin(circularity)))
    level = np.minimum(-amplitude_db(ratio, least=1e-6), MOST_AXIAL_DB)
    return np.where(size > peak**2 * 10 ** (LEAST_LEVEL_DB / 10.0), level, np.nan)


def waterfall(cuts: list[GreatCircleCut], frequency_hz: FloatArray, plane: str, *, hand: Handedness = 0) -> Drawing:
    """Draw the co-polar level of one plane over angle and frequency, relative to each frequency's peak."""
    with styled():
        figure = canvas(4.2, 2.9)
        ax = figure.subplots()
        angle = cuts[0].angle_deg
        step = max(1, angle.size // 720)
        level = np.array([_level(one.co[::step] / np.abs(one.co[one.co.size // 2])) for one in cuts])
        mesh = ax.pcolormesh(angle[::step], frequency_hz / 1e9, level, cmap=FIELD_MAP, vmin=FLOOR_DB, vmax=0.0, shading="nearest",
                             rasterized=True)  # fmt: skip
        ax.set_xlabel(f"angle from the peak in the {plane} plane / deg")
        ax.set_ylabel("frequency / GHz")
        if frequency_hz.size > 1:
            ax.set_ylim(frequency_hz[0] / 1e9, frequency_hz[-1] / 1e9)
        ax.grid(visible=False)
        figure.colorbar(mesh, ax=ax, label=f"{HANDS[hand][0]} / dB re peak", pad=0.02)
        return figure


def coverage_curve(states: dict[str, FloatArray], theta: FloatArray, best: FloatArray | None) -> Drawing:
    """Draw which share of all solid angles sees at most some gain: total gain (theta, phi) of each state, and their best."""
    with styled():
        figure = canvas(4.6, 3.9)
        ax = figure.subplots()
        percent = tuple(float(p) for p in np.arange(0.5, 100.0, 0.5))
        for name, power in states.items():
            value = power_db(coverage(power, theta, percent), least=1e-12)
            ax.plot(value, percent, color=CO, linewidth=1.0 if best is not None else 1.6, label=name)
        if best is not None:
            ax.plot(
                power_db(coverage(best, theta, percent), least=1e-12),
                percent,
                color=CROSS,
                label="best of all states",
            )
            ax.text(0.015, 0.9, "best of all states", color=CROSS, transform=ax.transAxes)
            ax.text(0.015, 0.8, "each state", color=CO, transform=ax.transAxes)
        ax.axhline(50.0, color=INK, linewidth=0.6, linestyle=(0, (2, 3)))
        ax.set_ylim(0, 100)
        ax.set_xlim(left=max(ax.get_xlim()[0], ax.get_xlim()[1] - 60.0))
        ax.set_xlabel("total gain / dBi")
        ax.set_ylabel("share of solid angle / %")
        return figure
