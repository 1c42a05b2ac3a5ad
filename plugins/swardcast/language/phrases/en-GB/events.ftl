held-back-dull-weather = dull weather
held-back-unfed = want of { -feed }
