"""The only writer of files: packages whole or not at all, with their manifest."""
