"""Linear triangles on the reference dome with scikit-fem: a mesh fitted to every surface.

Enthalpy in the nodes with lumped volumes, TR-BDF2, a direct solver and steps of at most 240 s:
what a careful user of finite elements would write, the mesh made beforehand.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from physics_dome import AIR, FRUIT, MOUSSE, RADIUS, SHELL, SILICONE, START, TARGET
from scipy.sparse import csc_matrix, diags_array
from scipy.sparse.linalg import splu
from scipy.spatial import Delaunay
from skfem import Basis, BilinearForm, ElementTriP1, FacetBasis, LinearForm, MeshTri, asm
from skfem.helpers import dot, grad

GAMMA = 2.0 - np.sqrt(2.0)
FOODS = (MOUSSE, FRUIT, SILICONE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Dome:
    """Mesh, region of each triangle, lumped volumes of each region in each node, film."""

    mesh: MeshTri
    basis: Basis
    region: np.ndarray
    volumes: np.ndarray  # (regions, nodes) [m3/rad]
    film: csc_matrix
    pull: np.ndarray


def seeds(size: float) -> np.ndarray:
    """Nodes on every surface of the dome and, staggered, between them."""
    line = [np.linspace(a, b, max(2, round(abs(b - a) / size) + 1)) for a, b in SIDES]
    fixed = [np.column_stack([line[0], 0.0 * line[0] + z]) for z in (0.008, 0.023)]
    fixed.append(np.column_stack([0.0 * line[1] + 0.020, line[1]]))
    for radius in (RADIUS, RADIUS + 0.5 * SHELL, RADIUS + SHELL):
        angle = np.linspace(0.0, np.pi / 2, round(radius * np.pi / 2 / size) + 1)
        fixed.append(radius * np.column_stack([np.cos(angle), np.sin(angle)]))
    fixed += [np.column_stack([line[2], 0.0 * line[2]]), np.column_stack([0.0 * line[2], line[2]])]
    kept = np.vstack(fixed)
    kept[np.abs(kept) < 1e-12] = 0.0
    kept = np.unique(kept.round(9), axis=0)
    rows = np.arange(0.0, RADIUS, size * np.sqrt(0.75))
    inner = [
        (r + (i % 2) * size / 2, z)
        for i, z in enumerate(rows)
        for r in np.arange(0.0, RADIUS, size)
    ]
    free = np.array([p for p in inner if np.hypot(*p) < RADIUS - 0.5 * size and min(p) > size / 2])
    gap = np.sqrt(((free[:, None] - kept[None]) ** 2).sum(axis=2)).min(axis=1)
    return np.vstack([kept, free[gap > 0.6 * size]])


SIDES = ((0.0, 0.020), (0.008, 0.023), (0.0, RADIUS))


def dome(size: float) -> Dome:
    """Triangles between the seeds, and all that does not change with temperature."""
    points = seeds(size)
    triangles = Delaunay(points).simplices
    corner = points[triangles]
    one, two = corner[:, 1] - corner[:, 0], corner[:, 2] - corner[:, 0]
    doubled = one[:, 0] * two[:, 1] - one[:, 1] * two[:, 0]
    middle = corner.mean(axis=1)
    mesh = MeshTri(points.T.copy(), triangles[np.abs(doubled) > 1e-3 * size**2].T.copy())
    middle = mesh.p[:, mesh.t].mean(axis=1)
    fruit = (middle[0] < 0.020) & (middle[1] > 0.008) & (middle[1] < 0.023)
    chord = RADIUS * np.cos(size / RADIUS / 2.0)
    region = np.where(fruit, 1, np.where(np.hypot(*middle) > chord - 1e-9, 2, 0))
    basis = Basis(mesh, ElementTriP1())
    volumes = np.array([lumped(basis, region == number) for number in range(len(FOODS))])
    outside = mesh.facets_satisfying(exposed, boundaries_only=True)
    skin = FacetBasis(mesh, ElementTriP1(), facets=outside)
    film = asm(BilinearForm(lambda u, v, w: AIR.coefficient * u * v * w.x[0]), skin)
    pull = asm(LinearForm(lambda v, w: AIR.coefficient * AIR.temperature * v * w.x[0]), skin)
    return Dome(
        mesh=mesh, basis=basis, region=region, volumes=volumes, film=csc_matrix(film), pull=pull
    )


def exposed(x: np.ndarray) -> np.ndarray:
    """Where the air is: the shell's outside and the flat face of the food."""
    flat = (np.abs(x[1]) < 1e-9) & (x[0] < RADIUS)
    return flat | (np.hypot(x[0], x[1]) > RADIUS + 0.9 * SHELL) & (x[1] > 1e-9)


