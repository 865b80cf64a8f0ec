"""Airflow: machines that keep a closed room under negative pressure, and the openings that let air in."""

from dataclasses import dataclass
from fractions import Fraction

from calc.common.inputs import HEIGHT, OPTIONAL_ROOMS, VOLUME, volume_cuft
from calc.core.answer import Answer, Calculator, line
from calc.core.fields import SHOW_IN, Field, Values
from calc.evidence.cautions import caution
from calc.numbers import measure, words
from calc.numbers.exact import ceiling, square_root
from calc.numbers.words import short_decimal

LEAST_AIR_CHANGES_PER_HOUR = 4  # for an enclosure under negative pressure [1/h], 29 CFR 1926.1101(g)(5)
PRESSURE_INWC = Fraction(2, 100)  # below the rooms around [in of water], the same clause
OPENING_CFM_PER_SQFT = 2610  # flow through 1 sq ft at 1 in of water [cu ft/min], ASHRAE, from memory
MINUTES_PER_HOUR = 60
STANDBY_MACHINES = 1  # one machine in reserve, EPA 560/5-85-024, from memory
RULE = ("cfr-1926-1101",)

AIR_CHANGES = Field(
    name="air_changes_per_hour",
    label="Air changes",
    kind="rate",
    unit="per_h",
    help="How often an hour the air of the room is drawn out. 4 is the federal least for asbestos enclosures.",
    example="4",
    lowest="0.5",
    highest="60",
    default="4",
    source="cfr-1926-1101",
)
MACHINE = Field(
    name="machine_cfm",
    label="One machine moves",
    kind="rate",
    unit="cfm",
    help="What its plate says, with clean filters.",
    example="1000",
    lowest="20",
    highest="20000",
    default="1000",
    source="equipment-manual",
)
DERATE = Field(
    name="derate_pct",
    label="Taken off for loaded filters",
    kind="percent",
    unit="%",
    help="Filters fill up. A maker takes off 25 %.",
    example="25",
    lowest="0",
    highest="80",
    default="25",
    source="equipment-manual",
    rare=True,
)


@dataclass(frozen=True)
class AirflowInputs:
    """`volume_cuft` [cu ft, > 0], `air_changes_per_hour` [1/h, 0.5 to 60], `machine_cfm` [cu ft/min, 20 to 20,000],
    `derate_pct` [%, 0 to 80], `show_in` 'customary' or 'metric'."""

    volume_cuft: Fraction
    air_changes_per_hour: Fraction
    machine_cfm: Fraction
    derate_pct: Fraction
    show_in: str


def airflow(inputs: AirflowInputs, given: tuple[tuple[str, str], ...]) -> Answer:
    """Return the air to move, the machines for it with one in reserve, and the openings that keep the pressure.

    Raises nothing. Sources: 29 CFR 1926.1101 for air changes and pressure, a maker's manual for the derate.
    """
    show = inputs.show_in
    needed_cfm = inputs.volume_cuft * inputs.air_changes_per_hour / MINUTES_PER_HOUR
    real_cfm = inputs.machine_cfm * (1 - inputs.derate_pct / 100)
    machines = ceiling(needed_cfm / real_cfm)
    moved_cfm = machines * real_cfm
    opening_sqin = (
        moved_cfm / (OPENING_CFM_PER_SQFT * square_root(PRESSURE_INWC)) * measure.SQUARE_INCHES_PER_SQUARE_FOOT
    )
    lines = (
        line(
            "volume_cuft", "Air in the rooms", inputs.volume_cuft, "cuft", 0,
            "From your rooms, or as you gave it.", short_decimal(inputs.volume_cuft, 2) + " cu ft", ("geometry",), show,
        ),
        line(
            "needed_cfm", "Air to move", needed_cfm, "cfm", 0, "Volume times air changes, over 60 minutes.",
            short_decimal(inputs.volume_cuft, 2) + " × " + short_decimal(inputs.air_changes_per_hour, 2) + " ÷ 60",
            ("cfr-1926-1101", "epa-purple-book"), show,
        ),
        line(
            "real_cfm", "One machine, filters loaded", real_cfm, "cfm", 0, "The plate, less what loaded filters take.",
            short_decimal(inputs.machine_cfm, 1) + " × " + short_decimal(100 - inputs.derate_pct, 1) + " %",
            ("equipment-manual",), show,
        ),
        line(
            "machines", "Machines that run", Fraction(machines), "", 0, "Air to move over one machine, rounded up.",
            short_decimal(needed_cfm, 1) + " ÷ " + short_decimal(real_cfm, 1) + " = " + words.decimal(needed_cfm / real_cfm, 2)
            + ", so " + words.whole(machines), ("equipment-manual",), show,
        ),
        line(
            "machines_with_standby", "With one in reserve", Fraction(machines + STANDBY_MACHINES), "", 0,
            "One more stands ready, for when a filter fills or a machine stops.",
            words.whole(machines) + " + " + str(STANDBY_MACHINES), ("epa-purple-book",), show,
        ),
        line(
            "pressure_inwc", "Pressure that proves it", PRESSURE_INWC, "inwc", 2,
            "The gauge must show at least this much below the rooms around, all the time.", "at least 0.02 in of water",
            RULE, show,
        ),
        line(
            "opening_sqin", "Openings for air to come in, at most", opening_sqin, "sqin", 0,
            "All gaps together. More, and the pressure is lost. Flow over 2,610 times the root of the pressure.",
            short_decimal(moved_cfm, 1) + " ÷ (2,610 × √0.02) × 144", ("ashrae-opening",), show,
        ),
    )  # fmt: skip
    notes = [
        "Pressure proves a containment, and not the air changes alone. Keep a gauge or a smoke tube at the door.",
        "Air must come in on the far side of the room, through a flap or a filter, and sweep across the work.",
        "Work on asbestos inside such an enclosure is for licensed contractors. This figure checks a plan; it makes nobody one.",
    ]
    if inputs.air_changes_per_hour < LEAST_AIR_CHANGES_PER_HOUR:
        notes.insert(0, "Under 4 air changes an hour this is no enclosure in the sense of the federal asbestos rule.")
    return Answer(
        calculator="airflow",
        inputs=given,
        figure=words.plural(machines, "machine"),
        figure_label="to run, and 1 more in reserve",
        sentence="Together they move at least " + lines[1].shown + ", with the gauge at " + lines[5].shown + " or more below the rooms around.",
        lines=lines,
        cautions=(caution("back-draft"), caution("asbestos-first"), caution("closed-air")),
        notes=tuple(notes),
        drawing=None,
    )  # fmt: skip


def _work_out(values: Values) -> Answer:
    inputs = AirflowInputs(
        volume_cuft(values),
        values.number("air_changes_per_hour"),
        values.number("machine_cfm"),
        values.number("derate_pct"),
        values.choice("show_in"),
    )
    return airflow(inputs, values.given)


CALCULATOR = Calculator(
    name="airflow",
    title="Machines for negative pressure",
    summary="Negative-air machines, pressure and openings for a sealed room",
    verb="Size the machines",
    fields=(OPTIONAL_ROOMS, VOLUME, HEIGHT, AIR_CHANGES, MACHINE, DERATE, SHOW_IN),
    work_out=_work_out,
    example=(("rooms", "Living: 20' x 14'"), ("ceiling_height_ft", "8"), ("machine_cfm", "600")),
    one_of=("rooms", "volume_cuft"),
)
