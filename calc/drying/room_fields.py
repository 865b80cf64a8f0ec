"""What is asked of a room that dries: its leaks, the air outdoors, the machine that runs in it."""

from calc.core.fields import Field

WET_AREA = Field(
    name="wet_area_sqft", label="Wet ceiling", kind="area", unit="sqft",
    help="Empty: the whole ceiling of the rooms.",
    example="280", lowest="1", highest="100000", required=False, rare=True,
)  # fmt: skip
WATER = Field(
    name="water_gal", label="Water to dry out", kind="volume", unit="gal",
    help="Empty: what such coats of all-purpose compound hold. Else from the compound or wetting form.",
    example="12", lowest="0.05", highest="500", required=False,
)  # fmt: skip
OUTDOOR_F = Field(
    name="outdoor_temperature_f", label="Air outdoors", kind="temperature", unit="F",
    help="The mean over day and night.",
    example="50", lowest="-40", highest="115", default="50",
)  # fmt: skip
OUTDOOR_PCT = Field(
    name="outdoor_humidity_pct", label="Humidity outdoors", kind="percent", unit="%",
    help="The weather report says.",
    example="70", lowest="0", highest="100", default="70",
)  # fmt: skip
CLOSED = Field(
    name="closed_air_changes_per_hour", label="Air changes, room closed", kind="rate", unit="per_h",
    help="What leaks through a closed and sealed room. Empty: anything from 0.1 to 1.",
    example="0.3", lowest="0.05", highest="5", required=False, source="common-practice",
    why="The leak of a closed room sets how long it takes, and differs tenfold from house to house.",
)  # fmt: skip
OPEN = Field(
    name="open_air_changes_per_hour", label="Air changes, window open", kind="rate", unit="per_h",
    help="One window half open, no fan: about 3.",
    example="3", lowest="0.1", highest="60", default="3", source="common-practice", rare=True,
)  # fmt: skip
MACHINE = Field(
    name="dehumidifier_pt_per_day", label="Dehumidifier", kind="rate", unit="pt/day",
    help="As its plate says. In cooler, drier air it takes less.",
    example="50", lowest="1", highest="2000", default="50", source="aham-dehumidifier",
)  # fmt: skip
RATED = Field(
    name="dehumidifier_rated_f", label="Rated at", kind="choice", unit="",
    help="The plate or manual says. At the same rating a unit rated at 80 °F takes less in a cool room.",
    example="65", default="80", source="aham-dehumidifier",
    choices=(("80", "80 °F, 60 %: older units, or not known"), ("65", "65 °F, 60 %: portable units sold since 2019")),
)  # fmt: skip
KIND = Field(
    name="dehumidifier_kind", label="Its kind", kind="choice", unit="",
    help="A refrigerant kind has a cold coil, which may ice up under 65 °F.",
    example="desiccant", default="refrigerant", source="common-practice",
    choices=(("refrigerant", "Refrigerant, or not known"), ("desiccant", "Desiccant")),
)  # fmt: skip
HEAT_HELD = Field(
    name="heat_held", label="Heat holds with a window open?", kind="choice", unit="",
    help="Yes, if a heater with a thermostat holds it day and night.",
    example="yes", default="unknown",
    choices=(("unknown", "Not known"), ("yes", "Yes"), ("no", "No")),
    why="Air from outdoors and drying water both take heat. A room that cools dries slowly.",
)  # fmt: skip
BURNER = Field(
    name="burner_btu_per_h", label="Heater that burns gas in the room", kind="rate", unit="Btu/h",
    help="Without a flue. Put 0 for electric heat or none.",
    example="0", lowest="0", highest="400000", default="0", rare=True,
)  # fmt: skip
