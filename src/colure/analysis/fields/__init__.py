"""Fields that came as files: near field to far field, and patterns back to waves."""
