fixtures-heading = Competitions and visitors' days
fixtures-left-out = Other fixtures in between are left out.
