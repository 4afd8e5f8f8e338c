"""What a cook owns: moulds, vessels, equipment, hours."""

from entremetry.kitchen.kitchen_document import KitchenDocument
from entremetry.kitchen.mould import Mould, mould
from entremetry.kitchen.mould_document import MouldDocument
from entremetry.kitchen.reading import moulds_of, read_kitchen
from entremetry.kitchen.shape_building import build, described
from entremetry.kitchen.shape_document import ShapeDocument

__all__ = [
    "KitchenDocument",
    "Mould",
    "MouldDocument",
    "ShapeDocument",
    "build",
    "described",
    "mould",
    "moulds_of",
    "read_kitchen",
]
