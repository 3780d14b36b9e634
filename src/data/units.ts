// data: units of measure and their exact values (source key "si-units": NIST SP 811, Appendix B; BIPM, The
// International System of Units). The inch, the pound-force and gravity are exact by definition; hp is 550 ft·lbf/s.

export const MM_PER_INCH = 25.4;
export const METERS_PER_FOOT = 0.3048;
/** One pound-force, 0.45359237 kg × 9.80665 m/s². */
export const NEWTONS_PER_POUND_FORCE = 4.4482216152605;
export const NEWTON_METERS_PER_POUND_FORCE_INCH = 0.1129848290276167;
/** 231 in³ to the US gallon. */
export const LITERS_PER_GALLON = 3.785411784;
export const PASCALS_PER_PSI = NEWTONS_PER_POUND_FORCE / 0.0254 ** 2;
export const WATTS_PER_HORSEPOWER = 745.6998715822702;

export type UnitKind =
  | "length"
  | "surface speed"
  | "feed per revolution"
  | "feed per tooth"
  | "feed rate"
  | "torque"
  | "power"
  | "temperature"
  | "pressure"
  | "force"
  | "flow"
  | "removal rate";

/**
 * A unit: a value in the base unit of its kind is (value − zero) × numerator / denominator. Two numbers, so that a
 * decimal factor is a ratio of whole numbers and conversions between decimal units are not off by a hair.
 */
export type UnitRow = readonly [
  name: string,
  kind: UnitKind,
  numerator: number,
  denominator: number,
  zero: number,
];

/** The first of each kind is its base unit. */
export const unitTable: readonly UnitRow[] = [
  ["mm", "length", 1, 1, 0],
  ["um", "length", 1, 1000, 0],
  ["m", "length", 1000, 1, 0],
  ["in", "length", 254, 10, 0],
  ["thou", "length", 254, 10_000, 0],
  ["tenth", "length", 254, 100_000, 0],
  ["uin", "length", 254, 10_000_000, 0],
  ["ft", "length", 3048, 10, 0],
  ["m/min", "surface speed", 1, 1, 0],
  ["sfm", "surface speed", 3048, 10_000, 0],
  ["m/s", "surface speed", 60, 1, 0],
  ["mm/rev", "feed per revolution", 1, 1, 0],
  ["ipr", "feed per revolution", 254, 10, 0],
  ["mm/tooth", "feed per tooth", 1, 1, 0],
  ["ipt", "feed per tooth", 254, 10, 0],
  ["mm/min", "feed rate", 1, 1, 0],
  ["mm/s", "feed rate", 60, 1, 0],
  ["ipm", "feed rate", 254, 10, 0],
  ["in/s", "feed rate", 1524, 1, 0],
  ["Nm", "torque", 1, 1, 0],
  ["Ncm", "torque", 1, 100, 0],
  ["lbf-in", "torque", NEWTON_METERS_PER_POUND_FORCE_INCH, 1, 0],
  ["lbf-ft", "torque", NEWTONS_PER_POUND_FORCE * 3048, 10_000, 0],
  ["N", "force", 1, 1, 0],
  ["kN", "force", 1000, 1, 0],
  ["lbf", "force", NEWTONS_PER_POUND_FORCE, 1, 0],
  ["kW", "power", 1, 1, 0],
  ["hp", "power", WATTS_PER_HORSEPOWER, 1000, 0],
  ["PS", "power", 73_549_875, 100_000_000, 0],
  ["C", "temperature", 1, 1, 0],
  ["F", "temperature", 5, 9, 32],
  ["MPa", "pressure", 1, 1, 0],
  ["bar", "pressure", 1, 10, 0],
  ["kPa", "pressure", 1, 1000, 0],
  ["psi", "pressure", NEWTONS_PER_POUND_FORCE * 100, 64_516, 0],
  ["L/min", "flow", 1, 1, 0],
  ["gpm", "flow", 3_785_411_784, 1_000_000_000, 0],
  ["cm3/min", "removal rate", 1, 1, 0],
  ["in3/min", "removal rate", 16_387_064, 1_000_000, 0],
];
