limit-trolleys = { -trolleys }
limit-buggies = { -buggies }
