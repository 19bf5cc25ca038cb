"""What is said: wording, synthesis, and where the sound goes."""
