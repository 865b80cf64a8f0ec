"""Where a page stands in the book: its parts, its number, its neighbors; and the contents that lead to all of it."""

import yaml

from handbook import build
from handbook.make import contents, pages, sheets

FOLDED = """# Way

## Loose words

<details class="fold" id="in-short" open><summary><h2>In short</h2></summary>
<section class="calc" id="board"><h2>Sheets</h2></section></details>
<details class="working"><summary>Working</summary></details>
<details id="steps" class="fold"><summary><h2 id="own">Steps</h2></summary></details>
"""


def test_the_parts_of_a_page_are_its_headings():
    text = '# Task\n\n## When it *fits*\n\n<section class="calc" id="board"><h2>Sheets</h2></section>\n\n## Sheets\n'
    assert sheets.outline(text) == [["when-it-fits", "When it fits"], ["board", "Sheets"]]


def test_the_parts_of_a_page_with_folds_are_its_folds():
    folds = sheets.outline(FOLDED)
    assert folds == [["in-short", "In short"], ["own", "Steps"]]


def test_a_page_is_placed_once_and_keeps_its_own_head():
    text = '---\ntitle: "Board: over"\nreviewed: 2026-11-26\n---\n\n# Board\n\n## Steps\n'
    placed = sheets.placed("methods/board-over.md", text)
    head, body = yaml.safe_load(placed.split("---\n")[1]), placed.split("---\n", 2)[2]
    assert head["title"] == "Board: over" and str(head["reviewed"]) == "2026-11-26"
    assert head["sheet"] == "W-5" and head["section"] == "Ways" and head["outline"] == [["steps", "Steps"]]
    assert body == "\n# Board\n\n## Steps\n"


def test_all_ways_are_one_stop_between_preparation_and_finish():
    ways = [one for one in sheets.book() if one.section == sheets.WAYS]
    assert len(ways) == 8
    around = {sheets._neighbors(one) for one in ways}
    assert len(around) == 1
    before, after = around.pop()
    assert before.section == "Prepare" and after.section == "Finish"
    assert sheets._neighbors(before)[1].path == sheets._neighbors(after)[0].path == "contents.md#ways"


def test_the_contents_lead_to_every_page_that_stands_and_to_no_other():
    found = build.read_all()
    text = contents.contents_page(found, {"work-out/board.md": '---\nsummary: "Sheets."\n---\n'})
    for one in sheets.book():
        if one.section:
            assert f'href="../{one.path.removesuffix(".md")}/"' in text, one
    assert 'href="../work-out/board/"' in text and "../work-out/skim/" not in text
    assert 'href="../prepare/cover/#sheeting"' in text, "where it has no page, the page that asks for it"
    assert set(pages.made(found)) == set(pages.GENERATED)
