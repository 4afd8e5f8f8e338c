"""What is printed and published: the section drawing, the recipe page, its structured data."""

from entremetry.publish.drawing import section_svg
from entremetry.publish.json_ld import recipe_json_ld
from entremetry.publish.recipe_page import recipe_page

__all__ = ["recipe_json_ld", "recipe_page", "section_svg"]
