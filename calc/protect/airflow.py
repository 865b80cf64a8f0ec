"""Airflow: machines that keep a closed room under negative pressure, and the openings that let air in."""

from fractions import Fraction

from calc.common.inputs import HEIGHT, OPTIONAL_ROOMS, VOLUME, volume_given
from calc.core.answer import Answer, Calculator
from calc.core.fields import SHOW_IN, Field, Values
from calc.core.lines import Lines
from calc.evidence.cautions import caution
from calc.numbers import words
from calc.numbers.quantity import Quantity, fact, root, rounded_up
from calc.text.door import say

LEAST_AIR_CHANGES_PER_HOUR = 4  # for an enclosure under negative pressure [1/h], 29 CFR 1926.1101(g)(5)
PRESSURE = fact(Fraction(2, 100), "inwc", "cfr-1926-1101")  # below the rooms around, the same clause
OPENING = fact(2610, "cfm/sqft/rootinwc", "ashrae-opening")  # flow through an opening, from memory
STANDBY_MACHINES = fact(1, "", "epa-purple-book")  # one machine in reserve, from memory

AIR_CHANGES = Field(
    name="air_changes_per_hour", label="Air changes", kind="rate", unit="per_h",
    help="How often an hour the air of the room is drawn out. 4 is the federal least for asbestos enclosures.",
    example="4", lowest="0.5", highest="60", default="4", source="cfr-1926-1101",
)  # fmt: skip
MACHINE = Field(
    name="machine_cfm", label="One machine moves", kind="rate", unit="cfm",
    help="What its plate says, with clean filters.",
    example="1000", lowest="20", highest="20000", default="1000", source="equipment-manual",
)  # fmt: skip
DERATE = Field(
    name="derate_pct", label="Taken off for loaded filters", kind="percent", unit="%",
    help="Filters fill up. A maker takes off 25 %.",
    example="25", lowest="0", highest="80", default="25", source="equipment-manual", rare=True,
)  # fmt: skip


def air_to_move(*, volume: Quantity, air_changes: Quantity) -> Quantity:
    """Return the air to draw out of `volume` [cu ft] at so many `air_changes` [1/h]. Sources: 29 CFR 1926.1101(g)(5); EPA 560/5-85-024."""
    return (volume * air_changes).cited("cfr-1926-1101", "epa-purple-book")


def opening_at_most(*, flow: Quantity) -> Quantity:
    """Return the gaps [sq in] through which `flow` [cu ft/min] comes in at the pressure of the clause: the flow through an opening goes
    with the root of the pressure. Source: ASHRAE, from memory."""
    return flow / (OPENING * root(PRESSURE, "inwc"))


def airflow(values: Values) -> Answer:
    """Return the air to move, the machines for it with one in reserve, and the openings that keep the pressure.

    Raises nothing. Sources: 29 CFR 1926.1101 for air changes and pressure, a maker's manual for the derate.
    """
    lines = Lines("airflow", values.choice("show_in"))
    volume = lines.add(
        name="volume_cuft",
        label="Air in the rooms",
        unit="cuft",
        places=0,
        rule="From your rooms, or as you gave it.",
        amount=volume_given(values),
    )
    needed = lines.add(
        name="needed_cfm",
        label="Air to move",
        unit="cfm",
        places=0,
        rule="Volume times air changes an hour.",
        amount=air_to_move(volume=volume, air_changes=values.quantity("air_changes_per_hour")),
    )
    real = lines.add(
        name="real_cfm",
        label="One machine, filters loaded",
        unit="cfm",
        places=0,
        rule="The plate, less what loaded filters take.",
        amount=(values.quantity("machine_cfm") * (1 - values.quantity("derate_pct"))).cited("equipment-manual"),
    )
    machines = lines.add(
        name="machines",
        label="Machines that run",
        unit="",
        places=0,
        rule="Air to move over one machine, rounded up.",
        amount=rounded_up(needed / real),
    )
    lines.add(
        name="machines_with_standby",
        label="With one in reserve",
        unit="",
        places=0,
        rule="One more stands ready, for when a filter fills or a machine stops.",
        amount=machines + STANDBY_MACHINES,
    )
    lines.add(
        name="pressure_inwc",
        label="Pressure that proves it",
        unit="inwc",
        places=2,
        rule="The gauge must show at least this much below the rooms around, all the time.",
        amount=PRESSURE,
    )
    lines.add(
        name="opening_sqin",
        label="Openings for air to come in, at most",
        unit="sqin",
        places=0,
        rule="All gaps together. More, and the pressure is lost. All the air that moves, over what an opening lets through at the root of the pressure.",
        amount=opening_at_most(flow=machines * real),
    )
    return Answer(
        calculator="airflow",
        inputs=values.given,
        figure=words.plural(int(machines.value), "machine"),
        figure_label=say("airflow.figure", "to run, and 1 more in reserve"),
        sentence=say(
            "airflow.sentence", "Together they move at least {air}, with the gauge at {pressure} or more below the rooms around.",
            air=lines.shown("needed_cfm"), pressure=lines.shown("pressure_inwc"),
        ),
        lines=lines.tuple(),
        cautions=(caution("back-draft"), caution("asbestos-first"), caution("closed-air")),
        notes=_notes(values),
        drawing=None,
    )  # fmt: skip


def _notes(values: Values) -> tuple[str, ...]:
    notes = [
        say("airflow.note.proof", "Pressure proves a containment, and not the air changes alone. Keep a gauge or a smoke tube at the door."),
        say("airflow.note.far", "Air must come in on the far side of the room, through a flap or a filter, and sweep across the work."),
        say(
            "airflow.note.licensed",
            "Work on asbestos inside such an enclosure is for licensed contractors. This figure checks a plan; it makes nobody one.",
        ),
    ]  # fmt: skip
    if values.number("air_changes_per_hour") < LEAST_AIR_CHANGES_PER_HOUR:
        text = "Under 4 air changes an hour this is no enclosure in the sense of the federal asbestos rule."
        notes.insert(0, say("airflow.note.few", text))
    return tuple(notes)


CALCULATOR = Calculator(
    name="airflow",
    title="Machines for negative pressure",
    summary="Negative-air machines, pressure and openings for a sealed room",
    verb="Size the machines",
    fields=(OPTIONAL_ROOMS, VOLUME, HEIGHT, AIR_CHANGES, MACHINE, DERATE, SHOW_IN),
    work_out=airflow,
    example=(("rooms", "Living: 20' x 14'"), ("ceiling_height_ft", "8"), ("machine_cfm", "600")),
    one_of=("rooms", "volume_cuft"),
    always=("back-draft", "asbestos-first", "closed-air"),
)
