"""Shipped parts, base vehicles and standard builds, and the shop's own."""
