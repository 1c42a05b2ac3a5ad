fixtures-heading = Tournaments and outside events
fixtures-left-out = Other events in between are left out.
