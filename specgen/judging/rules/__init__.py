"""One folder for each group of rules, one file for each rule; presence is registration."""
