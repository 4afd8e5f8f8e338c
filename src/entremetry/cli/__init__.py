"""The command line: `app` holds the commands, each `*_view` shows one kind of result."""
