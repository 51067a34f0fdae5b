"""Figures: what a drawing shows, measured and placed, and its look from one SVG template each."""
