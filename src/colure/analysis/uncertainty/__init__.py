"""Each error source applied to the data; the change of every figure is its row of the budget."""
