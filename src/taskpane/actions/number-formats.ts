// taskpane: what a cell's number format tells of its number.

/** A format without its quoted texts, escaped characters and colors; its first section alone. */
function bare(format: string): string {
  return format
    .replace(/"[^"]*"|\\.|_.|\*./g, "")
    .replace(/\[(?![hms]+\])[^\]]*\]/gi, "")
    .split(";")[0];
}

/** Dates, times and elapsed times are stored as numbers and are none. */
export function isDateFormat(format: string): boolean {
  return !/^(?:general|standard)?$/i.test(format) && /[dmyhs]/i.test(bare(format));
}

export function isPercentFormat(format: string): boolean {
  return bare(format).includes("%");
}

/** An amount of money: a currency's sign, or one in brackets with its country. */
export function isMoneyFormat(format: string): boolean {
  return /[$€£¥₹₩₽]|\[\$[^\-\]]+/.test(format.replace(/\[\$-[^\]]*\]/g, ""));
}

/** The words that a format writes beside the number: " in" of `0.000" in"` and of `0.000\ \i\n`. */
export function formatWords(format: string): string {
  return [...format.split(";")[0].matchAll(/"([^"]*)"|\\(.)/g)]
    .map(([, quoted, one]) => quoted ?? one)
    .join("");
}

/** Decimals that a format shows; undefined where it shows as many as there are. */
export function formatDecimals(format: string): number | undefined {
  const plain = bare(format);
  if (!/[0#?]/.test(plain) || /[/e]/i.test(plain)) return undefined;
  return /\.([0#?]*)/.exec(plain)?.[1].length ?? 0;
}
