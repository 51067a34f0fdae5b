"""What is told of the mistakes that the tests make, whole: tests ask for a part of it, the golden texts for every word."""
