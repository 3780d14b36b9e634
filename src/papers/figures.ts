// papers: figures as they are printed. Halves are rounded away from zero.

export type Units = "mm" | "in";

/** A number rounded in decimal, as a user would: 3.445 to 3.45, though the nearest double lies below it. */
export function rounded(value: number, decimals: number): number {
  const factor = 10 ** decimals;
  return (Math.sign(value) * Math.round(Number((Math.abs(value) * factor).toPrecision(14)))) / factor;
}

/** `1,250.50` */
export function figure(value: number, decimals: number): string {
  const [whole, rest] = Math.abs(rounded(value, decimals)).toFixed(decimals).split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ",");
  const sign = rounded(value, decimals) < 0 ? "−" : "";
  return `${sign}${grouped}${rest === undefined ? "" : `.${rest}`}`;
}

/** Lengths on paper, `12.018` or `0.5005`. */
export const lengthFigure = (value: number, units: Units): string =>
  rounded(value, units === "mm" ? 3 : 4).toFixed(units === "mm" ? 3 : 4);

/** Days between 1899-12-30, where a sheet begins to count, and 1970-01-01. */
const EPOCH = 25_569;
const DAY = 86_400_000;

/** `2026-11-26` from a sheet's number for a day. */
export const dayText = (serial: number): string =>
  new Date((Math.floor(serial) - EPOCH) * DAY).toISOString().slice(0, 10);

/** A sheet's number for a day, from that number or from `2026-11-26`; undefined if it is no day. */
export function daySerial(content: unknown): number | undefined {
  if (typeof content === "number" && content >= 1 && content < 2_958_466) return Math.floor(content);
  const found = /^\s*(\d{4})-(\d{2})-(\d{2})\s*$/.exec(String(content));
  if (!found) return undefined;
  const time = Date.parse(`${found[1]}-${found[2]}-${found[3]}T00:00:00Z`);
  return Number.isNaN(time) ? undefined : time / DAY + EPOCH;
}
