"""Pages that nobody writes: the register of sources, and the table of names, symbols and units."""

import posixpath
import re
from collections.abc import Callable

from calc import catalogue
from calc.core.fields import unit_told
from calc.evidence.cautions import caution
from calc.evidence.limits import LIMITS
from calc.evidence.sources import HOW_KNOWN, SOURCES
from calc.numbers import words
from calc.render import html
from calc.render.escape import escaped
from handbook.content.addresses import trouble_id
from handbook.content.reading import CalculatorBlock, Page
from handbook.evidence import check_table, decisions, metric, once
from handbook.make import customer, handed, limits, sheets
from handbook.make.blocks import calculator_section, known, source_list
from handbook.make.contents import contents_page
from handbook.make.front import head_of

# One symbol for each name in the formulas of the documentation; names are public and never change their meaning.
SYMBOLS = {
    "area_sqft": "A", "ceiling_area_sqft": "A_c", "perimeter_ft": "P", "wall_area_sqft": "A_w", "volume_cuft": "V",
    "ceiling_height_ft": "H", "texture_depth_in": "d", "texture_open_pct": "φ", "coats": "n", "coat_thickness_in": "t",
    "fill_in": "d_f", "film_in": "d_c", "shrinkage_pct": "s", "waste_pct": "w", "compound_gal": "Q", "pail_gal": "Q_p",
    "pails": "N", "compound_lb_per_gal": "ρ", "water_pct": "m", "carry_weight_lb": "W_p", "wet_weight_lb": "W",
    "water_to_dry_gal": "Q_w", "dry_load_psf": "q_d", "peak_load_psf": "q_p", "temperature_f": "T", "humidity_pct": "RH",
    "vapor_pressure_psi": "p", "hours": "τ", "hours_low": "τ_a", "hours_high": "τ_b", "first_coat_hours_high": "τ_1",
    "total_hours_high": "τ_n", "total_hours": "τ_n0", "total_hours_low": "τ_na", "drying_constant_h_psi": "K",
    "samples_needed": "N_s", "samples_taken": "n_s", "year_built": "Y", "disturbed_sqft": "A_d", "total_disturbed_sqft": "A_30",
    "drop_in": "h", "lower_height_ft": "H_n", "fixtures_that_fit": "N_f", "fixtures_with_work": "N_w", "fixtures_that_stop": "N_x",
    "person_height_in": "h_p", "head_gap_in": "g", "base_width_ft": "b", "leaning_ladder_ft": "L", "platform_height_ft": "h_s",
    "ladder_needed_ft": "L_s", "tied_above_ft": "h_t", "ridden_below_ft": "h_r",
    "roll_width_ft": "w_r", "roll_length_ft": "l_r", "overlap_in": "o", "turn_up_in": "u", "registers": "n_r", "wall_film_width_ft": "w_f",
    "wall_film_length_ft": "l_f", "floor_film_mil": "t_f", "floor_sheeting_sqft": "A_f", "rolls": "N_r", "floor_sheeting_lb": "W_f",
    "wall_sheeting_sqft": "A_v", "wall_rolls": "N_v", "register_sheeting_sqft": "A_r", "tape_ft": "l_t", "tape_rolls": "N_t",
    "air_changes_per_hour": "n_a", "machine_cfm": "q_m", "derate_pct": "k", "needed_cfm": "q", "real_cfm": "q_r", "machines": "N_m",
    "machines_with_standby": "N_m1", "pressure_inwc": "Δp", "opening_sqin": "A_o",
    "rate_gal_per_100sqft": "r", "passes": "n_p", "tank_gal": "Q_t", "water_gal": "Q_a", "tank_fills": "N_q", "water_lb": "W_a",
    "added_load_psf": "q_w",
    "texture_thickness_in": "t_x", "texture_psf": "q_x", "water_gal_per_100sqft": "r_w", "bag_gal": "Q_b", "bag_fill_pct": "f",
    "bag_limit_lb": "W_b", "board_down_sqft": "A_b", "drums": "N_d", "dry_weight_lb": "W_d", "weight_lb": "W_t", "bags_by_volume": "N_bv",
    "bags_by_weight": "N_bw", "bags": "N_b", "landfill_weight_lb": "W_l",
    "tile_length_in": "l_p", "tile_width_in": "w_p", "tiles_per_carton": "n_c", "tile_weight_psf": "q_t", "furring_spacing_in": "s_f",
    "full_tiles": "N_1", "cut_pieces": "N_2", "cut_tiles": "N_3", "border_in": "b_x", "border_other_in": "b_y", "cartons": "N_c",
    "tile_load_psf": "q_l", "furring_ft": "l_u", "fasteners": "N_n",
    "joint_ft": "l_j", "joist_spacing_in": "s_j", "caulked_edge_ft": "l_e", "tape_roll_ft": "l_o", "low_compound_gal": "Q_1",
    "middle_compound_gal": "Q_2", "skim_gal": "Q_s", "low_compound_lb": "W_1", "high_compound_lb": "W_3", "screws": "N_y",
    "layout_screws": "N_y1", "textbook_screws": "N_y2", "caulk_tubes": "N_k",
    "outdoor_temperature_f": "T_o", "outdoor_humidity_pct": "RH_o", "dehumidifier_pt_per_day": "D", "closed_air_changes_per_hour": "n_1",
    "open_air_changes_per_hour": "n_2", "burner_btu_per_h": "B", "closed_hours": "τ_c", "window_hours": "τ_w", "machine_hours": "τ_m",
    "closed_hours_low": "τ_ca", "closed_hours_high": "τ_cb", "window_hours_low": "τ_wa", "window_hours_high": "τ_wb", "machine_hours_low": "τ_ma",
    "machine_hours_high": "τ_mb", "closed_heat_kw": "P_c", "window_heat_kw": "P_w", "machine_takes_pt_per_day": "D_1", "wet_area_sqft": "A_q",
    "peak_humidity_pct": "RH_p", "burner_water_lb": "W_u", "moisture_gr_per_lb": "x", "dew_point_f": "T_d",
    "spread_sqft_per_gal": "e", "primer_sqft_per_gal": "e_p", "texture_extra_pct": "k_x", "painted_sqft": "A_p", "gallons": "Q_g",
    "adhesive_sqft_per_gal": "e_a", "adhesive_gal": "Q_h", "spots": "N_o", "bond_factor": "γ", "planned_length_ft": "L_p",
    "planned_width_ft": "B_p", "wall_angles": "N_a", "grid_drop_in": "h_g", "ladder_base_ft": "b_l", "board_lb": "W_o",
    "board_cuyd": "V_o", "paint_to_buy_gal": "Q_g1", "primer_gal": "Q_r", "primer_to_buy_gal": "Q_r1", "wet_film_mil": "t_w",
    "board_area_sqft": "A_n", "sheets": "N_e", "lower_bound_sheets": "N_e0", "bought_sqft": "A_e", "butt_joint_ft": "l_b",
    "tapered_joint_ft": "l_a", "cut_edge_joint_ft": "l_c", "screw_length_in": "l_s", "old_load_psf": "q_o", "joist_offset_in": "o_j", "longest_sheet_ft": "l_m",
    "existing_ceiling_in": "t_o", "insulation_psf": "q_i", "least_strip_in": "w_m", "load_limit_psf": "q_x0", "longest_stock_ft": "l_n",
    "door_width_in": "w_d", "hall_width_in": "w_h", "turn_from_in": "a", "turn_to_in": "c", "stair_width_in": "w_s", "headroom_in": "h_h",
    "ways_open": "N_u", "ways_open_after": "N_u1", "ways_not_known": "N_u2", "ways_closed": "N_u3", "landing_in": "w_l", "lift_width_in": "w_e", "lift_depth_in": "d_e", "lift_height_in": "h_e",
    "hall_length_ft": "l_h", "hall_beyond_ft": "l_h1", "room_along_ft": "l_rw", "room_deep_ft": "d_r", "door_corner_in": "c_d",
    "door_height_in": "h_d", "turn_from_length_ft": "l_1", "turn_to_length_ft": "l_2", "landing_width_in": "b_l1", "stair_foot_ft": "l_sf",
    "stair_head_ft": "l_k", "stair_rise_in": "r_s", "stair_run_in": "g_s", "upper_rise_in": "r_s1", "upper_run_in": "g_s1",
    "lift_door_in": "w_e1", "lift_door_height_in": "h_e1", "lift_lobby_in": "d_e1", "rate_per_hour": "c_h",
    "sealing_primer_gal": "Q_r2", "sealing_primer_to_buy_gal": "Q_r3",
    "labor_hours_low": "T_l1", "labor_hours_high": "T_l2", "working_days_low": "D_w1", "working_days_high": "D_w2", "calendar_days_low": "D_c1",
    "calendar_days_high": "D_c2", "hours_per_day": "h_w", "laboratory_days_low": "D_b1", "laboratory_days_high": "D_b2", "pace_pct": "p_w", "paint_coats": "n_pc",
    "people": "n_w", "labor_sum": "c_l", "materials_sum": "c_m", "others_sum": "c_o", "tax_sum": "c_x", "together_sum": "c_t",
}  # fmt: skip


