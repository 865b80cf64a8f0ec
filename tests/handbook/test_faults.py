"""Each fault of content can be provoked, and is told with its code at its own line and column."""

import re

import pytest

from calc.decision import rules
from calc.evidence import limits
from handbook import build
from handbook.content import reading
from handbook.content.sentences import prose
from handbook.lint import checks, review

HEAD = "---\ntitle: Try\nkind: home\nsummary: A page.\nreviewed: 2026-11-25\nfacts: Made up.\n---\n"
WAY, TASK = (HEAD.replace("kind: home", f"kind: {kind}") for kind in ("way", "task"))
STOP = "# Try\n\n```caution\nid: asbestos-first\n```\n"


def faults_of(folder, text, generated=frozenset()):
    docs = folder / "docs"
    docs.mkdir(exist_ok=True)
    path = docs / "try.md"
    path.write_text(text, encoding="utf-8")
    page = reading.read_page(path, folder)
    checks.check_pages([page], docs, set(generated))
    return [str(one) for one in sorted(page.faults)]


def steps(*rows):
    return "```steps\n" + "\n".join(rows) + "\n```\n"


HARD = (
    "Subsequently administrators characteristically institutionalize extraordinarily incomprehensible considerations. "
    * 20
)
CASES = [
    ("no head\n", "docs/try.md:1:1: HEAD"),
    (HEAD.replace("kind: home", "kind: poem"), "docs/try.md:3:7: DATA kind"),
    (HEAD.replace("title: Try\n", ""), "docs/try.md:2:1: DATA title"),
    (HEAD.replace("title: Try", "title: Try\ntitle: Two"), "docs/try.md:3:1: YAML the key title is given twice"),
    (HEAD.replace("title: Try", "title: ["), "docs/try.md:4:8: YAML"),
    (HEAD + "```poem\na: 1\n```\n", "docs/try.md:8:4: BLOCK there is no block called poem"),
    (HEAD + "```steps\n- id: a\n", "docs/try.md:8:1: BLOCK the block steps is never closed"),
    (HEAD + "```steps\n```\n", "docs/try.md:9:1: YAML the block is empty"),
    (HEAD + steps("- id: Bad Id", "  do: Look."), "docs/try.md:9:7: DATA"),
    (HEAD + steps("- id: one", "  do: Look.", "  colour: red"), "docs/try.md:11:11: DATA"),
    (HEAD + steps("- id: one", "  do: Look.", "- id: one", "  do: Look."), "docs/try.md:11:7: STEP-ID"),
    (HEAD + steps("- id: one", "  do: " + "very " * 20 + "long."), "docs/try.md:10:7: STEP-LONG 21 words"),
    (HEAD + steps("- id: one", "  do: Look.", "  caution: moon"), "docs/try.md:11:12: CAUTION"),
    (HEAD + "```caution\nid: moon\n```\n", "docs/try.md:9:5: CAUTION there is no caution called moon"),
    (HEAD + "```calculator\nuse: moon\n```\n", "docs/try.md:9:6: CALCULATOR there is no calculator called moon"),
    (HEAD + '```calculator\nuse: drying\nexample:\n  humidity_pct: "140"\n```\n', "docs/try.md:11:17: CALCULATOR humidity_pct"),
    (HEAD + "```sources\n- geometry\n- moon\n```\n", "docs/try.md:10:3: SOURCE there is no source called moon"),
    (WAY + "# Try\n\nFirst some words.\n\n" + STOP[7:], "docs/try.md:1:1: STOP"),
    (WAY + "# Try\n", "docs/try.md:1:1: STOP"),
    (HEAD + steps("- id: one", "  do: Scrape the ceiling."), "docs/try.md:10:7: HAZARD “scrape” needs the caution asbestos-first"),
    (TASK + "# Try\n\nThen scrape it.\n", "docs/try.md:10:1: HAZARD “scrape” needs the caution asbestos-first"),
    (WAY + STOP + steps("- id: one", "  do: Sand the coat."), "docs/try.md:15:7: HAZARD “sand” needs the caution dust-silica"),
    (WAY + STOP + steps("- id: one", "  do: Climb the ladder."), "HAZARD “climb” needs the caution fall-ladder"),
    (HEAD + "This ceiling is safe.\n", "docs/try.md:8:14: WORD “is safe” is never printed"),
    (HEAD + "Look <script>here</script>.\n", "docs/try.md:8:6: MARKUP HTML beyond"),
    (HEAD + "You are exempt.\n", "docs/try.md:8:9: WORD “exempt”"),
    (HEAD + "See [there](there.md).\n", "docs/try.md:8:13: LINK there.md leads nowhere"),
    (HEAD + "See [out](../../etc/passwd).\n", "LINK"),
    (HEAD + HARD, "docs/try.md:1:1: READING"),
    (HEAD + "```figure\nuse: moon\n```\n", "docs/try.md:9:6: FIGURE there is no drawing called moon"),
    (HEAD + steps("- id: one", "  do: Look.", "  figure: moon"), "docs/try.md:11:11: FIGURE there is no drawing called moon"),
    (HEAD + "```ways\n- way: moon\n  line: Up.\n  days: none\n```\n", "docs/try.md:9:8: COVER there is no way called moon"),
    (TASK + "```doors\n- to: try.md\n  says: In\n  more: Here\n```\n", "docs/try.md:9:1: COVER a block doors stands on the first page alone"),
    (HEAD + "```doors\n- to: moon.md\n  says: Up\n  more: There\n```\n", "docs/try.md:9:7: LINK moon.md leads nowhere"),
    (HEAD + steps("- id: one", "  do: Look.", "  wait: a while"), "docs/try.md:11:9: DATA"),
    (HEAD + steps("- id: one", "  do: Fill {wetting.water_gal}."), "docs/try.md:10:12: LIVE the form wetting does not stand on this page"),
    (HEAD + steps("- id: one", "  do: Look.", "- id: two", "  do: Look.", "  was: [one]"), "docs/try.md:11:7: STEP-ID the id one stands already"),
    (TASK + "# Try\n", "docs/try.md:1:1: PART a task has a part “## What good looks like”"),
    (WAY + STOP, "docs/try.md:1:1: PART a way has one screen for a customer"),
    (HEAD + "Look at the cieling.\n", "docs/try.md:8:13: SPELL “cieling”"),
    (HEAD + "Hang the slab.\n\n```terms\n- term: board\n  means: Gypsum.\n  avoid: [slab]\n```\n", "docs/try.md:8:10: TERM “slab” is called board"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "says"), CASES)
