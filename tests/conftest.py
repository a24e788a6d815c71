"""Settings for every test."""

from hypothesis import settings

# No deadline: a loaded machine must not make a test red.  The same examples each time: a red test
# stays red until it is mended.
settings.register_profile("coachwright", deadline=None, derandomize=True)
settings.load_profile("coachwright")
