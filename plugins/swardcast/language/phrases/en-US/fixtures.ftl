fixtures-heading = Tournaments and outside events
