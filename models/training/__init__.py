"""How the English command model is made; README.md says step by step. Not in the wheel."""
