"""A file carries its own checksum: one flipped bit anywhere in a record or pattern is noticed, and a record is made anew."""

from __future__ import annotations

import shutil

import numpy as np
import pytest
import xarray as xr
from click.testing import CliRunner

from colure.app import services
from colure.app.cli import main
from colure.app.storage.folders import run_folder
from colure.errors import InputError
from colure.model.files import CHECKSUM, open_dataset, require_unchanged, save_dataset


def dataset() -> xr.Dataset:
    random = np.random.default_rng(1)
    trace = random.normal(size=(7, 5)) + 1j * random.normal(size=(7, 5))
    return xr.Dataset(
        {"trace": (("point", "frequency"), trace), "time": ("point", np.arange(7.0), {"units": "s"})},
        attrs={"note": "ä text", "order": 3, "axis_names": "azimuth,roll"},
    )


def test_no_flipped_bit_is_silent(tmp_path, request):
    path = tmp_path / "pattern.nc"
    save_dataset(dataset(), path)
    open_dataset(path)  # what was read a moment ago, and is kept, answers for no other content
    clean, random = path.read_bytes(), np.random.default_rng(7)
    for _ in range(20_000 if request.config.getoption("--nightly") else 300):
        damaged, place = bytearray(clean), int(random.integers(len(clean)))
        damaged[place] ^= 1 << int(random.integers(8))
        path.write_bytes(damaged)
        with pytest.raises(InputError, match="damaged"):
            open_dataset(path)


def test_whoever_opens_a_file_gets_a_copy_of_its_own(tmp_path):
    path = tmp_path / "record.nc"
    save_dataset(dataset(), path)
    first = open_dataset(path)
    whole = first.copy(deep=True)
    first["trace"].values *= 2.0
    xr.testing.assert_identical(open_dataset(path), whole)


@pytest.mark.parametrize("cut", [1, 40, 90, 3000])
def test_a_cut_end_is_noticed(tmp_path, cut):
    path = tmp_path / "record.nc"
    save_dataset(dataset(), path)
    path.write_bytes(path.read_bytes()[:-cut])
    with pytest.raises(InputError):
        open_dataset(path)


def test_what_is_read_and_saved_again_keeps_its_content_and_gets_a_checksum_of_its_own(tmp_path):
    first, second = tmp_path / "a.nc", tmp_path / "b.nc"
    save_dataset(dataset(), first)
    once = open_dataset(first)
    assert CHECKSUM not in once.attrs
    xr.testing.assert_identical(once.drop_attrs(), dataset().drop_attrs())
    save_dataset(once.assign_attrs(order=4), second)
    assert int(open_dataset(second).attrs["order"]) == 4 and require_unchanged(second)


def test_others_files_have_no_checksum_and_are_read(tmp_path):
    path = tmp_path / "theirs.nc"
    dataset().to_netcdf(path, engine="h5netcdf")
    assert not require_unchanged(path)
    assert open_dataset(path)["trace"].shape == (7, 5)


def test_other_readers_of_the_format_do_not_mind(tmp_path):
    path = tmp_path / "record.nc"
    save_dataset(dataset(), path)
    with xr.open_dataset(path, engine="h5netcdf") as found:
        np.testing.assert_array_equal(found["trace"].values, dataset()["trace"].values)


def test_a_damaged_record_is_refused_and_made_anew_from_the_journal(tiny_campaign):
    campaign, plan = services.make_plan(tiny_campaign)
    run = run_folder(tiny_campaign, "first")
    assert services.acquire(campaign, plan, run).state.value == "done"
    whole = open_dataset(run.record)
    raw = bytearray(run.record.read_bytes())
    raw[len(raw) // 2] ^= 4
    run.record.write_bytes(raw)
    refused = CliRunner().invoke(main, ["evaluate", str(tiny_campaign), "--run", "first"])
    assert refused.exit_code == 2 and "--rebuild" in refused.stderr
    made = CliRunner().invoke(main, ["acquire", str(tiny_campaign), "--run", "first", "--rebuild"])
    assert made.exit_code == 0, made.output
    xr.testing.assert_identical(open_dataset(run.record), whole)
    # A sound record of another run is no record of this one.
    other = run_folder(tiny_campaign, "second")
    assert services.acquire(campaign, plan, other).state.value == "done"
    shutil.copyfile(other.record, run.record)
    foreign = CliRunner().invoke(main, ["evaluate", str(tiny_campaign), "--run", "first"])
    assert foreign.exit_code == 2 and "not made from this journal" in " ".join(foreign.stderr.split())
