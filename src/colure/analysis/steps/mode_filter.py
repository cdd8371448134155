"""The mode filter: about its own centre a device needs fewer waves, and the rest is not its own."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from colure.geometry.conventions import FloatArray, order_within
from colure.values import holds_arrays
from colure.waves.axial_filter import axial_filter
from colure.waves.expansion import Expansion

#: Digits that the mode filter keeps of sources inside its radius.
OWN_DIGITS = 5.0


@dataclass(frozen=True)
@holds_arrays
class OwnWaves:
    """The device's own waves: about its own centre it needs fewer of them, and the rest is not its own.

    centre_m
        The device's centre in the device frame.
    radius_m
        Radius about that centre which holds all sources.
    keep_order
        Order of the result about the origin.
    """

    centre_m: FloatArray
    radius_m: float
    keep_order: int

    def order(self, k: float) -> int:
        """Return the order that sources within the radius need for four digits."""
        kr = k * self.radius_m
        return max(3, int(np.ceil(order_within(kr, digits=OWN_DIGITS))))

    def of(self, expansion: Expansion) -> Expansion:
        """Return the expansion with only those waves, about the origin again."""
        order = self.order(float(np.max(expansion.k)))
        if order >= expansion.order:
            return expansion
        # Many draws of the same frequencies: along z the filter is a matrix for every azimuthal order.
        along = abs(self.centre_m[0]) < 1e-12 and abs(self.centre_m[1]) < 1e-12
        if along and expansion.coefficients.ndim == 4:
            k = tuple(float(one) for one in expansion.k[0])
            shift = float(self.centre_m[2])
            coefficients = axial_filter(
                expansion.coefficients, k, shift_m=shift, order=order, keep_order=self.keep_order
            )
            return Expansion(coefficients, expansion.k)
        return expansion.translated(-self.centre_m, order=order).translated(self.centre_m, order=self.keep_order)
