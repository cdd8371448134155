"""What the data say of themselves, and what each step found."""
