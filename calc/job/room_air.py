"""The air that the coats of a job dry in: as it was typed all the time, or each room's own as it takes up their water."""

from dataclasses import dataclass
from fractions import Fraction

from calc.core.fields import Fault, Field, InputFault, Values
from calc.drying.air import vapor_pressure_psi
from calc.drying.law import BASIS_THICKNESS_IN, Band, basis_h, scaled, thickness_band
from calc.drying.room_fields import CLOSED, HEAT_HELD, KIND, MACHINE, OPEN, OUTDOOR_F, OUTDOOR_PCT, RATED
from calc.drying.three_ways import HumidityInputs, way_of
from calc.numbers import measure
from calc.rooms.rooms import Room
from calc.text.door import say

STEADY = "steady"
WIDEST_KNIFE_IN = 12  # the widest coat over a joint [in], common practice
COURSE_IN = 48  # a joint lies as far from the next [in], the narrower of the usual sheets
ROOM_AIR = Field(
    name="room_air", label="Air while coats dry", kind="choice", unit="",
    help="It stays as typed, or each room takes up the water of its own coats.",
    example="window", default=STEADY, rare=True,
    choices=(
        (STEADY, "Stays as typed"), ("closed", "Rooms closed"), ("window", "A window open in each room"),
        ("machine", "A dehumidifier in each room"),
    ),
    why="Wet coats dampen a closed room, and then dry slower than in the air of today.",
)  # fmt: skip
OF_ROOM = (OUTDOOR_F, OUTDOOR_PCT, HEAT_HELD, CLOSED, OPEN, MACHINE, RATED, KIND)
"""What a room's own air goes by."""


@dataclass(frozen=True)
class Dries:
    """The hours [h] that a `coat`, the `fill` coat and a `joint` take to dry in one room."""

    coat: Band
    fill: Band
    joint: Band


def dries_of(values: Values) -> tuple[Dries, ...]:
    """Return how long coats take to dry, by room.

    Raises InputFault where a room's own air may not dry them in 30 days. Sources: the drying law; for a room's own air those of
    `calc.drying.room_water`; that joints are wet over a knife's width in each course is common practice.
    """
    kind, thickness_in = values.choice("room_air"), values.number("coat_thickness_in")
    texture_in = values.number("texture_depth_in")
    if kind == STEADY:
        basis = basis_h(vapor_pressure_psi(values.number("temperature_f")), values.number("humidity_pct"))
        one = Dries(
            scaled(thickness_band(thickness_in), basis),
            scaled(thickness_band(texture_in + thickness_in), basis),
            scaled(thickness_band(BASIS_THICKNESS_IN), basis),
        )
        return tuple([one for _ in values.rooms()])
    found: list[Dries] = []
    sizes: list[tuple[Fraction, Fraction]] = []
    for room in values.rooms():
        size = (room.volume_cuft(values.number("ceiling_height_ft")), room.ceiling_area_sqft())
        sizes.append(size)
        if size in sizes[:-1]:
            found.append(found[sizes.index(size)])
            continue
        coat = _band(values, room, size, thickness_in, Fraction(0))
        found.append(
            Dries(
                coat,
                _band(values, room, size, thickness_in, texture_in) if texture_in else coat,
                _band(values, room, (size[0], size[1] * WIDEST_KNIFE_IN / COURSE_IN), BASIS_THICKNESS_IN, Fraction(0)),
            )
        )
    return tuple(found)


def _band(
    values: Values, room: Room, size: tuple[Fraction, Fraction], thickness_in: Fraction, texture_in: Fraction
) -> Band:
    """The hours of one coat in the room: `size` is its air [cu ft] and what is wet in it [sq ft]."""
    way = way_of(_inputs(values, size, thickness_in, texture_in), values.choice("room_air"))
    low_h, law_h, high_h = way.soonest.course.hours_to_dry, way.law.course.hours_to_dry, way.longest_h()
    if low_h is None or law_h is None or high_h is None:
        choice = values.choice("room_air")
        message = say(
            "plan.fault.air",
            "{room} may not dry in 30 days like that: {air}. Warm it, open a window, or run a machine.",
            room=room.name,
            air=way.told,
        )
        raise InputFault((Fault("room_air", choice, message, "machine" if choice == "window" else "window"),))
    return Band(low_h, law_h, high_h)


def _inputs(
    values: Values, size: tuple[Fraction, Fraction], thickness_in: Fraction, texture_in: Fraction
) -> HumidityInputs:
    return HumidityInputs(
        volume_cuft=size[0],
        wet_area_sqft=size[1],
        texture_depth_in=texture_in,
        coats=1,
        coat_thickness_in=thickness_in,
        water_gal=None,
        temperature_f=values.number("temperature_f"),
        humidity_pct=values.number("humidity_pct"),
        outdoor_temperature_f=values.number("outdoor_temperature_f"),
        outdoor_humidity_pct=values.number("outdoor_humidity_pct"),
        closed_air_changes_per_hour=values.number_or_none("closed_air_changes_per_hour"),
        open_air_changes_per_hour=values.number("open_air_changes_per_hour"),
        dehumidifier_pt_per_day=values.number("dehumidifier_pt_per_day"),
        dehumidifier_kind=values.choice("dehumidifier_kind"),
        rated_f=measure.read_bound(values.choice("dehumidifier_rated_f")),
        heat_held=values.choice("heat_held"),
        burner_btu_per_h=Fraction(0),
        show_in=values.choice("show_in"),
    )
