"""Who says so, and where it holds."""

from entremetry.sources.bibliography import BIBLIOGRAPHY, cite
from entremetry.sources.figure import Figure
from entremetry.sources.range import Range
from entremetry.sources.source import Source, Standing

__all__ = ["BIBLIOGRAPHY", "Figure", "Range", "Source", "Standing", "cite"]
