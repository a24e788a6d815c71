"""Properties of water and fuels."""

DENSITY_KG_PER_L = 0.9982
"""Water at 20 degC [coolprop-water]."""

HEAT_J_PER_KG_K = 4186.0
"""Specific heat of water between 0 and 60 degC, to 0.3 % [coolprop-water]."""

LATENT_J_PER_KG = 334_000.0
"""Heat of melting of ice at 0 degC; from memory, a figure of every physics table."""

VISCOSITY_M2_PER_S = 1.004e-6
"""Kinematic viscosity of water at 20 degC [coolprop-water]; at 10 degC it is a third more."""

GRAVITY_M_PER_S2 = 9.80665
"""Standard gravity, by definition."""

PIPE_ROUGHNESS_MM = 0.0015
"""Smooth drawn tube and plastic hose [moody-1944]."""

PROPANE_MJ_PER_KG = 46.35
"""Lower heating value, from memory; [afdc-fuel-properties] gives 46.2, less than 1 % away."""

DIESEL_MJ_PER_L = 35.8
"""Lower heating value, from memory (128 488 Btu/US gal)."""

PETROL_MJ_PER_L = 32.356
"""Lower heating value: 116 090 Btu/US gal [afdc-fuel-properties]."""
