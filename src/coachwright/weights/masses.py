"""Masses that no data sheet gives: the dry vehicle, liquids, sheets, exchanged wheels."""

from dataclasses import dataclass

from coachwright.errors import OutOfRange
from coachwright.weights.moments import PointMass


@dataclass(frozen=True, kw_only=True, slots=True)
class Tolerance:
    """A mass's tolerance and how much of it is shared.

    Attributes
    ----------
    tolerance_kg
        Half-width of the 95 % band.
    systematic_frac
        Share of it that is common to the pool.
    """

    tolerance_kg: float
    systematic_frac: float


def dry_vehicle(
    *,
    kerb_front_kg: float,
    kerb_rear_kg: float,
    cg_y_mm: float,
    cg_height_mm: float,
    wheelbase_mm: float,
    fuel: PointMass,
    driver: PointMass,
) -> PointMass:
    """Return the base vehicle without the fuel and driver that its kerb figures include.

    Parameters
    ----------
    kerb_front_kg, kerb_rear_kg
        As the maker states them. [kg]
    cg_y_mm, cg_height_mm
        Centre of gravity of the stated mass. [mm]
    wheelbase_mm
        Distance of the axles. [mm]
    fuel, driver
        What the stated mass includes; mass 0 where it includes none.

    Returns
    -------
    PointMass
        The dry vehicle at its own centre of gravity.

    Raises
    ------
    OutOfRange
        Where fuel and driver weigh as much as the stated mass.

    Notes
    -----
    m = F + R - m_f - m_d; m·x = R·WB - m_f·x_f - m_d·x_d, and so for y and the height.

    Examples
    --------
    >>> nothing = PointMass(mass_kg=0, x_mm=0)
    >>> dry_vehicle(kerb_front_kg=1300, kerb_rear_kg=900, cg_y_mm=0, cg_height_mm=720,
    ...     wheelbase_mm=4000, fuel=nothing, driver=nothing).mass_kg
    2200
    """
    stated = PointMass(
        mass_kg=kerb_front_kg + kerb_rear_kg,
        x_mm=kerb_rear_kg * wheelbase_mm / (kerb_front_kg + kerb_rear_kg),
        y_mm=cg_y_mm,
        height_mm=cg_height_mm,
    )
    dry_kg = stated.mass_kg - fuel.mass_kg - driver.mass_kg
    if dry_kg <= 0:
        raise OutOfRange("kerb mass", stated.mass_kg, "more than the fuel and driver it includes")

    def left_mm(stated_mm: float, fuel_mm: float, driver_mm: float) -> float:
        moment_kg_mm = stated.mass_kg * stated_mm
        return (moment_kg_mm - fuel.mass_kg * fuel_mm - driver.mass_kg * driver_mm) / dry_kg

    return PointMass(
        mass_kg=dry_kg,
        x_mm=left_mm(stated.x_mm, fuel.x_mm, driver.x_mm),
        y_mm=left_mm(stated.y_mm, fuel.y_mm, driver.y_mm),
        height_mm=left_mm(stated.height_mm, fuel.height_mm, driver.height_mm),
    )


def liquid_mass_kg(*, volume_l: float, density_kg_per_l: float) -> float:
    """Return the mass of a liquid.

    Parameters
    ----------
    volume_l
        What the tank holds. [L]
    density_kg_per_l
        Of the liquid. [kg/L]

    Notes
    -----
    m = V · ρ.

    Examples
    --------
    >>> round(liquid_mass_kg(volume_l=90 * 0.9, density_kg_per_l=0.84), 2)
    68.04
    """
    return volume_l * density_kg_per_l


def sheet_mass_kg(*, area_m2: float, thickness_mm: float, density_kg_per_l: float) -> float:
    """Return the mass of insulation or lining.

    Parameters
    ----------
    area_m2
        Covered. [m2]
    thickness_mm
        Of the layer. [mm]
    density_kg_per_l
        Of the material. [kg/L]

    Notes
    -----
    m = A · s · ρ; 1 m2 times 1 mm is 1 L.

    Examples
    --------
    >>> sheet_mass_kg(area_m2=10, thickness_mm=20, density_kg_per_l=0.05)
    10.0
    """
    return area_m2 * thickness_mm * density_kg_per_l


def exchanged_wheels_kg(*, new_kg: float, old_kg: float, wheels: int) -> float:
    """Return what an exchange of wheels adds to one axle; negative where they are lighter.

    Parameters
    ----------
    new_kg, old_kg
        One wheel with its tyre. [kg]
    wheels
        On the axle: 2, or 4 with dual wheels.

    Notes
    -----
    Δm = n · (m_new - m_old).

    Examples
    --------
    >>> exchanged_wheels_kg(new_kg=34, old_kg=28, wheels=2)
    12
    """
    return wheels * (new_kg - old_kg)


def fitting_tolerance(
    *,
    mass_kg: float,
    declared_frac: float,
    measured: bool,
    measured_frac: float,
    systematic_frac: float,
) -> Tolerance:
    """Return the tolerance of a part's mass.

    Parameters
    ----------
    mass_kg
        The part. [kg]
    declared_frac
        Half-width of the 95 % band as the part states it. [frac]
    measured
        The shop weighed it.
    measured_frac
        Half-width of the 95 % band of the shop's scales. [frac]
    systematic_frac
        Share that masses of this origin have in common. [frac]

    Returns
    -------
    Tolerance
        A measured mass has the smaller of both tolerances and no systematic share.

    Examples
    --------
    >>> fitting_tolerance(mass_kg=100, declared_frac=0.05, measured=True, measured_frac=0.01,
    ...     systematic_frac=0.3)
    Tolerance(tolerance_kg=1.0, systematic_frac=0.0)
    """
    if measured:
        return Tolerance(
            tolerance_kg=mass_kg * min(declared_frac, measured_frac), systematic_frac=0.0
        )
    return Tolerance(tolerance_kg=mass_kg * declared_frac, systematic_frac=systematic_frac)


def wheel_centre_mm(*, rim_mm: float, width_mm: float, aspect_frac: float) -> float:
    """Return the height of a wheel's centre, the tyre not pressed flat.

    Parameters
    ----------
    rim_mm
        Rim diameter. [mm]
    width_mm
        Section width. [mm]
    aspect_frac
        Section height over width. [frac]

    Notes
    -----
    D = d + 2·w·a, r = D / 2.  The loaded radius is a few per cent less.

    References
    ----------
    [un-r54]

    Examples
    --------
    >>> round(wheel_centre_mm(rim_mm=17 * 25.4, width_mm=265, aspect_frac=0.70), 1)
    401.4
    """
    return rim_mm / 2 + width_mm * aspect_frac
