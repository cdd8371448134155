"""What can be wrong, each cause applied to the data as it would have been: what moves is its contribution.

Terms and their sources:

=========================  ======================================================================
noise                      Monte Carlo of the receiver noise measured in this record
drift residual             Monte Carlo of slice-to-slice gain errors, as large as the ties' residual
reference gain             declared for the reference antenna, or its table's
mismatch                   declared reflections of source, horn and device, U-shaped
range echoes               Monte Carlo of stray signals at the chamber's declared level
alignment: ...             each tolerance (declared, or left by the correction) applied to the data in turn
probe polarization         the declared probe purity applied in phase and in quadrature
cable flexing              the declared phase change with the azimuth axis, or what dedicated turns left
leakage                    the declared isolation added to every sweep, in phase and in quadrature
receiver linearity         the declared compression per 10 dB of level
sampling and truncation    the two highest degrees of the waves left out
time gate                  the same recipe with a gate a fifth narrower or wider
finite distance            one polarization only: what a transform would change if the other were nothing
=========================  ======================================================================
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np
from scipy.stats import t as student

from colure.analysis.assembly import MeasuredSphere, finer_columns
from colure.analysis.echo_map import Wall
from colure.analysis.figures.cuts import FarField
from colure.analysis.figures.evaluate import FigureSet, Near
from colure.analysis.nearfield import FarFieldStep
from colure.geometry.conventions import ComplexArray, FloatArray, wavenumber
from colure.geometry.directions import tangents, theta_phi, unit_vector
from colure.geometry.polarization import to_ludwig_1
from colure.geometry.rotations import about_axis
from colure.model.chamber import Chamber
from colure.waves.expansion import Expansion
from colure.waves.horn import horn_aside, horn_gain_dbi
from colure.waves.probe import first_order_response, ideal_response
from colure.waves.scattered import synthesis_at

NOISE_DRAWS = 16
STRAY_DRAWS = 40
DRIFT_DRAWS = 16
#: How well an aperture's field tells a horn's far side lobes: what runs around its rim is left out (common practice, no source).
RIM_DB = 3.5
#: Walls of a compact chamber: distance from the crossing in range lengths, tilt, and spread of their reflections.
NEAREST_WALL, FARTHEST_WALL, WALL_TILT_DEG, WALL_SPREAD_DB, WALL_DEPOLARIZES_DB = 0.45, 1.0, 5.0, 5.0, -12.0
#: Of a bound with unknown phase (arcsine, "U-shaped") 95 % lie within 0.997 of it; with normal errors a fifth to a third as
#: large beside it, its share in a root sum of squares that holds 95 % is 1.11 to 1.16 (derivable by simulation). Twice
#: its standard deviation, sqrt 2 of the bound, would be more than all.
U_SHAPED = 1.14
#: Degrees of the waves that are left out to see what truncation does.
FEWER_DEGREES = 2

Distribution = Literal["normal", "U-shaped", "rectangular", "change", "Monte Carlo"]


@dataclass(frozen=True)
class Inputs:
    """What the budget needs from the processing chain.

    noise_sigma (frequency,): standard deviation (complex modulus) of one component of one
    sample, in the units of the measured field. aligned: the chamber's tolerances are what the
    correction from the data left. other_gate (as the sphere's field): what another time gate makes of it.
    once (frequency,): relative noise, each of the two quadratures, of the few sweeps that everything is compared with
    (first tie, reference). peak_reading: largest wave ratio of the scan, for what is declared of the receiver. mismatch_db: expanded,
    of declared reflections. declared_offset_mm: what the protocol says of the axes' offset, any direction.
    """

    sphere: MeasuredSphere
    step: FarFieldStep
    chamber: Chamber
    figures: FigureSet
    noise_sigma: FloatArray
    drift_residual: float
    probe: Expansion | None
    seed: int = 1
    aligned: bool = False
    other_gate: ComplexArray | None = None
    once: FloatArray | None = None
    peak_reading: float = 1.0
    declared_offset_mm: float = 0.0
    mismatch_db: float = 0.0

    def only(self, index: int) -> Inputs:
        """Return the inputs of one frequency alone."""
        one = slice(index, index + 1)
        response = self.step.response
        narrow = replace(
            self.step,
            k=self.step.k[one],
            response=replace(
                response,
                grad=response.grad[one],
                curl=response.curl[one],
                first_order_share=response.first_order_share[one],
            ),
        )
        probe = None if self.probe is None else self.probe.at_frequency(index)
        return replace(
            self,
            sphere=replace(self.sphere, frequency_hz=self.sphere.frequency_hz[one], field=self.sphere.field[one]),
            step=narrow,
            figures=replace(
                self.figures,
                band=False,
                mismatch_loss_db=None if self.figures.mismatch_loss_db is None else self.figures.mismatch_loss_db[one],
            ),
            noise_sigma=self.noise_sigma[one],
            once=None if self.once is None else self.once[one],
            probe=probe,
            other_gate=None if self.other_gate is None else self.other_gate[one],
        )

    @property
    def slant(self) -> float:
        """Reference of the co-polar vector, radians."""
        return self.figures.slant


@dataclass(frozen=True)
class Cause:
    """One term: vectors (n, frequency, figure) whose root sum of squares is its expanded contribution.

    They keep their signs, so that their products are covariances between figures. size, unit: what was
    applied (expanded), where it is one number. shift (frequency, figure): what the cause does on average, as stray
    power adds to a null and to the radiated power; the interval is moved back by it (JCGM 100:2008, 3.2.4).
    """

    term: str
    vectors: FloatArray
    basis: str
    kind: Literal["measured", "declared"]
    distribution: Distribution
    size: float | None = None
    unit: str = ""
    shift: FloatArray | None = None


@dataclass(frozen=True)
class Bench:
    """The nominal result that every cause is compared with."""

    inputs: Inputs
    nominal: Expansion
    values: FloatArray
    near: list[Near]

    def changed_field(self, field: ComplexArray) -> FloatArray:
        """Return the change of every figure (frequency, figure) when the measured field is another."""
        return self.changed(self.inputs.step.expansion(field))

    def changed(self, expansion: Expansion) -> FloatArray:
        """Return the change of every figure (frequency, figure) with another expansion."""
        found = self.inputs.figures.values(expansion, near=self.near) - self.values
        return np.asarray(np.nan_to_num(_turned_back(found, self.inputs.figures.names)))

    def monte_carlo(
        self, draw: Callable[[], Expansion], draws: int, *, tails: bool = False
    ) -> tuple[FloatArray, FloatArray]:
        """Return vectors of the 95 % half width over random results, and their mean (frequency, figure).

        Few draws know their standard deviation badly: Student's factor of 95 % takes the place of 2 (JCGM 100:2008, G.3).

        tails
            The half width is read from the draws instead of taken from their standard deviation.
        """
        found = np.stack([self.changed(draw()) for _ in range(draws)])
        mean = np.where(self.inputs.figures.floors, 0.0, found.mean(axis=0))
        vectors = float(student.ppf(0.975, draws - 1)) / np.sqrt(draws - 1) * (found - mean)
        if not tails:
            return np.asarray(vectors), np.asarray(mean)
        # A few wild draws make a standard deviation too long, and mostly it is too short. Whatever the distribution, the
        # r-th of n ordered draws holds the next one in r/(n + 1) of all cases (Wilks, Ann. Math. Stat. 12:91, 1941, from memory).
        holds = np.quantile(np.abs(found - mean), 0.95, axis=0, method="weibull")
        return np.asarray(vectors * (holds / np.maximum(np.linalg.norm(vectors, axis=0), 1e-300))), np.asarray(mean)


def _turned_back(change: FloatArray, names: tuple[str, ...]) -> FloatArray:
    """Take whole half turns out of the change of a tilt: an ellipse's axis has no direction."""
    if "tilt_deg" in names:
        column = names.index("tilt_deg")
        change[:, column] = (change[:, column] + 90.0) % 180.0 - 90.0
    return change


def causes(bench: Bench) -> Iterator[Cause]:
    """Yield every cause that applies to a measurement."""
    random = np.random.default_rng(bench.inputs.seed)
    yield from _random(bench, random)
    yield from _level(bench)
    yield from _alignment(bench)
    yield from _chain(bench)


def _random(bench: Bench, random: np.random.Generator) -> Iterator[Cause]:
    inputs, step = bench.inputs, bench.inputs.step
    chamber = inputs.chamber
    noise, shift = bench.monte_carlo(lambda: step.expansion(_noise(inputs, random)), NOISE_DRAWS)
    yield Cause("noise", noise, "scatter of repeated sweeps in this record", "measured", "Monte Carlo", shift=shift)
    drift, _ = bench.monte_carlo(lambda: step.expansion(_drift(inputs, random)), DRIFT_DRAWS)
    words = f"ties predict each other; {100 * inputs.drift_residual:.2f} % are left between two of them"
    yield Cause("drift residual", drift, words, "measured", "Monte Carlo", 2.0 * inputs.drift_residual, "1")
    level = 10.0 ** (chamber.echo_level_db / 20.0)
    stray, shift = bench.monte_carlo(_stray(bench, level, random), STRAY_DRAWS, tails=True)
    words = (
        f"declared stray level {chamber.echo_level_db:g} dB below the peak, from the walls of a room of unknown size"
    )
    yield Cause("range echoes", stray, words, "declared", "Monte Carlo", chamber.echo_level_db, "dB", shift)


def _level(bench: Bench) -> Iterator[Cause]:
    inputs = bench.inputs
    one_db = np.zeros_like(bench.values)
    for index, what in enumerate(inputs.figures.definitions):
        one_db[:, index] = what.gain
    expanded = inputs.chamber.reference.gain_uncertainty_db
    yield Cause("reference gain", expanded * one_db[None], f"declared \u00b1{expanded:g} dB (k = 2)", "declared", "normal",
                expanded, "dB")  # fmt: skip
    if inputs.mismatch_db > 0.0:
        words = "declared reflections of source, horn and device, phases unknown"
        yield Cause(
            "mismatch", inputs.mismatch_db * one_db[None], words, "declared", "U-shaped", inputs.mismatch_db, "dB"
        )


def _chain(bench: Bench) -> Iterator[Cause]:
    inputs = bench.inputs
    chamber, sphere = inputs.chamber, inputs.sphere
    purity = 10.0 ** (chamber.probe.cross_polar_db / 20.0)
    both = [U_SHAPED * bench.changed_field(_leak(sphere.field, purity * phase)) for phase in (1.0, 1j)]
    words = f"probe cross-polarization {chamber.probe.cross_polar_db:g} dB, phase unknown"
    yield Cause("probe polarization", np.stack(both), words, "declared", "U-shaped", chamber.probe.cross_polar_db, "dB")
    flex = float(np.deg2rad(chamber.cable_flex_deg)) / np.sqrt(3.0)
    swing, turn = _swing(sphere), np.cos(sphere.theta)[:, None] + 0.0 * sphere.readout_sign
    shapes = [swing, 1.0 - turn, 2.0 * swing * turn]
    if inputs.aligned:
        # What goes with sin a looks like axes beside each other: an alignment from the data took it out with them.
        lit = np.sum(np.abs(sphere.field) ** 2, axis=(0, 1)) * np.sin(sphere.theta)[:, None]
        shapes = [one - swing * np.sum(lit * one * swing) / np.sum(lit * swing**2) for one in shapes[1:]]
    bent = [bench.changed_field(sphere.field * np.exp(1j * flex * one)) for one in shapes]
    words = f"{chamber.cable_flex_deg:.2g} deg over a turn" + (
        ", less what looks like an offset of the axes" if inputs.aligned else ""
    )
    yield Cause("cable flexing", np.stack(bent), words, "declared", "change", chamber.cable_flex_deg, "deg")
    yield from _receiver(bench)
    if inputs.step.rings is None and inputs.step.keep_order > FEWER_DEGREES + 2:
        fewer = bench.nominal.truncated(inputs.step.keep_order - FEWER_DEGREES)
        words = f"waves up to degree {fewer.order} instead of {inputs.step.keep_order}"
        yield Cause("sampling and truncation", bench.changed(fewer)[None], words, "measured", "change")
    if inputs.other_gate is not None:
        words = "change with a gate of another width"
        yield Cause("time gate", bench.changed_field(inputs.other_gate)[None], words, "measured", "change")
    if sphere.one_polarization:
        words = "what a transform of the measured component alone would change"
        yield Cause("finite distance", _distance(bench, 0.0)[None], words, "measured", "change")


def _receiver(bench: Bench) -> Iterator[Cause]:
    inputs, analyzer = bench.inputs, bench.inputs.chamber.analyzer
    field = inputs.sphere.field
    peak = np.abs(field).max(axis=(1, 2, 3), keepdims=True)
    if analyzer.isolation_db is not None:
        share = 10.0 ** (analyzer.isolation_db / 20.0) / inputs.peak_reading
        both = [U_SHAPED * bench.changed_field(field + share * peak * phase) for phase in (1.0, 1j)]
        words = (
            f"declared isolation {analyzer.isolation_db:g} dB: {20 * np.log10(share):.0f} dB below the peak's reading"
        )
        yield Cause("leakage", np.stack(both), words, "declared", "U-shaped", analyzer.isolation_db, "dB")
    if analyzer.linearity_db > 0.0:
        power = analyzer.linearity_db / 10.0
        bent = field * np.maximum(np.abs(field) / peak, 1e-6) ** power
        words = f"declared {analyzer.linearity_db:g} dB per 10 dB of level"
        yield Cause("receiver linearity", bench.changed_field(bent)[None], words, "declared", "change", analyzer.linearity_db,
                    "dB per 10 dB")  # fmt: skip


def _alignment(bench: Bench) -> Iterator[Cause]:
    """Yield the change of every figure for each tolerance."""
    inputs = bench.inputs
    tolerance, sphere = inputs.chamber.alignment, inputs.sphere
    measured = inputs.step.measured(sphere.field)
    known = "left after the correction" if inputs.aligned else "declared"
    kind: Literal["measured", "declared"] = "measured" if inputs.aligned else "declared"
    for name, size, along in (
        ("theta zero", tolerance.theta_zero_deg, True),
        ("roll axis", tolerance.roll_axis_tilt_deg, False),
    ):
        angle = float(np.deg2rad(size))
        shifted = _looking_aside(sphere, measured, angle if along else 0.0, 0.0 if along else angle)
        yield Cause(f"alignment: {name}", bench.changed_field(shifted)[None], f"{known} \u00b1{size:.2g} deg", kind, "normal",
                    size, "deg")  # fmt: skip
    k = wavenumber(sphere.frequency_hz)[:, None, None, None]
    size = tolerance.axes_offset_mm
    moved = [sphere.field * np.exp(1j * k * 1e-3 * size * _swing(sphere))]
    # Along the range the roll axis may stand off as well, which no scan tells from a device that does.
    along_range = inputs.declared_offset_mm / np.sqrt(3.0)
    moved.append(sphere.field * np.exp(1j * k * 1e-3 * along_range * np.cos(sphere.theta)[:, None]))
    yield Cause("alignment: axes offset", np.stack([bench.changed_field(one) for one in moved]),
                f"{known} \u00b1{size:.2g} mm across, declared \u00b1{along_range:.2g} mm along the range", kind, "normal", size, "mm")  # fmt: skip
    size = tolerance.probe_roll_zero_deg
    words = (
        f"{known} \u00b1{size:.2g} deg" if size > 0.0 else "found with the reference: part of the probe's polarization"
    )
    rolled = _leak(sphere.field, np.tan(np.deg2rad(size)))
    yield Cause("alignment: probe roll", bench.changed_field(rolled)[None], words, kind, "normal", size, "deg")
    if not sphere.one_polarization:  # without a transform the distance is not used
        size = tolerance.distance_mm
        change = _distance(bench, 1e-3 * size)
        # The whole device seems to stand nearer: its phase centre keeps its distance to the crossing.
        yield Cause(
            "alignment: distance", change[None], f"declared \u00b1{size:g} mm", "declared", "normal", size, "mm"
        )
    size = tolerance.device_pose_deg
    turned = [bench.changed(bench.nominal.rotated(about_axis(axis, np.deg2rad(size)))) for axis in ("x", "y", "z")]
    yield Cause("alignment: device pose", np.stack(turned), f"declared \u00b1{size:g} deg about every axis", "declared", "normal",
                size, "deg")  # fmt: skip


def _stray(bench: Bench, level: float, random: np.random.Generator) -> Callable[[], Expansion]:
    """Return draws of the result with reflections from unknown directions of the room, rms `level` below the peak.

    The device turns, the room stands: its waves come back as its own far field in a fixed direction of the
    room, through a mirror of unknown strength, polarization and way. What looks like the device stays in.
    """
    sphere, step = bench.inputs.sphere, bench.inputs.step
    geometry = bench.inputs.chamber.positioner.geometry
    wall = Wall(sphere, step, bench.nominal, geometry)
    k = wavenumber(sphere.frequency_hz)
    middle = k.size // 2
    weight = np.sin(sphere.theta)[:, None]
    intensity = np.sum(np.abs(sphere.field[middle]) ** 2, axis=0)
    row, column = (int(i) for i in np.unravel_index(int(np.argmax(intensity)), intensity.shape))
    peak = float(np.sqrt(intensity[row, column]))

    length = bench.inputs.chamber.range_length_m
    hears = _hearing(bench.inputs)

    def draw() -> Expansion:
        directions, way, mirror = _walls(random, length, hears)
        turn = np.exp(-1j * k[:, None] * way)[..., None, None]
        (stray,) = wall.through_mirrors(directions, (mirror * turn)[None])
        # The reference stood in the same room: its own echo is in every level.
        rim = 10.0 ** (random.normal(0.0, RIM_DB / 20.0, len(way)))
        common = np.einsum("fwt,wt,fw,w->f", _of_reference(bench, directions), mirror[:, 0], turn[..., 0, 0], rim)
        if sphere.one_polarization:
            stray = _along_the_probe(sphere, stray, bench.inputs.slant)
        # The declared level is that of one reading: half of both components together.
        power = 0.5 * np.sum(np.abs(stray[middle]) ** 2 * weight) / (np.sum(weight) * sphere.phi.size)
        scale = level * peak / float(np.sqrt(max(power, 1e-300)))
        return step.expansion((sphere.field + scale * stray) * (1.0 - scale * common)[:, None, None, None])

    return draw


def _of_reference(bench: Bench, directions: FloatArray) -> ComplexArray:
    """Return what the reference horn sends towards walls (frequency, wall, tangent), over what it lays on its axis."""
    horn, frequency_hz = bench.inputs.chamber.reference, bench.inputs.sphere.frequency_hz
    sides = {
        "a": 1e-3 * horn.aperture_a_mm,
        "b": 1e-3 * horn.aperture_b_mm,
        "slant_e": 1e-3 * horn.slant_e_mm,
        "slant_h": 1e-3 * horn.slant_h_mm,
    }
    sent = horn_aside(frequency_hz, directions, **sides)
    # So near, the horn lays less on its axis than its far field would.
    near = horn_gain_dbi(frequency_hz, **sides, distance=bench.inputs.chamber.range_length_m)
    over = 10.0 ** ((horn_gain_dbi(frequency_hz, **sides) - near) / 20.0)
    return np.asarray(
        np.einsum("fwi,wti->fwt", over[:, None, None] * sent, np.array([tangents(d) for d in directions]))
    )


def _hearing(inputs: Inputs) -> Callable[[FloatArray], ComplexArray]:
    """Return what gives the probe's two unit responses (n, 2, 3) to waves that travel along directions (n, 3) of the lab.

    The two are the probe as it is and rolled by 90 deg; on its axis they are the lab's x and y. Without a pattern it
    is a Gaussian beam of its gain, exp(-c a^2) with gain 8 c, which carries a wave to its axis without turning it.
    """
    if inputs.probe is None:
        bend = 10.0 ** (inputs.chamber.probe.gain_dbi / 10.0) / 8.0

        def beam(travel: FloatArray) -> ComplexArray:
            aside = np.arccos(np.clip(travel[:, 2], -1.0, 1.0))
            carry = np.zeros((len(travel), 2, 3))
            carry[:, :, :2] = np.eye(2)
            carry[:, :, 2] = -travel[:, :2] / (1.0 + travel[:, 2:])
            return np.asarray(carry * np.exp(-bend * np.minimum(aside, 0.5 * np.pi) ** 2)[:, None, None])

        return beam
    own = FarField(inputs.probe.coefficients[len(inputs.probe.coefficients) // 2])
    on_axis = own.at(np.array([[0.0, 0.0, 1.0]]))[0, 0]
    # The probe looks back at the device: its own axes are the lab's x, -y and -z.
    back = np.array([1.0, -1.0, -1.0])
    quarter = np.array([[0.0, -1.0, 0.0], [1.0, 0.0, 0.0], [0.0, 0.0, 1.0]])  # x of the lab to y

    def pattern(travel: FloatArray) -> ComplexArray:
        plain = own.at(-travel * back) / on_axis * back
        rolled = (own.at((-travel @ quarter) * back) / on_axis * back) @ quarter.T
        return np.stack([plain, rolled], axis=1)

    return pattern


def _walls(
    random: np.random.Generator, range_m: float, hears: Callable[[FloatArray], ComplexArray]
) -> tuple[FloatArray, FloatArray, ComplexArray]:
    """Return where waves leave for the walls of a rectangular room (wall, 3), how much longer that way is, and the mirrors.

    Side walls, floor, ceiling and the wall behind the device, anywhere from `NEAREST_WALL` to `FARTHEST_WALL` range
    lengths away and not quite square to the axes (common practice, no source): the direction of the probe's image.
    A mirror (wall, 2, 2) turns the wave's two components there into those along the lab's x and y: as a plane
    conductor does, weaker, and with some of it depolarized. `hears` gives the probe's responses.
    """
    normals = np.array([[1.0, 0, 0], [-1.0, 0, 0], [0, 1.0, 0], [0, -1.0, 0], [0, 0, -1.0]])
    count = len(normals)
    normals = normals + random.normal(0.0, np.deg2rad(WALL_TILT_DEG), normals.shape)
    normals /= np.linalg.norm(normals, axis=1, keepdims=True)
    away = range_m * random.uniform(NEAREST_WALL, FARTHEST_WALL, count)
    probe = np.array([0.0, 0.0, range_m])
    image = probe + 2.0 * (away - normals @ probe)[:, None] * normals
    far = np.linalg.norm(image, axis=1)
    directions = image / far[:, None]
    strength = 10.0 ** (-random.exponential(WALL_SPREAD_DB, count) / 20.0) * range_m / far
    phase = np.exp(2j * np.pi * random.random(count))
    across = np.array([tangents(d) for d in directions])  # wall, tangent, 3
    turned = 2.0 * np.einsum("wi,wti->wt", normals, across)[..., None] * normals[:, None] - across
    # The probe looks at the device; what comes from aside it hears less.
    arrival = probe - 2.0 * away[:, None] * normals
    heard = hears(arrival / np.linalg.norm(arrival, axis=1, keepdims=True))
    plain = np.einsum("wai,wti->wat", heard, turned)  # wall, lab axis, tangent
    raw = (
        random.normal(size=(2, *plain.shape))
        / np.sqrt(2.0)
        * np.linalg.norm(heard, axis=(1, 2))[:, None, None]
        / np.sqrt(2.0)
    )
    mirror = plain + 10.0 ** (WALL_DEPOLARIZES_DB / 20.0) * (raw[0] + 1j * raw[1])
    return directions, far - range_m, (strength * phase)[:, None, None] * mirror


def _along_the_probe(sphere: MeasuredSphere, field: ComplexArray, slant: float) -> ComplexArray:
    """Return what a single probe that follows the roll would have made of a field (..., 2, theta, phi)."""
    c, s = np.cos(slant - sphere.phi), np.sin(slant - sphere.phi)
    read = field[:, 0] * c + field[:, 1] * s
    return np.stack([read * c, read * s], axis=1)


def _noise(inputs: Inputs, random: np.random.Generator) -> ComplexArray:
    field = inputs.sphere.field
    raw = random.normal(size=(2, *field.shape)) / np.sqrt(2.0)
    noisy = field + (raw[0] + 1j * raw[1]) * inputs.noise_sigma[:, None, None, None]
    if inputs.once is None:
        return np.asarray(noisy)
    common = random.normal(size=(2, len(field)))
    return np.asarray(noisy * (1.0 + inputs.once * (common[0] + 1j * common[1]))[:, None, None, None])


def _drift(inputs: Inputs, random: np.random.Generator) -> ComplexArray:
    """Every slice gets its own complex gain error: the shape that interpolation between ties leaves."""
    field = inputs.sphere.field
    slices = inputs.sphere.slices_used or field.shape[-1] // 2
    raw = random.normal(size=(2, 2, slices)) / np.sqrt(2.0)
    error = np.tile(1.0 + inputs.drift_residual * (raw[0] + 1j * raw[1]), (1, 2))
    error = finer_columns(error, field.shape[-1])
    return np.asarray(field * error[None, :, None, :])


def _leak(field: ComplexArray, ratio: complex) -> ComplexArray:
    """Mix the polarizations as one impure port does when it is turned by 90 deg between passes."""
    return np.stack([field[:, 0] + ratio * field[:, 1], field[:, 1] - ratio * field[:, 0]], axis=1)


def _swing(sphere: MeasuredSphere) -> FloatArray:
    """Sine of the azimuth readout of every sample, (theta, phi): negative where theta was."""
    return np.asarray(np.sin(sphere.theta)[:, None] * sphere.readout_sign[None, :])


def _looking_aside(sphere: MeasuredSphere, measured: ComplexArray, along: float, across: float) -> ComplexArray:
    """Return the field as if every direction had been off by angles along and across the slice.

    The polarization vectors are carried along rigidly (a tilted positioner turns them too).
    """
    t, p = np.meshgrid(sphere.theta, sphere.phi, indexing="ij")
    sign = np.broadcast_to(sphere.readout_sign[None, :], t.shape)
    d = unit_vector(theta=t, phi=p)
    e1 = to_ludwig_1(1.0, 0.0, theta=t, phi=p).real * sign[..., None]
    e2 = to_ludwig_1(0.0, 1.0, theta=t, phi=p).real * sign[..., None]
    seen = d + along * e1 + across * e2
    seen = seen / np.linalg.norm(seen, axis=-1, keepdims=True)
    first, second = e1 - along * d, e2 - across * d
    where = theta_phi(seen)
    e = synthesis_at(measured, where.theta, where.phi)
    flat_t, flat_p = where.theta.ravel(), where.phi.ravel()
    vector = to_ludwig_1(e[..., 0, :], e[..., 1, :], theta=flat_t, phi=flat_p)
    along_first = np.sum(vector * first.reshape(-1, 3), axis=-1) * sign.ravel()
    along_second = np.sum(vector * second.reshape(-1, 3), axis=-1) * sign.ravel()
    return np.stack([along_first, along_second], axis=1).reshape(len(measured), 2, *t.shape)


def _distance(bench: Bench, error: float) -> FloatArray:
    """Return the change when the range length is wrong by `error` metres."""
    inputs = bench.inputs
    step, length = inputs.step, inputs.chamber.range_length_m + error
    if inputs.probe is None:
        response = ideal_response(step.order, step.k, length)
    else:
        response = first_order_response(inputs.probe, step.order, length)
    other = replace(step, response=response)
    return bench.changed(other.from_measured(step.measured(inputs.sphere.field)))
