"""The choice of way as a worried homeowner meets it: one question, eight ways in sight, back without loss, a link."""

import json
import re

import pytest
from playwright.sync_api import expect

from calc import browser as calc_browser
from calc.decision import questions, shared_figures
from handbook.evidence import decisions
from test_job import field, ready

pytestmark = [pytest.mark.browser, pytest.mark.slow]
GUIDE = "prepare/choose/"
LOOKED = {"stains": "none", "loose_board": "tight", "cracks": "none", "sprinklers": "no", "sheen": "flat"}
LABELS = {one.field.name: one.field.label for one in questions.QUESTIONS}
CEILINGS = decisions.read_ceilings()
# Each question, and the figures of other forms that tell an answer; what stands folded away is not in sight.
FIELDS = len(LABELS) + sum(not one.field.rare for one in shared_figures.SHARED)


def open_guide(page, address, fragment=""):
    page.goto(address + GUIDE + fragment)
    page.wait_for_selector("#decision[data-engine]")
    expect(page.locator(".strip li")).to_have_count(8)
    return page


def states(facts):
    answer = json.loads(calc_browser.answer("decision", json.dumps(facts)))["answer"]
    return [one["state"] for one in answer["items"]]


def pick(page, name, value):
    """Answer the question that is shown, which must be the one of that name."""
    expect(page.locator(".guide")).to_have_attribute("data-question", name)
    label = dict(questions.question(name).answers)[value]
    page.locator(".guide button.pick").get_by_text(label, exact=True).click()
    expect(page.locator(".guide")).not_to_have_attribute("data-question", name)


def tick(page, sheet, *lines):
    """Tick lines of a screen that asks several questions, and go on."""
    expect(page.locator(".guide")).to_have_attribute("data-question", sheet)
    for text in lines:
        page.locator(".guide button.tick", has_text=text).click()
    page.locator(".guide .answers button.act").click()
    expect(page.locator(".guide")).not_to_have_attribute("data-question", sheet)


def held(page, names):
    return {name: page.locator(f"#decision-{name}").input_value() for name in names}


def shown_states(page):
    return page.locator(".strip .state").all_inner_texts()


def test_one_question_at_a_time_with_all_ways_in_sight(page, address):
    open_guide(page, address)
    assert page.locator("#decision .field:visible").count() == 0
    facts = {}
    for name, value in (
        ("asbestos_result", "none"),
        ("result_rooms", "this"),
        ("result_layers", "all"),
        ("sag", "yes"),
    ):
        if name == "sag":
            tick(page, "look", "It sags or bulges")
            facts |= LOOKED
        expect(page.locator(".guide h3")).to_have_text(LABELS[name])
        page.locator(".guide .why summary").click()
        expect(page.locator(".guide .why p")).to_have_text(questions.question(name).field.why)
        for one in page.locator(".guide button.pick").all():
            box = one.bounding_box()
            assert box["height"] >= 48 and box["width"] >= 300
        pick(page, name, value)
        facts[name] = value
        assert shown_states(page) == states(facts)
        assert page.locator(".strip").bounding_box()["y"] >= -1, "the state of the ways is in sight"
    expect(page.locator("#decision .sentence")).to_have_text(
        "First: Get everyone out from under it, and keep the room shut."
    )
    assert page.locator("#decision .slot .alarm .signal").first.inner_text().strip() == "DANGER"


def test_back_and_forth_loses_nothing(page, address):
    open_guide(page, address)
    pick(page, "asbestos_result", "none")
    pick(page, "result_rooms", "this")
    for name, label in (("result_rooms", "This ceiling"), ("asbestos_result", "No asbestos")):
        page.locator(".guide-tools button", has_text="Back").click()
        expect(page.locator(".guide")).to_have_attribute("data-question", name)
        expect(page.locator('.guide button.pick[aria-pressed="true"]')).to_have_text(label)
    page.locator(".guide-tools button", has_text="Next").click()
    expect(page.locator(".guide")).to_have_attribute("data-question", "result_layers")
    page.reload()
    page.wait_for_selector("#decision[data-engine]")
    assert page.locator("#decision-asbestos_result").input_value() == "none"
    assert page.locator("#decision-result_rooms").input_value() == "this"


def test_an_answer_that_is_not_known_is_an_answer(page, address):
    open_guide(page, address)
    pick(page, "asbestos_result", "unknown")
    expect(page.locator(".guide")).to_have_attribute("data-question", "look")
    assert set(shown_states(page)[:7]) == {"not known"}
    expect(page.locator(".guide .count")).to_contain_text("1 answered.")


