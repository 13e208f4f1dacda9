"""What everything stands on: errors, findings, choices, names, units, tolerances."""
