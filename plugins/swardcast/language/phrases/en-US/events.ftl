held-back-dull-weather = cloudy weather
held-back-unfed = lack of { -feed }
