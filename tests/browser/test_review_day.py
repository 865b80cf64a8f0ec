"""A rule whose day of review is past for the reader says so beside it; until that day, and without a script, the day alone stands there."""

import pytest
from playwright.sync_api import expect

from conftest import until

pytestmark = [pytest.mark.browser, pytest.mark.slow]

LAST, PAST = "2027-11-25T12:00:00", "2027-11-26T12:00:00"  # the limits' day of review, and the day after


@pytest.fixture
def at(make_page):
    """Return a function that opens a page whose clock stands at a moment."""

    def opened(moment, **options):
        page = make_page(**options)
        page.clock.set_fixed_time(moment)
        return page

    return opened


def test_the_page_of_limits_tells_each_limit_that_is_overdue(at, address):
    page = at(LAST)
    page.goto(address + "reference/limits/")
    days = page.locator("time[data-review-by]")
    count = days.count()
    assert count >= 9 and days.first.inner_text() == "2027-11-25"
    until(page, "document.querySelector('.offline-state').textContent !== ''")
    expect(page.locator(".overdue")).to_have_count(0)
    late = at(PAST)
    late.goto(address + "reference/limits/")
    expect(late.locator("time > .overdue")).to_have_count(count)
    expect(late.locator(".overdue").first).to_have_text("Review was due on 2027-11-25. Ask before you go by it.")


def test_the_chart_of_rules_is_overdue_by_the_day_where_the_reader_is(at, address):
    for moment, count in (("2027-11-27T06:30:00Z", 0), ("2027-11-27T07:30:00Z", 1)):
        page = at(moment, timezone_id="America/Denver")
        page.goto(address + "reference/chart/")
        assert page.locator("time[data-review-by='2027-11-26']").count() == 1
        expect(page.locator(".overdue")).to_have_count(count)


@pytest.mark.parametrize(("moment", "overdue"), [(LAST, False), (PAST, True)])
def test_an_answer_tells_that_its_limit_is_overdue(at, address, moment, overdue):
    page = at(moment)
    page.goto(address + "work-out/samples/#samples?area_sqft=280&building=house&place=Colorado")
    row = page.locator("#samples .items > li", has_text="Colorado, house").first
    expect(row).to_contain_text("Reviewed 2026-11-25, review by 2027-11-25.")
    expect(page.locator("#samples [data-shows=answer]")).to_have_count(1)
    expect(row.locator(".overdue")).to_have_count(1 if overdue else 0)
    page.locator("#samples-area_sqft").fill("20")  # an answer that takes its place is looked at too
    expect(row.locator(".value")).to_have_text("not reached")
    expect(row.locator(".overdue")).to_have_count(1 if overdue else 0)
    page.goto(address + "work-out/lead/#lead?disturbed_sqft=7&year_built=1950")
    row = page.locator("#lead .items > li", has_text="Lead-safe renovation")
    expect(row.locator(".value")).to_have_text("applies")
    expect(row.locator(".overdue")).to_have_count(1 if overdue else 0)


def test_the_choice_of_way_tells_that_its_rules_are_overdue(at, address):
    for moment, count in (("2027-11-26T12:00:00", 0), ("2027-11-27T12:00:00", 8)):
        page = at(moment)
        page.goto(address + "prepare/choose/#decision?asbestos_result=found")
        expect(page.locator("#decision [data-shows=answer]")).to_have_count(1)
        expect(page.locator("#decision > .result .items > li[data-review-by] > .overdue")).to_have_count(count)


def test_without_a_script_the_day_stands_there(chromium, address):
    context = chromium.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(address + "reference/limits/")
    assert page.locator(".limits > li").first.inner_text().endswith("review by 2027-11-25")
    page.goto(address + "work-out/lead/")
    assert "review by 2027-11-25." in page.locator("#lead").text_content()
    context.close()
