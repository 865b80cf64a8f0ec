"""Words that people type, misspelt or of every day, each with a page of which a place must be among the first three found."""

ASKED = (
    ("asbestoes", "prepare/settle/"), ("asbesots", "prepare/settle/"), ("absestos test", "prepare/settle/"), ("dry wall", "methods/board-over/"),
    ("pop corn", "prepare/choose/"), ("popcron", "prepare/choose/"), ("sheet rock", "methods/board-over/"), ("sheetrock", "methods/board-over/"),
    ("plaster board", "methods/board-over/"), ("lader", "prepare/reach/"), ("laddder", "prepare/reach/"), ("scafold", "prepare/reach/"),
    ("joint compund", "finish/tape/"), ("spakle", "finish/smooth/"), ("joice", "prepare/joists/"), ("find joits", "prepare/joists/"),
    ("primmer", "finish/paint/"), ("paint rollor", "finish/paint/"), ("vacume", "methods/dry-scrape/"), ("wetscrape", "methods/wet-scrape/"),
    ("skimcoat", "methods/skim-over/"), ("dehumidifer", "finish/dry/"), ("contracter", "prepare/hire/"), ("hire somebody", "prepare/hire/"),
    ("breaker off", "prepare/power-off/"), ("turn powr off", "prepare/power-off/"), ("cover floor", "prepare/cover/"), ("mold in bath", "prepare/bath/"),
    ("recesed light", "prepare/recessed/"), ("valuted ceiling", "prepare/high/"), ("stairwell", "prepare/high/"), ("garbage bags", "after/clear-up/"),
    ("disposel", "after/clear-up/"), ("crown moulding", "finish/crown/"), ("fell down", "prepare/accident/"), ("house asociation", "prepare/permission/"),
)  # fmt: skip
