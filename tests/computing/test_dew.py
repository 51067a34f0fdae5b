"""The dew point as plain numbers: a psychrometrics library, and the working that prints it."""

from itertools import product

import psychrolib
import pytest

from specgen.computing.dew import find_dew_point, find_humidity
from tests.computing.asked import sum_of

GRID = list(product((-10, 0, 5, 10, 20, 30, 40), (20, 50, 85, 100)))


@pytest.mark.parametrize(("air", "humidity"), GRID)
def test_the_dew_point_is_that_of_a_psychrometrics_library(air: float, humidity: float) -> None:
    ours = find_dew_point(air, humidity)
    assert find_humidity(air, ours) == pytest.approx(humidity)
    if ours > 0:  # below freezing the library tells the frost point
        psychrolib.SetUnitSystem(psychrolib.SI)
        assert ours == pytest.approx(psychrolib.GetTDewPointFromRelHum(air, humidity / 100), abs=0.05)


@pytest.mark.parametrize(("air", "humidity"), [(70, 50), (62, 60), (20, 85)])
def test_it_is_that_of_the_working(air: int, humidity: int) -> None:
    made = sum_of("dew-point", air=f"{air} F", rh=f"{humidity} %")
    assert find_dew_point((air - 32) / 1.8, humidity) * 1.8 + 32 == pytest.approx(made.result, abs=1e-9)
