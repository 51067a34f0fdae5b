"""What is told of the mistakes that tests make: tests ask for a part of it, the approved texts for every word."""
