"""Mutation testing: small faults are put into plans/, one at a time, and the tests have to notice each."""
