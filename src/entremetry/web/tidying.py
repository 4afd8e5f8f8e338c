"""Python's search for what nothing refers to: seldom, and not through what stays anyway.

Such a search stops every thread while it looks at all objects there are, a fifth of a second for
those of a running workbench. What the last answers hold goes without any search.
"""

from __future__ import annotations

import gc

SELDOM = (5_000, 20, 100)
"""Objects more before the youngest are searched, and such searches before the older ones are."""


def search_seldom() -> None:
    """Search seldom from now on, and never through what is there already."""
    gc.set_threshold(*SELDOM)
    gc.freeze()
