"""The label of a demo dessert, worked out with a pencil from the paper masses of the demo library.

Fat in 100 g, from the table: cream 35, milk 3.25, yolk 26.54, butter 81.11, hazelnuts 60.75
(roasted 62.4), flour 1.0, condensed milk 8.7, white couverture 30 + a quarter of 26.71.
"""

from __future__ import annotations

import pytest

from entremetry.labels import Label
from entremetry.store.demo import demo_texts
from entremetry.usecases.labelling import label_of_text

WITHIN = 0.025
INSERT, MOUSSE, SHORTCRUST, GLAZE, NUTS = 17.6, 56.5, 15.3, 19.6, 2.0  # g in a piece
INSERT_READY = 118.5 - 4.0 - 1.5  # without steam and pod, before the bowl takes its share
SHORTCRUST_BAKED = 121.4 * 0.89
GLAZE_READY = 207.0 - 2.0
FAT = (
    INSERT * (62 * 0.35 + 20 * 0.0325 + 17 * 0.2654) / INSERT_READY
    + MOUSSE * 155 * 0.35 / 359
    + SHORTCRUST * (30 * 0.8111 + 12 * 0.6075 + 50 * 0.01 + 10 * 0.35) / SHORTCRUST_BAKED
    + GLAZE * (30 * 0.087 + 42 * (0.30 + 0.25 * 0.2671)) / GLAZE_READY
    + NUTS * 0.624
)
PIECE = INSERT + MOUSSE + SHORTCRUST + GLAZE + NUTS


@pytest.fixture(scope="module")
def label() -> Label:
    return label_of_text(demo_texts()["blackcurrant-vanilla-dome"])


def test_fat_is_what_the_pencil_says(label: Label) -> None:
    fat = next(row for row in label.rows if row.key == "fat_g")
    assert fat.per_serving == pytest.approx(FAT, rel=WITHIN)
    assert fat.per_100g == pytest.approx(100.0 * FAT / PIECE, rel=WITHIN)


def test_salt_is_what_was_put_in_and_what_the_rest_brings(label: Label) -> None:
    put_in = SHORTCRUST * 0.4 / SHORTCRUST_BAKED
    salt = next(row for row in label.rows if row.key == "salt_g")
    assert put_in < salt.per_serving < 2.5 * put_in


def test_quantities_are_mass_weighed_over_mass_finished(label: Label) -> None:
    by_id = {each.ids[0]: each.quantity for each in label.ingredients.entries}
    puree = MOUSSE * 150 / 359 + GLAZE * 10 / GLAZE_READY
    ground = SHORTCRUST * 12 / SHORTCRUST_BAKED
    assert by_id["blackcurrant-puree"] == pytest.approx(puree / PIECE, rel=WITHIN)
    assert by_id["hazelnut-ground"] == pytest.approx(ground / PIECE, rel=WITHIN)
