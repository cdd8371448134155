"""Every chart of the report; each takes arrays and returns a matplotlib figure, or its axes where a caller may give some."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from textwrap import fill
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from colure.geometry.conventions import ComplexArray, FloatArray, Handedness, amplitude_db, power_db
from colure.model.bands import stretches
from colure.report.drawing import OnAxes, Panels, panels
from colure.report.look import ACCENT, BAND, CO, CROSS, FIELD_MAP, GRID, INK, MUTED, canvas, styled
from colure.report.texts import Texts

if TYPE_CHECKING:
    from colure.analysis.figures.cuts import GreatCircleCut
    from colure.analysis.figures.face import Face
    from colure.analysis.steps.drift import DriftTrack
    from colure.analysis.uncertainty.level_cuts import LevelCut
    from colure.analysis.verdict.verdicts import MaskView
    from colure.model.figure import Figure
    from colure.report.drawing import Drawing

FLOOR_DB = -50.0
#: Nothing is drawn of Ludwig-3 components this close to -z, degrees: there they turn with the direction of approach.
POLE_DEG = 3.0
#: The scale of the elements' levels ends at their floor, between these two.
FACE_FLOOR_DB = -25.0
LOWEST_FACE_DB = -60.0
#: Over a chart of half a page's width a title has room for so many letters.
TITLE_LETTERS = 34
#: With more rings than this a solid is drawn from every second ring and column.
FINE_RINGS = 60
#: Letters in a line of the title over a solid.
SOLID_LETTERS = 44
PHASE_MAP = "twilight_shifted"  # cyclic and perceptually uniform

#: What a cut's two components are called, by the hand of the first: in pictures, and by key of the catalogue.
HANDS: dict[Handedness, tuple[str, str]] = {
    0: ("co-polar", "cross-polar"), 1: ("right-hand", "left-hand"), -1: ("left-hand", "right-hand"),
}  # fmt: skip
COMPONENT_WORDS: dict[Handedness, tuple[str, str]] = {
    0: ("co", "cross"),
    1: ("right", "left_dashed"),
    -1: ("left", "right_dashed"),
}

#: What maps show where both polarizations were measured; IEEE Std 145 calls the gain in one of them partial.
TOTAL_GAIN, PARTIAL_GAIN = "Total gain", "Partial gain (measured polarization)"


def cuts_rectangular(
    cuts: dict[str, GreatCircleCut],
    peak_gain_dbi: float,
    levels: dict[str, LevelCut],
    say: Texts | None = None,
    *,
    hand: Handedness = 0,
    ax: OnAxes = None,
) -> Panels:
    """Draw co- and cross-polar cuts of both planes in dBi, with the 95 % interval of the co-polar level at each angle.

    `hand`: what the cuts' and levels' `co` is, as of `colure.analysis.figures.cuts.in_hand`. Nothing is drawn where nothing was measured, nor within `POLE_DEG` of the direction opposite to the boresight,
    where Ludwig's third definition has no directions. `say` holds the words; English if left out. `ax`: one for each cut.
    """
    say = say or Texts.of("en")
    with styled():
        axes = panels(ax, _planes(cuts), (7.2, 4.6), sharex=True)
        reach = _reach(cuts)
        for one_ax, (plane, one) in zip(axes, cuts.items(), strict=True):
            drawn = _drawable(one)
            co, cross = (np.where(drawn, amplitude_db(x), np.nan) for x in (one.co, one.cross))
            if plane in levels:
                _, low, high = levels[plane].bounds_db("co", relative=True)
                top = float(amplitude_db(levels[plane].amplitude["co"]).max())
                seen = np.interp(levels[plane].angle_deg, one.angle_deg, drawn.astype(float)) > 0.999
                one_ax.fill_between(
                    levels[plane].angle_deg, low + top, high + top, where=list(seen), color=BAND, alpha=0.6, linewidth=0
                )
            one_ax.plot(one.angle_deg, co, color=CO)
            one_ax.plot(one.angle_deg, cross, color=CROSS, linestyle=(0, (4, 2)))
            one_ax.set_ylim(peak_gain_dbi + FLOOR_DB, peak_gain_dbi + 4)
            one_ax.set_xlim(-reach, reach)
            one_ax.set_xticks(np.arange(-reach, reach + 1.0, 30.0 if axes.own else 60.0))
            one_ax.set_ylabel(say("gain_axis"))
            one_ax.set_title(say("plane", plane=plane))
            co_word, cross_word = COMPONENT_WORDS[hand]
            _label_lines(one_ax, say(f"{co_word}_banded" if plane in levels else co_word), say(cross_word))
        for lowest in axes[-1:] if axes.own else axes:
            lowest.set_xlabel(say("angle_axis"))
        return axes


def _planes(cuts: Iterable[str]) -> list[str]:
    return [f"{name} plane" for name in cuts]


def _reach(cuts: dict[str, GreatCircleCut]) -> float:
    """Return the angle up to which cuts are drawn, a multiple of 30 deg: beyond the region that was measured there is nothing."""
    far = max(float(np.abs(one.angle_deg[_drawable(one)]).max(initial=30.0)) for one in cuts.values())
    return float(min(180.0, 30.0 * np.ceil(far / 30.0)))


def _drawable(one: GreatCircleCut) -> NDArray[np.bool_]:
    """Tell at which angles of a cut both components are known and defined."""
    known = np.asarray(np.isfinite(one.co) & np.isfinite(one.cross))
    return known if one.cos_theta is None else np.asarray(known & (one.cos_theta > -np.cos(np.deg2rad(POLE_DEG))))


def mask_chart(one: MaskView) -> Drawing:
    """Draw a cut with its interval against a mask; where the mask is passed the line is marked."""
    with styled():
        figure = canvas(7.2, 2.5)
        ax = figure.subplots()
        ax.fill_between(one.angle_deg, one.low, one.high, color=BAND, alpha=0.6, linewidth=0)
        ax.plot(one.angle_deg, one.level, color=CO, label="measured")
        ax.plot(one.angle_deg, one.limit, color=INK, linewidth=1.2, label="mask")
        ax.plot(
            one.angle_deg,
            np.where(one.level > one.limit, one.level, np.nan),
            color=CROSS,
            linewidth=2.6,
            label="beyond the mask",
        )
        top = float(np.nanmax([np.nanmax(one.level), np.nanmax(one.limit)]))
        ax.set_ylim(top + FLOOR_DB, top + 4)
        ax.set_xlim(-180, 180)
        ax.set_xticks(range(-180, 181, 30))
        ax.set_xlabel("angle from the peak / deg")
        ax.set_ylabel("dB re the peak" if one.relative else "gain / dBi")
        # Above the axes: nothing may cover a mask.
        ax.text(0.0, 1.03, "measured, band: 95 % interval", transform=ax.transAxes, color=CO, va="bottom", fontsize=8)
        ax.text(0.38, 1.03, "mask", transform=ax.transAxes, color=INK, va="bottom", fontsize=8)
        if np.any(one.level > one.limit):
            ax.text(0.46, 1.03, "beyond it", transform=ax.transAxes, color=CROSS, va="bottom", fontsize=8)
        return figure


def _label_lines(ax: Any, co: str, cross: str) -> None:
    """Name the lines above the picture, in their own colours: no line runs through them."""
    ax.text(1.0, 1.02, f"{co}      ", transform=ax.transAxes, color=CO, va="bottom", ha="right", fontsize=8)
    ax.text(1.0, 0.94, cross, transform=ax.transAxes, color=CROSS, va="top", ha="right", fontsize=8)


def cuts_polar(
    cuts: dict[str, GreatCircleCut], peak_gain_dbi: float, *, hand: Handedness = 0, ax: OnAxes = None
) -> Panels:
    """Draw both planes as polar diagrams, 10 dB per ring, relative to the peak; `ax`: polar axes, one for each cut.

    hand
        The cuts' `co` is the component of this hand, their `cross` the other one; 0: co- and cross-polar.
    """
    names = HANDS[hand]
    words = f"solid: {names[0]}   dashed: {names[1]}   relative to the peak"
    with styled():
        axes = panels(ax, _planes(cuts), (7.2, 3.7), columns=len(cuts), projection="polar")
        for polar, (plane, one) in zip(axes, cuts.items(), strict=True):
            _polar_panel(polar, one, f"{plane} plane", peak_gain_dbi)
            if not axes.own:
                polar.text(0.5, -0.14, words, transform=polar.transAxes, ha="center", va="top", color=MUTED, fontsize=8)
        if axes.own:
            axes.figure.text(0.5, 0.015, words, ha="center", color=MUTED)
            layout: Any = axes.figure.get_layout_engine()
            layout.set(rect=(0, 0.05, 1, 0.95))
        return axes


def _polar_panel(ax: Any, one: GreatCircleCut, title: str, peak_gain_dbi: float) -> None:
    ax.set_theta_zero_location("N")
    ax.set_theta_direction(-1)
    angle = np.deg2rad(one.angle_deg)
    drawn = _drawable(one)
    for values, colour, dash in ((one.co, CO, "-"), (one.cross, CROSS, (0, (4, 2)))):
        level = np.where(drawn, np.maximum(amplitude_db(values) - peak_gain_dbi, FLOOR_DB), np.nan)
        ax.plot(angle, level, color=colour, linestyle=dash, linewidth=1.3)
    ax.set_ylim(FLOOR_DB, 0)
    ax.set_yticks([-40, -30, -20, -10, 0], ["-40", "-30", "-20", "-10", "0 dB"], fontsize=7, color=MUTED)
    ax.set_rlabel_position(112)
    ax.set_thetagrids(range(0, 360, 30), [_signed(a) for a in range(0, 360, 30)], fontsize=8)
    ax.set_title(title, pad=14)


def _signed(angle: int) -> str:
    return f"{angle if angle <= 180 else angle - 360}\u00b0"


def sphere_map(
    *, theta_deg: FloatArray, phi_deg: FloatArray, field: ComplexArray, gain: str = TOTAL_GAIN, ax: OnAxes = None
) -> Panels:
    """Draw gain (total, or partial where one polarization was measured) over theta and phi; `field` (2, theta, phi), nan where nothing was measured."""
    theta_deg, field = _known(theta_deg, field)
    with styled():
        axes = panels(ax, ["map"], (7.2, 3.6))
        ax = axes[0]
        level = power_db(np.sum(np.abs(field) ** 2, axis=0), least=1e-12)
        top = float(np.nanmax(level))
        closed = np.ma.masked_invalid(np.concatenate([level, level[:, :1]], axis=1))
        mesh = ax.pcolormesh(
            np.append(phi_deg, 360.0), theta_deg, closed, cmap=FIELD_MAP, vmin=top + FLOOR_DB, vmax=top,
            shading="nearest" if np.ma.is_masked(closed) else "gouraud", rasterized=True,
        )  # fmt: skip
        lines = ax.contour(
            np.append(phi_deg, 360.0), theta_deg, closed, levels=top + np.array([-40, -30, -20, -10, -3.0103]),
            colors="white", linewidths=0.7,
        )  # fmt: skip
        ax.clabel(lines, fmt=lambda v: f"{v - top:.0f} dB", fontsize=7)
        ax.set_ylim(float(theta_deg[-1]), 0)
        ax.set_yticks(range(0, int(theta_deg[-1]) + 1, 30 if theta_deg[-1] > 90 else 10))
        ax.set_xticks(range(0, 361, 45))
        ax.grid(visible=False)
        ax.set_xlabel("phi / deg (from +x towards +y)")
        ax.set_ylabel("theta / deg (from boresight)")
        ax.set_title(f"{gain}; contours relative to the peak")
        axes.figure.colorbar(mesh, ax=ax, label="gain / dBi", pad=0.02)
        return axes


def _known(theta_deg: FloatArray, field: ComplexArray) -> tuple[FloatArray, ComplexArray]:
    """Return the rings up to the last that holds values: a pattern of a region is blank beyond it."""
    held = np.flatnonzero(np.any(np.isfinite(field), axis=(0, 2)))
    rings = slice(0, int(held[-1]) + 1)
    return theta_deg[rings], field[:, rings]


def solid(
    *, theta_deg: FloatArray, phi_deg: FloatArray, field: ComplexArray, gain: str = TOTAL_GAIN, ax: OnAxes = None
) -> Panels:
    """Draw the pattern as a solid: radius and colour are gain down to 40 dB below the peak; `ax`: axes with three dimensions."""
    import matplotlib as mpl
    from matplotlib.colors import LightSource
    from mpl_toolkits.mplot3d.art3d import Poly3DCollection

    theta_deg, field = _known(theta_deg, field)
    with styled():
        axes = panels(ax, ["solid"], (4.6, 3.9), projection="3d")
        space: Any = axes[0]
        level = power_db(np.sum(np.abs(field) ** 2, axis=0), least=1e-12)
        top = float(np.nanmax(level))
        # Facets of 2 deg are fine enough; a coarse grid is drawn as it is.
        every = 2 if theta_deg.size > FINE_RINGS else 1
        closed = np.concatenate([level, level[:, :1]], axis=1)[::every, ::every]
        radius = np.clip((closed - top + 40.0) / 40.0, 0.0, 1.0)
        t, p = np.meshgrid(
            np.deg2rad(theta_deg[::every]), np.deg2rad(np.append(phi_deg, 360.0)[::every]), indexing="ij"
        )
        colours = mpl.colormaps[FIELD_MAP](radius)
        # Drawn with boresight to the right and y up, as seen from beside the range.
        x, y, z = radius * np.sin(t) * np.cos(p), radius * np.sin(t) * np.sin(p), radius * np.cos(t)
        corners = np.stack([z, x, y], axis=-1)
        faces = np.stack([corners[:-1, :-1], corners[1:, :-1], corners[1:, 1:], corners[:-1, 1:]], axis=2)
        # All faces as one array: `plot_surface` makes and colours each of them for itself.
        space.add_collection3d(
            Poly3DCollection(
                faces.reshape(-1, 4, 3), facecolors=colours[:-1, :-1].reshape(-1, 4), linewidths=0, antialiased=False,
                shade=True, lightsource=LightSource(azdeg=225.0, altdeg=40.0),
            )
        )  # fmt: skip
        _sphere_grid(space)
        # x runs nearly along the line of sight: its letter lies beyond the solid only if it is longer.
        for end, name in (((1.25, 0, 0), "z"), ((0, 1.75, 0), "x"), ((0, 0, 1.2), "y")):
            space.plot([0, end[0]], [0, end[1]], [0, end[2]], color=INK, linewidth=0.8)
            space.text(*(1.12 * one for one in end), name, color=INK, fontsize=10, ha="center", va="center")
        for limits in (space.set_xlim, space.set_ylim, space.set_zlim):
            limits(-1.0, 1.0)
        space.set_box_aspect((1, 1, 1), zoom=1.2)
        space.view_init(elev=22, azim=-62)
        space.set_axis_off()
        space.set_title(
            fill(f"{gain}, 40 dB from centre to peak; z is boresight", SOLID_LETTERS if axes.own else TITLE_LETTERS)
        )
        bar = mpl.cm.ScalarMappable(mpl.colors.Normalize(top - 40.0, top), FIELD_MAP)
        axes.figure.colorbar(bar, ax=space, label="gain / dBi", shrink=0.7, pad=0.02)
        return axes


def _sphere_grid(ax: Any) -> None:
    """Draw circles of theta every 30 deg and of phi every 45 deg on the sphere of the peak's level."""
    turn = np.linspace(0.0, 2.0 * np.pi, 121)
    for theta in np.deg2rad(np.arange(30.0, 180.0, 30.0)):
        ax.plot(np.full(turn.size, np.cos(theta)), np.sin(theta) * np.cos(turn), np.sin(theta) * np.sin(turn),
                color=MUTED, linewidth=0.4, alpha=0.45)  # fmt: skip
    for phi in np.deg2rad(np.arange(0.0, 180.0, 45.0)):
        ax.plot(
            np.cos(turn), np.sin(turn) * np.cos(phi), np.sin(turn) * np.sin(phi), color=MUTED, linewidth=0.4, alpha=0.45
        )


