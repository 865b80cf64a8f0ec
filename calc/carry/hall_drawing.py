"""The hall, the door and the room from above, with the sheet where it is tightest."""

from fractions import Fraction

from calc.carry.door import Doorway, Pinch
from calc.core.drawing import Dimension, Drawing, Label, Shape
from calc.text.door import say


def plan(way: Doorway, pinch: Pinch, told: tuple[str, str, str]) -> Drawing:
    """Return the drawing of `way` with the longest sheet at its `pinch`; `told` is the sheet's length without the leeway, the
    hall's width and the room's depth as a person reads them."""
    zero = Fraction(0)
    right_in = way.door_in + max(way.beyond_in, way.far_in)
    left_in = max(way.before_in, way.near_in)
    top_in = way.wall_in + way.deep_in
    outline = (
        (-way.before_in, -way.hall_in), (way.door_in + way.beyond_in, -way.hall_in), (way.door_in + way.beyond_in, zero), (way.door_in, zero),
        (way.door_in, way.wall_in), (way.door_in + way.far_in, way.wall_in), (way.door_in + way.far_in, top_in), (-way.near_in, top_in),
        (-way.near_in, way.wall_in), (zero, way.wall_in), (zero, zero), (-way.before_in, zero),
    )  # fmt: skip

    def put(at: tuple[Fraction, Fraction]) -> tuple[Fraction, Fraction]:
        return at[0] + left_in, at[1] + way.hall_in

    shapes = [Shape(tuple([put(at) for at in outline]), "cut", "none", False)]
    labels = []
    length, hall, room = told
    ends = pinch.ends
    description = say(
        "carry.plan.tightest", "From above: the hall {hall} wide, the door in its side, the room {room} deep, and a sheet {length} long where it is tightest.",
        hall=hall, room=room, length=length,
    )  # fmt: skip
    if not ends:
        tail_in = -way.before_in
        ends = ((tail_in, -way.hall_in / 2), (tail_in + pinch.longest_in, -way.hall_in / 2))
        description = say(
            "carry.plan.in_hall", "From above: the hall {hall} wide, the door in its side, the room {room} deep, and a sheet {length} long in the hall.",
            hall=hall, room=room, length=length,
        )  # fmt: skip
    if pinch.longest_in > 0:
        shapes.append(Shape(tuple([put(at) for at in ends]), "curve", "none", False))
        labels.append(Label(put(ends[1]), "right", say("carry.plan.sheet", "sheet")))
    return Drawing(
        title=say("carry.plan.title", "The tightest place at the door"),
        description=description,
        width=left_in + right_in,
        height=way.hall_in + top_in,
        stretch=Fraction(1),
        shapes=tuple(shapes),
        dimensions=(
            Dimension(put((-left_in, -way.hall_in)), put((-left_in, zero)), "left", say("carry.plan.hall", "hall {width}", width=hall)),
            Dimension(put((-left_in, way.wall_in)), put((-left_in, top_in)), "left", say("carry.plan.room", "room {depth}", depth=room)),
        ),
        labels=tuple(labels),
        scale_note=say("carry.plan.note", "To scale, seen from above."),
    )  # fmt: skip
