"""Do orders, drying and other trades fit into the days there are?"""
