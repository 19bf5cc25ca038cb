"""The rows of the pair: toes, gusset, heels, legs and ends, each a small module, joined in the order of the needle."""
