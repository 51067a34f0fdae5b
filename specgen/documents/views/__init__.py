"""Tables that templates set by name: `view.joints` is `rows` of `joints.py`."""
