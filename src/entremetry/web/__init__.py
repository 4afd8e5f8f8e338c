"""The workbench: pages on this machine alone that show what the use cases answer."""

from entremetry.web.serving import serve

__all__ = ["serve"]
