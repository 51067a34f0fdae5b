"""An elevation and the lines on it: cut into panels, joints told run by run, lines proposed where none are given."""
