"""The set as one PDF: its own pages set by typst, tagged (PDF/UA-1); what is bound in is merged behind dividers."""
