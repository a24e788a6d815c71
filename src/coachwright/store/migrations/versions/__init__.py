"""One file for each step; a step is never changed once it was released."""
