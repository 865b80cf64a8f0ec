"""Pages that nobody writes: the register of sources, and the table of names, symbols and units."""

from calc import catalogue
from calc.fields import UNIT_NAMES
from calc.render.escape import escaped
from calc.sources import HOW_KNOWN, SOURCES
from handbook.blocks import known

# One symbol for each name in the formulas of the documentation; names are public and never change their meaning.
SYMBOLS = {
    "area_sqft": "A", "ceiling_area_sqft": "A_c", "perimeter_ft": "P", "wall_area_sqft": "A_w", "volume_cuft": "V",
    "ceiling_height_ft": "H", "texture_depth_in": "d", "texture_open_pct": "φ", "coats": "n", "coat_thickness_in": "t",
    "fill_in": "d_f", "film_in": "d_c", "shrinkage_pct": "s", "waste_pct": "w", "compound_gal": "Q", "pail_gal": "Q_p",
    "pails": "N", "compound_lb_per_gal": "ρ", "water_pct": "m", "carry_weight_lb": "W_p", "wet_weight_lb": "W",
    "water_to_dry_gal": "Q_w", "dry_load_psf": "q_d", "peak_load_psf": "q_p", "temperature_f": "T", "humidity_pct": "RH",
    "vapor_pressure_psi": "p", "hours": "τ", "hours_low": "τ_a", "hours_high": "τ_b", "first_coat_hours_high": "τ_1",
    "total_hours_high": "τ_n",
}  # fmt: skip


def sources_page() -> str:
    """Return the page of every source: what it is, what is taken from it, how well it is known, when it was checked."""
    rows = []
    for one in SOURCES:
        where = ", ".join(part for part in (one.publisher, one.edition, one.clause) if part)
        rows.append(
            f'<li id="source-{one.id}"><p><cite>{escaped(one.title)}</cite><br>{escaped(where)}</p>'
            f'<p>{escaped(one.figure)}</p><p class="known">{escaped(known(one.id))}</p></li>'
        )
    kinds = "".join(
        f"<li>{escaped(text)}: {sum(one.known == kind for one in SOURCES)}</li>" for kind, text in HOW_KNOWN
    )
    head = _head("Sources", "Where each rule and figure comes from, how well it is known, and the day it was checked.")
    return (
        head + "# Sources\n\nEach number in this handbook leads here. A figure from memory is a figure that nobody has checked"
        " on paper yet: treat it so. Where two sources disagree, the safer figure is used, and the page says so.\n\n"
        f'<ul class="kinds">{kinds}</ul>\n\n<ol class="register">' + "".join(rows) + "</ol>\n"
    )  # fmt: skip


def nomenclature_page() -> str:
    """Return the one table that fixes each name, its symbol, its unit and what it means."""
    meaning: dict[str, tuple[str, str, list[str]]] = {}
    for calculator in catalogue.CALCULATORS:
        answer, _ = catalogue.work_out(calculator.name, dict(calculator.example))
        assert answer is not None  # a test holds every example to this
        for field in calculator.fields:
            unit = UNIT_NAMES.get(field.unit, field.unit)
            meaning.setdefault(field.name, (unit, f"{field.label}. {field.help}", []))[2].append(calculator.name)
        for line in answer.lines:
            unit = UNIT_NAMES.get(line.unit, line.unit)
            meaning.setdefault(line.name, (unit, f"{line.label}. {line.rule}", []))[2].append(calculator.name)
    rows = "".join(
        f"<tr><td><code>{name}</code></td><td>{_symbol(name)}</td><td>{escaped(unit) or 'none'}</td>"
        f"<td>{escaped(text)}</td><td>{', '.join(dict.fromkeys(used))}</td></tr>"
        for name, (unit, text, used) in sorted(meaning.items())
    )
    head = _head("Names, symbols and units", "What each name means, its symbol and its unit, in every calculator.")
    return (
        head + "# Names, symbols and units\n\nA name means the same in every calculator, on the command line, in a link and in"
        " JSON, and it ends in its unit. Lengths may be typed in feet and inches or metric; the rules work in the unit shown.\n\n"
        '<section class="wide" tabindex="0" aria-label="Names, symbols and units"><table><thead><tr><th>Name</th><th>Symbol</th><th>Unit</th>'
        f"<th>Meaning</th><th>Used in</th></tr></thead><tbody>{rows}</tbody></table></section>\n"
    )  # fmt: skip


def _symbol(name: str) -> str:
    """Return the symbol as it is set: a letter in italics, its index below the line."""
    letter, _, index = SYMBOLS.get(name, "").partition("_")
    return (f"<i>{letter}</i>" if letter else "") + (f"<sub>{index}</sub>" if index else "")


def _head(title: str, summary: str) -> str:
    return f'---\ntitle: "{title}"\nkind: reference\nsummary: "{summary}"\n---\n\n'


GENERATED = {"reference/sources.md": sources_page, "reference/nomenclature.md": nomenclature_page}
