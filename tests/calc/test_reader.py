"""The reader of workings can say no: each of these is wrong, or no sum, and it has to notice."""

import pytest
import reader

RIGHT = [
    ("280 sq ft × 0.5 in × 144 ÷ 231 = 87.27 gal", "87.27", "gal", 2),
    ("56 gal ÷ 4.5 gal = 12.44, up to 13 pails", "13", "", 0),
    ("the greater of 1.156 lb/sq ft and 1.214 lb/sq ft is 1.214 lb/sq ft", "1.21", "psf", 2),
    ("“Bed 2” 26.01 m² + “Den” 11.24 m² = 37.25 m²", "401", "sqft", 0),
    ("(288 sq ft − 280 sq ft) ÷ 288 sq ft = 2.778 %", "2.8", "%", 1),
    ("450 ÷ (2,610 × √0.02 in of water) × 144 = 175.6 sq in", "176", "sqin", 0),
]
WRONG = [
    ("280 sq ft × 0.5 in × 144 ÷ 231 = 88.27 gal", "88.27", "gal", 2),  # the sum
    ("280 sq ft × 0.5 in = 140 gal", "87.27", "gal", 2),  # a factor is missing, and the end is another than the value
    ("280 sq ft × 0.5 in × 144 ÷ 231 = 87.27 gal", "89", "gal", 0),  # the value
    ("280 sq ft × 0.5 in × 144 ÷ 231 = 87.27 L", "87.27", "gal", 2),  # the unit
    ("56 gal ÷ 4.5 gal = 12.44, up to 12 pails", "12", "", 0),  # rounded down
    ("56 gal ÷ 4.5 gal = 12.44, up to 14 pails", "14", "", 0),  # one too many
    ("the greater of 1.156 lb/sq ft and 1.214 lb/sq ft is 1.156 lb/sq ft", "1.16", "psf", 2),
    ("first: 2 ft + 2 ft = 5 ft; 5 ft × 2 = 10 ft", "10", "ft", 0),  # a step before the end
    ("(288 sq ft − 280 sq ft) ÷ 288 sq ft = 27.78 %", "27.8", "%", 1),
]
NO_SUM = ["as given", "counted in the list", "3 + = 3", "2 × (3 + 4 = 14"]


@pytest.mark.parametrize("row", RIGHT)
def test_what_adds_up_is_let_through(row):
    assert reader.check(*row)


@pytest.mark.parametrize("row", WRONG)
def test_what_does_not_add_up_is_noticed(row):
    with pytest.raises(reader.DoesNotAddUp):
        reader.check(*row)


@pytest.mark.parametrize("text", NO_SUM)
def test_what_is_no_sum_is_said_to_be_none(text):
    with pytest.raises(reader.NoSum):
        reader.check(text, "3", "", 0)
