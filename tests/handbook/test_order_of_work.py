"""What the trade holds to on every page: which hold, which gear and which making-good stands before or after which step."""

import ast
import re
from fractions import Fraction

import pytest

from calc.evidence import cautions
from handbook import build
from handbook.content.reading import Hold, Step
from handbook.lint import wording

PAGES = {page.path.relative_to(build.DOCS).as_posix(): page for page in build.read_all()}
DEEP = (
    "methods/wet-scrape.md", "methods/dry-scrape.md", "methods/sand.md", "methods/skim-over.md", "methods/board-over.md",
    "methods/panel-over.md", "prepare/test-patch.md",
)  # fmt: skip
POWERED = (
    "prepare/power-off.md",
    "prepare/test-patch.md",
    "finish/texture.md",
    "finish/refit.md",
)  # tasks that end with the power on
DISTURBS = re.compile(
    r"\b(scrape|sand|mist|spray|skim|crush|press down|thin nail|screw|prime|roll)\b(?! cap)", re.IGNORECASE
)
WET = re.compile(r"\b(mist|spray|prime|paint|compound|coat|skim|mix)\b", re.IGNORECASE)


def steps_of(page):
    return [one for block in page.blocks if block.kind == "steps" for one in block.data.root]


def told(one):
    """The words of a step, or of a hold point."""
    return one.until + " " + one.know if isinstance(one, Hold) else one.do


def name(one):
    return one.hold if isinstance(one, Hold) else one.id


def first(steps, pattern, kind=(Step, Hold)):
    """Return the place of the first step, or hold point, that says `pattern`; None where none does."""
    return next(
        (at for at, one in enumerate(steps) if isinstance(one, kind) and re.search(pattern, told(one), re.I)), None
    )


def last(steps, pattern, kind=(Step, Hold)):
    found = [at for at, one in enumerate(steps) if isinstance(one, kind) and re.search(pattern, told(one), re.I)]
    return found[-1] if found else None


def with_step(pattern):
    """Return the paths of pages on which a step says `pattern`."""
    return [path for path, page in PAGES.items() if first(steps_of(page), pattern, Step) is not None]


def texts_of(page):
    """Yield each sentence-bearing text of a page: prose, steps, hold points, troubles."""
    for block in page.blocks:
        if block.kind == "markdown":
            yield block.text
        elif block.kind == "steps":
            yield from (told(one) for one in block.data.root)
        elif block.kind == "trouble":
            yield from (f"{one.see} {one.why} {one.cure}" for one in block.data.root)


@pytest.mark.parametrize("path", DEEP)
def test_lead_is_held_before_the_first_step_that_disturbs_paint(path):
    steps = steps_of(PAGES[path])
    lead = first(steps, r"holds no lead", Hold)
    disturbs = next(
        at for at, one in enumerate(steps) if isinstance(one, Step) and DISTURBS.search(re.sub("screw cap", "", one.do))
    )
    assert lead is not None and lead < disturbs, name(steps[disturbs])


def test_power_comes_back_by_a_step_after_the_boxes_are_dry_and_proved_dead_again():
    off = [path for path in with_step(r"turn off the circuits") if PAGES[path].head.kind == "way"]
    assert len(off) == 7
    for path in (*off, *POWERED):
        steps = steps_of(PAGES[path])
        dry = last(steps, r"every box .*(still|again).*\bdry\b|every box is dry inside", Hold)
        on = last(steps, r"turn the (power|breaker) on", Step)
        assert dry is not None and on is not None and dry < on, path
        wet = [at for at, one in enumerate(steps) if isinstance(one, Step) and WET.search(one.do)]
        late = [
            name(steps[at])
            for at in wet
            if at > dry and not re.search(r"do not paint|once the paint is dry", told(steps[at]), re.I)
        ]
        assert late == [], path
        refit = first(steps, r"^refit (lights|registers)", Step)
        assert refit is None or dry < refit < on, path


def test_what_a_page_turns_off_is_lit_again_by_who_may():
    off = with_step(r"turn (the blower and every heater off|off heaters)|put out (every )?flame")
    assert len(off) >= 7
    for path in off:
        if path == "prepare/cover.md":  # the room is still closed where its steps end: its text says who lights them
            assert "the gas company or a qualified person lights the pilots" in " ".join(texts_of(PAGES[path])).replace(
                "\n", " "
            )
            continue
        steps = steps_of(PAGES[path])
        lit = last(steps, r"gas company or a qualified person light", Step)
        assert lit == len(steps) - 1 or lit > first(steps, r"turn (the blower|off heaters)|put out", Step), path


def test_alarms_that_come_down_leave_no_room_and_no_linked_alarm_silent():
    down = with_step(r"take down .*alarms|unplug wired alarms")
    assert len(down) >= 7
    for path in down:
        steps = steps_of(PAGES[path])
        before, after = (
            first(steps, r"press the other alarms' buttons\. hang battery alarms", Step),
            last(steps, r"press the button of every alarm", Step),
        )
        assert before is not None and after is not None and before < after, path
        assert first(steps, r"alarm.* the same day", Step) is None, path


