"""The register of published sources: where each rule and figure comes from, and how well we know it.

`known` is one of `HOW_KNOWN`. `checked_on` is the day the figure in use here was last compared with
our record of the source (ISO 8601); it is empty where nobody has yet seen the source itself.
"""

from dataclasses import dataclass

HOW_KNOWN = (
    ("seen", "Read in the document itself"),
    ("quoted", "Read where another page quotes it"),
    ("memory", "From memory; nobody has checked it on paper yet"),
    ("computed", "Worked out from geometry, physics or a definition"),
    ("practice", "Common practice, no source"),
    ("yours", "Your own figure"),
)


@dataclass(frozen=True)
class Source:
    """One source: `figure` says in a sentence what is taken from it."""

    id: str
    title: str
    publisher: str
    edition: str
    clause: str
    figure: str
    known: str
    checked_on: str


SOURCES = (
    Source(
        "common-practice",
        "Common practice, no source",
        "The trade",
        "",
        "",
        "What careful tradespeople do. No printed source was found.",
        "practice",
        "",
    ),
    Source(
        "your-figure",
        "Your figure",
        "You",
        "",
        "",
        "A number that you typed, or left as it stood.",
        "yours",
        "",
    ),
    Source(
        "geometry",
        "Geometry",
        "Mathematics",
        "",
        "",
        "Areas, lengths and volumes of plain shapes.",
        "computed",
        "2026-11-25",
    ),
    Source(
        "us-customary-definitions",
        "US customary units: 1 gallon is 231 cubic inches, 1 inch is 25.4 mm, 1 pound is 0.45359237 kg",
        "National Institute of Standards and Technology",
        "Handbook 44, Appendix C",
        "General tables of units of measurement",
        "One gallon covers 1,604.17 square feet at one thousandth of an inch.",
        "computed",
        "2026-11-25",
    ),
    Source(
        "dfc-drying-graph",
        "Joint Compound Drying Time: The Impact of Environmental Conditions",
        "Drywall Finishing Council",
        "",
        "Drying graph",
        "The graph is for a coat of 1/16 in. It runs from 2 hours to 5 days, over 32 to 98 °F and 0 to 100 % humidity. Humidity matters more than heat.",
        "quoted",
        "2026-11-25",
    ),
    Source(
        "gypsum-handbook-drying",
        "Gypsum Construction Handbook (also printed in GA-236)",
        "Gypsum industry",
        "",
        "Drying time, joint compound under tape",
        "17 hours at 70 °F and 50 % humidity. Every cell from 0 to 90 % humidity lies within 25 % of the law used here.",
        "memory",
        "",
    ),
    Source(
        "ashrae-vapor-pressure",
        "ASHRAE Handbook: Fundamentals",
        "ASHRAE",
        "2017",
        "Chapter 1, equations 5 and 6",
        "Vapor pressure of water over ice and over liquid water.",
        "computed",
        "2026-11-25",
    ),
    Source(
        "usg-temperature",
        "Texture and joint compound data sheets",
        "A board maker",
        "",
        "Temperature",
        "Keep 55 °F or more. Another maker says 50 °F for 48 hours before and until dry; the safer figure is used.",
        "seen",
        "2026-11-25",
    ),
    Source(
        "national-gypsum-finishing",
        "Finishing guide and all-purpose compound data sheet",
        "A second board maker",
        "",
        "Page 16; drying",
        "50 °F for 48 hours before work and until dry; about 24 hours between coats.",
        "seen",
        "2026-11-25",
    ),
    Source(
        "compound-label",
        "All-purpose joint compound, label of a 4.5 gallon pail",
        "A board maker",
        "",
        "Net weight",
        "61.7 lb in 4.5 gallons, 13.7 lb a gallon.",
        "memory",
        "",
    ),
    Source(
        "compound-water",
        "Technical note on trim and compound",
        "A trim maker",
        "",
        "Water in all-purpose compound",
        "30 to 35 percent water by weight. The higher figure is used, as more water needs more drying.",
        "quoted",
        "2026-11-25",
    ),
    Source(
        "iapws-water",
        "IAPWS Industrial Formulation 1997 for water and steam",
        "International Association for the Properties of Water and Steam",
        "1997",
        "Region 1, density at 70 °F",
        "A gallon of water weighs 8.3285 lb at 70 °F.",
        "computed",
        "2026-11-25",
    ),
    Source(
        "usg-ceiling-load",
        "Lightweight gypsum panel submittal",
        "A board maker",
        "",
        "Page 2, insulation over ceilings",
        "1.3 lb/sq ft on 1/2 in board with joists 24 in apart, 2.2 lb/sq ft with joists 16 in apart. The lower figure is used.",
        "seen",
        "2026-11-25",
    ),
    Source(
        "astm-c475",
        "ASTM C475 Joint Compound and Joint Tape, tested by ASTM C474",
        "ASTM International",
        "",
        "Shrinkage",
        "Shrinkage of at most 35 percent by volume.",
        "memory",
        "",
    ),
    Source(
        "ga-214",
        "GA-214 Levels of Finish for Gypsum Panel Products (text also in ASTM C840)",
        "Gypsum Association",
        "",
        "Level 5",
        "Level 5 is level 4 and a thin skim coat over the whole surface. A skim coat is usually 1/16 in, from 1/32 to 1/8 in (the thickness from memory).",
        "quoted",
        "2026-11-25",
    ),
    Source(
        "epa-asbestos-in-your-home",
        "Asbestos in Your Home",
        "US Environmental Protection Agency and American Lung Association",
        "1990",
        "What to do, what not to do",
        "Leave sound material alone. Do not sand, scrape or drill it. A trained professional takes the samples.",
        "seen",
        "2026-11-25",
    ),
    Source(
        "cfr-763-86",
        "40 CFR 763.86 Sampling",
        "US Environmental Protection Agency",
        "",
        "(a)(1) to (3)",
        "3 samples up to 1,000 square feet of one kind of sprayed material, 5 up to 5,000, 7 above. Written for schools; used elsewhere as good practice.",
        "seen",
        "2026-11-25",
    ),
    Source(
        "cfr-745-83",
        "40 CFR 745.83 Lead-safe renovation: definitions",
        "US Environmental Protection Agency",
        "",
        "Minor repair and maintenance",
        "More than 6 square feet of paint disturbed in a room is past the minor-repair limit. Work in one room within 30 days adds up.",
        "seen",
        "2026-11-25",
    ),
    Source(
        "cfr-1926-1153",
        "29 CFR 1926.1153 Respirable crystalline silica",
        "US Occupational Safety and Health Administration",
        "",
        "(c), (d)",
        "At most 50 micrograms of silica in a cubic meter of air over 8 hours; action from 25.",
        "seen",
        "2026-11-25",
    ),
    Source(
        "niosh-sanding",
        "Control of drywall sanding dust, ECTB 208-11a",
        "US National Institute for Occupational Safety and Health",
        "1995",
        "Results",
        "A vacuum sanding head cuts the dust by 80 to 97 percent.",
        "seen",
        "2026-11-25",
    ),
    Source(
        "cfr-1926-1053",
        "29 CFR 1926.1053 Ladders",
        "US Occupational Safety and Health Administration",
        "",
        "(b)(1), (b)(5)(i), (b)(13)",
        "Do not stand on the top or the top step of a stepladder.",
        "memory",
        "",
    ),
)


def source(source_id: str) -> Source:
    """Return the source with that id; raises KeyError for an id that is not in `SOURCES`."""
    for one in SOURCES:
        if one.id == source_id:
            return one
    raise KeyError(source_id)
