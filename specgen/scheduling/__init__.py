"""When what can be done: working calendar, drying by the clock, activities and their chain."""