def test_before_a_result_both_outcomes_stand_and_look_like_no_state(page, address):
    open_guide(page, address)
    pick(page, "asbestos_result", "unknown")
    expect(page.locator("#decision .figure strong")).to_have_text("No way is open yet")
    branches = page.locator("#decision .branch")
    expect(branches).to_have_count(2)
    for at, title in enumerate(("If the laboratory finds none, in every layer", "If it finds some, in any layer")):
        branch = branches.nth(at)
        expect(branch.locator("h3")).to_have_text(title)
        expect(branch.locator(".if")).to_have_text("Not now: an outcome to come")
        assert all(text.startswith("would be ") for text in branch.locator(".value").all_inner_texts())
        box = branch.bounding_box()
        assert box["x"] >= 0 and box["x"] + box["width"] <= 390
        assert branch.evaluate("one => getComputedStyle(one).borderTopStyle") == "dashed"
    assert branches.nth(1).locator(".value").all_inner_texts()[:7] == ["would be closed"] * 7
    tick(page, "look")
    expect(branches).to_have_count(2)
    page.goto(address + "methods/sand/#?asbestos_result=unknown&sag=no&hand_test=falls")
    expect(page.locator(".verdict")).to_contain_text("If it finds some, in any layer it would be closed.")


def test_the_next_question_stands_clear_of_the_strip(page, address):
    open_guide(page, address)
    for _ in range(6):
        page.evaluate("scrollTo(0, document.querySelector('.guide-tools').getBoundingClientRect().top + scrollY - 150)")
        name = page.locator(".guide").get_attribute("data-question")
        page.locator(".guide-tools button", has_text="Skip").click()
        expect(page.locator(".guide")).not_to_have_attribute("data-question", name)
        page.wait_for_timeout(100)
        strip, head = page.locator(".strip").bounding_box(), page.locator(".guide .count").bounding_box()
        assert head["y"] >= strip["y"] + strip["height"] and head["y"] < 600


def test_a_figure_is_typed_once_in_the_guide_or_in_another_form(page, address):
    open_guide(page, address, "#decision?asbestos_result=found&texture_depth_in=3/8&year_built=1962")
    expect(page.locator("#decision-texture_depth")).to_have_value("deep")
    expect(page.locator("#decision-built")).to_have_value("before-1978")
    page.locator(".guide-tools button", has_text="Show all questions").click()
    page.locator("#decision-built").select_option("later")
    expect(page.locator("#decision-year_built")).to_have_value("")
    page.locator("#decision-ceiling_height_ft").fill("7' 0 1/4\"")
    expect(page.locator("#decision-height")).to_have_value("low")
    page.locator("#decision-times_painted").select_option("often")
    page.wait_for_timeout(600)
    page.goto(address + "methods/wet-scrape/")
    page.wait_for_selector("html[data-ready]")
    expect(page.locator("[name=texture_painted]").first).to_have_value("yes")
    page.goto(address + "prepare/settle/")
    ready(page)
    field(page, "year_built").fill("1931")
    page.wait_for_timeout(600)
    page.goto(address + GUIDE)
    page.wait_for_selector("#decision[data-engine]")
    expect(page.locator("#decision-year_built")).to_have_value("1931")
    expect(page.locator('[data-listing="contradictions"]')).to_contain_text("1931")


def test_to_the_end_and_on_to_a_way_with_the_answers(page, address):
    clear = next(one["facts"] for one in CEILINGS if one["id"] == "clear-and-bare")
    open_guide(page, address)
    for _ in range(40):
        name = page.locator(".guide").get_attribute("data-question")
        if not name:
            break
        if name in ("look", "room"):
            tick(page, name)
        elif name == "lead":
            assert clear["built"] == "later"
            page.locator(".guide button.pick", has_text="Built 1978 or later").click()
            expect(page.locator(".guide")).not_to_have_attribute("data-question", "lead")
        elif name in clear:
            pick(page, name, clear[name])
        else:
            page.locator(".guide-tools button", has_text="Skip").click()
    expect(page.locator(".guide h3")).to_have_text("That is all that matters now")
    page.locator(".guide button", has_text="Read all reasons").click()
    expect(page.locator("#decision .slot .alarm").first).to_be_in_viewport(ratio=0)
    way = page.locator("#decision .items a", has_text="Skim over")
    way.click()
    expect(page).to_have_url(re.compile(r"/methods/skim-over/#.*times_painted=never"))
    verdict = page.locator(".verdict")
    expect(verdict).to_contain_text("For this ceiling, by your answers: closed.")
    expect(verdict).to_contain_text("Bare texture that goes soft when wet comes down with the wet compound.")
    expect(page.locator("#figures")).to_be_hidden()
    # Figures of this page join the link, and the answers stay.
    ready(page)
    field(page, "rooms").fill("10 x 10")
    page.locator("#takeoff button.act").scroll_into_view_if_needed()
    page.wait_for_timeout(600)  # the page glides to it
    page.locator("#takeoff button.act").click()
    expect(page).to_have_url(re.compile(r"rooms=10\+x\+10.*times_painted=never"))
    verdict.locator("summary").click()
    verdict.locator("a").click()
    page.wait_for_selector("#decision[data-engine]")
    assert page.locator("#decision-times_painted").input_value() == "never"


