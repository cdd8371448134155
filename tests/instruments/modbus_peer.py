"""A Modbus server of the protocol's own library, in a process of its own: `python -m tests.instruments.modbus_peer PORT`."""

from __future__ import annotations

import asyncio
import sys

from pymodbus.server import StartAsyncTcpServer
from pymodbus.simulator import DataType, SimData, SimDevice


async def serve(port: int) -> None:
    """Serve unit 7: bits 0 to 15 (coil 3 is set), and registers with 21.5, -7 and 1013.25 in three types of number."""
    coils = [SimData(0, values=[k == 3 for k in range(16)], datatype=DataType.BITS)]
    discrete = [SimData(0, values=[k == 3 for k in range(16)], datatype=DataType.BITS)]
    holding = [SimData(0, values=0, datatype=DataType.REGISTERS)]
    # 21.5 as IEEE 754 single 0x41AC0000; -7 as 0xFFF9; 101325 = 0x00018BCD with its low word first.
    inputs = [SimData(10, values=[0x41AC, 0x0000, 0xFFF9, 0x8BCD, 0x0001, 0x7FC0, 0x0000], datatype=DataType.REGISTERS)]
    device = SimDevice(7, simdata=(coils, discrete, holding, inputs))
    await StartAsyncTcpServer(context=device, address=("127.0.0.1", port))


if __name__ == "__main__":
    asyncio.run(serve(int(sys.argv[1])))
