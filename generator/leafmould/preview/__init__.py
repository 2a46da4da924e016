"""The household's site on this computer only, built again whenever the notes change."""
