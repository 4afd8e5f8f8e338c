"""Steps in a kitchen: how long each takes and how warm it is meanwhile."""
