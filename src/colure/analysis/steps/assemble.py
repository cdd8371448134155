"""Polarization passes and scan order back to a vector field on rings over a full turn."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from colure.geometry.conventions import ComplexArray, FloatArray, IntArray
from colure.geometry.kinematics import Geometry
from colure.geometry.polarization import noise_factor
from colure.model.chamber import Chamber
from colure.model.plan import LEAST_SLICES, ROLES, Role, even_counts
from colure.model.record import grid_of, of_role, offsets_of
from colure.values import holds_arrays
from colure.waves.transform import average_poles, fold_double_sided

if TYPE_CHECKING:
    import xarray as xr


@dataclass(frozen=True, kw_only=True)
@holds_arrays
class MeasuredSphere:
    """What an ideal probe pair would have read on a regular grid, in the geometry's polar frame.

    field
        (frequency, 2, theta, phi): components along theta^ and phi^ of the polar frame.
    theta, phi
        Rings, rising, and columns over a full turn, radians; `phi[0]` may be negative. Rings run
        from pole to pole, or over the part of the sphere that was scanned.
    polar_to_device
        Rotation from the polar frame (pole of the geometry) to the device frame.
    readout_sign
        (phi,) +1 where the column was scanned at its own azimuth, -1 where with negative theta.
    slices_used, slices_planned
        Great-circle slices behind the grid; fewer where a progressive scan was stopped early.
    region_deg
        Polar angle from the device's boresight up to which results are wanted and sound.
    noise_factor
        Noise of a component over that of a sweep: above 1 where passes are not at right angles.
    """

    frequency_hz: FloatArray
    field: ComplexArray
    theta: FloatArray
    phi: FloatArray
    polar_to_device: FloatArray
    readout_sign: FloatArray
    slices_used: int = 0
    slices_planned: int = 0
    region_deg: float = 180.0
    one_polarization: bool = False
    noise_factor: float = 1.0

    @property
    def whole(self) -> bool:
        """Tell whether the rings run from pole to pole."""
        return bool(np.isclose(self.theta[0], 0.0) and np.isclose(self.theta[-1], np.pi))

    def reading_power(self, field: ComplexArray) -> FloatArray:
        """Return the mean power (...) of one reading of fields (..., 2, theta, phi) over all directions: half of both components together."""
        weight = np.sin(self.theta)[:, None]
        power = 0.5 * np.sum(np.abs(field) ** 2 * weight, axis=(-3, -2, -1))
        return np.asarray(power / (np.sum(weight) * self.phi.size))

    def as_assembled(self, field: ComplexArray) -> ComplexArray:
        """Return fields (..., 2, theta, phi) as the assembly leaves them: at a pole all great-circle slices share one sample, their mean.

        What differs from slice to slice, as an echo does or a drift, is averaged there in a fixed frame. Nothing is to do without slices.
        """
        if self.slices_used == 0:
            return field
        out = np.array(field)
        average_poles(out, [(i, c) for i, c in ((0, 1.0), (-1, -1.0)) if np.isclose(np.cos(self.theta[i]), c)])
        return out

    def white_noise(self, random: np.random.Generator) -> ComplexArray:
        """Return noise of standard deviation 1 (complex modulus) in every sample, as it comes out of the assembly: shape of `field`.

        Where slices make the grid, noise is that of the sweeps: opposite columns share the samples at the poles, and columns in
        between the slices are interpolated, not new samples.
        """
        shape = self.field.shape
        if self.slices_used == 0:
            raw = random.normal(size=(2, *shape)) / np.sqrt(2.0)
            return np.asarray(raw[0] + 1j * raw[1])
        last = shape[-2] - 1
        readouts = np.arange(1 - last if self.whole else -last, last + 1)
        raw = random.normal(size=(2, *shape[:2], readouts.size, self.slices_used)) / np.sqrt(2.0)
        folded = fold_double_sided(raw[0] + 1j * raw[1], readouts * np.pi / max(last, 1))
        return finer_columns(folded, shape[-1])


def polar_frame(geometry: Geometry) -> FloatArray:
    """Return the columns x', y', z' of the geometry's polar frame in the device frame."""
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        return np.eye(3)
    if geometry is Geometry.AZIMUTH_OVER_ELEVATION:  # pole y, azimuth from z towards x
        return np.array([[0.0, 1.0, 0.0], [0.0, 0.0, 1.0], [1.0, 0.0, 0.0]])
    return np.array([[0.0, 0.0, 1.0], [0.0, -1.0, 0.0], [1.0, 0.0, 0.0]])  # pole x


def components(record: xr.Dataset, chamber: Chamber) -> tuple[ComplexArray, FloatArray, FloatArray]:
    """Return ((direction, frequency, 2), first, second) from one or two polarization passes.

    Of one polarization the other is taken as zero: what comes out is the measured component as a vector.

    Components are along the vectors that the probe sees at roll 0 and 90 deg; the true probe
    angles of both passes are used, whatever they are. Angles in degrees, commanded.

    Raises
    ------
    ValueError
        If points are missing or the two passes are not independent.
    """
    scan = of_role(record, Role.SCAN)
    table = chamber.axis_table
    names = [str(name) for name in record["axis"].values]
    shown = scan["commanded_deg"].values
    angle = {name: table[name].map.angle_deg(shown[:, i]) for i, name in enumerate(names)}
    first, second = (angle[name] for name in chamber.positioner.geometry.axis_names)
    chi = np.deg2rad(angle.get("probe", np.zeros(first.size)))
    trace = scan["trace"].values
    if record.sizes["port"] == 2:
        rows = np.stack([np.cos(chi), np.sin(chi)], -1), np.stack([-np.sin(chi), np.cos(chi)], -1)
        return _solve(np.stack(rows, axis=1), trace), first, second
    passes = scan["pass_index"].values
    if record.attrs["scheme"] == "one-pass":
        one_component = trace[:, :, :1] * np.stack([np.cos(chi), np.sin(chi)], axis=-1)[:, None, :]
        return one_component, first, second
    key = np.round(np.stack([first, second], -1), 4)
    parts = [np.flatnonzero(passes == number) for number in np.unique(passes)]
    if not parts:
        raise ValueError(
            "record: 0 scan points: the run ended before its first slice (points); resume it with colure acquire"
        )
    if len(parts) < 2 or any(part.size != parts[0].size for part in parts):
        counts = " and ".join(f"{part.size} points in pass {number}" for number, part in enumerate(parts, 1))
        raise ValueError(
            f"record: {counts}{' and 0 points in pass 2' if len(parts) < 2 else ''} (points): the scan is incomplete and no pattern "
            "follows from one polarization; resume it with colure acquire"
        )
    parts = [part[np.lexsort(key[part].T)] for part in parts]
    if not all(np.allclose(key[parts[0]], key[part], atol=1e-3) for part in parts):
        raise ValueError("record: the polarization passes visit different directions (deg)")
    matrix = np.stack([np.stack([np.cos(chi[i]), np.sin(chi[i])], axis=-1) for i in parts], axis=1)
    both = np.stack([trace[part, :, 0] for part in parts], axis=-1)
    return _solve(matrix, both), first[parts[0]], second[parts[0]]


def _solve(matrix: FloatArray, values: ComplexArray) -> ComplexArray:
    """Solve (direction, pass, 2) systems for values (direction, frequency, pass), by least squares with more than two passes."""
    turned = np.swapaxes(matrix, -1, -2)
    normal = turned @ matrix
    # The determinant is the sum of sin^2 over all pairs of passes.
    determinant = np.sqrt(np.abs(np.linalg.det(normal)))
    if np.any(determinant < 0.1):
        raise ValueError(
            f"record: probe angles of the passes differ by too little (|sin| = {determinant.min():.3f}, limit 0.1)"
        )
    inverse = np.linalg.inv(matrix) if matrix.shape[1] == 2 else np.linalg.inv(normal) @ turned
    return np.asarray(np.einsum("dap,dfp->dfa", inverse, values))


def slice_errors(
    record: xr.Dataset, chamber: Chamber, sphere: MeasuredSphere, error: Callable[[FloatArray], ComplexArray]
) -> ComplexArray | None:
    """Return what errors of the sweeps do to a sphere's field: matrices (mode, 2, 2, column) that its components are multiplied with.

    None where slices are no columns of the sphere.

    error
        Gives the relative error (mode, moment) of sweeps at moments (moment,), seconds.
    """
    used = sphere.slices_used
    if chamber.positioner.geometry is not Geometry.ROLL_OVER_AZIMUTH or used == 0:
        return None
    wanted = np.arange(used) * (grid_of(record).slices_planned // used)
    each = _line_errors(record, chamber, of_role(record, Role.SCAN)["slice_index"].values, wanted, error)
    return None if each is None else finer_columns(np.concatenate([each, each], axis=-1), sphere.field.shape[-1])


def pass_errors(
    record: xr.Dataset, chamber: Chamber, sphere: MeasuredSphere, error: Callable[[FloatArray], ComplexArray]
) -> ComplexArray | None:
    """Return matrices (mode, 2, 2, theta or 1, column or 1) as `slice_errors` does, of rings as well where slices are rings."""
    geometry = chamber.positioner.geometry
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        by_column = slice_errors(record, chamber, sphere, error)
        return None if by_column is None else by_column[:, :, :, None, :]
    scan, names = of_role(record, Role.SCAN), [str(name) for name in record["axis"].values]
    sliced = geometry.axis_names[0 if geometry is Geometry.ELEVATION_OVER_AZIMUTH else 1]
    shown = scan["commanded_deg"].values[:, names.index(sliced)]
    polar_deg = 90.0 - chamber.axis_table[sliced].map.angle_deg(shown)
    ring = np.argmin(np.abs(polar_deg[:, None] - np.rad2deg(sphere.theta)), axis=1)
    each = _line_errors(record, chamber, ring, np.arange(sphere.theta.size), error)
    if each is None:
        return None
    # What the probe sees at roll 0 and 90 deg along theta^ and phi^ of the polar frame, as `assemble` sorts it.
    turn = np.array([[0.0, -1.0], [1.0, 0.0]]) if geometry is Geometry.AZIMUTH_OVER_ELEVATION else -np.eye(2)
    return np.asarray(np.einsum("ax,mxyt,by->mabt", turn, each, turn)[..., None])


def _line_errors(
    record: xr.Dataset, chamber: Chamber, line: IntArray, wanted: IntArray, error: Callable[[FloatArray], ComplexArray]
) -> ComplexArray | None:
    """Return matrices (mode, 2, 2, line) for the components that the probe sees; None where a pass lacks one of the lines.

    line
        (scan point,) number of the slice or ring it belongs to, of which those `wanted` are asked for.
    """
    scan, names = of_role(record, Role.SCAN), [str(name) for name in record["axis"].values]
    passes, moments = (scan[name].values for name in ("pass_index", "time_s"))
    numbers = np.unique(passes)
    rows = [[np.flatnonzero((passes == number) & (line == one)) for one in wanted] for number in numbers]
    if any(part.size == 0 for lines in rows for part in lines):
        return None
    relative_errors = error(np.array([moments[part].mean() for lines in rows for part in lines]))
    relative_errors = relative_errors.reshape(len(relative_errors), numbers.size, wanted.size)
    if numbers.size == 1:
        return np.asarray(np.eye(2)[None, :, :, None] * relative_errors[:, 0, None, None, :]).astype(complex)
    shown = scan["commanded_deg"].values[:, names.index("probe")]
    angle = chamber.axis_table["probe"].map.angle_deg(shown)
    chi = np.deg2rad([[angle[part[0]] for part in lines] for lines in rows])
    seen = np.stack([np.cos(chi), np.sin(chi)], axis=-1)  # (pass, line, component)
    back = np.stack([np.linalg.pinv(seen[:, s]) for s in range(wanted.size)], axis=-1)  # (component, pass, line)
    return np.asarray(np.einsum("aps,mps,psb->mabs", back, relative_errors, seen)).astype(complex)


def evenly_spaced_slices(record: xr.Dataset, planned: int, per_slice: int) -> xr.Dataset:
    """Return the record with the largest evenly spaced set of complete slices; all of them if none is missing.

    A progressive scan that was stopped early has one after 1, 2, 4, ... slices of every pass.
    `per_slice` counts the points of one slice of one pass.

    Raises
    ------
    ValueError
        If not even `LEAST_SLICES` of them are complete.
    """
    scan = record["role"].values == ROLES.index(Role.SCAN)
    slices, passes = record["slice_index"].values, record["pass_index"].values
    # A scan that was stopped in its first pass holds nothing of the second.
    planned_passes = 2 if record.attrs.get("scheme") == "two-pass" else 1
    full = per_slice * max(planned_passes, len(np.unique(passes[scan])))
    counts = np.bincount(slices[scan], minlength=planned) if scan.any() else np.zeros(planned, int)
    complete = counts >= full
    if complete.all():
        return record
    for count in reversed(even_counts(planned)):
        if complete[:: planned // count].all():
            kept = np.arange(planned) % (planned // count) == 0
            return record.isel(point=np.flatnonzero(~scan | kept[np.maximum(slices, 0)]))
    raise ValueError(
        f"record: {int(complete.sum())} of {planned} slices complete in every pass; a pattern needs an evenly spaced set of "
        f"at least {LEAST_SLICES} (slices): resume the scan with colure acquire, or plan order = 'progressive', whose slices are even "
        "whenever it is stopped"
    )


def finer_columns(field: ComplexArray, columns: int) -> ComplexArray:
    """Interpolate rings (..., phi) to more columns: exact where no azimuthal order exceeds what was sampled.

    Rings that have so many already come back as they are.
    """
    present = field.shape[-1]
    if present >= columns:
        return field
    spectrum = np.fft.fft(field, axis=-1)
    half = present // 2
    out = np.zeros((*field.shape[:-1], columns), complex)
    out[..., :half] = spectrum[..., :half]
    out[..., -half + 1 :] = spectrum[..., -half + 1 :]
    # The highest order of an even count stands for both signs.
    out[..., half] = out[..., -half] = 0.5 * spectrum[..., half]
    return np.asarray(np.fft.ifft(out, axis=-1) * (columns / present))


def _require_swept(across_deg: FloatArray, wanted_deg: FloatArray) -> None:
    """Raise `ValueError` where a record's readouts are not those of its grid: a sign turned round, or another grid's plan."""
    if across_deg.size != wanted_deg.size or not np.allclose(across_deg, wanted_deg, atol=0.01):
        raise ValueError(
            f"record: the swept axis goes from {across_deg[0]:g} to {across_deg[-1]:g} deg in {across_deg.size} places, its grid from "
            f"{wanted_deg[0]:g} to {wanted_deg[-1]:g} deg in {wanted_deg.size}: readouts and plan do not belong together"
        )


def assemble(record: xr.Dataset, chamber: Chamber, *, leak: ComplexArray | None = None) -> MeasuredSphere:
    """Sort a scan onto its grid.

    leak
        (frequency,) impurity of a single port, taken out of the pair: it reads r(chi) (1 + leak J) e with J
        the turn by 90 deg, whatever its roll chi.

    Raises
    ------
    ValueError
        If the points do not fill the grid; the message counts what is missing.
    """
    geometry, grid_wanted = chamber.positioner.geometry, grid_of(record)
    planned, region = grid_wanted.slices_planned, float(record.attrs.get("region_deg", 180.0))
    single = record.attrs["scheme"] == "one-pass"
    louder = _noise_factor(record)
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        record = evenly_spaced_slices(record, planned, grid_wanted.swept_deg(geometry).size)
    pair, first, second = components(record, chamber)
    if leak is not None and np.any(leak):
        one, two = pair[..., 0].copy(), pair[..., 1].copy()
        pair = np.stack([one - leak * two, two + leak * one], axis=-1) / (1.0 + leak**2)[:, None]
    swept, sliced = (second, first) if geometry is Geometry.ELEVATION_OVER_AZIMUTH else (first, second)
    across, along = np.unique(np.round(swept, 4)), np.unique(np.round(sliced, 4))
    if across.size * along.size != pair.shape[0]:
        raise ValueError(
            f"record: {pair.shape[0]} directions, needs {across.size * along.size} for the whole grid (directions): the scan "
            "is incomplete; resume it with colure acquire"
        )
    grid = np.empty((across.size, along.size, pair.shape[1], 2), complex)
    grid[np.searchsorted(across, np.round(swept, 4)), np.searchsorted(along, np.round(sliced, 4))] = pair
    field = np.moveaxis(grid, (2, 3), (0, 1))  # (frequency, component, swept, slice)
    frequency = record["frequency"].values
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        _require_swept(across, np.sort(grid_wanted.swept_deg(geometry)))
        folded = fold_double_sided(field, np.deg2rad(across))
        # Slices carry the orders about the boresight; the transform wants columns for every order.
        columns = 2 * max(planned, int(record.attrs["order"]) + 1)
        folded = finer_columns(folded, columns)
        phi = np.arange(columns) * 2.0 * np.pi / columns
        sign = np.where(np.arange(columns) < columns // 2, 1.0, -1.0)
        theta = np.arange(folded.shape[-2]) * np.deg2rad(grid_wanted.swept_step_deg)
        if not grid_wanted.whole:
            kept = np.rad2deg(theta) <= float(record.attrs.get("usable_deg", 180.0)) + 0.1 * grid_wanted.swept_step_deg
            theta, folded = theta[kept], folded[..., kept, :]
        return MeasuredSphere(
            frequency_hz=frequency,
            field=folded,
            theta=theta,
            phi=phi,
            polar_to_device=polar_frame(geometry),
            readout_sign=sign,
            slices_used=along.size,
            slices_planned=planned,
            region_deg=region,
            one_polarization=single,
            noise_factor=louder,
        )
    # Polar angle grows as the sliced angle falls; see `polar_frame` for the signs.
    turned = np.swapaxes(field, -1, -2)[..., ::-1, :]
    if geometry is Geometry.AZIMUTH_OVER_ELEVATION:
        polar = np.stack([-turned[:, 1], turned[:, 0]], axis=1)
        phi = np.deg2rad(across)
    else:
        polar = -turned[..., ::-1]
        phi = -np.deg2rad(across[::-1])
    theta = np.deg2rad(90.0 - along[::-1])
    return MeasuredSphere(
        frequency_hz=frequency,
        field=polar,
        theta=theta,
        phi=phi,
        polar_to_device=polar_frame(geometry),
        readout_sign=np.ones(phi.size),
        slices_used=0,
        slices_planned=0,
        region_deg=region,
        one_polarization=single,
        noise_factor=louder,
    )


def _noise_factor(record: xr.Dataset) -> float:
    """Return the noise of a component over that of a sweep, from the offsets of the passes; 1 if they are at right angles."""
    offsets = offsets_of(record)
    return noise_factor(np.deg2rad(offsets)) if offsets is not None and offsets.size > 1 else 1.0


def azimuths(sphere: MeasuredSphere, columns: int) -> FloatArray:
    """Return the azimuths of so many columns of a sphere, evenly about the turn, radians."""
    return np.asarray(sphere.phi[0] + np.arange(columns) * 2.0 * np.pi / columns)


def angles_of(sphere: MeasuredSphere, geometry: Geometry) -> tuple[FloatArray, FloatArray]:
    """Return (first, second) axis angles of every measured direction (theta, column), radians.

    Columns are the measured ones: two for every great-circle slice.
    """
    if geometry is Geometry.ROLL_OVER_AZIMUTH:
        columns = 2 * sphere.slices_used
        phi = np.arange(columns) * 2.0 * np.pi / columns
        back = np.arange(columns) >= sphere.slices_used
        theta, column = np.meshgrid(sphere.theta, np.arange(columns), indexing="ij")
        return theta * np.where(back, -1.0, 1.0)[column], (phi - np.pi * back)[column]
    theta, phi = np.meshgrid(sphere.theta, sphere.phi, indexing="ij")
    if geometry is Geometry.AZIMUTH_OVER_ELEVATION:
        return phi, 0.5 * np.pi - theta
    return 0.5 * np.pi - theta, -phi
