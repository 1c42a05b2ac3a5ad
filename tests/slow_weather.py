"""The weather to come once more, by plain loops over dictionaries: no array, no code of the package's science."""

from __future__ import annotations

import math
from collections.abc import Mapping
from datetime import date, timedelta
from statistics import fmean, pstdev

T_90 = {1: 3.0777, 2: 1.8856, 3: 1.6377, 4: 1.5332, 5: 1.4759, 6: 1.4398, 7: 1.4149, 8: 1.3968, 29: 1.3114}
"""0.9 quantiles of Student's t by degrees of freedom, from a printed table."""
Z_90 = 1.2816

Days = Mapping[date, float]


def _place(day: date) -> int:
    return date(2000, day.month, day.day).timetuple().tm_yday - 1


def _same_day(day: date, year: int) -> date:
    return day.replace(year=year, day=28) if (day.month, day.day) == (2, 29) and year % 4 else day.replace(year=year)


class SlowWeather:
    """Climate, fading and members.

    Args:
        history: daily means of whole past years, C.
        observed: daily means up to yesterday, C.
        forecast: daily means from today on, C.
        today: the first day that is not observed.
    """

    def __init__(self, history: Days, observed: Days, forecast: Days, today: date) -> None:
        self.history, self.observed, self.forecast, self.today = history, observed, forecast, today
        self.first, self.last = min(history), max(history)
        self.usual = self._climate()
        self.anomalies = {day: value - self.usual[_place(day)] for day, value in history.items()}
        self.fading = [self._fading(ago) for ago in range(1, 15)]
        self.level = self._level()

    def _climate(self) -> list[float]:
        by_place: list[list[float]] = [[] for _ in range(366)]
        for day, value in self.history.items():
            by_place[_place(day)].append(value)
        return [fmean(v for step in range(-15, 16) for v in by_place[(place + step) % 366]) for place in range(366)]

    def _fading(self, ago: int) -> float:
        pairs = [(a, self.anomalies[d + timedelta(days=ago)]) for d, a in self.anomalies.items()
                 if d + timedelta(days=ago) in self.anomalies]  # fmt: skip
        slope = sum(before * after for before, after in pairs) / sum(before**2 for before, _ in pairs)
        return min(1.0, max(0.0, slope))

    def _level(self) -> float:
        if (self.last - self.first).days + 1 <= 3652:
            return 0.0
        begin = self.last - timedelta(days=3651)
        return 0.5 * fmean(anomaly for day, anomaly in self.anomalies.items() if day >= begin)

    def anomaly(self, day: date) -> float:
        """A past day's anomaly; after the end of the record its first years come again, a missing day has none."""
        if day > self.last:
            after = self.last + timedelta(days=1)
            again = _same_day(after, self.first.year)
            again = again if again >= self.first else _same_day(after, self.first.year + 1)
            day = again + (day - after)
        return self.anomalies.get(day, 0.0)

    def _slow(self, day: date) -> float:
        return sum(self.anomaly(day + timedelta(days=step)) for step in range(-15, 16)) / 31

    def _begins(self) -> list[date]:
        """The calendar day in each past year that has 90 of the 100 days from it on."""
        begins = []
        for year in range(self.first.year, min(self.today.year, self.last.year + 1)):
            begin = _same_day(self.today, year)
            days = [begin + timedelta(days=step) for step in range(100)]
            if sum(day in self.history or day > self.last for day in days) >= 90:
                begins.append(begin)
        return begins

    def members(self, days: int) -> list[list[float]]:
        """Temperatures from today on, C, one list for each member: years in order, each with its shifts."""
        begins = self._begins()
        count = len(begins)
        factor = T_90[count - 1] / Z_90 * math.sqrt(1 + 1 / count)
        share = math.sqrt(factor**2 * count / (count - 1) - 1)
        shifts = (-10, 0, 10) if count >= 10 else (-20, -10, 0, 10, 20)
        scale = math.sqrt(fmean(shift**2 for shift in shifts))
        ago = next((n for n in range(1, 6) if self.today - timedelta(days=n) in self.observed), None)
        fading = [0.0] * days
        now = 0.0
        if ago is not None:
            seen = self.today - timedelta(days=ago)
            now = self.observed[seen] - self.usual[_place(seen)]
            for lead, left in enumerate(self.fading[ago - 1 :][:days]):
                fading[lead] = left
        own = []
        for number, begin in enumerate(begins):
            other = begins[(number + 1) % count]
            for shift in shifts:
                start, then = begin + timedelta(days=shift), other + timedelta(days=shift)
                moved = now - self.level - self.anomaly(start - timedelta(days=ago or 1))
                own.append([
                    self.anomaly(start + timedelta(days=lead)) + self.level + fading[lead] * moved
                    + shift / scale * (1 - fading[lead]) * share * self._slow(then + timedelta(days=lead))
                    for lead in range(days)
                ])  # fmt: skip
        return self._forecast(own, days)

    def _forecast(self, own: list[list[float]], days: int) -> list[list[float]]:
        run = [self.today + timedelta(days=lead) for lead in range(days)]
        members = [[self.usual[_place(day)] + a for day, a in zip(run, one, strict=True)] for one in own]
        for lead, day in enumerate(run):
            if (told := self.forecast.get(day)) is None:
                continue
            there = [one[lead] for one in own]
            middle, scale = fmean(there), min(1.0, (1.0 + 0.25 * lead) / pstdev(there))
            for member, value in zip(members, there, strict=True):
                member[lead] = told + scale * (value - middle)
        return members
