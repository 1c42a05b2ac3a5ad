site-from-the-manager = From the { -course-manager }
# $use, $name, $credit and $licence are as typed in weather/sources.yaml
site-weather-source = Weather, { $use }: { $name }. { $credit } Licence: { $licence }.
