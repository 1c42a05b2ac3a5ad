fixtures-heading = Competitions and visitors' days
