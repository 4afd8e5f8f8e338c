"""Materials of the reference problems, written as closed laws of temperature."""

from __future__ import annotations

import numpy as np

from entremetry.physics.material import Material, material

ZERO = 273.15


def gel() -> Material:
    """Tylose-like gel: freezes from -0.6 °C."""
    return law("gel", -0.6, 3.71e6, 1.90e6, 209e6, 0.55, 1.10)


def mousse() -> Material:
    """Mousse of 600 kg/m3 that freezes from -3 °C."""
    return law("mousse", -3.0, 600 * 3097.774, 600 * 2117.0, 600 * 0.534 * 333600.0, 0.23, 0.30)


def law(
    name: str, point: float, warm: float, cold: float, latent: float, k0: float, k1: float
) -> Material:
    """Constant capacities on both sides, ice and conductivity with 1 - t_f / t. [J/m3, W/(m K)]"""

    def ice(t: np.ndarray) -> np.ndarray:
        return 1.0 - point / np.minimum(t - ZERO, point)

    def enthalpy(t: np.ndarray) -> np.ndarray:
        c = t - ZERO - point
        return warm * np.maximum(c, 0.0) + cold * np.minimum(c, 0.0) - latent * ice(t)

    return material(
        name,
        enthalpy,
        lambda t: k0 + k1 * ice(t),
        freezing_point=point + ZERO,
        lowest=233.15,
        highest=313.15,
    )


def straight(
    name: str, knots: list[float], capacities: list[float], conductivities: list[float], kink: float
) -> Material:
    """Constant capacity and conductivity between knots in °C. [J/(m3 K), W/(m K)]"""
    ends = np.array([-45.0, *knots, 45.0])
    heights = np.concatenate([[0.0], np.cumsum(np.array(capacities) * np.diff(ends))])

    def conductivity(t: np.ndarray) -> np.ndarray:
        return np.array(conductivities)[np.searchsorted(np.array(knots), t - ZERO)]

    return material(
        name,
        lambda t: np.interp(t - ZERO, ends, heights),
        conductivity,
        freezing_point=kink + ZERO,
        lowest=ZERO - 45.0,
        highest=ZERO + 45.0,
        steps=2048,
    )
