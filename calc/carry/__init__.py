"""How long a sheet gets from the truck to the room, passage by passage."""
