// calc: a figure as a user wrote it: to which place, and whether it is another one rounded to that place.

/** What floating point adds to a decimal. */
const HAIR = 1e-9;

/** The place of the last digit written: 0.01 for 3.14, 1 for 611; zeros at the end of a whole number are not counted. */
export function placeOf(figure: number): number {
  if (figure === 0) return 1;
  const millionths = Math.round(Math.abs(figure) * 1e6);
  // Nearest to a decimal of fifteen figures or fewer, a number is that decimal: counting is quicker than writing it out.
  if (millionths < 1e15 && millionths / 1e6 === Math.abs(figure)) return 10 ** (zerosBehind(millionths) - 6);
  const [digits, exponent = "0"] = Math.abs(figure).toPrecision(15).split("e");
  const [whole, decimals = ""] = digits.split(".");
  const significant = decimals.replace(/0+$/, "");
  const zeros = significant === "" ? whole.length - whole.replace(/0+$/, "").length : -significant.length;
  return 10 ** (zeros + Number(exponent));
}

function zerosBehind(whole: number): number {
  let zeros = 0;
  for (let rest = whole; rest % 10 === 0; rest /= 10) zeros++;
  return zeros;
}

/** True where `figure` is `exact` rounded to the digits written. */
function isRoundedFrom(figure: number, exact: number): boolean {
  return Math.abs(figure - exact) <= (placeOf(figure) / 2) * (1 + HAIR) + HAIR * Math.abs(exact);
}

/** How far off a figure is, in words: a factor from 2 up, percent below. `expected` is not 0. */
export function offBy(figure: number, expected: number): string {
  const times = (quotient: number) => Number(quotient.toPrecision(3));
  const [high, low] = [times(figure / expected), times(expected / figure)];
  if (high >= 2) return `${high} times too high`;
  if (low >= 2 && low < Number.POSITIVE_INFINITY) return `${low} times too low`;
  const off = (figure - expected) / Math.abs(expected);
  return `${significant(100 * Math.abs(off))} % ${off > 0 ? "high" : "low"}`;
}

const significant = (value: number) => String(Number(value.toPrecision(3)));

/** `ok`, or how far off inside the share: `within 1 %: 0.07 % high`. Undefined outside it. */
export function verdictInside(figure: number, expected: number, share: number): string | undefined {
  if (Math.abs(figure - expected) > share * Math.abs(expected) * (1 + HAIR)) return undefined;
  if (isRoundedFrom(figure, expected)) return "ok";
  return `within ${significant(100 * share)} %: ${offBy(figure, expected)}`;
}
