"""How much yarn a pair takes, row by row, and how far what there is will go."""
