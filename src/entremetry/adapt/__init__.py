"""The same dessert from other ingredients, in another mould or vessel, for more or fewer."""
