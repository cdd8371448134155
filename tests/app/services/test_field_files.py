"""`colure convert` and `colure process` on field files, as a user with somebody else's data runs them."""

from __future__ import annotations

import numpy as np
import pandas as pd
import pytest
from click.testing import CliRunner

from colure.app.cli import main
from colure.app.services.converting import determined_words
from colure.geometry.directions import unit_vector
from colure.geometry.polarization import from_cartesian
from colure.twin.antennas import panel
from colure.twin.sources import Cluster

F = np.array([24.0e9, 24.125e9])
DEVICE = panel(F)
CENTRED = panel(F, centre_m=(0.0, 0.0, 0.0))
HEADER = "frequency_hz,theta_deg,phi_deg,e_theta_re,e_theta_im,e_phi_re,e_phi_im"


def near(theta, phi, radius, index, device: Cluster = DEVICE) -> np.ndarray:
    """Tangential near field of a panel in closed form."""
    points = np.broadcast_to(radius, theta.shape)[:, None] * unit_vector(theta=theta, phi=phi)
    return np.stack(from_cartesian(device.field_at(points)[index], theta=theta, phi=phi))


def write(path, theta_deg, phi_deg, radius, *, extra=None, noise=0.0, shift_per_frequency=0.0, device=DEVICE):
    random = np.random.default_rng(0)
    frames = []
    for index, frequency in enumerate(F):
        # Readouts may be negative; the components then follow the readout's own unit vectors.
        theta, phi = np.deg2rad(theta_deg), np.deg2rad(phi_deg) + index * shift_per_frequency
        e = near(theta, phi, radius, index, device)
        e = e + noise * np.abs(e).max() * (random.normal(size=e.shape) + 1j * random.normal(size=e.shape)) / np.sqrt(2)
        columns = dict(zip(HEADER.split(","), (np.full(theta.size, frequency), theta_deg, np.rad2deg(phi), e[0].real,
                                               e[0].imag, e[1].real, e[1].imag), strict=True))  # fmt: skip
        frames.append(pd.DataFrame({**columns, **(extra or {})}))
    pd.concat(frames).to_csv(path, index=False)


def run(*arguments) -> str:
    result = CliRunner().invoke(main, [str(a) for a in arguments], catch_exceptions=False)
    assert result.exit_code == 0, result.stderr
    return result.output


def chain(folder, convert=(), process=()) -> tuple[pd.DataFrame, str]:
    for made in ("near.nc", "far.nc", "far.csv"):  # nothing is overwritten
        (folder / made).unlink(missing_ok=True)
    said = run("convert", folder / "near.csv", folder / "near.nc", *convert)
    said += run("process", folder / "near.nc", folder / "far.nc", "--to", "far-field", *process)
    said += run("convert", folder / "far.nc", folder / "far.csv")
    table = pd.read_csv(folder / "far.csv", comment="#")
    assert ",".join(table.columns) == HEADER + ",error_bound"
    return table, said


def worst_rms_db(table: pd.DataFrame, within_deg=180.0, origin=(0.0, 0.0, 0.0), device: Cluster = DEVICE) -> float:
    worst = -np.inf
    for index, frequency in enumerate(F):
        part = table[np.isclose(table.frequency_hz, frequency) & (table.theta_deg <= within_deg)]
        theta, phi = np.deg2rad(part.theta_deg.to_numpy()), np.deg2rad(part.phi_deg.to_numpy())
        d = unit_vector(theta=theta, phi=phi)
        true = device.far_field(d)[index] * np.exp(-1j * device.k[index] * (d @ np.array(origin)))[:, None]
        e = np.stack(from_cartesian(true, theta=theta, phi=phi))
        found = np.stack([part.e_theta_re + 1j * part.e_theta_im, part.e_phi_re + 1j * part.e_phi_im])
        weight = np.sin(theta)
        error = np.sum(np.sum(np.abs(found - e) ** 2, axis=0) * weight) / weight.sum()
        worst = max(worst, 10 * np.log10(error / np.sum(np.abs(e) ** 2, axis=0).max()))
    return worst


def grid(theta, phi):
    return tuple(a.ravel().astype(float) for a in np.meshgrid(theta, phi, indexing="ij"))


