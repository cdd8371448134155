"""Ratios against named baselines, measured in one run: `python tasks.py bench`.

Exit code 1 if a stated limit is missed. Timings are the best of several on the same threads, or medians of CPU time in turn.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
import time
from collections.abc import Callable, Sequence

import ducc0
import numpy as np

from colure.geometry.conventions import mode_count
from colure.waves.probe import FirstOrderResponse, ideal_response, remove_response
from colure.waves.scattered_fit import Samples, ScatteredOperator, fit_scattered
from colure.waves.threads import threaded, threads
from colure.waves.transform import analysis, synthesis

FAILED: list[str] = []


def best(task: Callable[[], object], repeats: int = 5, *, clock: Callable[[], float] = time.perf_counter) -> float:
    """Return the shortest of several runs in seconds."""
    times = []
    for _ in range(repeats):
        start = clock()
        task()
        times.append(clock() - start)
    return min(times)


def check(name: str, value: float, limit: float, *, at_most: bool = True, unit: str = "") -> None:
    """Print a figure beside its limit and remember a miss."""
    good = value <= limit if at_most else value >= limit
    sign = "<=" if at_most else ">="
    print(f"{'ok  ' if good else 'MISS'} {name}: {value:.3g}{unit} (limit {sign} {limit:g}{unit})", flush=True)
    if not good:
        FAILED.append(name)


def random_coefficients(order: int, lead: int) -> np.ndarray:
    rng = np.random.default_rng(order)
    shape = (lead, 2, mode_count(order))
    return rng.normal(size=shape) + 1j * rng.normal(size=shape)


def sphere_data(order: int, frequencies: int) -> np.ndarray:
    """Return fields (frequency, 2, N + 2, 2 N + 2) of random coefficients."""
    return synthesis(random_coefficients(order, frequencies), np.linspace(0, np.pi, order + 2), 2 * order + 2)


def response(order: int, frequencies: int) -> FirstOrderResponse:
    """Return the response of an ideal probe just outside the device."""
    return ideal_response(order, np.full(frequencies, 500.0), 1.3 * order / 500.0)


def regular_against_fft() -> None:
    """First-order probe-corrected transform per frequency against the two bare 2-D FFTs of the same data."""
    for order, frequencies in ((180, 16), (360, 8)):
        data = sphere_data(order, frequencies)
        probe = response(order, frequencies)
        ours = best(lambda d=data, p=probe, n=order: remove_response(analysis(d, n), p)) / frequencies
        fft = best(lambda d=data: ducc0.fft.c2c(d, axes=(-2, -1), nthreads=threads())) / frequencies
        check(
            f"regular N={order}, {1e3 * ours:.1f} ms against two FFTs {1e3 * fft:.1f} ms", ours / fft, 12.0, unit=" x"
        )


def regular_against_dense() -> None:
    """The same at N = 30 against a dense least-squares solve."""
    order = 30
    theta, columns = np.linspace(0, np.pi, order + 2), 2 * order + 2
    data, probe = sphere_data(order, 1), response(order, 1)
    ours = best(lambda: remove_response(analysis(data, order), probe), 20)
    unknowns = 2 * mode_count(order)
    eye = np.eye(unknowns, dtype=complex).reshape(unknowns, 2, -1)
    matrix = synthesis(eye, theta, columns).reshape(unknowns, -1).T
    dense = best(lambda: np.linalg.lstsq(matrix, data.ravel(), rcond=None), 1)
    check(
        f"regular N=30, {1e3 * ours:.2f} ms against dense {dense:.1f} s", dense / ours, 200.0, at_most=False, unit=" x"
    )


def scattered() -> None:
    """Least squares on 10,000 scattered points at N = 45, noise and radius scatter included."""
    rng, count, k = np.random.default_rng(0), 10_000, 505.0
    theta, phi = np.arccos(rng.uniform(-1, 1, count)), rng.uniform(0, 2 * np.pi, count)
    radius = 1.2 + rng.uniform(-6e-4, 6e-4, count)
    empty = Samples.of(theta=theta, phi=phi, field=np.zeros((2, count)), radius=radius)
    operator = ScatteredOperator(empty, 45, k)
    true = random_coefficients(45, 1)[0]
    field = operator.forward(true * operator.reference) / operator.row_weight * operator.common
    noise = 3e-3 * np.abs(field).max() * (rng.normal(size=field.shape) + 1j * rng.normal(size=field.shape))
    for name, data, limit in (("clean", field, 1.0), ("noisy", field + noise, 2.0)):
        samples = Samples.of(theta=theta, phi=phi, field=data, radius=radius)
        seconds = best(lambda s=samples: fit_scattered(s, 45, k), 2, clock=time.process_time)
        check(f"scattered 10,000 points, N=45, {name}, CPU", seconds, limit, unit=" s")


MEMORY = """
import numpy as np, sys
sys.path.insert(0, {folder!r})
from colure.waves.transform import analysis
from colure.waves.probe import remove_response
from run import response
rng = np.random.default_rng(0)
data = np.empty((201, 2, 181, 360), complex)
for one in data: one[:] = rng.normal(size=one.shape) + 1j * rng.normal(size=one.shape)
out = remove_response(analysis(data, 179), response(179, 201))
print(out.shape)
try:
    import resource
    print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024**2)
