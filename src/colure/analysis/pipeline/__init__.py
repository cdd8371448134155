"""The loop over the recipe's steps, from a record to a processed run."""
