"""Does the wall meet the adopted code, with reports and test methods that speak of this wall?"""