CAUTIONED = [caution("asbestos-first").source, caution("local-rules").source]


def sources_page(pages: list[Page]) -> str:
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
    head = head_of(
        "Sources", "Where each rule and figure comes from, how well it is known, and the day it was checked."
    )
    return (
        head + "# Sources\n\nEach number in this handbook leads here. A figure from memory is a figure that nobody has checked"
        " on paper yet: treat it so. Where two sources disagree, the safer figure is used, and the page says so.\n\n"
        f'<ul class="kinds">{kinds}</ul>\n\n<ol class="register">' + "".join(rows) + "</ol>\n"
    )  # fmt: skip


def nomenclature_page(pages: list[Page]) -> str:
    """Return the one table that fixes each name, its symbol, its unit and what it means."""
    meaning: dict[str, tuple[str, str, list[str]]] = {}
    for calculator in catalogue.every():
        for field in calculator.fields:
            unit = unit_told(field.unit)
            meaning.setdefault(field.name, (unit, f"{field.label}. {field.help}", []))[2].append(calculator.name)
        for line in check_table.every_line(calculator).values():
            unit = unit_told(line.unit)
            meaning.setdefault(line.name, (unit, f"{line.label}. {line.rule}", []))[2].append(calculator.name)
    rows = "".join(
        f"<tr><td><code>{name}</code></td><td>{_symbol(name)}</td><td>{escaped(unit) or 'none'}</td>"
        f"<td>{escaped(text)}</td><td>{', '.join(dict.fromkeys(used))}</td></tr>"
        for name, (unit, text, used) in sorted(meaning.items())
    )
    head = head_of("Names, symbols and units", "What each name means, its symbol and its unit, in every calculator.")
    return (
        head + "# Names, symbols and units\n\nA name means the same in every calculator, on the command line, in a link and in"
        " JSON, and it ends in its unit. Lengths may be typed in feet and inches or metric; the rules work in the unit shown.\n\n"
        '<section class="wide" tabindex="0" aria-label="Names, symbols and units"><table><thead><tr><th>Name</th><th>Symbol</th><th>Unit</th>'
        f"<th>Meaning</th><th>Used in</th></tr></thead><tbody>{rows}</tbody></table></section>\n"
    )  # fmt: skip