GRIDS = {
    "with poles": grid(np.arange(0, 181, 4), np.arange(0, 360, 4)),
    "last column repeats the first": grid(np.arange(0, 181, 4), np.arange(0, 361, 4)),
    "without poles": grid((np.arange(45) + 0.5) * 4, np.arange(0, 360, 4)),
    "double-sided": grid(np.arange(-180, 181, 4), np.arange(0, 180, 4)),
    "gauss-legendre": grid(np.rad2deg(np.arccos(np.polynomial.legendre.leggauss(44)[0][::-1])), np.arange(0, 360, 4)),
    "phi from -180": grid(np.arange(0, 181, 4), np.arange(-180, 180, 4)),
}


@pytest.mark.parametrize("name", GRIDS)
def test_whole_sphere_grids_take_the_exact_path(tmp_path, name):
    write(tmp_path / "near.csv", *GRIDS[name], 0.4)
    table, said = chain(tmp_path, ["--radius-m", 0.4], ["--step-deg", 3])
    assert "whole sphere" in said and worst_rms_db(table) <= -100.0


def test_poles_given_once_and_rows_in_any_order(tmp_path):
    theta, phi = GRIDS["with poles"]
    keep = (np.sin(np.deg2rad(theta)) > 1e-9) | (phi == 0)
    order = np.random.default_rng(1).permutation(int(keep.sum()))
    write(tmp_path / "near.csv", theta[keep][order], phi[keep][order], 0.4)
    table, said = chain(tmp_path, ["--radius-m", 0.4], ["--step-deg", 3])
    assert "whole sphere" in said and worst_rms_db(table) <= -100.0


def test_scattered_with_radius_and_weight_columns(tmp_path, request):
    if not request.config.getoption("--nightly"):
        pytest.skip("nightly: tests/waves counts scattered samples with radii and weights")
    random = np.random.default_rng(2)
    theta, phi = np.rad2deg(np.arccos(random.uniform(-1, 1, 2000))), random.uniform(0, 360, 2000)
    radius, weight = 0.5 + random.uniform(-6e-4, 6e-4, 2000), random.choice([0.5, 1.0, 2.0], 2000)
    write(tmp_path / "near.csv", theta, phi, radius, extra={"radius_m": radius, "weight": weight}, device=CENTRED)
    table, said = chain(tmp_path, [], ["--step-deg", 3])
    assert "least squares" in said and worst_rms_db(table, device=CENTRED) <= -80.0


def test_directions_that_move_during_the_sweep(tmp_path):
    random = np.random.default_rng(3)
    theta, phi = np.rad2deg(np.arccos(random.uniform(-1, 1, 1400))), random.uniform(0, 350, 1400)
    write(tmp_path / "near.csv", theta, phi, 0.5, shift_per_frequency=0.003, device=CENTRED)
    table, said = chain(tmp_path, ["--radius-m", 0.5], ["--step-deg", 3])
    assert "scattered" in said and worst_rms_db(table, device=CENTRED) <= -80.0


def test_half_sphere_is_right_inside_and_nan_outside(tmp_path):
    theta, phi = grid(np.arange(-90, 91, 5), np.arange(0, 180, 5))
    write(tmp_path / "near.csv", theta, phi, 1.2, noise=10 ** (-45 / 20))
    table, said = chain(tmp_path, ["--radius-m", 1.2], ["--step-deg", 2])
    assert "do not determine" in said and "% of the grid is determined" in said
    assert worst_rms_db(table, within_deg=75.0) <= -44.0
    behind = table[table.theta_deg > 110]
    assert behind.e_theta_re.isna().all() and not table[table.theta_deg < 80].e_theta_re.isna().any()


@pytest.mark.parametrize(
    ("share", "words"), [(7319 / 7320, "only 99.9 %"), (0.5004, "only 50 %"), (0.9994, "only 99.9 %")]
)
def test_one_direction_that_is_not_determined_leaves_less_than_100_percent(share, words):
    assert determined_words(share).startswith(f"{words} of the grid is determined")


def test_origin_and_kept_radius(tmp_path):
    write(tmp_path / "near.csv", *GRIDS["with poles"], 0.4, noise=1e-3)
    origin = (0.0, 0.0, -0.03)
    table, _ = chain(tmp_path, ["--radius-m", 0.4],
                     ["--step-deg", 3, "--origin-m", "0,0,-0.03", "--keep-radius-m", 0.04])  # fmt: skip
    filtered = worst_rms_db(table, origin=origin)
    table, _ = chain(tmp_path, ["--radius-m", 0.4], ["--step-deg", 3, "--origin-m", "0,0,-0.03", "--order", 44])
    assert filtered < worst_rms_db(table, origin=origin) - 2.0 and filtered < -62.0


