"""Compile the kernel before the first question, with progress to show."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from entremetry.physics.conduction.box_body import box_body
from entremetry.physics.conduction.outline import Region, arc, outline, rectangle
from entremetry.physics.conduction.run import run
from entremetry.physics.conduction.section_body import round_body
from entremetry.physics.conduction.stage import Stage, Target
from entremetry.physics.conduction.surroundings import Surroundings
from entremetry.physics.material import constant_material

Report = Callable[[float, str], None]


def warm_up(report: Report | None = None) -> None:
    """Compile everything that a run needs, or load it from the disk if it was compiled before.

    Parameters
    ----------
    report : callable, optional
        Told the part that is done (0 to 1) and what comes next. Call this from a thread of its
        own at start; a run that comes meanwhile waits for the same code.
    """
    tell = report or (lambda _part, _text: None)
    tell(0.0, "cutting a dome into cells")
    stuff, other = constant_material("stuff", 0.3, 2e6), constant_material("other", 0.5, 2e6)
    edge = outline(
        ("base", [(0.0, 0.0), (0.01, 0.0)]),
        ("skin", arc((0.0, 0.0), 0.01, 0.0, np.pi / 2, 8)),
        ("axis", [(0.0, 0.01), (0.0, 0.0)]),
    )
    core = Region(name="core", material=other, points=rectangle(0.0, 0.0011, 0.0052, 0.005))
    dome = round_body(edge, stuff, (core,), 2e-3)
    tell(0.3, "compiling the solver")
    air = Surroundings(temperature=255.15, coefficient=10.0)
    target = Target(temperature=280.0)
    run(dome, {"body": 285.15}, [Stage(surroundings={"skin": air}, until=target)])
    tell(0.9, "trying a box")
    box = box_body((0.01, 0.01, 0.01), stuff, spacing=2.5e-3)
    run(box, {"body": 285.15}, [Stage(surroundings={"top": air}, duration=60.0)])
    tell(1.0, "ready")
