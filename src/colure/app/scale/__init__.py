"""Many runs, large records, many rehearsals: pieces of work and who does them."""
