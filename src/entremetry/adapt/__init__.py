"""The same dessert from other ingredients: swaps, and formulas rebalanced after them."""
