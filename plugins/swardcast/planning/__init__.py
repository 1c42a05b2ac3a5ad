"""Planning: how work would go that is not decided yet, for the manager and the committee alone."""
