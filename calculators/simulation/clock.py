"""The control's clock: what it shows, and when it will show a time."""

DAY = 1440.0  # min


class Clock:
    """A clock that power cuts set back; all times in minutes.

    offset: shown time less true time. hold_up: the longest cut it keeps time through, 0 for a
    mechanical clock, which loses every cut in full. blank: it began again at midnight after a
    longer cut and nobody set it, or it has no power.
    """

    __slots__ = ("offset", "hold_up", "stopped_at", "flashing")

    def __init__(self, offset=0.0, hold_up=0.0):
        self.offset, self.hold_up = offset, hold_up
        self.stopped_at = None
        self.flashing = False

    def shown(self, now):
        """Return the time of day that it shows [min since midnight]."""
        return ((now if self.stopped_at is None else self.stopped_at) + self.offset) % DAY

    def stop(self, now):
        """Lose power, or break, at a true time."""
        if self.stopped_at is None:
            self.stopped_at = now

    def run(self, now):
        """Have power again at a true time."""
        if self.stopped_at is None:
            return
        lost = now - self.stopped_at
        self.stopped_at = None
        if not self.hold_up:
            self.offset -= lost
        elif lost > self.hold_up:
            self.offset = -(now % DAY)
            self.flashing = True

    def next_time(self, shown, now):
        """Return the next true time, after now, at which it will show a time of day."""
        wait = (shown - self.offset - now) % DAY
        return now + (wait if wait > 1e-6 else DAY)