def checks_page(pages: list[Page]) -> str:
    """Return every printed figure beside ours, from the vectors that the tests run on."""
    found = check_table.every_check()
    kinds = dict(HOW_KNOWN)
    parts = []
    for calculator in catalogue.every():
        own = [one for one in found if one.calculator == calculator.name]
        rows = "".join(
            f"<tr><td>{escaped(one.id)}</td><td>{escaped(one.source)}{html.mark_of(one.source_id)}</td><td>{escaped(kinds[one.known])}</td>"
            f"<td><code>{escaped(one.name)}</code></td><td>{escaped(one.printed)}</td><td>{escaped(one.ours)}</td>"
            f"<td>{'agrees' if one.agrees else 'DIFFERS'}{escaped('; ' + one.reason if one.reason else '')}</td></tr>"
            for one in own
        )
        parts.append(
            f'## {calculator.title}\n\n<section class="wide" tabindex="0" aria-label="Checks of {escaped(calculator.title)}">'
            "<table><thead><tr><th>Check</th><th>Source</th><th>How known</th><th>What</th><th>Printed</th><th>Ours</th>"
            f"<th>Verdict</th></tr></thead><tbody>{rows}</tbody></table></section>"
        )
    count = {kind: sum(one.known == kind for one in found) for kind in check_table.KNOWN}
    head = head_of("Check table", "Each printed figure that a calculator was checked against, beside our own.")
    return (
        head + "# Check table\n\nEach calculator is checked against figures from outside this book: standards, manuals, printed"
        " examples and reference libraries. The tests run on the same rows. Ours must lie within half of the last printed digit,"
        f" or the row says why not.\n\nIn all {len(found)} figures: {count['seen']} read in the document itself,"
        f" {count['quoted']} as quoted elsewhere, {count['computed']} worked out from definitions or by a reference library,"
        f" {count['memory']} from memory.\n\n" + "\n\n".join(parts)
        + "\n\n" + source_list([one.source_id for one in found]) + "\n"
    )  # fmt: skip


