"""Where words come from: microphones, files, typed lines; and what they mean."""
