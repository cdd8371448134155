"""Arrays whose elements have commands: from states to elements, beams and calibrations."""
