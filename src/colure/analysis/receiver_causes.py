"""What receiver and leakage do to the figures."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from colure.analysis.bench import Bench, Cause


def receiver_causes(bench: Bench) -> Iterator[Cause]:
    inputs, analyzer = bench.inputs, bench.inputs.chamber.analyzer
    field = inputs.sphere.field
    peak = np.abs(field).max(axis=(1, 2, 3), keepdims=True)
    if analyzer.isolation_db is not None:
        share = 10.0 ** (analyzer.isolation_db / 20.0) / inputs.peak_reading
        both = [bench.changed_field(field + share * peak * phase) for phase in (1.0, 1j)]
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
