"""Heat conduction with freezing in the dessert's real geometry.

Importing this room compiles nothing; the first run does, and keeps the result on disk.
"""

from __future__ import annotations

from entremetry.physics.conduction.body import Body
from entremetry.physics.conduction.box_body import Block, box_body
from entremetry.physics.conduction.contact import Contact
from entremetry.physics.conduction.history import History, Snapshot, StageEnd
from entremetry.physics.conduction.outline import Outline, Region, arc, outline, rectangle
from entremetry.physics.conduction.run import Course, run
from entremetry.physics.conduction.section_body import plane_body, round_body
from entremetry.physics.conduction.stage import Stage, Target
from entremetry.physics.conduction.surroundings import INSULATED, Surroundings, Wall
from entremetry.physics.conduction.variation import Variation
from entremetry.physics.conduction.warm_up import warm_up

__all__ = [
    "INSULATED",
    "Block",
    "Body",
    "Contact",
    "Course",
    "History",
    "Outline",
    "Region",
    "Snapshot",
    "Stage",
    "StageEnd",
    "Surroundings",
    "Target",
    "Variation",
    "Wall",
    "arc",
    "box_body",
    "outline",
    "plane_body",
    "rectangle",
    "round_body",
    "run",
    "warm_up",
]
