"""Hourly weather data: read, judged against the limits of a step, hour by hour and as windows."""
