"""Are smoothing, primer and gloss applied in the coats, times and quantities the finish needs?"""
