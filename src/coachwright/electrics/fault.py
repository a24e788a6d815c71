"""What a battery bank can drive into a fault."""


def bank_fault_a(
    *,
    battery_v: float,
    battery_ohm: float,
    series_count: int = 1,
    parallel_count: int = 1,
    links_ohm: float = 0.0,
    cable_ohm: float = 0.0,
) -> float:
    """Return the prospective fault current of a bank [A].

    Parameters
    ----------
    battery_v
        Of one full battery or cell. [V]
    battery_ohm
        Inner resistance of one. [ohm]
    series_count
        In one string.
    parallel_count
        Strings side by side.
    links_ohm
        All links of one string. [ohm]
    cable_ohm
        From the bank to the fault and back. [ohm]

    Notes
    -----
    I = n·U / ((n·R + R_links)/p + R_cable).  Strings side by side add, batteries in series do
    not.  The battery's own electronics are not counted on to break the fault.

    References
    ----------
    [battery-fault-current], [lfp-cell-resistance]

    Examples
    --------
    >>> round(bank_fault_a(battery_v=3.5, battery_ohm=0.00075, series_count=4, links_ohm=0.00075))
    3733
    """
    string_ohm = series_count * battery_ohm + links_ohm
    return series_count * battery_v / (string_ohm / parallel_count + cable_ohm)