def chart_page(pages: list[Page]) -> str:
    """Return the chart of all rules of the choice of way: for paper, and for whoever reads without a script."""
    head = head_of("Chart of ways", "Which answer closes, delays or clouds which way, and why: all rules on paper.")
    counts = {effect: sum(rule.effect == effect for rule in decisions.RULES) for effect in decisions.MARKS}
    practice = sum(rule.source == "common-practice" for rule in decisions.RULES)
    return (
        head + "# Chart of ways\n\n" + html.caution(caution("asbestos-first"))
        + "\n\nRead down the answers that are yours. The most careful mark in a column holds: ✕ closed, ? not known,"
        " ◐ open after something, · a note. A column without a mark is open. **An answer that you do not have counts as the worst"
        " that it can be**: closed then reads as not known.\n\n"
        f"{len(decisions.RULES)} rules: {counts['closed']} close, {counts['not known']} leave it not known, {counts['open after']} ask for"
        f" something first, {counts['note']} are notes. {len(decisions.RULES) - practice} have a printed source, {practice} are common practice."
        f" Review by {limits.day(min(rule.review_by for rule in decisions.RULES))}.\n\n"
        + decisions.chart() + "\n\n" + html.caution(caution("local-rules")) + "\n\n## The questions, and how to find out\n\n"
        + decisions.question_list() + "\n\n" + source_list([rule.source for rule in decisions.RULES] + CAUTIONED) + "\n"
    )  # fmt: skip


def ceilings_page(pages: list[Page]) -> str:
    """Return the thirteen ceilings: what each is like, what a careful tradesman says of it, and what the rules make of it."""
    head = head_of(
        "Thirteen ceilings",
        "Thirteen made-up ceilings, what a careful tradesman would say of each, and what the rules make of it.",
    )
    return (
        head + "# Thirteen ceilings\n\n" + html.caution(caution("asbestos-first"))
        + "\n\nMade up, all thirteen. For each stands what a careful tradesman would say and why, and the tests hold the rules to it."
        " Each opens in the guide with its answers filled in.\n\n" + decisions.ceilings() + "\n\n" + source_list(CAUTIONED) + "\n"
    )  # fmt: skip


def calculator_page(name: str) -> Callable[[list[Page]], str]:
    """Return the maker of the page of one calculator: its form, its answer, and the pages that it is asked on."""

    def make(pages: list[Page]) -> str:
        calculator = catalogue.find(name)
        assert calculator is not None
        section, cited = calculator_section(CalculatorBlock(use=name), titled=False)
        used = [
            f"[{page.head.title}](../{page.path.relative_to(page.path.parents[1]).as_posix()})"
            for page in pages
            if page.head and any(block.kind == "calculator" and block.data.use == name for block in page.blocks)
        ]
        sent = (
            f'<div hidden data-customer="{" ".join(customer.fields(*customer.AMOUNTS))}" data-screens="{" ".join(sheets.ways())}"></div>\n\n'
            if name == "offer"
            else ""
        )
        where = "The work that it belongs to: " + ", ".join(used) + ".\n\n" if used else ""
        return (
            head_of(calculator.title, calculator.summary, "calculator") + f"# {calculator.title}\n\n"
            + html.caution(caution("asbestos-first")) + "\n\n" + section + "\n\n" + sent + where
            + source_list([*cited, caution("asbestos-first").source]) + "\n"
        )  # fmt: skip

    return make


def trouble_page(pages: list[Page]) -> str:
    """Return everything that goes wrong, by page, each leading to its cure."""
    parts = []
    for page in pages:
        for block in page.blocks:
            if block.kind == "trouble" and page.head:
                path = page.path.relative_to(page.path.parents[1]).as_posix()
                rows = "".join(
                    f'<div><dt><a href="../../{path.removesuffix(".md")}/#{trouble_id(page, at)}">{escaped(one.see)}</a></dt><dd><b>Why:</b> {escaped(one.why)}</dd>'
                    f"<dd><b>Cure:</b> {escaped(one.cure)}</dd></div>"
                    for at, one in enumerate(block.data.root)
                )
                parts.append(f'## {page.head.title}\n\n<dl class="trouble">{rows}</dl>')
    count = sum(len(block.data.root) for page in pages for block in page.blocks if block.kind == "trouble")
    head = head_of("What goes wrong", "Everything that goes wrong with a ceiling in this book, why, and the cure.")
    return (
        head + "# What goes wrong\n\n" + html.caution(caution("asbestos-first")) + f"\n\n{count} troubles, by where they show. Or"
        " [search](../search.md) for what you see.\n\n" + "\n\n".join(parts) + "\n\n" + source_list([caution("asbestos-first").source]) + "\n"
    )  # fmt: skip


