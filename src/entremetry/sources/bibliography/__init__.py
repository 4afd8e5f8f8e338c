"""Every source that the program cites, by key; each room keeps its own entries."""

from entremetry.sources.bibliography.collection import BIBLIOGRAPHY, cite

__all__ = ["BIBLIOGRAPHY", "cite"]
