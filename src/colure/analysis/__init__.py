"""Record -> Pattern -> Figures, as a recipe of pure steps."""
