"""What came in and went out over a story, so that every balance can be drawn up."""


class Ledger:
    """Running totals: water in gal, hardness in grains, salt in lb.

    softened, passed_by: water to the house that came from the softener, or from its valve while a
    regeneration sent it past the bed (water that a bypass or seals let around the bed counts as
    softened: its hardness tells); crossed_water: raw water that joined the hot side; hot_water: of
    them all, what ran hot; to_drain: by regenerations; leaked: raw water lost to the drain in
    service.
    raw_grains: hardness of softened and passed_by had they stayed raw; tap_grains: what they
    carried; heater_in, heater_out; scale_grains: added by scale; crossed_grains: of crossed_water;
    recovered: capacity that brine gave back; lost: capacity gone with sites or beads;
    regeneration_grains: hardness that the water of regenerations brought; drain_grains: what they
    sent away; leaked_grains: of leaked.
    salt_to_bed, salt_rinsed, salt_to_taps: salt after it left the brine tank, as chloride;
    exchanged: salt whose sodium stayed in the bed.
    """

    __slots__ = (
        "softened", "passed_by", "crossed_water", "hot_water", "to_drain", "leaked",
        "raw_grains", "tap_grains", "heater_in", "heater_out", "scale_grains", "crossed_grains",
        "recovered", "lost", "regeneration_grains", "drain_grains", "leaked_grains",
        "salt_to_bed", "salt_rinsed", "salt_to_taps", "exchanged",
    )  # fmt: skip

    def __init__(self):
        for name in self.__slots__:
            setattr(self, name, 0.0)
