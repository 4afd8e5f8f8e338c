"""Typed steps, the books of a making, sentences and cautions."""

from entremetry.method.caution import DEFERENCE, Caution, cautions, gathered
from entremetry.method.made import Change, Made
from entremetry.method.making import make, scaled_made
from entremetry.method.peak import peaks
from entremetry.method.portion import Portion
from entremetry.method.route import Route, Stop, route
from entremetry.method.share import Part, Share
from entremetry.method.step import KINDS, AnyStep, Step, scaled_steps
from entremetry.method.wording import sentence, sentences

__all__ = [
    "DEFERENCE",
    "KINDS",
    "AnyStep",
    "Caution",
    "Change",
    "Made",
    "Part",
    "Portion",
    "Route",
    "Share",
    "Step",
    "Stop",
    "cautions",
    "gathered",
    "make",
    "peaks",
    "route",
    "scaled_made",
    "scaled_steps",
    "sentence",
    "sentences",
]
