"""How the documentation is built: Markdown, no network, warnings as errors (`make docs`)."""

from entremetry import __version__

project = "Entremetry"
author = "The Entremetry authors"
release = __version__
extensions = ["myst_parser"]
source_suffix = {".md": "markdown"}
root_doc = "index"
exclude_patterns = ["_build", "vocabulary.d"]
myst_enable_extensions = ["colon_fence", "deflist"]
myst_heading_anchors = 3
nitpicky = True
html_theme = "alabaster"
html_theme_options = {
    "description": "A workbench for moulded, layered, frozen-set desserts",
    "fixed_sidebar": True,
    "show_powered_by": False,
    "font_family": "system-ui, sans-serif",
    "page_width": "1040px",
}
html_show_sourcelink = False
html_copy_source = False
