"""The kernel's own loop written out in C, so that both can be measured side by side."""
