"""Echoes: mirrors in the room, and where the energy comes from that is not the device's."""