def lumped(basis: Basis, inside: np.ndarray) -> np.ndarray:
    """Each node's share of the volume of some triangles."""
    weight = np.repeat(inside[:, None].astype(float), basis.dx.shape[1], axis=1)
    return asm(LinearForm(lambda v, w: w["part"] * v * w.x[0]), basis, part=weight)


def held(t: np.ndarray, volumes: np.ndarray) -> np.ndarray:
    """Heat of each node at given temperatures. [J/rad]"""
    return sum(v * f.enthalpy(t) for v, f in zip(volumes, FOODS, strict=True))


def conductance(made: Dome, t: np.ndarray) -> csc_matrix:
    """Stiffness matrix with the conductivity of each triangle's mean temperature, and the film."""
    mean = t[made.mesh.t].mean(axis=0)
    k = np.choose(made.region, [f.conductivity(mean) for f in FOODS])
    form = BilinearForm(lambda u, v, w: w["k"] * dot(grad(u), grad(v)) * w.x[0])
    spread = np.repeat(k[:, None], made.basis.dx.shape[1], axis=1)
    return csc_matrix(asm(form, made.basis, k=spread) + made.film)


def implicit(made: Dome, t: np.ndarray, known: np.ndarray, span: float) -> np.ndarray | None:
    """Solve heat(t) + span * flow(t) = known by Newton; None if it does not come to rest."""
    t = t.copy()
    for _ in range(25):
        matrix = conductance(made, t)
        rest = held(t, made.volumes) + span * (matrix @ t - made.pull) - known
        slope = (held(t + 1e-3, made.volumes) - held(t - 1e-3, made.volumes)) / 2e-3
        change = splu(csc_matrix(diags_array(slope) + span * matrix)).solve(-rest)
        t += np.clip(change, -3.0, 3.0)
        if np.abs(change).max() < 1e-4:
            return t
    return None


def advance(made: Dome, t: np.ndarray, step: float) -> np.ndarray | None:
    """One step of TR-BDF2."""
    begin = held(t, made.volumes)
    half = 0.5 * GAMMA * step
    middle = implicit(made, t, begin - half * (conductance(made, t) @ t - made.pull), half)
    if middle is None:
        return None
    part = GAMMA * (2.0 - GAMMA)
    known = held(middle, made.volumes) / part - begin * (1.0 - GAMMA) ** 2 / part
    return implicit(made, middle, known, step * (1.0 - GAMMA) / (2.0 - GAMMA))


def beginning(made: Dome) -> np.ndarray:
    """Temperatures at which each node holds what warm mousse and frozen fruit bring to it."""
    begin = (START["mousse"], START["fruit"], START["body"])
    heat = sum(v * float(f.enthalpy(t)) for v, f, t in zip(made.volumes, FOODS, begin, strict=True))
    low, high = np.full(heat.size, min(begin)), np.full(heat.size, max(begin))
    for _ in range(50):
        middle = 0.5 * (low + high)
        above = held(middle, made.volumes) > heat
        low, high = np.where(above, low, middle), np.where(above, middle, high)
    return 0.5 * (low + high)


def elements(made: Dome, longest: float = 240.0) -> float:
    """Time at which the warmest of the food is cold enough. [s]"""
    food = made.volumes[:2].sum(axis=0) > made.volumes[2]
    t = beginning(made)
    now, step, curve = 0.0, 0.5, []
    while not curve or curve[-1][1] > TARGET.temperature:
        found = advance(made, t, step)
        if found is None:
            step *= 0.5
            continue
        t, now, step = found, now + step, min(1.3 * step, longest)
        curve.append((now, t[food].max()))
    times, warmest = np.array(curve[-3:]).T
    return meet(times, warmest)


def meet(times: np.ndarray, warmest: np.ndarray) -> float:
    """Time at which a parabola through three points meets the target."""
    return float(np.polyval(np.polyfit(warmest - TARGET.temperature, times, 2), 0.0))
