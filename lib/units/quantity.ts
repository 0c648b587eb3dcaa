/**
 * A number that carries its unit in the type. The mark is optional, so a plain number (a literal, the outcome of
 * arithmetic) fits everywhere, while a value that is already marked as one unit is refused where another is due:
 * `Pascals` never slips into a `Cfm` parameter (see D-03).
 */
export type Quantity<Unit extends string> = number & { readonly __unit?: Unit };

export type Cfm = Quantity<"cfm">;
export type Pascals = Quantity<"Pa">;
export type Fahrenheit = Quantity<"°F">;
/** A difference of two temperatures is another quantity than a temperature. */
export type FahrenheitDifference = Quantity<"Δ°F">;
export type Feet = Quantity<"ft">;
export type SquareFeet = Quantity<"ft²">;
export type CubicFeet = Quantity<"ft³">;
export type SquareInches = Quantity<"in²">;
export type Inches = Quantity<"in">;
export type BtuPerHour = Quantity<"Btu/h">;
export type BtuPerPound = Quantity<"Btu/lb">;
export type PoundsPerCubicFoot = Quantity<"lb/ft³">;
export type ThermalResistance = Quantity<"h·ft²·°F/Btu">;
export type ThermalTransmittance = Quantity<"Btu/(h·ft²·°F)">;
export type ThermalConductance = Quantity<"Btu/(h·°F)">;
export type HeatFlux = Quantity<"Btu/(h·ft²)">;
export type CfmPerSquareFoot = Quantity<"cfm/ft²">;
export type KilowattHours = Quantity<"kWh">;
export type Kilowatts = Quantity<"kW">;
export type Therms = Quantity<"therm">;
export type Gallons = Quantity<"gal">;
export type Dollars = Quantity<"USD">;
export type Cents = Quantity<"US¢">;
export type Pounds = Quantity<"lb">;
export type Hours = Quantity<"h">;
export type Years = Quantity<"yr">;
export type Days = Quantity<"d">;
/** 0 to 1. */
export type Share = Quantity<"share">;
/** A dimensionless ratio that may leave 0 to 1. */
export type Ratio = Quantity<"ratio">;
export type DegreeDays = Quantity<"°F·d">;
