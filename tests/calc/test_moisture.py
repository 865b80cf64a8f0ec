"""Water in a room: none is lost, halving the step changes nothing that matters, and the analytic course is the oracle."""

import math
from fractions import Fraction

import psychrolib
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import catalogue
from calc.air import dew_point_f, humidity_ratio, outdoor_pressure_psi, vapor_pressure_psi
from calc.drying import drying_band_h
from calc.humidity import STEPS, HumidityInputs, airs_of, closed_air, course_of, drying_rate_lb_per_h_psi
from calc.moisture import UNIT_LB, follow

F = Fraction
psychrolib.SetUnitSystem(psychrolib.IP)
SEA_LEVEL_PSI = 14.696


def inputs(**changed):
    usual = {
        "volume_cuft": F(2240), "water_gal": F(5), "coat_thickness_in": F(1, 16), "temperature_f": F(68), "humidity_pct": F(50),
        "outdoor_temperature_f": F(50), "outdoor_humidity_pct": F(70), "closed_air_changes_per_hour": F(3, 10),
        "open_air_changes_per_hour": F(3), "dehumidifier_pt_per_day": F(50), "burner_btu_per_h": F(0), "show_in": "customary",
    }  # fmt: skip
    return HumidityInputs(**(usual | changed))


cases = st.builds(
    inputs,
    volume_cuft=st.integers(400, 30_000).map(F),
    water_gal=st.integers(1, 60).map(F),
    coat_thickness_in=st.sampled_from([F(1, 32), F(1, 16), F(1, 8)]),
    temperature_f=st.integers(40, 95).map(F),
    humidity_pct=st.integers(0, 100).map(F),
    outdoor_temperature_f=st.integers(-20, 100).map(F),
    outdoor_humidity_pct=st.integers(0, 100).map(F),
    dehumidifier_pt_per_day=st.integers(10, 300).map(F),
    burner_btu_per_h=st.sampled_from([F(0), F(0), F(20_000)]),
)


@settings(max_examples=80, deadline=None)
@given(cases)
def test_water_is_conserved_to_the_nanopound(case):
    for air in airs_of(case):
        course = course_of(case, air, STEPS)
        start, end = course.start, course.end
        came = start.coat + start.air + end.added
        assert came == end.coat + end.air + end.vented + end.removed + end.condensed
        assert start.coat == round(case.water_gal * F(83285, 10000) / UNIT_LB)
        assert 0 <= end.coat <= start.coat and end.air >= 0


@settings(max_examples=60, deadline=None)
@given(cases)
def test_halving_the_step_changes_the_hours_by_less_than_one_percent(case):
    for air in airs_of(case):
        coarse, fine = course_of(case, air, STEPS), course_of(case, air, 2 * STEPS)
        if coarse.hours_to_dry is None or fine.hours_to_dry is None:
            assert coarse.hours_to_dry is None or coarse.hours_to_dry > 700
            assert fine.hours_to_dry is None or fine.hours_to_dry > 700
            continue
        assert abs(coarse.hours_to_dry - fine.hours_to_dry) <= F(1, 100) * fine.hours_to_dry


@pytest.mark.parametrize("air_changes", ["0.3", "3", "20"])
def test_the_course_is_the_analytic_one(air_changes):
    """capacity p' = gain - pull p has an exponential for its answer; the coat has lost its integral."""
    case = inputs(closed_air_changes_per_hour=F(air_changes), outdoor_humidity_pct=F(30))
    air, rate = closed_air(case), drying_rate_lb_per_h_psi(case)
    course = follow(air, case.water_gal * F(83285, 10000), air.saturated_psi / 2, rate, F(1, 4), 40)
    capacity, vent = float(air.lb_per_psi()), float(F(air_changes) * air.lb_per_psi())
    pull = float(rate) + vent
    rest = (float(rate) * float(air.saturated_psi) + vent * float(air.outdoor_psi)) / pull
    start = float(air.saturated_psi) / 2
    for step, held in enumerate(course.held):
        hours, psi = course.step_h * step, held * UNIT_LB / air.lb_per_psi()
        assert float(psi) == pytest.approx(rest + (start - rest) * math.exp(-pull / capacity * float(hours)), rel=1e-5)
    assert course.end.condensed == 0
    hours = float(course.followed_h())
    integral = rest * hours + (start - rest) * capacity / pull * (1 - math.exp(-pull / capacity * hours))
    lost = float(rate) * (float(air.saturated_psi) * hours - integral)
    assert float((course.start.coat - course.end.coat) * UNIT_LB) == pytest.approx(lost, rel=1e-4)


