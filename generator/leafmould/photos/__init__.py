"""Pictures: found by name, looked at, and made small for the site without anything else that was in them."""
