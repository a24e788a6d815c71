"""Style sheets of single pages."""

from nicegui import ui


def styled(name: str) -> None:
    """Let the page have a style sheet of its own, by its name without the ending."""
    ui.add_head_html(f'<link rel="stylesheet" href="/coachwright/static/{name}.css">')
