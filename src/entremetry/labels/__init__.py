"""What a label says of a dessert: nutrition, allergens, ingredients, cost."""

from entremetry.labels.cost import Cost, batch_cost
from entremetry.labels.label import Label, label
from entremetry.labels.naming import Rules

__all__ = ["Cost", "Label", "Rules", "batch_cost", "label"]
