"""The scan that the control room may run, as the page sees it."""
