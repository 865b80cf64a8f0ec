"""What to buy: every material has its row, needs are added before they are rounded, prices are added exactly, by hand and at random."""

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import catalogue
from calc.core.fields import read
from calc.decision.questions import WAYS
from calc.job.labor import times_of
from calc.job.materials import AISLES, BUY, MATERIALS, RENT, VAN
from calc.job.needs import NEEDS, Job, bought_of
from calc.job.plan_inputs import asked_of
from calc.job.prices import PriceFault, money, parts_of, read_price
from calc.job.shopping import CALCULATOR
from calc.job.stages import STAGES, WAYS_TAKE, stages_of
from calc.text.language import TEXTS

HOUSE = "Living: 20' x 14'; Bed: 12' x 11'"
# Strips of film are cut from rolls and pieces of board from sheets: what is left of one may be too short for the next.
CUT = ("floor-film", "board")
BY_STRIPS = (*CUT, "masking-tape", "duct-tape")


def ask(**given):
    found, faults = catalogue.work_out("shopping", {"rooms": HOUSE, **given})
    assert found is not None, faults
    return found


def refused(**given):
    found, faults = catalogue.work_out("shopping", {"way": "wet-scrape", "rooms": HOUSE, **given})
    assert found is None
    return " ".join(one.message for one in faults), [one.field for one in faults]


def bought(**given):
    values, faults = read(CALCULATOR.fields, {"rooms": HOUSE, **given})
    assert faults == ()
    way = values.choice("way")
    asked = asked_of(values, way)
    return {
        one.material.id: one
        for one in bought_of(Job(values, tuple(one for one in stages_of(way) if times_of(one, asked))))
    }


def cells(answer):
    return {dict(one.cells)["id"]: dict(one.cells) for one in answer.items}


def row_of(answer, start):
    [row] = [text for one in answer.listings for text, _ in one.rows if text.startswith(start)]
    return row


def test_each_thing_that_a_stage_takes_has_its_row_and_each_row_is_taken():
    taken = {name for stage in STAGES for name in stage.buys}
    names = [one.id for one in MATERIALS]
    assert len(set(names)) == len(names)
    assert taken == set(names) == {name for name, _ in NEEDS}
    assert len(NEEDS) == len(names)
    used = {stage for _, stages in WAYS_TAKE for stage in stages}
    assert {stage.id for stage in STAGES if stage.buys} <= used


def test_rows_stand_in_the_order_of_the_aisles():
    order = [name for name, _ in AISLES]
    places = [order.index(one.aisle) for one in MATERIALS]
    assert places == sorted(places)
    assert all(
        (one.aisle == "rent") == (one.kind == RENT) and (one.aisle == "van") == (one.kind == VAN) for one in MATERIALS
    )
    assert [name for name, _ in NEEDS] == [one.id for one in MATERIALS]


def test_what_a_way_takes_stands_on_its_list():
    for way, _ in WAYS:
        taken = {name for stage in stages_of(way) for name in stage.buys}
        assert set(cells(ask(way=way))) == taken


