"""A job of our own, small enough to be dated on paper: two faces, one crew, shifts from 7 to 15."""

from pathlib import Path
from typing import Any

from specgen import pipeline
from specgen.model.schedule import Activity, Schedule
from tests.support import merged, project_of

EVERY = ["boards", "rasp", "mesh", "second_pass", "smoothing_1", "smoothing_2", "primer", "gloss"]
# E1 is 360 sq ft, E2 180. One coat of smoothing, two of gloss.
TWO_FACES: dict[str, Any] = {
    "walls": {
        "W1": {
            "substrate": {"kind": "cement_board"},
            "wrb": {"kind": "none"},
            "attachment": {"method": "adhesive_notched_trowel", "cure_hours": 24},
            "mesh": {"layers": [{"kind": "standard"}]},
            "base_coat": {"first_pass_dry_hours": 12, "cure_hours": 24},
        }
    },
    "elevations": {
        "E1": {"width": "20 ft", "height": "18 ft", "openings": {}},
        "E2": {"width": "20 ft", "height": "9 ft", "openings": {}},
    },
    "smoothing": {"coats": 1, "dry_hours": 24},
    "primer": {"coats": 1, "dry_hours": 12},
    "gloss": {"coats": 2, "touch_dry_hours": 2, "dry_hours": 24},
    "crews": {
        "red": {
            "steps": EVERY,
            "rates": {
                "boards": "90 ft2/h",
                "rasp": "180 ft2/h",
                "mesh": "120 ft2/h",
                "second_pass": "120 ft2/h",
                "smoothing_1": "180 ft2/h",
                "smoothing_2": "180 ft2/h",
                "primer": "360 ft2/h",
                "gloss": "360 ft2/h",
            },
        }
    },
    "schedule": {
        "work_start": "2027-06-28",
        "shift_start": "07:00",
        "shift_hours": 8,
        "days_off": ["sat", "sun"],
        "holidays": "US",
    },
}


def schedule_of(folder: Path, change: Any = None, job: Any = None) -> Schedule:
    """The schedule of that job, or another, with a change laid over it."""
    resolver = pipeline.make_resolver(project_of(folder, merged(job or TWO_FACES, change or {})))
    made = resolver((), "schedule")
    assert isinstance(made, Schedule)
    return made


def find(schedule: Schedule, mark: str) -> Activity:
    """An activity by its mark."""
    (found,) = (activity for activity in schedule.activities if activity.mark == mark)
    return found


def dates(schedule: Schedule, *marks: str) -> list[str]:
    """Start and end of activities, as `07-01 10:00 to 07-01 11:30`."""
    form = "%m-%d %H:%M"
    return [f"{one.start.strftime(form)} to {one.end.strftime(form)}" for one in (find(schedule, m) for m in marks)]
