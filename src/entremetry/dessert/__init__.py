"""The dessert document and what follows from it: placement in the mould and the batch."""

from entremetry.dessert.batch import batch_sheet
from entremetry.dessert.batch_sheet import BatchSheet
from entremetry.dessert.dessert import Dessert
from entremetry.dessert.document import DessertDocument
from entremetry.dessert.draft import Draft, DraftRequest, draft
from entremetry.dessert.limiting import pieces_from
from entremetry.dessert.reading import read_dessert
from entremetry.dessert.reckoning import Reckoning, reckon
from entremetry.dessert.resolving import resolve

__all__ = [
    "BatchSheet",
    "Dessert",
    "DessertDocument",
    "Draft",
    "DraftRequest",
    "Reckoning",
    "batch_sheet",
    "draft",
    "pieces_from",
    "read_dessert",
    "reckon",
    "resolve",
]
