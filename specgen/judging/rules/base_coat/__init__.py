"""Is the reinforced base coat thick, meshed and clear of the ground as the system needs?"""
