"""A far field from a file as an object: figures with intervals, pictures, comparison with a run's figures of the same kind."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

import numpy as np

from colure.app.services.pattern_files import Waves, waves_of_file
from colure.app.services.picture_kinds import KINDS, PLANES, chosen_planes
from colure.errors import InputError
from colure.model.evaluation import Evaluation
from colure.model.pattern import index_of

if TYPE_CHECKING:
    from colure.analysis.uncertainty.field_figures import FieldCause, ProbeKnowledge
    from colure.analysis.uncertainty.level_cuts import LevelCut
    from colure.app.services.figure_table import Figures
    from colure.geometry.conventions import ComplexArray, FloatArray, Handedness
    from colure.model.pattern import Quantity
    from colure.report.drawing import OnAxes, Panels
    from colure.waves.expansion import Expansion

#: What |e|^2 is called on an axis, by a pattern's quantity.
SCALES = {"gain": "gain", "realized_gain": "gain", "eirp": "EIRP"}
APERTURE_POINTS = 121
#: Half width of an aperture's picture against the radius that the waves fill.
APERTURE_MARGIN = 1.1


def open_pattern(path: str | Path, *, slant_deg: float | None = None) -> FilePattern:
    """Open a far field: a pattern of ours (.nc) or a tidy CSV, whole or up to a polar angle from +z.

    Parameters
    ----------
    slant_deg
        Direction of the co-polar vector, degrees from x towards y (Ludwig 3). None: x or y, whichever is the stronger one at
        the peak of the middle frequency; `copolar` says which.

    Raises
    ------
    InputError
        If there is no such file, or it holds no far field that can be expanded in waves.
    """
    return FilePattern(waves_of_file(Path(path), slant_deg=slant_deg))


@dataclass(frozen=True)
class FilePattern:
    """A far field and what can be read from it. A relative field is scaled to directivity where the sphere is whole."""

    waves: Waves

    @property
    def data(self) -> Any:
        """The field as it was read: an xarray dataset."""
        return self.waves.pattern

    @property
    def frequency_hz(self) -> FloatArray:
        """Frequencies (frequency,)."""
        return self.waves.frequency_hz

    @property
    def cautions(self) -> tuple[str, ...]:
        """What is worth telling about the file and how it is read, a line each."""
        told = str(self.data.attrs.get("caution", ""))
        return tuple(line for line in (f"caution: {told}" if told else "", self.copolar) if line)

    @property
    def copolar(self) -> str:
        """How the co-polar vector was chosen, and a caution where the wave lies beside it; empty where nothing is to be told."""
        return self.waves.copolar

    @property
    def scale(self) -> str:
        """What |e|^2 is in figures and pictures: gain, EIRP, directivity, or level (relative, part of the sphere)."""
        if self.waves.quantity in SCALES:
            return SCALES[self.waves.quantity]
        return "directivity" if self.waves.region >= np.pi - 1e-9 else "level"

    def _factor(self) -> FloatArray:
        """Return what the field is multiplied with (frequency,): 1, to directivity, or to a peak of 1."""
        from colure.analysis.figures.cuts import find_beam

        scale, c = self.scale, self.waves.expansion.coefficients
        if scale == "directivity":
            return np.asarray(np.sqrt(4.0 * np.pi / np.sum(np.abs(c) ** 2, axis=(-2, -1))))
        if scale == "level":
            tops = [find_beam(one, slant=self.waves.slant, region=self.waves.region).intensity for one in c]
            return np.asarray(1.0 / np.sqrt(tops))
        return np.ones(len(c))

    def evaluate(self, evaluation: Evaluation | None = None) -> Figures:
        """Read every figure that the field gives; with intervals where the file states its errors (`error_waves`)."""
        from colure.analysis.uncertainty.field_figures import figures_of_field
        from colure.app.services.figure_table import Figures

        w = self.waves
        return Figures(
            figures_of_field(
                self.scaled(), w.frequency_hz, self.causes(),
                settings=Evaluation() if evaluation is None else evaluation,
                slant=w.slant, region=w.region, absolute=self.holds_gain, probe=self.probe,
            )
        )  # fmt: skip

    def cuts(self, planes_deg: tuple[float, ...]) -> dict[float, list[LevelCut]]:
        """Return cuts through the peak by frequency in Hz, in planes in degrees from E towards H; nan where not known.

        Their uncertainties are infinite where the file states no errors.
        """
        from colure.analysis.uncertainty.field_figures import cuts_of_field

        w = self.waves
        return cuts_of_field(
            self.scaled(), w.frequency_hz, self.causes(), planes_deg, slant=w.slant, region=w.region, hand=self.hand
        )

    @cached_property
    def hand(self) -> Handedness:
        """Sense of the wave at mid-band's peak, +1 right-hand, -1 left-hand, where its axial ratio is below 3 dB; else 0.

        Where it is not 0, co-polar levels of cuts and maps are of this hand, cross-polar ones of the other.
        """
        from colure.analysis.figures.cuts import hand_of, principal_cuts

        middle = self.waves.expansion.coefficients[self.frequency_hz.size // 2]
        return hand_of(principal_cuts(middle, slant=self.waves.slant, region=self.waves.region)[0])

    @property
    def holds_gain(self) -> bool:
        """Tell whether |e|^2 is gain: neither relative, nor directivity, nor EIRP."""
        return self.scale == "gain"

    @property
    def scaled_quantity(self) -> Quantity:
        """Quantity of the field as `scaled` returns it."""
        if self.waves.quantity in SCALES:
            return cast("Quantity", self.waves.quantity)
        return "directivity" if self.scale == "directivity" else "relative"

    def scaled(self) -> Expansion:
        """Return the waves such that |e|^2 is what `scale` says."""
        return self.waves.expansion.with_coefficients(self.waves.expansion.coefficients * self._factor()[:, None, None])

    @property
    def probe(self) -> ProbeKnowledge:
        """What the stated errors hold of the probe: "known", "corrected" (not how well its pattern is known) or "unknown" (no pattern given)."""
        from colure.app.services.field_causes import probe_knowledge

        return probe_knowledge(self.waves.pattern)

    @property
    def states_errors(self) -> bool:
        """Tell whether the file says what its field may be wrong by."""
        return "error_waves" in self.waves.pattern

    @staticmethod
    def wanted_beside(path: Path) -> Evaluation | None:
        """Return what evaluation.toml beside a file asks for, as in a campaign; None without it."""
        from colure.model.loading import load

        wanted = path.parent / "evaluation.toml"
        return load(Evaluation, wanted) if wanted.is_file() else None

    def side_lobes(self) -> dict[str, list[tuple[float, float]]]:
        """Return (angle in degrees, dB re the peak) of every side lobe at mid-band, by principal plane."""
        from colure.analysis.figures.cuts import principal_cuts
        from colure.analysis.figures.lobes import side_lobes

        middle = self.waves.expansion.coefficients[self.frequency_hz.size // 2]
        planes, _ = principal_cuts(middle, slant=self.waves.slant, region=self.waves.region)
        return {name: [(float(a), float(level)) for a, level in side_lobes(one)] for name, one in planes.items()}

    def causes(self) -> tuple[FieldCause, ...] | None:
        """Return what the file says that its field may be wrong by, on the scale of the figures; None if it says nothing."""
        from colure.app.services.field_causes import causes_of

        return causes_of(self.waves, self._factor())

    def plot(
        self,
        kind: str = "cuts",
        *,
        frequency_ghz: float | None = None,
        ax: OnAxes = None,
        planes: Sequence[str] = PLANES,
    ) -> Panels:
        """Draw the field: cuts, polar, map, solid, front, frequency or aperture; mid-band by default.

        Of a wave that is circular at mid-band's peak (axial ratio below 3 dB) cuts, polar diagrams and `front` show both hands.
        Nothing is drawn beyond the angle up to which the field is known, or where `support` says that nothing is.

        Parameters
        ----------
        ax
            Matplotlib axes to draw on, as many as the picture has panels (cuts and polar: one a plane; front: 3; aperture: 2);
            those of a new figure if None. They are returned; `.figure` is their figure.
        planes
            Of cuts and polar diagrams: which, of E and H.

        Raises
        ------
        InputError
            If there is no such kind or frequency, or `ax` are too many, too few, or of another projection.
        """
        from colure.report import charts, maps

        if kind not in KINDS:
            raise InputError([f"kind = {kind!r}: must be one of {', '.join(KINDS)}"])
        if kind == "frequency":
            return self._over_frequency(ax)
        i = index_of(self.waves.frequency_hz, frequency_ghz)
        one = self.waves.expansion.coefficients[i] * self._factor()[i]
        if kind in ("cuts", "polar"):
            from colure.analysis.figures.cuts import cuts_in_hand, principal_cuts

            both, peak = principal_cuts(one, slant=self.waves.slant, region=self.waves.region)
            cuts = cuts_in_hand(chosen_planes(both, planes), self.hand)
            if kind == "polar":
                drawn = charts.cuts_polar(cuts, peak, hand=self.hand, ax=ax)
            else:
                drawn = charts.cuts_rectangular(cuts, peak, self._bands(i), hand=self.hand, ax=ax)
        elif kind == "front":
            reach = float(np.sin(min(self.waves.region, 0.5 * np.pi)))
            drawn = maps.front_maps(one, slant=self.waves.slant, hand=self.hand, reach=reach, ax=ax)
        elif kind == "aperture":
            drawn = charts.plane_picture(*self._plane(i), ax=ax)
        else:
            draw = charts.sphere_map if kind == "map" else charts.solid
            theta_deg, phi_deg, field = self._grid(i)
            drawn = draw(theta_deg=theta_deg, phi_deg=phi_deg, field=field, ax=ax)
        return charts.renamed(drawn, self.scale, "dBi" if self.scale in ("gain", "directivity") else "dB re the peak")

    def beam_maps(self) -> list[tuple[Panels, bool]]:
        """Draw the half of the sphere that holds the beam over direction cosines at mid-band, or both: (picture, whether it is the back half)."""
        from colure.report import maps

        i = index_of(self.waves.frequency_hz, None)
        one = self.waves.expansion.coefficients[i] * self._factor()[i]
        return maps.beam_maps(one, slant=self.waves.slant, hand=self.hand, region=self.waves.region)

    def _bands(self, i: int) -> dict[str, LevelCut]:
        """Return the principal cuts at one frequency with their intervals; none where the file states no errors."""
        from colure.waves.expansion import Expansion

        if not self.states_errors:
            return {}
        one = replace(
            self.waves, frequency_hz=self.frequency_hz[i : i + 1], pattern=self.waves.pattern.isel(frequency=[i]),
            expansion=Expansion(self.waves.expansion.coefficients[i : i + 1], self.waves.expansion.k[i : i + 1]),
        )  # fmt: skip
        plane_cuts = FilePattern(one).cuts((0.0, 90.0))
        return dict(zip(("E", "H"), next(iter(plane_cuts.values())), strict=True))

    def _grid(self, i: int) -> tuple[FloatArray, FloatArray, ComplexArray]:
        """Return (theta deg, phi deg, field (2, theta, phi)) in steps of 2 deg, nan where nothing is known."""
        from colure.analysis.steps.far_field import pattern_grid
        from colure.app.services.pattern_files import known_mask

        w = self.waves
        theta, phi, field = pattern_grid(w.expansion.at_frequency(i), 2.0)
        field = field[0] * self._factor()[i]
        known = (theta <= w.region + 1e-9)[:, None] & np.ones(phi.size, bool)[None]
        known &= known_mask(w.pattern, i, theta, phi)
        return np.rad2deg(theta), np.rad2deg(phi), np.where(known, field, np.nan)

    def _plane(self, i: int) -> tuple[FloatArray, FloatArray, ComplexArray]:
        """Return (x m, y m, co-polar field (y, x)) on the plane z = 0, over the radius that the waves fill."""
        from colure.waves.aperture import plane_field

        w = self.waves
        if w.region < 0.49 * np.pi:
            raise InputError([f"{w.name}: known to {np.rad2deg(w.region):.3g} deg from +z; an aperture needs 90 deg"])
        k = float(w.expansion.k[i])
        half = APERTURE_MARGIN * max(w.expansion.order - 3, 2) / k
        x = np.linspace(-half, half, APERTURE_POINTS)
        plane = plane_field(w.expansion.at_frequency(i), x, x, 0.0)
        plane = plane.reshape(-1, *plane.shape[-3:])[0]
        return x, x, np.cos(w.slant) * plane[0] + np.sin(w.slant) * plane[1]

    def _over_frequency(self, ax: OnAxes) -> Panels:
        figures = self.evaluate()
        if self.waves.frequency_hz.size < 2:
            raise InputError([f"{self.waves.name}: holds 1 frequency; a curve over frequency needs 2"])
        names = [
            n for n in ("gain_dbi", "directivity_dbi", "beamwidth_e_deg") if any(f.name == n for f in figures.at())
        ]
        return figures.plot_over_frequency(*names, ax=ax)

    def __repr__(self) -> str:
        f = self.waves.frequency_hz / 1e9
        part = (
            "" if self.waves.region >= np.pi - 1e-9 else f", known to {np.rad2deg(self.waves.region):.4g} deg from +z"
        )
        return f"Pattern {self.waves.name}: {f.size} frequencies, {f[0]:.6g} to {f[-1]:.6g} GHz, {self.scale}{part}"