def test_the_demo_house_by_hand():
    """Skim over, a living room of 20 x 14 ft and a bedroom of 12 x 11 ft, texture of 1/8 in, two coats of 1/16 in.

    Ceiling: 20 x 14 + 12 x 11 = 412 sq ft. Walls: 2 x (20 + 14) + 2 x (12 + 11) = 68 + 46 = 114 ft.
    Compound: 74 % of 1/8 in of fill is 0.0925 in (the field's default, to a tenth of a percent), two coats are 0.125 in, together 0.2175 in
    that stay. 412 sq ft x 144 x 0.2175 in = 12,903.84 cu in; a quarter is lost by shrinkage, so a third more is laid, and a tenth for
    waste: 12,903.84 / 0.75 x 1.1 / 231.
    Sealing primer on the bare texture: half as much face again, 618 sq ft at 250 is 2.472 gal. Primer on the filled face: 412 / 250 = 1.648
    gal. Paint, two coats: 824 / 350 = 2.354 gal.
    """
    found = bought(way="skim-over", texture_depth_in="1/8")
    fields = {
        one.name: Fraction(one.default)
        for one in CALCULATOR.fields
        if one.name in ("texture_open_pct", "shrinkage_pct", "waste_pct")
    }
    stays_in = Fraction(1, 8) * fields["texture_open_pct"] / 100 + 2 * Fraction(1, 16)
    laid_cuin = 412 * 144 * stays_in / (1 - fields["shrinkage_pct"] / 100)
    gallons = laid_cuin * (1 + fields["waste_pct"] / 100) / 231
    assert found["compound"].need.to("gal") == gallons
    assert found["compound"].packages == ceil(gallons / Fraction(9, 2))
    assert found["sealing-primer"].need.to("gal") == Fraction(2472, 1000) and found["sealing-primer"].packages == 3
    assert found["primer"].need.to("gal") == Fraction(1648, 1000) and found["primer"].packages == 2
    assert found["paint"].need.to("gal") == Fraction(824, 350) and found["paint"].packages == 3
    # Wall film: round each room with one lap of a foot, one tier of 8 ft: (68 + 1 + 46 + 1) x 8 = 928 sq ft, from a roll of 8 x 400 ft.
    assert found["wall-film"].need.to("sqft") == 928 and found["wall-film"].packages == 1
    # Floor film of 10 ft with laps and turn-ups of a foot: 22 x 16 ft takes two strips of 22 ft, 14 x 13 ft two of 13 ft; 10 x (44 + 26) = 700,
    # and two layers of 2 x 2 ft on each of two openings, 16.
    assert found["floor-film"].need.to("sqft") == 716 and found["floor-film"].packages == 1
    # Tape: 2 x 114 round the rooms; laps of 22 + 13; a seam of 8 ft down each room's film, 16; 4 x 2 ft on four pieces, 32. Together 311 ft.
    assert found["masking-tape"].need.to("ft") == 311 and found["masking-tape"].packages == 2
    # Discs: one for 100 sq ft. Coveralls: two people in two rooms.
    assert found["sanding-discs"].packages == 5 and found["coveralls"].packages == 4 and found["goggles"].packages == 2
    # The film weighs 700 sq ft x 0.006 in / 12 x 0.92 x 62.428 lb; a bag takes 35 lb.
    assert found["bags"].need.to("") == Fraction(700 * 6, 12000) * Fraction(92, 100) * Fraction(62428, 1000) / 35
    priced = ask(
        way="skim-over", texture_depth_in="1/8", rate_per_hour="60",
        prices="paint: 38.50 a gal, 2027-01-10, corner store; compound: 17.25 a pail; sealing primer: 31 each; tax: 6.5 %; permit: 120; laboratory: 90",
    )  # fmt: skip
    pails = ceil(gallons / Fraction(9, 2))
    materials = 3 * Fraction(77, 2) + pails * Fraction(69, 4) + 3 * 31
    assert (pails, materials) == (
        19,
        Fraction("536.25"),
    )  # 115.50 of paint, 19 x 17.25 of compound, 3 x 31 of sealing primer
    tax = materials * Fraction(65, 1000)  # 34.85625
    hours = [one.value for one in priced.lines if one.name.startswith("labor_hours")]
    told = [cent(materials + tax + 210 + one * 60) for one in hours]
    assert "536.25" in row_of(priced, "Materials, 3 of 15 priced")
    assert row_of(priced, "Together").split(": ")[1].replace(",", "") == f"{told[0]} to {told[1]}."
    missing = row_of(priced, "Not in it")
    for name in ("Floor film", "Primer", "Goggles", "Vacuum", "dump fees"):
        assert name in missing
    for name in ("Ceiling paint", "labor", "permit", "laboratory", "sales tax"):
        assert name not in missing


