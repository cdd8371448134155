"""Who may do what: roles, routes, sessions, connections."""