def test_a_fault_is_told_where_it_stands(tmp_path, text, says):
    found = faults_of(tmp_path, text)
    assert any(says in one for one in found), found


def test_every_code_is_listed_and_provoked(tmp_path):
    told = {one.split(" ")[1] for text, _ in CASES for one in faults_of(tmp_path, text)}
    # Provoked in tests of their own: rules of the choice, the book as a whole, the engines.
    own = {code for code in checks.CODES if code.startswith("RULE-")} | {
        "LOWER",
        "ANCHOR",
        "NAV",
        "STEP-GONE",
        "UNUSED",
        "MESSAGE-TWICE",
        "ANSWER-BELOW",
    }
    assert told | own == set(checks.CODES)


def test_all_faults_come_at_once(tmp_path):
    text = (
        HEAD
        + "You are exempt.\n\n"
        + steps("- id: one", "  do: Scrape it.", "- id: one", "  do: Look.", "  caution: moon")
    )
    codes = [one.split(" ")[1] for one in faults_of(tmp_path, text)]
    assert codes == ["STOP", "WORD", "HAZARD", "STEP-ID", "CAUTION"]


def test_a_caution_covers_the_steps_after_it(tmp_path):
    text = (
        WAY
        + STOP
        + steps("- id: one", "  do: Sand the coat.", "  caution: dust-silica", "- id: two", "  do: Sand again.")
    )
    assert [one for one in faults_of(tmp_path, text) if " PART " not in one] == []


def test_a_link_to_a_generated_page_is_good(tmp_path):
    assert (
        faults_of(
            tmp_path, HEAD.replace("home", "reference") + "See [all](reference/sources.md).\n", {"reference/sources.md"}
        )
        == []
    )


def test_the_book_itself_has_no_fault():
    assert len(build.read_all()) == 47


def test_reading_level_of_the_book():
    for page in build.read_all():
        if len(prose(page).split()) >= 100:  # fewer words beside a table say nothing about reading
            assert max(checks.grades(prose(page))) <= 7, page.shown


def test_a_rule_past_its_review_date_warns_with_its_place():
    import datetime

    assert review.due(datetime.date(2027, 11, 25)) == []
    late = review.due(datetime.date(2027, 11, 26))
    own = [one for one in late if one.startswith("calc/evidence/limits.py:")]
    assert len(own) == len(limits.LIMITS)
    assert re.match(r"calc/evidence/limits.py:\d+:1: REVIEW the limit federal-area was due .* on 2027-11-25$", own[0])
    later = review.due(datetime.date(2027, 11, 27))
    assert len([one for one in later if re.match(r"calc/decision/(hazard|work)_rules.py:\d+:5: ", one)]) == len(
        rules.RULES
    )