def test_a_vacuum_is_off_and_outdoors_when_its_bag_is_changed():
    count = 0
    for path, page in PAGES.items():
        steps = steps_of(page)
        units = [(told(one), told(steps[at - 1]) if at else "") for at, one in enumerate(steps)]
        for block in page.blocks:
            units += [(one.cure, "") for one in block.data.root] if block.kind == "trouble" else []
        for text, before in units:
            if re.search(r"\bchange (the|its) bag\b", text, re.I):
                count += 1
                off = re.search(r"turn (it|the vacuum) off", before + " " + text, re.I)
                assert off and "outdoors" in text and "running" not in text, f"{path}: {text}"
    assert count >= 4


def test_the_kind_of_respirator_is_named_where_it_is_first_put_on():
    for path in with_step(r"respirator"):
        steps = steps_of(PAGES[path])
        at = first(steps, r"respirator", Step)
        assert re.search(r"N95|P100|organic-vapor", told(steps[at])), f"{path}: {told(steps[at])}"
    for path in with_step(r"put on goggles"):
        text = told(steps_of(PAGES[path])[first(steps_of(PAGES[path]), r"put on goggles", Step)])
        assert re.search(r"fit-tested|fitted", text), path


@pytest.mark.parametrize("path", [*DEEP, "methods/leave-and-seal.md", "finish/texture.md", "prepare/joists.md"])
def test_goggles_and_respirator_are_on_before_anything_comes_down(path):
    steps = steps_of(PAGES[path])
    on = first(steps, r"put on goggles", Step)
    work = next(
        at
        for at, one in enumerate(steps)
        if isinstance(one, Step) and DISTURBS.search(one.do) and "two boards" not in one.do
    )
    assert on is not None and on < work, name(steps[work])


def test_solvent_primer_brings_its_caution_and_its_cartridges():
    paths = with_step(r"oil- or shellac-base primer")
    assert {"methods/skim-over.md", "finish/paint.md"} <= set(paths)
    for path in (*paths, "methods/leave-and-seal.md"):
        page = PAGES[path]
        assert first(steps_of(page), r"organic-vapor cartridges", Step) is not None, path
        named = {block.data.id for block in page.blocks if block.kind == "caution"}
        named |= {one.caution for one in steps_of(page) if isinstance(one, Step)}
        assert "paint-fumes" in named, path
    one = cautions.caution("paint-fumes")
    assert "organic-vapor cartridges" in one.avoidance


def test_bare_texture_is_sprayed_and_never_rolled():
    for path, page in PAGES.items():
        for one in steps_of(page):
            if isinstance(one, Step) and re.search(r"bare texture|texture is bare", one.do, re.I):
                assert re.search(r"\bspray|never roll", one.do, re.I), f"{path}: {one.do}"
    sprayed = first(steps_of(PAGES["methods/skim-over.md"]), r"spray an oil- or shellac-base primer over bare", Step)
    assert sprayed is not None


def test_torn_paper_is_cut_back_and_then_sealed_with_what_is_made_for_it():
    paths = with_step(r"(?<!made for )torn paper")
    assert len(paths) >= 2
    for path in paths:
        steps = steps_of(PAGES[path])
        cut, sealed = first(steps, r"cut torn paper back", Step), first(steps, r"sealer made for torn paper", Step)
        assert cut is not None and sealed in (cut, cut + 1), path


def test_corners_of_a_knife_are_round_before_it_touches_the_ceiling():
    paths = with_step(r"round (the|its) corners")
    assert len(paths) >= 3
    for path in (path for path in paths if path in DEEP):
        steps = steps_of(PAGES[path])
        assert first(steps, r"round the corners", Step) < first(steps, r"\bscrape\b|\bmist\b", Step), path


def test_wet_scrape_keeps_boxes_dry_before_mist_and_takes_debris_out_before_the_board_dries():
    steps = steps_of(PAGES["methods/wet-scrape.md"])
    at = {name(one): place for place, one in enumerate(steps)}
    assert at["scrape-keep-dry"] < at["scrape-mist"]
    bag, clean = first(steps, r"bag the wet debris now", Step), first(steps, r"lay clean film", Step)
    assert at["scrape-wipe"] < bag < clean < at["scrape-board-dry"] < at["scrape-prime"]


def test_caulk_comes_after_sanding_and_priming():
    paths = with_step(r"^caulk (the edge|it again)")
    assert {"methods/board-over.md", "finish/tape.md"} <= set(paths)
    for path in paths:
        steps = steps_of(PAGES[path])
        assert last(steps, r"^sand\b", Step) < first(steps, r"^prime\b", Step) < first(steps, r"^caulk\b", Step), path
    assert "sanded and primed" in told(steps_of(PAGES["finish/edge.md"])[0])


