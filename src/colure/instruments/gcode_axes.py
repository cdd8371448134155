"""An axis controller driven by the words of a profile, with a second connection for stopping."""

from __future__ import annotations

import re
from collections.abc import Mapping

from colure.instruments.profile import AxesProfile
from colure.instruments.protocols import HeldError, InstrumentError, RefusedError
from colure.instruments.transport import Transport


class GcodeAxes:
    """Axis controller behind a VISA resource; see `AxesDriver`.

    `hold` and `release` use their own connection, so they never queue behind a move.
    """

    def __init__(self, resource: str, profile: AxesProfile, axes: tuple[str, ...], *, timeout_s: float) -> None:
        missing = [name for name in axes if name not in profile.letters]
        if missing:
            raise InstrumentError(f"axes profile: `letters` has no entry for {', '.join(missing)}")
        self._profile = profile
        self._axes = axes
        self._letters = {profile.letters[name]: name for name in axes}
        self._link = Transport(resource, timeout_s=timeout_s)
        self._stop_link = Transport(resource, timeout_s=min(timeout_s, 2.0))

    def identity(self) -> str:
        """Return what the controller says it is, or its resource name if it cannot tell."""
        return self._link.query(self._profile.identity) if self._profile.identity else self._link.resource

    def move(self, targets_deg: Mapping[str, float], settle_s: float) -> dict[str, float]:
        """Move all given axes, wait until they stand and have settled, and return the readback.

        Raises
        ------
        HeldError
            If motion is held.
        InstrumentError
            If the controller refuses or does not answer.
        """
        p = self._profile
        words = " ".join(
            p.word.format(letter=p.letters[name], value=f"{value:.{p.decimals}f}")
            for name, value in targets_deg.items()
        )
        # One packet, three replies: the controller never waits for us between them.
        self._link.write("\n".join([p.move.format(words=words), p.wait.format(settle_s=settle_s), p.position]))
        refusal: RefusedError | None = None
        report = ""
        for _ in range(3):
            try:
                report = self._reply()
            except RefusedError as error:
                # The other two replies are still due; reading them keeps the line in step.
                refusal = refusal or error
        if refusal is not None:
            raise refusal
        return self._parse(report)

    def positions_deg(self) -> dict[str, float]:
        """Return the present readouts in degrees."""
        self._link.write(self._profile.position)
        return self._parse(self._reply())

    def hold(self) -> None:
        """Brake all axes now; not an emergency stop."""
        self._stop_link.write_raw(self._profile.hold)

    def release(self) -> None:
        """Allow motion after a hold."""
        self._stop_link.write_raw(self._profile.release)
        # A report on the same connection proves that the release has been read.
        self._stop_link.write(self._profile.position)
        while not re.search(self._profile.done, self._stop_link.read()):
            pass

    def close(self) -> None:
        """Close both connections."""
        self._link.close()
        self._stop_link.close()

    def _reply(self) -> str:
        """Read lines up to the completion reply and return them joined."""
        lines: list[str] = []
        for _ in range(50):
            line = self._link.read()
            if re.search(self._profile.fault, line):
                kind = HeldError if re.search(self._profile.held, line) else RefusedError
                raise kind(f"{self._link.resource}: {line}")
            if re.search(self._profile.done, line):
                return "\n".join(lines)
            lines.append(line)
        raise InstrumentError(f"{self._link.resource}: 50 lines without a completion reply")

    def _parse(self, text: str) -> dict[str, float]:
        found = {m["letter"]: float(m["value"]) for m in re.finditer(self._profile.position_pattern, text)}
        missing = [name for letter, name in self._letters.items() if letter not in found]
        if missing:
            raise InstrumentError(f"{self._link.resource}: no position of {', '.join(missing)} in {text!r}")
        return {name: found[letter] for letter, name in self._letters.items()}
