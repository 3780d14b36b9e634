// taskpane: what can be converted in place, and to how many decimals.

export type Direction = "to metric" | "to inch";

/** Decimals of a result: those of the figures given plus `more`, within `least` and `most`. */
interface Decimals {
  readonly least: number;
  readonly most: number;
  readonly more: number;
}

export interface ConversionKind {
  readonly key: string;
  readonly label: string;
  /** Units as the conversion knows them. */
  readonly metric: string;
  readonly inch: string;
  /** Units as a header gets them. */
  readonly metricHeader: string;
  readonly inchHeader: string;
  readonly toMetric: Decimals;
  readonly toInch: Decimals;
}

/** A millimetre to 0.001 is an inch to 0.00004, so an inch figure keeps a tolerance with two decimals more. */
const LENGTH = { toMetric: { least: 3, most: 4, more: 0 }, toInch: { least: 4, most: 5, more: 2 } };

export const conversionKinds: readonly ConversionKind[] = [
  {
    key: "length",
    label: "Length, diameter, tolerance",
    metric: "mm",
    inch: "in",
    metricHeader: "mm",
    inchHeader: "in",
    ...LENGTH,
  },
  {
    key: "surface speed",
    label: "Surface speed",
    metric: "m/min",
    inch: "sfm",
    metricHeader: "m/min",
    inchHeader: "ft/min",
    toMetric: { least: 1, most: 2, more: 1 },
    toInch: { least: 1, most: 1, more: 0 },
  },
  {
    key: "feed per revolution",
    label: "Feed per revolution or tooth",
    metric: "mm/rev",
    inch: "ipr",
    metricHeader: "mm/rev",
    inchHeader: "in/rev",
    ...LENGTH,
  },
  {
    key: "feed rate",
    label: "Feed rate per minute",
    metric: "mm/min",
    inch: "ipm",
    metricHeader: "mm/min",
    inchHeader: "in/min",
    toMetric: { least: 1, most: 2, more: -1 },
    toInch: { least: 2, most: 3, more: 2 },
  },
  {
    key: "torque",
    label: "Torque",
    metric: "Nm",
    inch: "lbf-in",
    metricHeader: "N·m",
    inchHeader: "lbf·in",
    toMetric: { least: 2, most: 3, more: 2 },
    toInch: { least: 1, most: 2, more: 0 },
  },
  {
    key: "roughness",
    label: "Roughness",
    metric: "um",
    inch: "uin",
    metricHeader: "µm",
    inchHeader: "µin",
    toMetric: { least: 2, most: 3, more: 2 },
    toInch: { least: 0, most: 1, more: 0 },
  },
];

/** A figure may be off by this share through rounding before it gets more decimals. */
const LARGEST_SHARE = 0.005;
const EXTRA = 2;

/** Decimals for the results: enough that the figures given keep their fineness, and small ones their digits. */
export function properDecimals(
  given: readonly number[],
  results: readonly number[],
  kind: ConversionKind,
  direction: Direction,
): number {
  const { least, most, more } = direction === "to metric" ? kind.toMetric : kind.toInch;
  const finest = Math.max(0, ...given.map(decimalsOf));
  let decimals = Math.min(most, Math.max(least, finest + more));
  const isCoarse = (value: number) =>
    value !== 0 && Math.abs(rounded(value, decimals) - value) > LARGEST_SHARE * Math.abs(value);
  for (let extra = 0; extra < EXTRA && results.some(isCoarse); extra++) decimals++;
  return decimals;
}

/** Decimals that a number is written with; what floating point adds behind the seventh is skipped. */
export function decimalsOf(value: number): number {
  const text = Number(value.toFixed(7)).toFixed(7).replace(/0+$/, "");
  return text.length - text.indexOf(".") - 1;
}

/** Rounded half away from zero, as a user rounds. */
export function rounded(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  // 14 digits: 0.0127 times 1000 is 12.7, not 12.699999999999999.
  const whole = Math.floor(Number((Math.abs(value) * scale).toPrecision(14)) + 0.5);
  return Math.sign(value) * Number((whole / scale).toFixed(decimals)) + 0;
}