def test_board_is_what_the_form_for_board_says():
    found = bought(way="board-over")
    board, _ = catalogue.work_out("board", {"rooms": HOUSE})
    lines = {one.name: one.value for one in board.lines}
    assert found["board"].packages == lines["sheets"] and found["board-screws"].packages == lines["screws"]
    # 11 gal of compound for 1,000 sq ft, and the joints of the plan with a tenth of waste.
    assert found["compound"].need.to("gal") == Fraction(412 * 11, 1000)
    joints = lines["butt_joint_ft"] + lines["tapered_joint_ft"] + lines["cut_edge_joint_ft"]
    assert found["joint-tape"].need.to("ft") == joints * Fraction(11, 10)
    # Caulk: two beads, a quarter of a circle of 1/4 in, along 114 ft, from tubes of 18.23 cu in.
    assert (
        abs(found["caulk"].need.to("") - Fraction(114 * 12 * 2, 16) * Fraction(785398, 10**6) / Fraction(1823, 100))
        == 0
    )


def test_furring_is_screwed_at_each_joist():
    found = bought(way="panel-over")
    assert found["furring-screws"].need.to("") == found["furring"].need.to("ft") * 12 / 16 * 2
    assert found["tiles"].packages == ceil((280 + 132) * Fraction(11, 10) / 40)


ROOM = st.tuples(st.integers(6, 26), st.integers(6, 22))
HOUSES = st.lists(ROOM, min_size=1, max_size=3)
WAY = st.sampled_from([way for way, _ in WAYS])
TYPED = st.fixed_dictionaries(
    {},
    optional={
        "texture_depth_in": st.sampled_from(["0", "1/16", "1/4"]), "coats": st.sampled_from(["1", "3"]), "paint_coats": st.sampled_from(["0", "1", "4"]),
        "pail_gal": st.sampled_from(["1", "3.5", "5"]), "people": st.sampled_from(["1", "3"]), "tape_roll_ft": st.sampled_from(["75", "500"]),
        "finish_level": st.sampled_from(["0", "5"]), "bag_gal": st.sampled_from(["13", "55"]), "machine_cfm": st.sampled_from(["300", "2000"]),
        "tiles_per_carton": st.sampled_from(["8", "64"]), "wall_film_length_ft": st.sampled_from(["50", "120"]), "show_in": st.just("metric"),
    },
)  # fmt: skip


def told(rooms):
    return "; ".join(f"R{at}: {east} x {north}" for at, (east, north) in enumerate(rooms))


@settings(max_examples=60, deadline=None)
@given(WAY, HOUSES, TYPED)
def test_never_less_than_is_needed_and_never_a_package_too_many(way, rooms, typed):
    for name, one in bought(way=way, rooms=told(rooms), **typed).items():
        unit = one.material.unit
        need, holds, size = one.need.to(unit), one.bought.to(unit), one.size.to(unit)
        assert need > 0 and one.packages > 0
        assert holds >= need, name
        if name not in CUT:
            assert holds == one.packages * size and holds - size < need, name


@settings(max_examples=25, deadline=None)
@given(st.sampled_from([way for way, _ in WAYS if way != "board-over"]), HOUSES, st.integers(1, 6), st.integers(0, 6))
def test_more_room_never_takes_less(way, rooms, east, north):
    """Of everything but film for floors and the tape over its laps, which go by strips laid whichever way takes least, and board,
    which a search counts."""
    small = bought(way=way, rooms=told(rooms))
    large = bought(way=way, rooms=told([(rooms[0][0] + east, rooms[0][1] + north), *rooms[1:]]))
    assert set(small) == set(large)
    for name, one in small.items():
        if name not in BY_STRIPS:
            unit = one.material.unit
            assert large[name].need.to(unit) >= one.need.to(unit) and large[name].packages >= one.packages, name


@settings(max_examples=12, deadline=None)
@given(HOUSES, st.integers(1, 6))
def test_board_for_more_room_covers_it(rooms, more):
    """The fewest sheets are searched for, so a larger room may by luck take fewer; it is always covered."""
    one = bought(way="board-over", rooms=told([(rooms[0][0] + more, rooms[0][1]), *rooms[1:]]))["board"]
    area = sum(east * north for east, north in rooms) + more * rooms[0][1]
    assert one.bought.to("sqft") >= one.need.to("sqft") == area
    assert one.packages >= ceil(Fraction(area, 48))