except ImportError:
    import psutil
    print(psutil.Process().memory_info().peak_wset / 1024**3)
"""


def memory() -> None:
    """201 frequencies x 181 x 360 x 2 in one call: peak memory of the process."""
    from pathlib import Path

    code = MEMORY.format(folder=str(Path(__file__).parent))
    start = time.perf_counter()
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    seconds = time.perf_counter() - start
    check(f"201 x 181 x 360 x 2 in one call, {seconds:.1f} s", float(done.stdout.split()[-1]), 4.0, unit=" GiB")


def compiled_alone(data: np.ndarray, order: int) -> np.ndarray:
    """Run the compiled transform on the real maps of fields (frequency, 2, theta, phi), and nothing else."""
    maps = np.concatenate([data.real, data.imag])
    out = np.empty((len(maps), 2, (order + 1) * (order + 2) // 2), complex)

    def one(index: int) -> None:
        ducc0.sht.analysis_2d(map=maps[index], spin=1, lmax=order, geometry="CC", alm=out[index], nthreads=1)

    threaded(one, len(maps))
    return out


def in_turn(tasks: Sequence[Callable[[], object]], rounds: int) -> np.ndarray:
    """Return CPU seconds (round, task) of tasks that run one after the other, round by round.

    Ratios within a round hold on a loaded machine too: wall times of tasks that run apart do not.
    """
    for task in tasks:
        task()
    seconds = np.empty((rounds, len(tasks)))
    for row in seconds:
        for index, task in enumerate(tasks):
            start = time.process_time()
            task()
            row[index] = time.process_time() - start
    return seconds


def cost_against_order() -> None:
    """Print the cost of analysis and synthesis against the order, and what the compiled transform alone takes, in CPU time.

    The limit is 12 times the two FFTs; where the compiled transform alone takes more, 1.2 times that.
    """
    print(
        "\n    N   analysis/ms   synthesis/ms   two FFTs/ms   analysis/FFTs   compiled alone/FFTs   analysis/compiled"
    )
    for order in (20, 30, 45, 60, 90, 120, 180, 240, 360, 480, 720):
        frequencies = 2
        data, theta = sphere_data(order, frequencies), np.linspace(0, np.pi, order + 2)
        coefficients = analysis(data, order)
        seconds = in_turn(
            (
                lambda d=data, n=order: analysis(d, n),
                lambda c=coefficients, t=theta, n=order: synthesis(c, t, 2 * n + 2),
                lambda d=data: ducc0.fft.c2c(d, axes=(-2, -1), nthreads=threads()),
                lambda d=data, n=order: compiled_alone(d, n),
            ),
            41 if order < 100 else 5,
        )
        ours, back, ffts, _ = np.median(seconds, axis=0) / frequencies * 1e3
        to_ffts, floor_to_ffts, to_floor = (
            float(np.median(seconds[:, one] / seconds[:, other])) for one, other in ((0, 2), (3, 2), (0, 3))
        )
        good = to_ffts <= 12.0 or to_floor <= 1.2
        print(
            f"{order:5d} {ours:13.2f} {back:14.2f} {ffts:13.2f} {to_ffts:15.1f} {floor_to_ffts:21.1f} {to_floor:19.2f}"
            f"{'' if good else '   MISS'}",
            flush=True,
        )
        if not good:
            FAILED.append(f"analysis N={order}")


def amplitude_only() -> None:
    """Phase retrieval of the flawed demo panel from amplitudes on two spheres, started from its design."""
    from colure.geometry.conventions import mode_degrees
    from colure.geometry.directions import unit_vector
    from colure.geometry.polarization import from_cartesian
    from colure.geometry.sphere import gauss_legendre
    from colure.twin.antennas import PanelFlaws, panel
    from colure.waves.amplitude_only import AmplitudeSphere, box_basis, retrieve
    from colure.waves.radial import outgoing

    order, f = 34, np.array([24.125e9])
    theta, columns = np.linspace(0, np.pi, order + 3), 2 * order + 2
    t, p = np.meshgrid(theta, np.arange(columns) * 2 * np.pi / columns, indexing="ij")
    flawed, design = panel(f), panel(f, flaws=PanelFlaws(None, None), seed=5)
    truth, start = (
        analysis(np.stack(from_cartesian(one.far_field(unit_vector(theta=t, phi=p).reshape(-1, 3)).reshape(*t.shape, 3),
                                         theta=t, phi=p)), order)
        for one in (flawed, design)
    )  # fmt: skip
    k = float(flawed.k[0])
    basis = box_basis(order, k, size=(0.052, 0.052, 0.006), centre=(0, 0, -0.03))
    grid = gauss_legendre(rings=order + 1, phi_count=2 * order + 1)
    rng = np.random.default_rng(0)
    for name, noise_db in (("clean", None), ("noise -50 dB", -50.0)):
        spheres = []
        for radius in (0.06, 0.09):
            functions = outgoing(order, np.array(k * radius)).tangential()[:, mode_degrees(order) - 1]
            field = synthesis(truth * functions, grid.theta, grid.phi.size) / radius
            if noise_db is not None:
                raw = rng.normal(size=(2, *field.shape)) / np.sqrt(2)
                field = field + 10 ** (noise_db / 20) * np.abs(field).max() * (raw[0] + 1j * raw[1])
            spheres.append(AmplitudeSphere(radius, grid.theta, np.abs(field)))
        known = -200.0 if noise_db is None else noise_db
        found = retrieve(spheres, k, basis, start, noise_db=known)
        fit = found.coefficients
        scale = np.vdot(fit, truth) / np.vdot(fit, fit)
        error, true = (synthesis(c, np.linspace(0, np.pi, 91), 180) for c in (scale * fit - truth, truth))
        worst = 10 * np.log10(np.sum(np.abs(error) ** 2, axis=0).max() / np.sum(np.abs(true) ** 2, axis=0).max())
        print(f"     {name}: {found.words}")
        if noise_db is None or found.trustworthy:
            check(f"phase retrieval, {name}, worst error", worst, -39.0, unit=" dB")
        else:
            print(f"     phase retrieval, {name}: worst error {worst:.1f} dB, and it said not to use it")
        check(f"phase retrieval, {name}, time", found.seconds, 1000.0, unit=" s")


def main() -> int:
    """Run the benchmarks named on the command line, or all."""
    tasks = (regular_against_fft, regular_against_dense, scattered, memory, cost_against_order, amplitude_only)
    every = {f.__name__: f for f in tasks}
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("names", nargs="*", choices=[*every, []], help="which (default: all)")
    for name in parser.parse_args().names or every:
        every[name]()
    return 1 if FAILED else 0


if __name__ == "__main__":
    sys.exit(main())
