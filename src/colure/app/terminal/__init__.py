"""What the terminal shows and listens to: tables, progress, keys."""
