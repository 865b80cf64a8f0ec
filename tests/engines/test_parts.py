"""A page's forms answer in the small engine with the parts that the page lists, and with no other in reach."""

import json
import re

import pytest

from ask import SITE, in_cpython, in_node, packed
from calc import catalogue

pytestmark = [pytest.mark.engines, pytest.mark.slow]
FORM = re.compile(r'<(?:section|details) class="calc" id="([^"]+)"')
NOWHERE = "engine/nowhere.bin"


def pages_with_forms():
    """By the parts that they list: the calculators of the pages."""
    found = {}
    for path in sorted(SITE.rglob("index.html")):
        page = path.read_text(encoding="utf-8")
        listed = re.search(r'id="engines" data-parts="([0-9 ]+)"', page)
        if FORM.search(page):
            assert listed, path
            found.setdefault(listed.group(1), set()).update(FORM.findall(page))
    return found


@pytest.mark.parametrize(("listed", "forms"), sorted(pages_with_forms().items()))
def test_the_listed_parts_are_enough(listed, forms):
    told = json.loads(packed())
    told["shown"] = [int(at) for at in listed.split()]
    told["small_needs"] = {}  # nothing is brought on demand
    told["small_parts"] = [one if at in told["shown"] else NOWHERE for at, one in enumerate(told["small_parts"])]
    for name in sorted(forms):
        asked = [dict(catalogue.find(name).example)]
        assert in_node("small", name, asked, engines_json=json.dumps(told)) == in_cpython(name, asked), name
