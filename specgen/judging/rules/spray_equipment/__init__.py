"""Do guns, air, hoses and instruments give the same coat from the mockup to the last panel?"""
