"""A device held against a reference: what is new in it is found from few slices."""
