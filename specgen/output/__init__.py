"""The only code that writes files: a package and its manifest, whole or not at all."""