@pytest.mark.parametrize("ceiling", CEILINGS, ids=lambda one: one["id"])
def test_a_ceiling_opens_from_its_link_as_the_command_says(page, address, ceiling):
    page.goto(address + "reference/ceilings/")
    page.locator(f"#{ceiling['id']} a").click()
    page.wait_for_selector("#decision[data-engine]")
    assert shown_states(page) == states(ceiling["facts"])
    for name, value in ceiling["facts"].items():
        assert page.locator(f"#decision-{name}").input_value() == value
    assert page.locator('[data-listing="contradictions"]').count() == ("clash" in ceiling)


def test_a_place_is_written_and_one_that_is_not_known_says_so(page, address):
    open_guide(
        page,
        address,
        "#decision?asbestos_result=found&sag=no&stains=none&loose_board=tight&height=usual&building=house"
        "&heated_ceiling=no&loose_fill=none&sprinklers=no&paint_test=none&who_works=owner",
    )
    expect(page.locator(".guide")).to_have_attribute("data-question", "place")
    page.locator(".guide .answers input").fill("Narnia")
    expect(page.locator("#decision .notes")).to_contain_text("“Narnia”. Local rules were not checked")


def test_with_keys_alone(page, address):
    open_guide(page, address)
    page.locator(".guide button.pick").first.focus()
    page.keyboard.press("Enter")
    expect(page.locator(".guide h3")).to_be_focused()
    expect(page.locator(".guide h3")).to_have_text(LABELS["result_rooms"])


def test_all_questions_at_once(page, address):
    open_guide(page, address)
    page.locator(".guide-tools button", has_text="Show all questions").click()
    expect(page.locator("#decision .field:visible")).to_have_count(FIELDS)
    page.locator("#decision-sag").select_option("yes")
    expect(page.locator(".strip .state").first).to_have_text("closed")


def test_without_a_script_the_questions_the_chart_and_the_rules_stand(make_page, address):
    page = make_page(java_script_enabled=False)
    page.goto(address + GUIDE)
    assert page.locator("#decision .field:visible").count() == FIELDS
    page.locator("main a", has_text="chart of ways").click()
    expect(page.locator(".questions > li")).to_have_count(len(LABELS))
    assert page.locator(".chart tbody tr").count() > 50


SETTLED = "#decision?asbestos_result=none&result_rooms=this&result_layers=all"
TOGETHER = {
    "look": {"sag": "no"} | LOOKED,
    "people": {"who_works": "owner", "building": "house", "occupied": "yes", "household": "adults"},
    "room": {"may_drop": "yes", "light": "soft", "floors": "covered"},
}
BUILT = ("layers_up", "joists_carry", "rated_ceiling", "joists")


def come_to(page, screen):
    """Skip to the screen of that name."""
    for _ in range(30):
        name = page.locator(".guide").get_attribute("data-question")
        if name == screen:
            return
        page.locator(".guide-tools button", has_text="Skip").click()
        expect(page.locator(".guide")).not_to_have_attribute("data-question", name)
    raise AssertionError(f"the guide never asked {screen}")


@pytest.mark.parametrize("screen", TOGETHER)
def test_none_of_these_answers_each_question_of_the_screen_as_if_it_were_asked(page, address, screen):
    open_guide(page, address, SETTLED)
    come_to(page, screen)
    asked = TOGETHER[screen]
    assert page.locator(".guide button.tick").count() == len(asked)
    assert set(held(page, asked).values()) == {"unknown"}, "nothing is answered before somebody answers"
    page.locator(".guide .answers button", has_text="None of these").click()
    expect(page.locator(".guide")).not_to_have_attribute("data-question", screen)
    assert held(page, asked) == asked
    assert shown_states(page) == states(
        {"asbestos_result": "none", "result_rooms": "this", "result_layers": "all"} | asked
    )


def test_what_is_ticked_is_asked_with_all_its_choices_and_may_stay_unknown(page, address):
    open_guide(page, address, SETTLED)
    tick(page, "look", "Stains", "Cracks")
    for name, value in (("stains", "unknown"), ("cracks", "wide")):
        expect(page.locator(".guide h3")).to_have_text(LABELS[name])
        choices = dict(questions.question(name).answers)
        assert sorted(page.locator(".guide button.pick").all_inner_texts()) == sorted(choices.values())
        pick(page, name, value)
    wanted = TOGETHER["look"] | {"stains": "unknown", "cracks": "wide"}
    assert held(page, wanted) == wanted
    page.locator(".guide-tools button", has_text="Back").click()
    expect(page.locator(".guide h3")).to_have_text(LABELS["cracks"])
    page.locator(".guide-tools button", has_text="Back").click()
    page.locator(".guide-tools button", has_text="Back").click()
    expect(page.locator('.guide button.tick[aria-pressed="true"]')).to_have_count(2)
    page.locator(".guide button.tick", has_text="Stains").click()
    page.locator(".guide .answers button.act").click()
    pick(page, "cracks", "fine")
    wanted |= {"stains": "none", "cracks": "fine"}
    assert held(page, wanted) == wanted