@settings(max_examples=15, deadline=None)
@given(
    st.sampled_from(["wet-scrape", "skim-over", "panel-over", "leave-and-seal"]), st.lists(ROOM, min_size=2, max_size=3)
)
def test_rooms_together_never_take_more_packages_than_one_by_one(way, rooms):
    whole = bought(way=way, rooms=told(rooms))
    alone = [bought(way=way, rooms=told([room])) for room in rooms]
    for name, one in whole.items():
        if one.material.kind == BUY and one.material.by_count and name not in CUT:
            assert one.packages <= sum(each[name].packages for each in alone), name


@settings(max_examples=60, deadline=None)
@given(
    st.dictionaries(
        st.sampled_from(["paint", "compound", "primer", "goggles", "hepa-vacuum", "board-lift"]),
        st.integers(0, 10**7),
        min_size=1,
    ),
    st.integers(0, 3000),
    st.integers(0, 30000),
)
def test_the_sum_is_that_of_its_parts(cents, tax, rate):
    prices = (
        "; ".join(f"{name}: {amount // 100}.{amount % 100:02}" for name, amount in cents.items())
        + f"; tax: {tax // 100}.{tax % 100:02} %; dump: 60"
    )
    answer = ask(way="wet-scrape", prices=prices, rate_per_hour=f"{rate // 100}.{rate % 100:02}")
    counts = {name: int(one["count"]) for name, one in cells(answer).items()}
    parts = sum(Fraction(amount, 100) * counts.get(name, 0) for name, amount in cents.items())
    low, high = (one.value * Fraction(rate, 100) for one in answer.lines if one.name.startswith("labor_hours"))
    ends = [cent(parts * (1 + Fraction(tax, 10**4)) + 60 + labor) for labor in (low, high)]
    text = row_of(answer, "Together").split(": ")[1].rstrip(".").replace(",", "")
    assert text == (f"{ends[0]} to {ends[1]}" if ends[0] != ends[1] else ends[0])


def cent(value):
    """To the cent, a half goes up, by whole numbers of our own."""
    whole = (value * 200 + 1) // 2
    return f"{whole // 100}.{whole % 100:02}"


def test_a_price_for_a_measure_is_paid_for_what_is_bought():
    answer = ask(
        way="board-over",
        prices="board: 0.5 a sq ft; joint-tape: 0.1 a m; paint: 10 a liter; board-lift: 45 a day",
        hours_per_day="2",
        people="1",
    )
    found, own = cells(answer), bought(way="board-over")
    assert Fraction(found["board"]["cost"]) == own["board"].bought.to("sqft") / 2
    assert found["joint-tape"]["cost"] == cent(Fraction(250 * 3048, 10**5)).rstrip("0")
    assert found["paint"]["cost"] == cent(Fraction(3785411784, 10**9) * 30)
    hang = next(one for one in STAGES if one.id == "hang")
    days = ceil((2 * hang.each_min[1] + Fraction(412, 100) * hang.per_100_min[1]) / 120)
    assert Fraction(found["board-lift"]["cost"]) == 45 * days


def test_a_definition_of_each_measure():
    assert parts_of("gal", "gal") == parts_of("ft", "ft") == parts_of("sq ft", "sqft") == 1
    assert parts_of("liter", "gal") == Fraction(231) * Fraction(254, 100) ** 3 / 1000
    assert (
        parts_of("m", "ft") == Fraction(12) * Fraction(254, 10) / 1000
        and parts_of("m²", "sqft") == parts_of("m", "ft") ** 2
    )


@pytest.mark.parametrize(
    ("entry", "wanted"),
    [
        ("paint: 38.50 a gal, 2027-01-10, corner store", ("paint", "38.5", "gal", "2027-01-10", "corner store")),
        ("Ceiling paint: 38.50", ("paint", "38.5", "", "", "")), ("compound: 17 per pail, depot", ("compound", "17", "", "", "depot")),
        ("board-lift: 45/day", ("board-lift", "45", "day", "", "")), ("tax: 6.5 %", ("tax", "6.5", "", "", "")), ("permit: 120", ("permit", "120", "", "", "")),
        ("furring: 0.8 a foot", ("furring", "0.8", "", "", "")), ("caulk: 4 each, 2027-02-28", ("caulk", "4", "", "2027-02-28", "")),
    ],
)  # fmt: skip
def test_prices_are_read(entry, wanted):
    one = read_price(entry)
    assert (one.key, one.amount, one.by, one.day, one.where) == (wanted[0], Fraction(wanted[1]), *wanted[2:])


