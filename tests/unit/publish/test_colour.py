import pytest

from entremetry.publish.colour import contrast, difference, hex_colour, legible, mixed


@pytest.mark.parametrize(
    ("grey", "ratio"),
    [("#767676", 4.542), ("#777777", 4.478), ("#949494", 3.033), ("#959595", 2.995)],
)
def test_contrast_on_white_is_that_of_the_guidelines(grey: str, ratio: float) -> None:
    value = int(grey[1:3], 16)
    assert contrast((value, value, value), (255, 255, 255)) == pytest.approx(ratio, abs=5e-4)


def test_black_on_white_has_the_greatest_contrast() -> None:
    assert contrast((0, 0, 0), (255, 255, 255)) == pytest.approx(21.0)


@pytest.mark.parametrize("ground", [(251, 246, 236), (28, 22, 20)])
@pytest.mark.parametrize("colour", [(246, 168, 42), (92, 28, 72), (250, 246, 238), (0, 0, 0)])
def test_a_legible_tone_reaches_the_contrast_of_body_text(colour, ground) -> None:  # type: ignore[no-untyped-def]
    assert contrast(legible(colour, ground), ground) >= 4.5


def test_mixing_runs_from_the_first_colour_to_the_second() -> None:
    assert mixed((0, 0, 0), (100, 200, 50), 0.0) == (0, 0, 0)
    assert mixed((0, 0, 0), (100, 200, 50), 0.5) == (50, 100, 25)
    assert hex_colour((10, 200, 255)) == "#0ac8ff"
    assert difference((5, 5, 5), (5, 5, 5)) == 0.0