def test_who_cannot_look_leaves_every_question_at_its_worst(page, address):
    open_guide(page, address, SETTLED)
    page.locator(".guide button.tick").first.click()
    page.locator(".guide button", has_text="I cannot look now").click()
    expect(page.locator(".guide")).not_to_have_attribute("data-question", "look")
    assert set(held(page, TOGETHER["look"]).values()) == {"unknown"}
    come_to(page, "build")
    page.locator(".guide button", has_text="No, none of it").click()
    expect(page.locator(".guide")).not_to_have_attribute("data-question", "build")
    assert set(held(page, BUILT).values()) == {"unknown"}
    assert set(shown_states(page)[:7]) == {"not known"}


def test_what_harms_unseen_is_asked_by_itself(page, address):
    """Nobody answers for the laboratory, for heat in a ceiling or for what lies above it by passing over a line."""
    open_guide(page, address, SETTLED)
    for name in ("heated_ceiling", "hand_test", "loose_fill", "times_painted", "patch_test"):
        come_to(page, name)
        expect(page.locator(".guide h3")).to_have_text(LABELS[name])
        assert page.locator(".guide button.tick").count() == 0


LEAD = {
    "Built 1978 or later": ("later", "unknown", False),
    "Before 1978: tested, below both limits": ("before-1978", "none", False),
    "Before 1978: lead was found": ("before-1978", "lead", False),
    "Before 1978: paint not tested, or not known": ("before-1978", "unknown", False),
    "Year not known": ("unknown", "unknown", True),
}


@pytest.mark.parametrize("said", LEAD)
def test_age_and_lead_are_asked_in_one_and_each_choice_says_what_it_answers(page, address, said):
    built, paint, asked_on = LEAD[said]
    open_guide(page, address, SETTLED)
    come_to(page, "lead")
    assert page.locator(".guide button.pick").all_inner_texts() == list(LEAD)
    page.locator(".guide button.pick", has_text=said).click()
    expect(page.locator(".guide")).not_to_have_attribute("data-question", "lead")
    assert held(page, ("built", "paint_test")) == {"built": built, "paint_test": paint}
    assert (page.locator(".guide").get_attribute("data-question") == "paint_test") == asked_on
    page.locator(".guide-tools button", has_text="Back").click()
    expect(page.locator('.guide button.pick[aria-pressed="true"]')).to_have_text(said)


def test_who_skips_the_age_is_asked_for_the_paint(page, address):
    open_guide(page, address, SETTLED)
    come_to(page, "lead")
    page.locator(".guide-tools button", has_text="Skip").click()
    expect(page.locator(".guide")).to_have_attribute("data-question", "paint_test")


def test_who_knows_how_it_is_built_is_asked_one_by_one(page, address):
    open_guide(page, address, SETTLED)
    come_to(page, "build")
    page.locator(".guide button", has_text="ask me one by one").click()
    for name, value in (("layers_up", "one"), ("joists_carry", "yes"), ("rated_ceiling", "no")):
        pick(page, name, value)
    assert held(page, BUILT[:3]) == {"layers_up": "one", "joists_carry": "yes", "rated_ceiling": "no"}


def test_a_figure_of_the_guide_that_does_not_work_says_so_and_one_left_out_is_asked(page, address):
    open_guide(page, address, SETTLED)
    come_to(page, "measured")
    page.locator(".guide .answers input").first.fill("eight")
    expect(page.locator(".guide .fault").first).to_contain_text("eight")
    page.locator(".guide button", has_text="Go on").click()
    expect(page.locator(".guide .answers input").first).to_be_focused()
    page.locator(".guide .answers input").first.fill("8")
    expect(page.locator(".guide .fault").first).to_be_hidden()
    page.locator(".guide button", has_text="Go on").click()
    expect(page.locator(".guide")).not_to_have_attribute("data-question", "measured")
    assert held(page, ("height", "texture_depth")) == {"height": "usual", "texture_depth": "unknown"}
    come_to(page, "texture_depth")


def test_no_verdict_stands_where_nothing_was_answered(page, address):
    page.goto(address + "methods/wet-scrape/")
    page.wait_for_selector("html[data-ready]")
    expect(page.locator(".verdict")).to_be_hidden()
