"""What an angle, an axis or a polarization means."""