def test_fields_there_and_back_are_bit_for_bit(tmp_path):
    write(tmp_path / "near.csv", *GRIDS["with poles"], 0.4)
    run("convert", tmp_path / "near.csv", tmp_path / "near.nc", "--radius-m", 0.4)
    run("convert", tmp_path / "near.nc", tmp_path / "back.csv")
    first, second = pd.read_csv(tmp_path / "near.csv"), pd.read_csv(tmp_path / "back.csv")
    for name in HEADER.split(","):
        if name.endswith("_deg"):  # angles are tidied to 1e-10 deg
            np.testing.assert_allclose(first[name], second[name], atol=1e-9)
        else:
            np.testing.assert_array_equal(first[name], second[name])
    assert (second.radius_m == 0.4).all()


WRONG = [
    ("frequency_hz,theta_deg,phi_deg,e_theta_re\n1e9,0,0,1\n", [], ("e_theta_im, e_phi_re, e_phi_im", "missing")),
    (HEADER + "\n", [], ("0 rows",)),
    (HEADER + "\n1e9,0,0,1,0,x,0\n", [], ("line 2", "e_phi_re = 'x'", "a number")),
    (HEADER + "\n1e9,400,0,1,0,1,0\n", [], ("theta_deg = '400'", "-360 to 360 deg")),
    (HEADER + "\n1e9,0,0,1,0,nan,0\n", [], ("e_phi_re", "nan, must be all or none")),
    (HEADER + ",radius_m\n1e9,0,0,1,0,1,0,-2\n", None, ("radius_m = '-2'", "m")),
    (HEADER + "\n1e9,0,0,1,0,1,0\n", None, ("radius_m: missing", "--radius-m")),
    (HEADER + ",radius_m\n1e9,0,0,1,0,1,0,2\n", [], ("use one",)),
]


def test_a_far_field_that_is_to_be_transformed_is_told_where_it_goes(tmp_path):
    (tmp_path / "far.csv").write_text(HEADER + "\n1e9,0,0,1,0,1,0\n", encoding="utf-8")
    result = CliRunner().invoke(main, ["process", str(tmp_path / "far.csv"), str(tmp_path / "out.nc")])
    assert result.exit_code == 2
    assert "radius_m: missing" in result.stderr and "a far field needs no transform: `colure evaluate`" in result.stderr


def test_a_file_that_is_not_there_is_said_not_to_exist(tmp_path):
    result = CliRunner().invoke(main, ["evaluate", str(tmp_path / "far.csv")])
    assert result.exit_code == 2 and "far.csv: does not exist" in result.stderr


@pytest.mark.parametrize(("text", "options", "words"), WRONG)
def test_bad_csv_is_refused_with_line_column_value_and_limit(tmp_path, text, options, words):
    (tmp_path / "near.csv").write_text(text, encoding="utf-8")
    arguments = ["convert", tmp_path / "near.csv", tmp_path / "near.nc"] + (
        ["--radius-m", "1"] if options == [] else []
    )
    result = CliRunner().invoke(main, [str(a) for a in arguments])
    assert result.exit_code == 2
    for word in words:
        assert word in result.stderr
    assert not (tmp_path / "near.nc").exists()


@pytest.mark.parametrize(
    ("arguments", "words"),
    [(["convert", "a.txt", "b.nc"], "file endings"), (["process", "a.nc", "b.nc"], "a.nc: cannot be read"),
     (["process", "a.nc", "b.nc", "--probe-port-2", "p.nc"], "--probe-port-2: needs"),
     (["process", "a.nc", "b.nc", "--to", "far-field"], "a.nc: cannot be read"),
     (["process", "a.nc", "b.nc", "--to", "far-field", "--origin-m", "1,2"], "three numbers"),
     (["process", "a.nc", "b.nc", "--to", "far-field", "--step-deg", "7"], "divide 180 deg")],
)  # fmt: skip
def test_bad_arguments(tmp_path, monkeypatch, arguments, words):
    monkeypatch.chdir(tmp_path)
    result = CliRunner().invoke(main, arguments)
    assert result.exit_code == 2 and words in result.stderr


def test_order_beyond_the_grid_is_refused(tmp_path):
    write(tmp_path / "near.csv", *GRIDS["with poles"], 0.4)
    run("convert", tmp_path / "near.csv", tmp_path / "near.nc", "--radius-m", 0.4)
    result = CliRunner().invoke(
        main, ["process", str(tmp_path / "near.nc"), str(tmp_path / "far.nc"), "--to", "far-field", "--order", "60"]
    )
    assert result.exit_code == 2 and "must be at most 44" in result.stderr