def over_frequency(groups: Sequence[tuple[str, Sequence[Figure]]], *, ax: OnAxes = None) -> Panels:
    """Draw figures over frequency with their intervals, one panel each."""
    with styled():
        rows = (len(groups) + 1) // 2
        axes = panels(ax, [title for title, _ in groups], (7.2, 1.5 * rows), columns=2)
        for index, (one, (title, figures)) in enumerate(zip(axes, groups, strict=True)):
            f = np.array([each.frequency_hz for each in figures]) / 1e9
            value = np.array([each.value for each in figures])
            lower, upper = (np.array([getattr(each, end) for each in figures]) for end in ("lower", "upper"))
            # No line leads across the gap between two bands.
            for part in stretches(1e9 * f):
                one.fill_between(f[part], lower[part], upper[part], color=BAND, alpha=0.6, linewidth=0)
                one.plot(f[part], value[part], color=CO, marker="o", markersize=3)
            one.set_title(fill(title, TITLE_LETTERS))
            one.set_ylabel(figures[0].unit)
            one.ticklabel_format(useOffset=False)
            if index >= 2 * (rows - 1) or not axes.own:
                one.set_xlabel("frequency / GHz")
        return axes


def drift_record(drift: DriftTrack, frequency_hz: FloatArray) -> Drawing:
    """Draw what the tie points drifted by, at the band's ends and centre."""
    with styled():
        figure = canvas(7.2, 2.9)
        left, right = figure.subplots(1, 2)
        minutes = drift.time_s / 60.0
        picks = sorted({0, frequency_hz.size // 2, frequency_hz.size - 1})
        for index, colour, marker in zip(picks, (CO, CROSS, ACCENT), ("o", "s", "^"), strict=False):
            ratio = drift.ratio[:, index]
            name = f"{frequency_hz[index] / 1e9:.3f} GHz"
            left.plot(minutes, amplitude_db(ratio), color=colour, marker=marker, markersize=3, label=name)
            right.plot(minutes, np.rad2deg(np.unwrap(np.angle(ratio))), color=colour, marker=marker, markersize=3)
        left.set_title("Level of the tie point")
        left.set_ylabel("dB from the first tie")
        right.set_title("Phase of the tie point")
        right.set_ylabel("deg from the first tie")
        left.legend(frameon=False, fontsize=8)
        for ax in (left, right):
            ax.set_xlabel("time / min")
        return figure


def budget_bars(figures: Sequence[Figure], *, ax: OnAxes = None) -> Panels:
    """Draw the contributions to each figure's uncertainty as shares of its variance."""
    with styled():
        axes = panels(ax, ["budget"], (7.2, 0.2 * len(figures) + 1.3))
        ax = axes[0]
        terms = list(figures[0].groups())
        shades = ["#0b3c4d", "#2a7f9e", "#8fc1d4", "#c8641b", "#e8b07a", "#7a3b69", "#c9a3bd", "#6b7a86"]
        hatches = ["", "//", "", "..", "", "xx", "", "--"]
        start = np.zeros(len(figures))
        for index, term in enumerate(terms):
            share = np.array([_share(one, term) for one in figures])
            ax.barh(range(len(figures)), share, left=start, color=shades[index % 8], hatch=hatches[index % 8],
                    edgecolor="white", linewidth=0.4, label=term)  # fmt: skip
            start += share
        ax.set_yticks(range(len(figures)), [f"{one.label}  {one.interval_text()} {one.unit}" for one in figures])
        ax.invert_yaxis()
        ax.set_xlim(0, 100)
        ax.set_xlabel("share of the variance / %")
        ax.grid(visible=False, axis="y")
        if axes.own:
            # Over the whole picture: long names of figures leave the axes little width.
            axes.figure.legend(ncols=3, frameon=False, fontsize=8, loc="outside upper center")
        else:
            ax.legend(ncols=3, frameon=False, fontsize=8, loc="lower center", bbox_to_anchor=(0.3, 1.0))
        return axes


def _share(one: Figure, term: str) -> float:
    total = sum(row.expanded**2 for row in one.budget)
    part = one.groups().get(term, 0.0) ** 2
    return 100.0 * part / total if total > 0 else 0.0


def face_picture(face: Face) -> Drawing:
    """Draw level and phase of every element's excitation as a tile in its place; suspects ringed.

    Tiles, not a field: waves that reach the far field smear a dead element over half a wavelength.
    """
    with styled():
        figure = canvas(7.2, 3.5)
        level_ax, phase_ax = figure.subplots(1, 2, sharey=True)
        low = float(np.clip(5.0 * np.floor(face.floor_db / 5.0), LOWEST_FACE_DB, FACE_FLOOR_DB))
        level = amplitude_db(np.maximum(np.abs(face.excited) / np.abs(face.excited).max(), 1e-10))
        mean = np.angle(np.sum(face.excited * np.abs(face.excited)))
        # An element in the floor has no phase.
        shown = np.where(level > face.floor_db, np.rad2deg(np.angle(face.excited * np.exp(-1j * mean))), np.nan)
        columns = 1e3 * np.unique(np.round(face.positions_m[:, 0], 9))
        rows = 1e3 * np.unique(np.round(face.positions_m[:, 1], 9))
        pitch = 1e3 * face.pitch_m
        edges = [np.append(one - pitch / 2, one[-1] + pitch / 2) for one in (columns, rows)]
        for ax, values, colours, limits, name in (
            (level_ax, np.maximum(level, low), FIELD_MAP, (low, 0.0), "level / dB"),
            (phase_ax, shown, PHASE_MAP, (-180.0, 180.0), "phase / deg"),
        ):
            mesh = ax.pcolormesh(
                *edges, values, cmap=colours, vmin=limits[0], vmax=limits[1], edgecolors="white", linewidth=0.6
            )
            for one in face.suspects:
                place = 1e3 * face.positions_m[_element(face, one.row, one.column)]
                ax.plot(place[0], place[1], "o", markersize=14, markerfacecolor="none", markeredgecolor=CROSS)
            ax.set_aspect("equal")
            ax.grid(visible=False)
            ax.set_xlabel("x / mm")
            figure.colorbar(mesh, ax=ax, label=name, shrink=0.85)
        level_ax.set_ylabel("y / mm")
        level_ax.set_title(f"Level (floor {face.floor_db:.0f} dB)")
        phase_ax.set_title("Phase")
        return figure


def plane_picture(x_m: FloatArray, y_m: FloatArray, field: ComplexArray, *, ax: OnAxes = None) -> Panels:
    """Draw level and phase of a co-polar plane field (y, x), from waves that reach the far field.

    The title says the resolution: a single dead element is filled by its neighbours (`face_picture` draws elements).
    """
    with styled():
        axes = panels(ax, ["level", "phase"], (7.2, 3.5), columns=2, sharey=True)
        level = amplitude_db(np.maximum(np.abs(field) / np.abs(field).max(), 1e-10))
        phase = np.rad2deg(np.angle(field * np.exp(-1j * np.angle(np.sum(field * np.abs(field))))))
        for one, values, colours, low, high, name in (
            (axes[0], level, FIELD_MAP, FACE_FLOOR_DB, 0.0, "level / dB"),
            (axes[1], np.where(level > FACE_FLOOR_DB, phase, np.nan), PHASE_MAP, -180.0, 180.0, "phase / deg"),
        ):
            mesh = one.pcolormesh(
                1e3 * x_m, 1e3 * y_m, values, cmap=colours, vmin=low, vmax=high, shading="nearest", rasterized=True
            )
            one.set_aspect("equal")
            one.grid(visible=False)
            one.set_xlabel("x / mm")
            axes.figure.colorbar(mesh, ax=one, label=name, shrink=0.85)
        axes[0].set_ylabel("y / mm")
        axes[0].set_title("Level on z = 0\n(resolved to half a wavelength:\nno single element)")
        axes[1].set_title("Phase on z = 0")
        return axes


def renamed(axes: Panels, scale: str, unit: str) -> Panels:
    """Return a picture whose axes and titles name what they show: `scale` and `unit` in place of gain and dBi."""
    if (scale, unit) == ("gain", "dBi"):
        return axes
    with styled():
        for ax in axes.with_bars:
            for text in (ax.xaxis.label, ax.yaxis.label):
                text.set_text(text.get_text().replace("gain / dBi", f"{scale} / {unit}"))
            for side in ("left", "center"):
                ax.set_title(ax.get_title(loc=side).replace("Total gain", f"Total {scale}"), loc=side)
    return axes


def _element(face: Face, row: int, column: int) -> int:
    columns = len(np.unique(np.round(face.positions_m[:, 0], 9)))
    return row * columns + column


def _beside(along_mm: float) -> str:
    """Say where along z the device's centre lies."""
    if along_mm == 0.0:
        return "at it"
    return f"{abs(along_mm):g} mm {'behind' if along_mm < 0 else 'in front'}"


def range_sketch(
    range_length_m: float, offset_mm: tuple[float, float, float], reach_m: float, names: tuple[str, str]
) -> Drawing:
    """Draw the range from above: axes' intersection, turning sphere, device, probe; to scale."""
    with styled():
        figure = canvas(7.2, 2.1)
        ax = figure.subplots()
        circle = np.linspace(0, 2 * np.pi, 200)
        ax.fill(reach_m * np.cos(circle), reach_m * np.sin(circle), color=BAND, alpha=0.5, linewidth=0)
        z = 1e-3 * offset_mm[2]
        ax.plot([z, z], [-0.025, 0.025], color=CO, linewidth=3, solid_capstyle="butt")
        ax.plot([0], [0], marker="+", color=INK, markersize=12)
        ax.plot([range_length_m, range_length_m + 0.06], [0, 0], color=CROSS, linewidth=6, solid_capstyle="butt")
        ax.annotate("", (range_length_m, -0.075), (0, -0.075), arrowprops={"arrowstyle": "<->", "color": INK})
        ax.text(range_length_m / 2, -0.07, f"range length {range_length_m:g} m", ha="center", va="bottom")
        ax.text(0.0, 0.105, f"axes' intersection ({names[0]}, {names[1]}); device {_beside(offset_mm[2])}, "
                f"turning radius {1e3 * reach_m:.0f} mm",
                ha="left", va="bottom")  # fmt: skip
        ax.text(range_length_m + 0.07, 0, "probe", va="center", color=CROSS)
        ax.set_aspect("equal")
        ax.set_xlim(-0.12, range_length_m + 0.2)
        ax.set_ylim(-0.12, 0.15)
        ax.grid(visible=False)
        ax.set_yticks([])
        ax.spines["left"].set_visible(False)
        ax.spines["bottom"].set_color(GRID)
        ax.set_xlabel("z / m, seen from above, to scale")
        return figure
