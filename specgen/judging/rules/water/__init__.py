"""Is water led off at roofs, openings, ledges, and whatever else breaks the face?"""
