"""One module for each thing a user asks; the command line and the workbench only call and show.

Nothing is offered here, so that asking for one use case does not load the others.
"""
