"""Entremetry: from an idea and a mould to numbers that work."""

__version__ = "0.1.0"
