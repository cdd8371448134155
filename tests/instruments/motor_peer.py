"""Motor records of a Channel Access library, in a process of its own: `EPICS_CA_SERVER_PORT=N python -m ...motor_peer`."""

from __future__ import annotations

from caproto.ioc_examples.fake_motor_record import FakeMotor
from caproto.server import PVGroup, SubGroup, pvproperty, run

AXIS = {"velocity": 20.0, "precision": 3, "acceleration": 1.0, "user_limits": (-180.0, 180.0), "tick_rate_hz": 10.0}


class Range(PVGroup):
    """Three axes."""

    one = SubGroup(FakeMotor, prefix="m1", **AXIS)
    two = SubGroup(FakeMotor, prefix="m2", **AXIS)
    three = SubGroup(FakeMotor, prefix="m3", **AXIS)
    bits = pvproperty(value=0, doc="what the first record's MSTA says from now on")

    @bits.putter
    async def bits(self, instance, value):
        await self.one.motor.field_inst.motor_status.write(value)


if __name__ == "__main__":
    run(Range(prefix="range:").pvdb, interfaces=["127.0.0.1"], log_pv_names=False)
