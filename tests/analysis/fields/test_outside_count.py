"""Devices beside images and sources of every kind, counted: the stated error holds, and is not much wider than it must be.

Device, image and sources are elementary dipoles in closed form; image theory of a conductor (any electromagnetics text).
Lengths in wavelengths.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pytest

from colure.analysis.fields.near_to_far import far_field
from colure.geometry.conventions import SPEED_OF_LIGHT
from colure.model.fields import grid_dataset
from tests.app.services.test_field_probe import K, far

KINDS = ("image", "source", "two sources", "panel and its image")


@dataclass(frozen=True)
class Case:
    """A device with something beside it: dipoles (place, moment) of both, the radius that is declared, the noise."""

    device: tuple[np.ndarray, np.ndarray]
    beside: tuple[np.ndarray, np.ndarray]
    keep: float
    noise_db: float
    seed: int


def panel(random, size):
    """Dipoles along x half a wavelength apart, a quarter of one before a conductor."""
    count = max(2, int(2.0 * size / np.sqrt(2.0) / 0.5))
    x = (np.arange(count) - (count - 1) / 2.0) * 0.5
    place = np.stack([*(one.ravel() for one in np.meshgrid(x, x)), np.full(count**2, 0.25)], axis=-1)
    weight = 1.0 + 0.1 * (random.normal(size=count**2) + 1j * random.normal(size=count**2))
    moment = weight[:, None] * np.array([1.0, 0.0, 0.0])
    return np.concatenate([place, place * [1.0, 1.0, -1.0]]), np.concatenate([moment, -0.9 * moment])


def cluster(random, size):
    count = random.integers(2, 30)
    place = random.normal(size=(count, 3))
    place *= size * random.uniform(0.2, 1.0, (count, 1)) ** (1 / 3) / np.linalg.norm(place, axis=1, keepdims=True)
    return place, random.normal(size=(count, 3)) + 1j * random.normal(size=(count, 3))


def towards(random):
    u = random.normal(size=3)
    return u / np.linalg.norm(u)


def drawn(seed: int) -> Case:
    """Draw a device of 0.3 to 2.2 wavelengths; 12 to 35 dB weaker its image, the image in a small wall, or one or two sources."""
    random = np.random.default_rng([77, seed])
    kind, size = KINDS[seed % 4], random.uniform(0.3, 2.2)
    device = (panel if "panel" in kind else cluster)(random, size)
    size = float(np.linalg.norm(device[0], axis=1).max())
    keep, level = size * random.uniform(1.0, 1.5), 10.0 ** (-random.uniform(12.0, 35.0) / 20.0)
    if "image" in kind:
        u, wall = towards(random), keep * random.uniform(1.02, 1.8) + 0.25
        if "panel" in kind and random.random() < 0.5:
            u = np.array([0.1, 0.05, -1.0]) / np.linalg.norm([0.1, 0.05, -1.0])
        flip = np.eye(3) - 2.0 * np.outer(u, u)
        factor = -level * np.exp(2j * np.pi * random.random())
        moment = factor * (device[1] @ flip)
        if random.random() < 0.3:
            moment = moment * np.exp(-((np.linalg.norm(device[0], axis=1) / size) ** 2))[:, None]
        beside = device[0] @ flip + 2.0 * wall * u, moment
    else:
        found = []
        for _ in range(1 + (kind == "two sources")):
            wide, count = random.uniform(0.02, 0.8), random.integers(1, 12)
            place = towards(random) * (keep + wide + random.uniform(0.2, 2.5))
            place = place + random.uniform(-1.0, 1.0, (count, 3)) * wide / np.sqrt(3.0)
            moment = random.normal(size=(count, 3)) + 1j * random.normal(size=(count, 3))
            found.append((place, moment * level * np.linalg.norm(device[1]) / np.linalg.norm(moment)))
        beside = tuple(np.concatenate(one) for one in zip(*found, strict=True))
    return Case(device, beside, keep, random.choice([-40.0, -55.0, -70.0, -90.0]), seed)


def judged(case: Case) -> tuple[float, float, float]:
    """Return share of the sphere where the stated error holds, dB that the worst error gains, and median of stated over true error."""
    reach = K * np.linalg.norm(case.beside[0], axis=1).max()
    order = int(np.ceil(reach + 1.8 * 3.0 ** (2 / 3) * reach ** (1 / 3))) + 6
    theta, phi = np.linspace(0.0, np.pi, order + 3), np.arange(2 * order + 4) * np.pi / (order + 2)
    t, p = (one.ravel() for one in np.meshgrid(theta, phi, indexing="ij"))
    field = far(case.device, t, p) + far(case.beside, t, p)
    raw = np.random.default_rng(case.seed).normal(size=(2, *field.shape)) * np.sqrt(0.5)
    field = field + 10.0 ** (case.noise_db / 20.0) * np.abs(field).max() * (raw[0] + 1j * raw[1])
    dataset = grid_dataset(
        np.array([SPEED_OF_LIGHT]), np.rad2deg(theta), np.rad2deg(phi), field.reshape(1, 2, theta.size, phi.size),
        radius_m=None, source="test",
    )  # fmt: skip
    pattern, words = far_field(dataset, step_deg=6.0, keep_radius_m=case.keep)
    t, p = np.meshgrid(np.deg2rad(pattern["theta"].values), np.deg2rad(pattern["phi"].values), indexing="ij")
    truth, echo = (far(one, t.ravel(), p.ravel()).reshape(2, *t.shape) for one in (case.device, case.beside))
    got = np.stack([pattern["e_theta"].values[0], pattern["e_phi"].values[0]])
    error, before = (np.sqrt(np.sum(np.abs(one) ** 2, axis=0)) for one in (got - truth, echo))
    bound, weight = pattern["error_bound"].values[0], np.sin(t) / np.sin(t).sum()
    gain = 20.0 * np.log10(before.max() / error.max())
    held, wide = float(np.sum((error <= bound) * weight)), float(np.median(bound / error))
    print(
        f"{case.seed} {KINDS[case.seed % 4]}: gain {gain:.1f} dB, held {held:.3f}, stated over true {wide:.1f}", words
    )
    return held, float(gain), wide


@pytest.mark.parametrize(
    ("seed", "least_gain", "widest"),
    [(1, 15.0, 8.0), (7, -3.0, 6.0), (32, 50.0, 6.0), (1043, 3.0, 6.0), (1363, 3.0, 6.0), (1655, -1.0, 6.0)],
)
def test_what_stands_beside_a_device_is_taken_out_or_told(seed, least_gain, widest):
    """A source; a panel's image that hardly stands out of the noise and stays; a device's image; images taken for sources.

    The first is a device of three degrees, where a source and an image look alike: the error counts three times. The last three are images of
    panels of 0.43 and 0.75 wavelengths that are taken for sources: their bound held in 0.15 to 0.68 of the directions once.
    """
    held, gain, wide = judged(drawn(seed))
    assert held >= 0.95 and gain >= least_gain and 1.0 <= wide <= widest


@pytest.mark.nightly
def test_the_stated_error_holds_in_95_of_100_directions(request):
    """20 devices, radii 1.0 to 1.5 times the device's, noise -40 to -90 dB."""
    if not request.config.getoption("--nightly"):
        pytest.skip("20 searches of several seconds: nightly only")
    held, gain, wide = np.array([judged(drawn(seed)) for seed in range(20)]).T
    print(f"held {held.mean():.3f}, gain median {np.median(gain):.1f} dB, stated over true {np.median(wide):.1f}")
    assert held.mean() >= 0.95 and np.mean(held >= 0.95) >= 0.9
    assert np.median(gain) >= 10.0 and 1.5 <= np.median(wide) <= 6.0
