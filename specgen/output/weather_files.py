"""Builds the files of judged weather: the strips of each elevation as SVG and as a picture, and the data."""

import json
from pathlib import Path
from typing import NamedTuple

from specgen.documents.figures.weather_strip import draw_strip
from specgen.formats.png import write_png
from specgen.model.problem import Refused, refuse
from specgen.output.disk import write_package
from specgen.output.removal import tell_removed
from specgen.terminal.weather_data import weather_to_data
from specgen.terminal.weather_text import WeatherReport


class WeatherFiles(NamedTuple):
    """The names of the files written, and what the user is told beside them."""

    names: tuple[str, ...]
    notes: tuple[str, ...]


def write_weather(report: WeatherReport, folder: Path) -> WeatherFiles:
    """Write strips and data to a folder; a picture is left out, and told, where its library is not installed."""
    files = {"weather.json": (json.dumps(weather_to_data(report), indent=1, ensure_ascii=False) + "\n").encode()}
    notes: list[str] = []
    for face in report.faces:
        drawn = draw_strip(report, face)
        stem = f"weather-{face.mark.replace('/', '-')}" if face.mark else "weather"
        if f"{stem}.svg" in files:
            raise refuse(f"two strips would have one name: {stem}.svg", "give one of the elevations another mark")
        files[f"{stem}.svg"] = drawn.svg.encode()
        try:
            files[f"{stem}.png"] = write_png(drawn.svg, drawn.width)
        except Refused as refused:
            notes.append(f"no PNG was written: {refused}")
    about = {"format": 1, "project": report.project.get(("project", "name")), "weather": report.step}
    removed = tell_removed(folder, files)
    write_package(folder, files, about)
    return WeatherFiles(tuple(files), (*dict.fromkeys(notes), *removed))
