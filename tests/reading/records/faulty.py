"""Records of which something is told, by what is wrong with them; the entries are invented."""

from typing import Any

_ROW = "2027-06-15,E1,gloss,07:10,61 F\n"
_MOMENT = "2027-06-15,E1,gloss,07:10"
_HALVES = "date,elevation,started_at\n2027-07-13,E1,6:20 am\n2027-07-13,E1,1:20 PM\n2027-07-14,E1,"
SHIFT: dict[str, Any] = {"schedule": {"shift_start": "06:00", "shift_hours": 10}}
DENVER: dict[str, Any] = {"site": {"time_zone": "America/Denver"}}

# As CSV, read by the project of the site.
TABLES: dict[str, str] = {
    "a comma that may part thousands": "date;water_added (mL)\n2027-06-15;1,200\n2027-06-15;0,950\n",
    "faults of cells": (
        'date,elevation,step,wind (mph),air,humidity,started_at\n2027-06-15,E1,gloss,"1,048",61,58,07:10\n'
        "2027-06-15,E9,glos,5,60,580,25:10\n"
    ),
    "a column of another collection": (
        "date,elevation,air (F),hours_dry,Remarks,humidty\n2027-06-15,E1,61,15,windy,58\n"
    ),
    "a column twice, and a unit of something else": (
        "date,air (F),Air temperature (F),wind (psi)\n2027-06-15,61,62,5\n"
    ),
    "an entry twice": f"date,elevation,step,started_at,air\n{_ROW}{_ROW}",
    "two readings of one moment": f"date,elevation,step,started_at,air (F)\n{_MOMENT},61\n{_MOMENT},71\n",
    "a gust below the wind": "date,wind (mph),gust (mph)\n2027-06-15,9,3\n2027-06-16,9,9\n",
    "a day of no calendar": "date,elevation\n2028-02-29,E1\n2/29/2028,E2\n2027-02-29,E1\n",
    "longer than a shift": (
        "date,elevation,started_at,ended_at\n2027-06-15,E1,22:30,01:15\n2027-06-15,E2,08:25,07:10\n"
    ),
    "a time of neither half": f"{_HALVES}9:40\n",
    "a row longer than the head": "date,area\n2027-06-15,left bay, by the door\n",
    "no titles": "one,two\n1,2\n",
    "the last row cut short": "date,elevation,area\n2027-06-15,E1,left\n2027-06-15,E",
    "many faults": "date,elevation\n" + "".join(f"2027-06-15,E{number}\n" for number in range(10, 160)),
    "a decision that is none": (
        "clause,date,elevation,area,decision,by,decided_on,note\n"
        "WEA-01c,2027-06-15,E1,left bay,recoatd,L. Novak,6/17/2027,viewed at 10 ft\n"
    ),
}

# As CSV, read by that project with a change.
CHANGED: dict[str, tuple[str, dict[str, Any]]] = {
    "a time of neither half outside the shift": (f"{_HALVES}1:20\n2027-07-15,E1,1:20\n", SHIFT),
    "a step that no wall takes": (
        "date,step\n2027-05-01,wrb\n2027-05-02,wrb\n",
        {"walls": {"W1": {"wrb": {"kind": "none"}}}},
    ),
    "nights of the clocks": (
        "date,elevation,started_at,air (F)\n2027-03-14,E1,02:30,61\n2027-03-14,E1,03:30,61\n"
        "2027-11-07,E1,01:30,61\n2027-11-07,E1,02:30,61\n",
        DENVER,
    ),
}

# As YAML.
TEXTS: dict[str, str] = {
    "what belongs elsewhere, and papers": (
        "format: 1\nlog: [{date: 2027-06-15}]\ngloss: {coats: 2}\nattachments: {A1: {title: x}}\n"
    ),
    "no YAML": "log: [{date: 2027\n",
}
