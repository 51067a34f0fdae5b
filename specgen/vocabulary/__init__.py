"""Frozen types that every room may import; imports no other room."""