def limits_page(pages: list[Page]) -> str:
    """Return the published limits that this book knows, with the day each was looked at and the day it is due again."""
    head = head_of(
        "Published limits",
        "Limits on asbestos and lead that this book knows, where they hold, and when they were looked at.",
    )
    return (
        head + "# Published limits\n\n" + html.caution(caution("local-rules")) + "\n\nOnly these. A place that is not here has rules that this"
        " book does not know. A building that no row names is not free of rules: state and local ones hold, and federal ones may."
        " Below a limit the fibers and the dust are the same.\n\n"
        + limits.listed() + "\n\n"
        + source_list([one.source for one in LIMITS] + [caution("local-rules").source]) + "\n"
    )  # fmt: skip


LINK = re.compile(r"\[([^\]]*)\]\(([^)\s]+)\)")
TEMPERATURES_F = (50, 60, 70, 80)
HUMIDITIES_PCT = (20, 40, 50, 60, 70, 80, 90, 95)


def drying_page(pages: list[Page]) -> str:
    """Return the drying times of a thin coat as a table, from the calculator itself."""
    rows = ""
    temperatures = metric.degrees(TEMPERATURES_F)
    coat = "1.6 mm" if metric.METRIC else "1/16 in"
    for humidity in HUMIDITIES_PCT:
        cells = ""
        for temperature in temperatures:
            answer, _ = once.work_out(
                "drying",
                {
                    "temperature_f": temperature,
                    "humidity_pct": str(humidity),
                    "coat_thickness_in": "1/16",
                    "coats": "1",
                },
            )
            assert answer is not None  # inside its range
            hours = {line.name: line.value for line in answer.lines}
            cells += f"<td>{words.short_decimal(hours['hours_low'], 0)} to {words.short_decimal(hours['hours_high'], 0)} h</td>"
        rows += f'<tr><th scope="row">{humidity} %</th>{cells}</tr>'
    heads = "".join(f'<th scope="col">{one}</th>' for one in temperatures)
    answer, _ = once.work_out("drying", {"temperature_f": "70", "humidity_pct": "50"})
    cited = [source_id for line in (answer.lines if answer else ()) for source_id in line.sources]
    head = head_of("Drying times", "How long a thin coat of compound dries, by heat and humidity of the room.")
    return (
        head + "# Drying times\n\nA coat of " + coat + ", under tape, in air that stays as it is. Worked out by the same form as for your room; the law behind it stands on a"
        " table from memory, row by row. Looks dry is not dry: feel it.\n\n"
        '<section class="wide" tabindex="0" aria-label="Drying times"><table><thead><tr><th scope="col">Humidity</th>' + heads
        + f"</tr></thead><tbody>{rows}</tbody></table></section>\n\nFor your room and your coat: [when the next coat may go on](../finish/dry.md#drying).\n\n"
        + source_list(cited) + "\n"
    )  # fmt: skip


def _symbol(name: str) -> str:
    """Return the symbol as it is set: a letter in italics, its index below the line."""
    letter, _, index = SYMBOLS.get(name, "").partition("_")
    return (f"<i>{letter}</i>" if letter else "") + (f"<sub>{index}</sub>" if index else "")


GENERATED = {
    **{f"to/{way}.md": handed.screen_page(way) for way in sheets.ways()},
    **{f"papers/{way}.md": handed.papers_page(way) for way in sheets.ways()},
    **{f"work-out/{name}.md": calculator_page(name) for name in catalogue.NAMES if name != "decision"},
    "reference/trouble.md": trouble_page,
    "reference/limits.md": limits_page,
    "reference/drying.md": drying_page,
    "reference/sources.md": sources_page,
    "reference/checks.md": checks_page,
    "reference/chart.md": chart_page,
    "reference/ceilings.md": ceilings_page,
    "reference/nomenclature.md": nomenclature_page,
    "contents.md": contents_page,
}


def unlinked(text: str, path: str, standing: set[str]) -> str:
    """Return Markdown of the page at `path` with a link to a page that does not stand in this edition as words alone."""

    def told(link: re.Match[str]) -> str:
        goal = posixpath.normpath(posixpath.join(posixpath.dirname(path), link.group(2).partition("#")[0]))
        return link.group() if goal in standing or not goal.endswith(".md") else link.group(1)

    return LINK.sub(told, text)


def made(found: list[Page]) -> dict[str, str]:
    """Return every page that nobody writes; the contents come last, as they tell of the others."""
    standing = {one.path for one in sheets.book()} | set(GENERATED)
    texts = {
        path: unlinked(make(found), path, standing) for path, make in GENERATED.items() if make is not contents_page
    }
    return texts | {"contents.md": contents_page(found, texts)}
