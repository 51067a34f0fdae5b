"""Record files of the site, YAML, CSV, XLSX, and filled PDF forms, to entries."""