def test_in_air_that_stays_as_it_is_the_room_dries_in_the_time_of_the_law():
    """Air outdoors as in the room, and blown through: the law's own case."""
    case = inputs(
        outdoor_temperature_f=F(70),
        outdoor_humidity_pct=F(50),
        temperature_f=F(70),
        volume_cuft=F(100_000),
        closed_air_changes_per_hour=F(60),
    )
    course = course_of(case, closed_air(case), STEPS)
    law = drying_band_h(F(70), F(50), F(1, 16)).law_h
    assert float(course.hours_to_dry) == pytest.approx(float(law), rel=0.01)


@settings(max_examples=40, deadline=None)
@given(cases)
def test_more_water_never_dries_sooner_and_a_drier_day_never_later(case):
    def hours(one):
        found = course_of(one, airs_of(one)[1], STEPS).hours_to_dry
        return F(720) if found is None else min(found, F(720))

    import dataclasses

    more = dataclasses.replace(case, water_gal=case.water_gal * 2)
    drier = dataclasses.replace(case, outdoor_humidity_pct=case.outdoor_humidity_pct / 2)
    slack = F(101, 100)
    assert hours(case) <= hours(more) * slack
    assert hours(drier) <= hours(case) * slack


def test_a_burner_adds_water():
    """Stoichiometry: CH4 gives 2 H2O, 36.03/16.04 lb a pound, at 23,875 Btu a pound (heat value from memory)."""
    per_btu = 36.03 / 16.04 / 23_875
    answer, _ = catalogue.work_out("humidity", {"volume_cuft": "2240", "water_gal": "5", "burner_btu_per_h": "10000"})
    value = next(line.value for line in answer.lines if line.name == "burner_water_lb")
    assert float(value) == pytest.approx(per_btu * 10_000 * 24, rel=0.005)
    assert "unvented-heater" in [one.id for one in answer.cautions]


@given(st.fractions(min_value=-40, max_value=115, max_denominator=10))
def test_outdoor_pressure_agrees_with_psychrolib(temperature_f):
    theirs = psychrolib.GetSatVapPres(float(temperature_f))
    # PsychroLib changes from ice to water at 32.018 F, we at 32
    tolerance = 1e-3 if 32 <= temperature_f <= F("32.02") else 2e-7
    assert float(outdoor_pressure_psi(temperature_f)) == pytest.approx(theirs, rel=tolerance, abs=1e-9)


@given(st.integers(33, 98), st.integers(5, 100))
def test_moist_air_agrees_with_psychrolib(temperature_f, humidity_pct):
    psi = vapor_pressure_psi(F(temperature_f)) * humidity_pct / 100
    theirs = psychrolib.GetHumRatioFromVapPres(float(psi), SEA_LEVEL_PSI)
    assert float(humidity_ratio(psi)) == pytest.approx(theirs, rel=1e-6, abs=1e-7)
    ours = dew_point_f(psi)
    dew = psychrolib.GetTDewPointFromRelHum(temperature_f, humidity_pct / 100)
    if ours is None:
        assert dew < 32.1
    else:
        assert float(ours) == pytest.approx(dew, abs=0.002)


def test_the_room_out_of_the_law_is_refused():
    for heat in ("31", "99"):
        answer, faults = catalogue.work_out(
            "humidity", {"volume_cuft": "2240", "water_gal": "5", "temperature_f": heat}
        )
        assert answer is None and faults[0].field == "temperature_f"


def test_a_room_that_never_dries_says_so():
    answer, _ = catalogue.work_out(
        "humidity",
        {"volume_cuft": "2240", "water_gal": "5", "temperature_f": "70", "outdoor_temperature_f": "70", "outdoor_humidity_pct": "100"},
    )  # fmt: skip
    shown = {line.name: line.shown for line in answer.lines}
    assert shown["closed_hours"] == shown["window_hours"] == "not in 30 days"
    assert "h" in shown["machine_hours"]
