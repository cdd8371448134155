"""What each view of the page shows, worked out when it is asked for."""
