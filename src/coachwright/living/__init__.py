"""The coupled year: heat, moisture, appliances and battery of a build under a site's weather."""
