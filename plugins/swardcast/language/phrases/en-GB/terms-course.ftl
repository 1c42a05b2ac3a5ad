### Terms of work on the course whose words differ between the two Englishes.

-cutting-height = cutting height
