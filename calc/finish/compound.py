"""The amounts of compound that bury a texture: each clause on quantities, so that it tells its own working.

Two parts lie on the ceiling when it is done: the fill between the bumps, and the film over their tips. Compound shrinks as
it dries, so more is laid than stays; some more stays on tools and in pails.
"""

from calc.numbers.quantity import Quantity, greatest
from calc.text.door import say


def even_fill(*, texture_depth: Quantity, open_part: Quantity) -> Quantity:
    """Return the fill between the bumps as an even layer [in]: `texture_depth` [in] times its `open_part` [%]. Source: geometry."""
    return (texture_depth * open_part).cited("geometry")


def film(*, coats: Quantity, thickness: Quantity) -> Quantity:
    """Return the film over the tips [in]: `coats` [-] of `thickness` [in, dry] each. Source: geometry."""
    return (coats * thickness).cited("geometry")


def laid(*, area: Quantity, fill: Quantity, over: Quantity, shrinkage: Quantity) -> Quantity:
    """Return the compound that is laid over `area` [sq ft] so that `fill` and the film `over` it [in] stay, as it loses `shrinkage` [%]
    by volume. Sources: geometry, and the gallon of 231 cubic inches by definition."""
    return (area * (fill + over) / (1 - shrinkage)).cited("geometry", "us-customary-definitions")


def dry_load(*, wet_weight: Quantity, water: Quantity, area: Quantity) -> Quantity:
    """Return what stays on the ceiling [lb/sq ft]: `wet_weight` [lb] less its `water` [% by weight], over `area` [sq ft]."""
    return wet_weight * (1 - water) / area


def heaviest(*, wet: Quantity, dry: Quantity, fill: Quantity, over: Quantity, coat: Quantity) -> Quantity:
    """Return the load at its heaviest [lb/sq ft]: each coat is dry before the next, so that is under the first coat or under the last.

    `wet` and `dry` [lb/sq ft] are the loads of the whole layer, `fill` and `over` [in] its parts, `coat` [in] one coat of the film.
    """
    layer = (fill + over).named(say("skim.layer", "whole layer"), "in")
    first = (wet * (fill + coat) / layer).named(say("skim.layer.first", "first coat wet"), "psf")
    last = (dry + (wet - dry) * coat / layer).named(say("skim.layer.last", "last coat wet"), "psf")
    return greatest(first, last).cited("geometry")
