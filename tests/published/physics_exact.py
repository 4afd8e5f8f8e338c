"""Exact solutions of heat conduction, evaluated with mpmath; nothing here knows our solver.

References: Carslaw, H. S. and Jaeger, J. C. (1959), Conduction of Heat in Solids, 2nd ed.:
sections 3.11 (slab), 7.7 (cylinder), 9.4 (sphere), 11.2 (Neumann).
"""

from __future__ import annotations

from typing import Any

import mpmath as mp

TERMS = 24


def roots(shape: str, biot: float, count: int = TERMS) -> list[Any]:
    """Positive roots of the boundary condition."""
    functions = {
        "slab": lambda b: b * mp.sin(b) - biot * mp.cos(b),
        "cylinder": lambda b: b * mp.besselj(1, b) - biot * mp.besselj(0, b),
        "sphere": lambda b: mp.sin(b) * (1 - biot) - b * mp.cos(b),
    }
    found: list[Any] = []
    low = mp.mpf("1e-6")
    while len(found) < count:
        high = low + mp.mpf("0.05")
        if functions[shape](low) * functions[shape](high) < 0:
            found.append(mp.findroot(functions[shape], (low, high), solver="anderson"))
        low = high
    return found


def cooled(shape: str, biot: float, fourier: float, place: float = 0.0) -> float:
    """Unaccomplished temperature at a place (0 centre, 1 surface)."""
    total = mp.mpf(0)
    for b in roots(shape, biot):
        decay = mp.exp(-(b**2) * fourier)
        if shape == "slab":
            a = 4 * mp.sin(b) / (2 * b + mp.sin(2 * b))
            total += a * decay * mp.cos(b * place)
        elif shape == "cylinder":
            a = 2 * mp.besselj(1, b) / (b * (mp.besselj(0, b) ** 2 + mp.besselj(1, b) ** 2))
            total += a * decay * mp.besselj(0, b * place)
        else:
            a = 4 * (mp.sin(b) - b * mp.cos(b)) / (2 * b - mp.sin(2 * b))
            wave = mp.sin(b * place) / (b * place) if place else mp.mpf(1)
            total += a * decay * wave
    return float(total)


def layered_sphere(
    core: tuple[float, float, float],
    shell: tuple[float, float, float],
    coefficient: float,
    start: tuple[float, float],
    place: float,
    time: float,
    count: int = 14,
) -> float:
    """Temperature above the air in a sphere of two layers, each (radius, k, heat per volume)."""
    a, k1, c1 = (mp.mpf(x) for x in core)
    b, k2, c2 = (mp.mpf(x) for x in shell)
    h = mp.mpf(coefficient)

    def shapes(p: Any) -> tuple[Any, Any, Any, Any]:
        q1, q2 = p * mp.sqrt(c1 / k1), p * mp.sqrt(c2 / k2)
        value = mp.sin(q1 * a)
        slope = k1 * (q1 * mp.cos(q1 * a) - mp.sin(q1 * a) / a)
        # r T in the shell: s sin + c cos of q2 (r - a)
        c = value
        s = (slope / k2 + value / a) / q2
        return q1, q2, s, c

    def condition(p: Any) -> Any:
        _, q2, s, c = shapes(p)
        w = q2 * (b - a)
        value = s * mp.sin(w) + c * mp.cos(w)
        slope = q2 * (s * mp.cos(w) - c * mp.sin(w)) - value / b
        return k2 * slope + h * value

    total, found = mp.mpf(0), 0
    step = mp.pi / (a * mp.sqrt(c1 / k1) + (b - a) * mp.sqrt(c2 / k2)) / 40
    p = step / 10
    while found < count:
        if condition(p) * condition(p + step) < 0:
            root = mp.findroot(condition, (p, p + step), solver="anderson")
            found += 1
            q1, q2, s, c = shapes(root)
            inner = lambda r, q=q1: mp.sin(q * r)  # noqa: E731
            outer = lambda r, q=q2, s=s, c=c: s * mp.sin(q * (r - a)) + c * mp.cos(q * (r - a))  # noqa: E731
            norm = c1 * mp.quad(lambda r, f=inner: f(r) ** 2, [0, a])
            norm += c2 * mp.quad(lambda r, f=outer: f(r) ** 2, [a, b])
            weight = start[0] * c1 * mp.quad(lambda r, f=inner: r * f(r), [0, a])
            weight += start[1] * c2 * mp.quad(lambda r, f=outer: r * f(r), [a, b])
            there = inner(place) if place <= a else outer(place)
            wave = q1 if place == 0.0 else there / place
            total += weight / norm * wave * mp.exp(-(root**2) * time)
        p += step
    return float(total)


def neumann(
    solid: tuple[float, float, float],
    liquid: tuple[float, float, float],
    latent: float,
    melting: float,
    start: float,
    wall: float,
    time: float,
) -> dict[str, Any]:
    """Freezing of a half space: (k, density, c) of each phase; front, heat and temperature."""
    ks, rho, cs = solid
    kl, _, cl = liquid
    als, al = mp.mpf(ks) / (rho * cs), mp.mpf(kl) / (rho * cl)
    nu = mp.sqrt(als / al)

    def condition(x: Any) -> Any:
        left = mp.exp(-(x**2)) / mp.erf(x)
        right = (kl / mp.mpf(ks)) * nu * (start - melting) / (melting - wall)
        right *= mp.exp(-(nu**2) * x**2) / mp.erfc(nu * x)
        return left - right - x * latent * mp.sqrt(mp.pi) / (cs * (melting - wall))

    x = mp.findroot(condition, (0.05, 1.5), solver="anderson")
    front = 2 * x * mp.sqrt(als * time)
    flux = ks * (melting - wall) / (mp.erf(x) * mp.sqrt(mp.pi * als * time))

    def temperature(depth: float) -> float:
        if depth <= front:
            part = mp.erf(depth / (2 * mp.sqrt(als * time))) / mp.erf(x)
            return float(wall + (melting - wall) * part)
        part = mp.erfc(depth / (2 * mp.sqrt(al * time))) / mp.erfc(nu * x)
        return float(start - (start - melting) * part)

    return {"front": float(front), "heat": float(2 * flux * time), "temperature": temperature}


def plank(
    shape: str, thickness: float, rho: float, latent: float, k: float, h: float, span: float
) -> float:
    """Plank (plank_1913): time to freeze through at the freezing point. [s]"""
    p, r = {"slab": (1 / 2, 1 / 8), "cylinder": (1 / 4, 1 / 16), "sphere": (1 / 6, 1 / 24)}[shape]
    return rho * latent / span * (p * thickness / h + r * thickness**2 / k)
