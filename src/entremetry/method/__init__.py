"""Typed steps, the books of a making, sentences and cautions."""

from entremetry.method.made import Change, Made
from entremetry.method.making import make, scaled_made
from entremetry.method.portion import Portion
from entremetry.method.route import Route, Stop, route
from entremetry.method.share import Part, Share
from entremetry.method.step import KINDS, AnyStep, Step, scaled_steps

__all__ = [
    "KINDS",
    "AnyStep",
    "Change",
    "Made",
    "Part",
    "Portion",
    "Route",
    "Share",
    "Step",
    "Stop",
    "make",
    "route",
    "scaled_made",
    "scaled_steps",
]
