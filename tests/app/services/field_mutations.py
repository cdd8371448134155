"""Far-field files spoilt in every way that a hand, an export or a disk spoils them; seeded, so that a fault can be had again."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from colure.model.exchange import write_csv
from colure.model.files import save_dataset
from tests.app.services.test_pattern_files import HUYGENS, field

CELLS = [
    "nan",
    "inf",
    "-inf",
    "",
    "x",
    "1e308",
    "-1",
    "1,5",
    "1;5",
    "0",
    "1e-320",
    "--",
    "=1+1",
    "1e999",
    "\u221e",
    '"',
    "0x10",
]
LINES = [
    "",
    "# comment",
    "garbage",
    ",,,,,,",
    "\u00e9\u00e8",
    "frequency_hz,theta_deg,phi_deg,e_theta_re,e_theta_im,e_phi_re,e_phi_im",
]


def text_spoilt(text: str, random: np.random.Generator) -> tuple[bytes, str]:
    """Return a spoilt CSV and what was done to it."""
    lines = text.splitlines()
    rows = [line.split(",") for line in lines]
    row, column = int(random.integers(1, len(rows))), int(random.integers(0, 7))
    kind = str(random.choice(
        ["cell", "cells", "header", "drop column", "swap columns", "drop rows", "double rows", "cut off", "insert", "byte",
         "scale", "shift", "constant", "encoding", "separator", "shuffle", "one frequency", "one row", "sign", "ragged"]
    ))  # fmt: skip
    if kind == "cell":
        rows[row][column] = str(random.choice(CELLS))
    elif kind == "cells":
        word = str(random.choice(CELLS))
        for i in random.integers(1, len(rows), 40):
            rows[i][column] = word
    elif kind == "header":
        rows[0][column] = str(random.choice(["theta", "", "THETA_DEG", "frequency_hz", "e_theta_re ", "x"]))
    elif kind == "drop column":
        rows = [[c for j, c in enumerate(one) if j != column] for one in rows]
    elif kind == "swap columns":
        other = int(random.integers(0, 7))
        for one in rows[1:]:
            one[column], one[other] = one[other], one[column]
    elif kind == "drop rows":
        keep = random.random(len(rows)) > random.choice([0.02, 0.5, 0.98])
        rows = [one for i, one in enumerate(rows) if i == 0 or keep[i]]
    elif kind == "double rows":
        rows += [list(rows[i]) for i in random.integers(1, len(rows), 5)]
    elif kind in ("scale", "shift", "constant"):
        factor = float(random.choice([1e-9, 1e-6, 1e-3, np.pi / 180, 1e3, 0.5, 2.0, 0.0, -1.0]))
        for one in rows[1:]:
            value = float(one[column])
            one[column] = repr({"scale": factor * value, "shift": value + factor, "constant": factor}[kind])
    elif kind == "shuffle":
        body = rows[1:]
        random.shuffle(body)
        rows = [rows[0], *body]
    elif kind == "one frequency":
        rows = [rows[0], *[one for one in rows[1:] if one[0] == rows[1][0]]]
    elif kind == "one row":
        rows = rows[:2]
    elif kind == "sign":
        for one in rows[1 : len(rows) // 2]:
            one[column] = repr(-float(one[column]))
    elif kind == "ragged":
        rows[row] = rows[row][: int(random.integers(0, 7))] if random.random() < 0.5 else [*rows[row], "1", "2"]
    elif kind == "insert":
        rows.insert(row, str(random.choice(LINES)).split(","))
    separator = str(random.choice([";", "\t", " ", "|"])) if kind == "separator" else ","
    content = ("\n".join(separator.join(one) for one in rows) + "\n").encode("utf-8")
    if kind == "encoding":
        content = content.decode().encode(str(random.choice(["utf-16", "utf-8-sig", "utf-16-le", "latin-1", "utf-32"])))
    elif kind == "byte":
        spoilt = bytearray(content)
        for i in random.integers(0, len(spoilt), int(random.choice([1, 5, 50]))):
            spoilt[i] = int(random.integers(0, 256))
        content = bytes(spoilt)
    elif kind == "cut off":
        content = content[: int(random.integers(0, len(content)))]
    return content, f"csv: {kind}, column {column}"


def _chosen(values: np.ndarray, random: np.random.Generator) -> np.ndarray:
    out = np.array(values)
    flat = out.reshape(-1)
    where = random.integers(0, flat.size, int(random.choice([1, 10, flat.size])))
    flat[where] = random.choice(np.array([np.nan, np.inf, 0.0, 1e200, -1.0, 1e-300]))
    return out


def dataset_spoilt(dataset, random: np.random.Generator):
    """Return a spoilt far field (xarray) and what was done to it."""
    import xarray as xr

    name = str(random.choice(["e_theta", "e_phi", "theta", "phi", "frequency"]))
    kind = str(random.choice(
        ["values", "drop", "rename", "order", "integers", "text", "real", "single", "reversed", "doubled", "empty", "scale",
         "quantity", "history", "support", "errors", "no dimension", "radius", "extra", "part"]
    ))  # fmt: skip
    axis = name if name in dataset.dims else "theta"
    if kind == "values":
        spoilt = _chosen(dataset[name].values, random)
        dataset = (
            dataset.assign_coords({name: spoilt})
            if name in dataset.coords
            else dataset.assign({name: (dataset[name].dims, spoilt)})
        )
    elif kind == "drop":
        dataset = dataset.drop_vars(name)
    elif kind == "rename":
        dataset = dataset.rename({name: f"{name}_deg"})
    elif kind == "order":
        dataset = dataset.transpose(*random.permutation(list(dataset.dims)))
    elif kind == "integers":
        dataset = dataset.assign({"e_theta": np.round(dataset["e_theta"].real).astype(int)})
    elif kind == "text":
        dataset = dataset.assign_coords({axis: [f"{x:g}" for x in dataset[axis].values]})
    elif kind == "real":
        dataset = dataset.assign({"e_theta": dataset["e_theta"].real, "e_phi": dataset["e_phi"].real})
    elif kind == "single":
        dataset = dataset.isel({axis: [0]})
    elif kind == "reversed":
        dataset = dataset.isel({axis: slice(None, None, -1)})
    elif kind == "doubled":
        dataset = xr.concat([dataset, dataset.isel({axis: [0]})], axis)
    elif kind == "empty":
        dataset = dataset.isel({axis: []})
    elif kind == "scale":
        dataset = dataset.assign_coords(
            {axis: dataset[axis].values * random.choice([1e-9, 1e-6, np.pi / 180, 0.5, 2.0])}
        )
    elif kind == "quantity":
        dataset = dataset.assign_attrs(quantity=random.choice(["", "Gain", "volts", "eirp"]))
    elif kind == "history":
        dataset = dataset.assign_attrs(history_json=random.choice(["", "{", "[1]", "null"]))
    elif kind == "support":
        values = random.choice([np.nan, 0.0, 1.0, 0.5, 2.0], size=(2, dataset.sizes["theta"], dataset.sizes["phi"]))
        dataset = dataset.assign(support=(("frequency", "theta", "phi"), values))
        dataset = (
            dataset if random.random() < 0.5 else dataset.assign(support=("theta", np.ones(dataset.sizes["theta"])))
        )
    elif kind == "errors":
        size = int(random.choice([15, 16, 0, 24]))
        waves = np.full((2, 3, 2, size), random.choice([0.0, np.nan, 1e-3, 1e6]) + 0j)
        dims = ("frequency", "draw", "kind", "mode") if random.random() < 0.7 else ("draw", "frequency", "kind", "mode")
        dataset = dataset.assign(error_waves=(dims, waves if dims[0] == "frequency" else waves.swapaxes(0, 1)))
    elif kind == "no dimension":
        dataset = dataset.isel({axis: 0})
    elif kind == "radius":
        dataset = dataset.assign_attrs(radius_m=random.choice([np.nan, 0.0, -1.0, 1e9, 0.5]))
    elif kind == "extra":
        dataset = dataset.expand_dims(state=["left", "right"])
    elif kind == "part":
        dataset = dataset.isel(
            theta=slice(int(random.integers(0, 18)), None), phi=slice(0, int(random.integers(1, 37)))
        )
    return dataset, f"netcdf: {kind}, {name}"


def spoilt_file(folder: Path, seed: int) -> tuple[Path, str]:
    """Write one spoilt far-field file and return it with what was done; the same seed spoils the same way."""
    random = np.random.default_rng(seed)
    whole = field(HUYGENS, top_deg=float(random.choice([180.0, 180.0, 90.0])))
    if random.random() < 0.5:
        path = folder / f"spoilt-{seed}.csv"
        write_csv(whole, path)
        content, words = text_spoilt(path.read_text("utf-8"), random)
        path.write_bytes(content)
        return path, words
    path = folder / f"spoilt-{seed}.nc"
    if random.random() < 0.2:
        save_dataset(whole, path)
        content = bytearray(path.read_bytes())
        if random.random() < 0.5:
            path.write_bytes(bytes(content[: int(random.integers(0, len(content)))]))
            return path, "netcdf: cut off"
        for i in random.integers(0, len(content), int(random.choice([1, 20, 500]))):
            content[i] = int(random.integers(0, 256))
        path.write_bytes(bytes(content))
        return path, "netcdf: bytes"
    dataset, words = dataset_spoilt(whole, random)
    save_dataset(dataset, path)
    return path, words
