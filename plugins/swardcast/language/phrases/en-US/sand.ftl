# What sand is weighed in, as a heading has it.
sand-unit = tons
