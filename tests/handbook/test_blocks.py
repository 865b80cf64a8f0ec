"""What stands beside the pages' own data: phases of the work, and what a hold point proves."""

from handbook import build
from handbook.content.reading import Hold
from handbook.make import blocks


def _steps():
    return {
        one.hold if isinstance(one, Hold) else one.id: one
        for page in build.read_all()
        for block in page.blocks
        if block.kind == "steps"
        for one in block.data.root
    }


def test_a_phase_begins_at_a_step_that_is_there():
    assert not set(blocks.phases(build.DOCS)) - set(_steps())


def test_only_a_hold_point_proves_a_caution_settled():
    found = _steps()
    for caution_id, holds in blocks.PROVED_BY.items():
        for one in holds:
            assert isinstance(found[one], Hold), (caution_id, one)
    for one in blocks.PROVED_BY["asbestos-first"]:
        assert "asbestos" in found[one].until