def test_board_lines_are_snapped_after_the_texture_is_crushed():
    steps = steps_of(PAGES["methods/board-over.md"])
    assert first(steps, r"crush high spots", Step) < first(steps, r"snap a line", Step)


def test_film_under_a_ladder_stays_whole():
    for path, page in PAGES.items():
        for text in texts_of(page):
            assert not re.search(
                r"(open|cut) the film .*(under|feet)|set them on the floor itself|ladders? on the floor and", text
            ), path
    for path in ("methods/wet-scrape.md", "prepare/reach.md", "prepare/cover.md"):
        assert first(steps_of(PAGES[path]), r"rigid sheet", Step) is not None, path
    assert "rigid sheets" in cautions.caution("wet-plastic").avoidance


def test_a_nail_has_one_depth_on_the_page_of_joists():
    depths = {
        found
        for text in texts_of(PAGES["prepare/joists.md"])
        for found in re.findall(r"\b(?:half an|an|one|two|\d+)(?: inch(?:es)?\b)", text)
    }
    assert depths == {"half an inch"}


def test_before_the_report_joists_are_looked_for_and_nothing_touches_the_texture():
    steps = steps_of(PAGES["prepare/joists.md"])
    touched = first(steps, r"magnet|finder|nail (that|at)", Step)
    assert first(steps, r"laboratory report is in your hand", Hold) < touched, name(steps[touched])


def test_a_screw_through_board_or_furring_stops_for_heating_in_the_ceiling():
    for path in ("prepare/joists.md", "methods/board-over.md", "methods/panel-over.md"):
        steps = steps_of(PAGES[path])
        assert first(steps, r"no heating cable", Hold) < first(steps, r"\bthin nail\b|\bscrew\b", Step), path


def test_a_grid_has_its_steps_and_furring_reaches_an_inch():
    page = PAGES["methods/panel-over.md"]
    steps = steps_of(page)
    assert "glue" not in page.head.summary
    order = [first(steps, "^Grid: .*" + word, Step) for word in ("level line", "wall angle", "eye screw", "main tees on", "cross tees in", "tilt")]  # fmt: skip
    assert None not in order and order == sorted(order)
    assert first(steps, r"^Furring: .*1 in or more into each joist", Step) is not None
    assert "3 to 6 in with a grid" in " ".join(texts_of(page))


def test_near_one_percent_a_point_count_is_asked_for():
    text = " ".join(texts_of(PAGES["prepare/settle.md"]))
    assert "point count" in text and "1.01" not in text


def test_the_visual_inspection_comes_before_the_air_test():
    steps = steps_of(PAGES["methods/licensed-removal.md"])
    at = {name(one): place for place, one in enumerate(steps)}
    looked = first(steps, r"look the bare, dry room over", Step)
    assert looked < at["hire-clear"]
    assert re.search(r"visual inspection.*air test", steps[at["hire-clear"]].until)


def test_a_hairline_crack_stops_nobody_from_measuring():
    hold = next(one for one in steps_of(PAGES["prepare/measure.md"]) if name(one) == "nothing-moves")
    assert "crack" not in hold.until and "hairline crack" in hold.know


def test_a_sheet_of_board_weighs_what_its_maker_says():
    """1.6 lb/sq ft over 4 by 12 ft: the figure of the sheet, not a comparison."""
    pounds = Fraction("1.6") * 4 * 12
    said = cautions.caution("lift-board")
    assert f"{int(pounds + Fraction(1, 2))} lb" in said.hazard and said.source == "gypsum-weight"


def test_no_caution_compares_a_weight_with_a_person_or_a_car():
    for one in cautions.CAUTIONS:
        assert not re.search(r"\bas (much|heavy) as\b|\bthan a (car|man|person)\b", one.text), one.id


def test_heads_of_sprinklers_are_kept_from_paint_and_texture():
    for path in ("methods/leave-and-seal.md", "finish/paint.md", "finish/texture.md"):
        assert "sprinkler-head" in [block.data.id for block in PAGES[path].blocks if block.kind == "caution"], path
    assert "painted" in cautions.caution("sprinkler-head").avoidance


def strings_of_calc():
    for path in sorted((build.ROOT / "calc").rglob("*.py")):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        for node in ast.walk(tree):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                yield f"{path.name}:{node.lineno}", node.value


def test_no_calculator_says_a_name_that_the_glossary_turns_away():
    """The pages are held to the same names by the content check."""
    away = wording.avoided_terms(list(PAGES.values()))
    assert {"fine filter", "easy tape", "strong tape", "primer without water"} <= {old for old, _ in away}
    for where, text in strings_of_calc():
        for old, new in away:
            assert not re.search(rf"\b{re.escape(old)}\b", text, re.IGNORECASE), f"{where}: {old} is {new}"
