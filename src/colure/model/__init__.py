"""The nouns that get saved: validated once, frozen, with their files."""
