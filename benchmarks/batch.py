"""A thousand small records in a batch, one of them damaged: `python benchmarks/batch.py`.

Runs of a small panel (3 x 3 elements, one frequency), each with a gain of its own. Prints how many a second are processed, evaluated
and kept, as ratios of one process that does nothing else, and what became of the damaged one.
"""

from __future__ import annotations

import argparse
import shutil
import tempfile
import time
from collections import Counter
from pathlib import Path

from colure.app import services
from colure.app.scale.batch import BatchJob, do, find_items, run_batch, write_table
from colure.app.services.rehearsal import record_of_rehearsal
from colure.app.storage.folders import run_folder
from colure.model.files import save_dataset

DEVICE = (
    ("[49.7, 49.7, 4.0]", "[18.6, 18.6, 4.0]"),
    ("rows = 8", "rows = 3"),
    ("columns = 8", "columns = 3"),
    ("-30.0]", "0.0]"),
)
GOAL = 'name = "small"\nstart_ghz = 24.0\nstop_ghz = 24.0\npoints = 1\nwanted_level_db = -25\nscheme = "two-pass"\n'


def make(folder: Path, count: int) -> None:
    """Make a campaign with many runs; the middle one is damaged."""
    services.new_campaign(folder)
    device = (folder / "device.toml").read_text(encoding="utf-8")
    for old, new in DEVICE:
        device = device.replace(old, new)
    (folder / "device.toml").write_text(device, encoding="utf-8")
    (folder / "goal.toml").write_text(GOAL, encoding="utf-8")
    record = record_of_rehearsal(*services.make_plan(folder), seed=3)
    for index in range(count):
        run = run_folder(folder, f"unit{index:04d}")
        run.path.mkdir(parents=True)
        save_dataset(record.assign(trace=record["trace"] * (1.0 + 1e-4 * index)), run.record)
    run = run_folder(folder, f"unit{count // 2:04d}")
    content = run.record.read_bytes()
    run.record.write_bytes(content[: len(content) // 3])


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--records", type=int, default=1000)
    parser.add_argument("--evaluate", type=int, default=60, help="how many of them are evaluated")
    arguments = parser.parse_args()
    folder = Path(tempfile.mkdtemp(prefix="colure-batch-")) / "campaign"
    begin = time.perf_counter()
    make(folder, arguments.records)
    print(f"{arguments.records} records made in {time.perf_counter() - begin:.0f} s", flush=True)
    items = find_items([str(folder)])
    do(BatchJob(items[0], "process", again=True))  # libraries are loaded
    begin = time.perf_counter()
    for item in items[:20]:
        do(BatchJob(item, "process", again=True))
    alone = 20 / (time.perf_counter() - begin)
    print(f"process, one after the other in this process: {alone:.1f} a second", flush=True)
    for what, some, again in (("process", items, True), ("process", items, False), ("evaluate", items[: arguments.evaluate], True), ("evaluate", items[: arguments.evaluate], False)):  # fmt: skip
        begin = time.perf_counter()
        found = list(run_batch(some, what, again=again))
        rate = len(found) / (time.perf_counter() - begin)
        count = Counter(one.status for one in found)
        print(
            f"{what:9s}{'' if again else ' again'}: {rate:.1f} a second, {rate / alone:.2f} times one process; {dict(count)}",
            flush=True,
        )
        for one in found:
            if one.status == "failed":
                print(f"  {one.item.run}: {one.reason[:110]}")
    begin = time.perf_counter()
    write_table(found, folder.parent / "table.parquet")
    print(f"table of {sum(len(one.rows) for one in found)} rows: {time.perf_counter() - begin:.2f} s")
    shutil.rmtree(folder.parent)


if __name__ == "__main__":
    main()
