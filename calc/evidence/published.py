"""The published sources themselves, row by row, to the middle; `calc.evidence.published_more` goes on, and `calc.evidence.sources` says what
the columns mean.

A source never changes its place: that is its number on every page. A new one goes to the end of `calc.evidence.published_more`.
"""

ROWS = (
    (
        "common-practice", "Common practice, no source",
        "The trade", "", "",
        "What careful tradespeople do. No printed source was found.",
        "practice", "",
    ),
    (
        "your-figure", "Your figure",
        "You", "", "",
        "A number that you typed, or left as it stood.",
        "yours", "",
    ),
    (
        "geometry", "Geometry",
        "Mathematics", "", "",
        "Areas, lengths and volumes of plain shapes.",
        "computed", "2026-11-25",
    ),
    (
        "us-customary-definitions", "US customary units: 1 gallon is 231 cubic inches, 1 inch is 25.4 mm, 1 pound is 0.45359237 kg",
        "National Institute of Standards and Technology", "Handbook 44, Appendix C", "General tables of units of measurement",
        "One gallon covers 1,604.17 square feet at one thousandth of an inch.",
        "computed", "2026-11-25",
    ),
    (
        "dfc-drying-graph", "Joint Compound Drying Time: The Impact of Environmental Conditions",
        "Drywall Finishing Council", "", "Drying graph",
        "The graph is for a coat of 1/16 in. It runs from 2 hours to 5 days, over 32 to 98 °F and 0 to 100 % humidity. Humidity matters more than heat.",
        "quoted", "2026-11-25",
    ),
    (
        "gypsum-handbook-drying", "Gypsum Construction Handbook (also printed in GA-236)",
        "Gypsum industry", "", "Drying time, joint compound under tape",
        "17 hours at 70 °F and 50 % humidity. Every cell that we hold sure, from 0 to 98 % humidity, lies within 9 % of the law used here; two cells we do not.",
        "memory", "",
    ),
    (
        "ashrae-vapor-pressure", "ASHRAE Handbook: Fundamentals",
        "ASHRAE", "2017", "Chapter 1, equations 5 and 6",
        "Vapor pressure of water over ice and over liquid water.",
        "computed", "2026-11-25",
    ),
    (
        "usg-temperature", "Texture and joint compound data sheets",
        "A board maker", "", "Temperature",
        "Keep 55 °F or more. Another maker says 50 °F for 48 hours before and until dry; the safer figure is used.",
        "seen", "2026-11-25",
    ),
    (
        "national-gypsum-finishing", "Finishing guide and all-purpose compound data sheet",
        "A second board maker", "", "Page 16; drying",
        "50 °F for 48 hours before work and until dry; about 24 hours between coats.",
        "seen", "2026-11-25",
    ),
    (
        "compound-label", "All-purpose joint compound, label of a 4.5 gallon pail",
        "A board maker", "", "Net weight",
        "61.7 lb in 4.5 gallons, 13.7 lb a gallon.",
        "memory", "",
    ),
    (
        "compound-water", "Technical note on trim and compound",
        "A trim maker", "", "Water in all-purpose compound",
        "The note gives 30 to 35 percent water “per gallon”. The book reads that as by weight, and uses the higher figure, as more water needs more drying.",
        "quoted", "2026-11-25",
    ),
    (
        "iapws-water", "IAPWS Industrial Formulation 1997 for water and steam",
        "International Association for the Properties of Water and Steam", "1997", "Region 1, density at 70 °F",
        "A gallon of water weighs 8.3285 lb at 70 °F.",
        "computed", "2026-11-25",
    ),
    (
        "usg-ceiling-load", "Lightweight gypsum panel submittal",
        "A board maker", "", "Page 2, insulation over ceilings",
        "1.3 lb/sq ft on 1/2 in board with joists 24 in apart, 2.2 lb/sq ft with joists 16 in apart. The lower figure is used.",
        "seen", "2026-11-25",
    ),
    (
        "astm-c475", "ASTM C475 Joint Compound and Joint Tape, tested by ASTM C474",
        "ASTM International", "", "Shrinkage",
        "Shrinkage of at most 35 percent by volume.",
        "memory", "",
    ),
    (
        "ga-214", "GA-214 Levels of Finish for Gypsum Panel Products (text also in ASTM C840)",
        "Gypsum Association", "", "Level 5",
        "Level 5 is level 4 and a thin skim coat over the whole surface. A skim coat is usually 1/16 in, from 1/32 to 1/8 in (the thickness from memory).",
        "quoted", "2026-11-25",
    ),
    (
        "epa-asbestos-in-your-home", "Asbestos in Your Home",
        "US Environmental Protection Agency and American Lung Association", "1990", "What to do, what not to do",
        "Leave sound material alone. Do not sand, scrape or drill it. A trained professional takes the samples.",
        "seen", "2026-11-25",
    ),
    (
        "cfr-763-86", "40 CFR 763.86 Sampling",
        "US Environmental Protection Agency", "", "(a)(1) to (3)",
        "3 samples up to 1,000 square feet of one kind of sprayed material, 5 up to 5,000, 7 above. Written for schools; used elsewhere as good practice.",
        "seen", "2026-11-25",
    ),
    (
        "cfr-745-83", "40 CFR 745.83 Lead-safe renovation: definitions",
        "US Environmental Protection Agency", "", "Minor repair and maintenance",
        "More than 6 square feet of paint disturbed in a room is past the minor-repair limit. Work in one room within 30 days adds up.",
        "seen", "2026-11-25",
    ),
    (
        "cfr-1926-1153", "29 CFR 1926.1153 Respirable crystalline silica",
        "US Occupational Safety and Health Administration", "", "(b), (c), (d)",
        "At most 50 micrograms of silica in a cubic meter of air over 8 hours; action from 25.",
        "quoted", "2026-11-25",
    ),
    (
        "niosh-sanding", "Control of drywall sanding dust, ECTB 208-11a",
        "US National Institute for Occupational Safety and Health", "1995", "Results",
        "A vacuum sanding head cuts the dust by 80 to 97 percent.",
        "seen", "2026-11-25",
    ),
    (
        "cfr-1926-1053", "29 CFR 1926.1053 Ladders",
        "US Occupational Safety and Health Administration", "", "(b)(1), (b)(5)(i), (b)(13)",
        "Do not stand on the top or the top step of a stepladder.",
        "memory", "",
    ),
    (
        "cfr-61-145", "40 CFR 61.145 Standard for demolition and renovation",
        "US Environmental Protection Agency", "", "(a)(1), (a)(4)",
        "The federal notice and work rules reach 260 linear feet on pipes, 160 square feet on other parts, or 35 cubic feet off the parts.",
        "seen", "2026-11-25",
    ),
    (
        "epa-1995-small-residence", "60 FR 38725, clarification on residential buildings",
        "US Environmental Protection Agency", "1995-07-28", "Four or fewer dwelling units",
        "One isolated house with four or fewer dwelling units is outside the federal notice rule; two or more on one site under one owner are inside. State and local rules still apply.",
        "quoted", "2026-11-25",
    ),
    (
        "cfr-61-141", "40 CFR 61.141 Definitions (asbestos)",
        "US Environmental Protection Agency", "", "Friable and nonfriable asbestos material",
        "Asbestos-containing material holds more than 1 percent asbestos by polarized light microscopy.",
        "memory", "",
    ),
    (
        "cfr-1926-1101", "29 CFR 1926.1101 Asbestos in construction",
        "US Occupational Safety and Health Administration", "", "(b), (c), (g)(5)(i)(A), (h)(3)",
        "At most 0.1 fiber per cubic centimeter over 8 hours. Enclosures: at least 4 air changes an hour and 0.02 inches of water below the rooms around. Some of the work rules hold at any asbestos content; that, the filter-mask and the 1980 rules are from memory.",
        "seen", "2026-11-25",
    ),
    (
        "epa-bans", "Bans on sprayed asbestos materials",
        "US Environmental Protection Agency", "1973, 1978", "Summary of bans",
        "Spraying was banned in steps in 1973 and 1978. Old stock was used for years after, so no year of building settles the question.",
        "quoted", "2026-11-25",
    ),
    (
        "colorado-reg-8", "5 CCR 1001-10, Regulation 8, part B",
        "Colorado Air Quality Control Commission", "", "Trigger levels; III.E.3",
        "Single-family homes: 50 linear feet, 32 square feet, or a 55-gallon drum. Other buildings: 260 linear feet, 160 square feet, or a drum.",
        "quoted", "2026-11-25",
    ),
    (
        "ufgs-13280a", "UFGS 13280A Asbestos abatement",
        "US Department of Defense", "", "Critical barriers",
        "Critical barriers for more than 10 square feet of surfacing, or 25 linear feet of pipe covering.",
        "seen", "2026-11-25",
    ),
    (
        "osha-asbestos-slides", "Asbestos training slides",
        "US Occupational Safety and Health Administration", "", "Slide 22",
        "Two layers of 6 mil plastic over each heating and cooling opening.",
        "seen", "2026-11-25",
    ),
    (
        "cfr-745-82", "40 CFR 745.82 and 745.103 Lead-safe renovation: scope and definitions",
        "US Environmental Protection Agency", "", "Scope; lead-based paint",
        "Paid work in housing built before 1978. Lead-based paint is 1.0 mg in a square centimeter or 0.5 percent and more.",
        "memory", "",
    ),
    (
        "cfr-35-1350", "24 CFR 35.1350 Safe work practices",
        "US Department of Housing and Urban Development", "", "(d)",
        "In assisted housing the limit is 2 square feet a room inside, 20 outside.",
        "quoted", "2026-11-25",
    ),
)  # fmt: skip
