"""From desserts, a kitchen and an hour of service to who does what when, by the clock."""
