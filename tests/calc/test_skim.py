"""Skim: the chain from texture to pails, and what must hold for any input."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from calc import catalogue

F = Fraction
areas = st.integers(min_value=1, max_value=5000)
depths = st.sampled_from(["0", "1/16", "1/8", "3/16", "1/4", "1/2", "1"])
percents = st.integers(min_value=0, max_value=50)


def ask(**inputs):
    answer, faults = catalogue.work_out("skim", {name: str(value) for name, value in inputs.items()})
    assert answer is not None, faults
    return answer, {line.name: line.value for line in answer.lines}


@given(areas, depths, percents, percents)
def test_what_is_bought_is_never_less_than_what_is_needed(area_sqft, depth, shrinkage_pct, waste_pct):
    _, values = ask(area_sqft=area_sqft, texture_depth_in=depth, shrinkage_pct=shrinkage_pct, waste_pct=waste_pct)
    pail_gal = F("4.5")
    assert values["pails"] * pail_gal >= values["compound_gal"] > (values["pails"] - 1) * pail_gal


@given(areas, depths)
def test_more_of_anything_never_needs_less(area_sqft, depth):
    _, here = ask(area_sqft=area_sqft, texture_depth_in=depth)
    for more in (
        {"area_sqft": area_sqft + 10},
        {"coats": 3},
        {"shrinkage_pct": 30},
        {"waste_pct": 15},
        {"coat_thickness_in": "1/8"},
    ):
        _, there = ask(**({"area_sqft": area_sqft, "texture_depth_in": depth} | more))
        assert there["compound_gal"] > here["compound_gal"]
        assert there["water_to_dry_gal"] >= here["water_to_dry_gal"]


@given(
    st.integers(min_value=1, max_value=50),
    st.integers(min_value=1, max_value=50),
    st.integers(min_value=1, max_value=50),
)
def test_splitting_a_room_in_two_needs_the_same(east, north, cut):
    _, whole = ask(rooms=f"{east + cut}' x {north}'", texture_depth_in="1/8")
    _, parts = ask(rooms=f"{east}' x {north}'; {cut}' x {north}'", texture_depth_in="1/8")
    assert whole == parts


def test_metric_in_is_customary_in():
    _, metric = ask(
        area_sqft="92.90304 m2", texture_depth_in="12.7 mm", coat_thickness_in="1.5875 mm", pail_gal="17.034353028 L"
    )
    _, customary = ask(area_sqft=1000, texture_depth_in="1/2", coat_thickness_in="1/16", pail_gal="4.5")
    assert metric == customary


def test_metric_out_changes_what_is_read_and_not_the_figures():
    metric, metric_values = ask(area_sqft=280, texture_depth_in="1/8", show_in="metric")
    _, values = ask(area_sqft=280, texture_depth_in="1/8")
    assert metric_values == values
    shown = {line.name: line.shown for line in metric.lines}
    assert shown["area_sqft"] == "26 m²"
    assert shown["compound_gal"].endswith(" L")
    assert shown["wet_weight_lb"].endswith(" kg")


def test_water_and_what_stays_make_up_the_wet_weight():
    _, values = ask(area_sqft=280, texture_depth_in="3/16")
    water_lb = values["water_to_dry_gal"] * F("8.3285")
    assert water_lb + values["dry_load_psf"] * 280 == values["wet_weight_lb"]


def test_the_asbestos_stop_stands_first_in_every_answer():
    for depth in ("0", "3/16", "1"):
        answer, _ = ask(area_sqft=280, texture_depth_in=depth)
        assert answer.cautions[0].id == "asbestos-first"
        assert answer.cautions[0].signal == "DANGER"
        assert "ceiling-load" in [one.id for one in answer.cautions]


def test_a_heavy_layer_is_stopped_at_the_published_load():
    light, light_values = ask(area_sqft=280, texture_depth_in="0")
    heavy, heavy_values = ask(area_sqft=280, texture_depth_in="1/2")
    assert light_values["peak_load_psf"] < F("1.3") <= heavy_values["peak_load_psf"]
    assert "added-load" not in [one.id for one in light.cautions]
    assert "added-load" in [one.id for one in heavy.cautions]


@given(depths, st.integers(min_value=1, max_value=6))
def test_the_heaviest_moment_is_found_by_laying_coat_after_coat(depth, coats):
    _, values = ask(area_sqft=100, texture_depth_in=depth, coats=coats)
    layers = [values["fill_in"] + F(1, 16)] + [F(1, 16)] * (coats - 1)
    wet_psf = values["wet_weight_lb"] / 100
    wet = [wet_psf * layer / sum(layers) for layer in layers]
    dry = [one * (1 - F(35, 100)) for one in wet]
    assert values["peak_load_psf"] == max(sum(dry[:at]) + wet[at] for at in range(coats))


def faults_of(**inputs):
    answer, faults = catalogue.work_out("skim", inputs)
    assert answer is None
    return {fault.field: fault.message for fault in faults}


def test_an_empty_form_names_what_is_missing():
    assert set(faults_of()) == {"rooms", "texture_depth_in"}


def test_rooms_and_area_together_are_one_too_many():
    assert "only one" in faults_of(rooms="10 x 10", area_sqft="100", texture_depth_in="0")["area_sqft"]


def test_the_drying_forms_reckon_with_the_water_that_this_one_finds():
    _, values = ask(rooms="Living: 20' x 14'", texture_depth_in="1/8", coats=2)
    answer, _ = catalogue.work_out("humidity", {"rooms": "Living: 20' x 14'", "texture_depth_in": "1/8", "coats": "2"})
    water_lb = {line.name: line.value for line in answer.lines}["water_lb"]
    assert water_lb == values["water_to_dry_gal"] * F("8.3285")


def test_lightweight_compound_names_its_source():
    assert "compound-lightweight" in catalogue.find("skim").sources
