"""Optimisers over the layout: roof packing and floor proposals."""
