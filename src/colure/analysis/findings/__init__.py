"""Self-consistency checks, and what each step changed."""
