"""The website by MkDocs: the only package that imports it."""
