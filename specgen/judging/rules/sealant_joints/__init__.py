"""Does every place that moves have a sealed joint that bears its movement?"""