def test_a_unit_is_read_as_it_is_told_in_another_language(monkeypatch):
    for key, text in (("prices.by.sq ft", "Fuß im Quadrat"), ("material.board.one", "{count} Platte")):
        monkeypatch.setitem(TEXTS, key, text)
    for entry, by in (
        ("0.5 a fuß im quadrat", "sq ft"),
        ("0.5 a sq ft", "sq ft"),
        ("9 a platte", ""),
        ("9 a sheet", ""),
    ):
        assert read_price("board: " + entry).by == by
    with pytest.raises(PriceFault) as fault:
        read_price("board: 9 a mile")
    assert "by the Platte, Fuß im Quadrat, sqft" in str(fault.value)


@pytest.mark.parametrize(
    ("entry", "words"),
    [
        ("paint", "a colon"), ("paint:", "a colon"), ("gold: 3", "not on any list"), ("paint: cheap", "no sum"), ("paint: $5", "no sum"), ("paint: -5", "no sum"),
        ("paint: 38,50", "with a point"), ("paint: 1,250.00", "with a point"), ("paint: 5 a mile", "by the can"), ("caulk: 5 a gal", "by the tube"),
        ("tax: 6.5", "so many %"), ("permit: 5 %", "so many %"), ("paint: 5, here, there", "its day"),
        ("paint: 5,2027-02-30", "with a point"), ("paint: 1.2.3", "no sum"), ("paint: " + "9" * 10, "no sum"), ("paint: 1.23456", "no sum"),
    ],
)  # fmt: skip
def test_what_is_no_price_is_refused(entry, words):
    with pytest.raises(PriceFault) as fault:
        read_price(entry)
    assert words in str(fault.value)
    assert words in refused(prices=entry)[0]


def test_refusals():
    assert "twice" in refused(prices="paint: 3; Ceiling paint: 4")[0]
    assert "not a number" in refused(rate_per_hour="a lot")[0]
    message, fields = refused(
        way="board-over", rooms="A: 9' x 14'; B: 12' x 11'", prices="board: 14 a sheet", sheet_lengths_ft="8, 10, 12"
    )
    assert "by the sq ft" in message and fields == ["prices"]
    message, fields = refused(way="board-over", joist_spacing_in="24", board_thickness_in="1/4")
    assert "spans joists" in message and fields == ["board_thickness_in"]
    found = {"asbestos_result": "found", "result_rooms": "this", "result_layers": "all"}
    message, fields = refused(**found)
    assert "is closed" in message and fields == ["way"]


def test_it_says_to_buy_nothing_before_the_result():
    clean = {"asbestos_result": "none", "result_rooms": "this", "result_layers": "all"}
    assert ask(way="wet-scrape").sentence.startswith("Buy nothing before the laboratory's result.")
    assert "Buy nothing" not in ask(way="wet-scrape", **clean).sentence
    assert "clearance" in ask(way="licensed-removal").sentence
    assert [one.id for one in ask(way="wet-scrape", **clean).cautions] == ["asbestos-first"]


def test_hours_are_those_of_the_plan():
    for way, _ in WAYS:
        plan, _ = catalogue.work_out("plan", {"way": way, "rooms": HOUSE})
        ours = [(one.name, one.value) for one in ask(way=way).lines if one.name.startswith("labor")]
        assert ours == [(one.name, one.value) for one in plan.lines if one.name.startswith("labor")]


def test_nothing_is_priced_by_the_book():
    answer = ask(way="skim-over")
    assert answer.listings == () and "The book has no prices" in answer.notes[0]
    assert all(one["cost"] == "" for one in cells(answer).values())


@given(st.text(alphabet="0123456789., -$x", max_size=14))
def test_money_is_a_plain_decimal_or_none(text):
    whole, point, rest = text.partition(".")
    plain = whole.isdigit() and len(whole) < 10 and (not point or (rest.isdigit() and len(rest) < 5))
    assert money(text) == (Fraction(text) if plain else None)
