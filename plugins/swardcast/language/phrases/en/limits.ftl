### Limits on play. What was decided and by whom is typed by the club and stands as typed.

limit-preferred-lies = preferred lies
limit-carry-only = carry only
limit-frost-delay = frost delay
limit-practice-ground = practice ground

# A whole entry, in sentences
limit-holds = { $what }.
limit-rule = Model Local Rule { $rule }.
limit-until = Until { $when }.
limit-decided-by = Decided by { $who }.
limit-lifted = Lifted.

# In a title: $name is one of the above; $when a day or a time of day; $what as typed.
limit-clause-lifted = { $name } lifted
limit-clause-until = { $name } until { $when }
limit-clause-holds = { $name }: { $what }
