"""What a person says of a run: who, whose, for whom, why; it decides nothing that is measured."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from colure.model.loading import Section

IdentityText = Annotated[str, Field(max_length=200)]


class RunIdentity(Section):
    """What a run is kept and found by.

    tag
        A short word of one's own: lot, variant, set-up.
    operator
        Who measures.
    serial
        Serial number of the device.
    customer, order
        For whom, and under which order number.
    note
        Anything else.
    photographs
        File names of pictures of the set-up, kept in the run's folder `photographs`.
    """

    tag: IdentityText = ""
    operator: IdentityText = ""
    serial: IdentityText = ""
    customer: IdentityText = ""
    order: IdentityText = ""
    note: Annotated[str, Field(max_length=2000)] = ""
    photographs: Annotated[str, Field(max_length=2000)] = ""

    @property
    def said(self) -> dict[str, str]:
        """The entries that were filled in."""
        return {name: value for name, value in self.model_dump().items() if value}

    def over(self, older: RunIdentity) -> RunIdentity:
        """Return these entries, and the older ones where nothing is said here."""
        return RunIdentity(**{**older.said, **self.said})
