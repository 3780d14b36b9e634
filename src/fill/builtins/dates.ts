// fill: the spreadsheet's dates: days counted from 1900, in which the program's 29 February 1900 never was.

import { type Argument, broadcast, type Context, matrixOf } from "../formula/evaluate.ts";
import { isMatrix, numberError, type Scalar, toNumber, Unsupported, type Value } from "../formula/values.ts";
import { type Named, ranged, throwIfError } from "./define.ts";

const DAY = 86_400_000;
const FIRST = Date.UTC(1899, 11, 30);
/** 1 March 1900, the first day that counts alike everywhere. */
const SOUND = 61;
const LAST = 2_958_465;

const serial = (year: number, month: number, day: number): Scalar => {
  const days = Math.round((Date.UTC(year, month, day) - FIRST) / DAY);
  if (days < 0 || days > LAST) return numberError();
  if (days < SOUND) throw new Unsupported("a date before March 1900");
  return days;
};

function dateOf(number: number): Date {
  if (number < 0 || number >= LAST + 1) throw numberError();
  if (number < SOUND) throw new Unsupported("a date before March 1900");
  return new Date(FIRST + Math.floor(number) * DAY);
}

function shifted(start: number, months: number): { date: Date; year: number; month: number } {
  const date = dateOf(start);
  return { date, year: date.getUTCFullYear(), month: date.getUTCMonth() + Math.trunc(months) };
}

const lastDay = (year: number, month: number) => new Date(Date.UTC(year, month + 1, 0)).getUTCDate();

const dated = (
  name: string,
  call: (...numbers: number[]) => Scalar,
  least = call.length,
  most = least,
): Named =>
  ranged(name, least, most, (args: readonly Argument[], context: Context): Value => {
    if (context.cells.from1904) throw new Unsupported("dates counted from 1904");
    const values = args.map((arg) => {
      const matrix = matrixOf(arg ?? null, context);
      if (isMatrix(arg ?? null)) return matrix;
      if (matrix.length > 1 || matrix[0].length > 1) throw new Unsupported(`${name} of a range`);
      return matrix[0][0]!;
    });
    return broadcast(values, (...cells) => call(...cells.map((cell) => throwIfError(toNumber(cell)))));
  });

export const dates: readonly Named[] = [
  dated("DATE", (year, month, day) => {
    const whole = Math.trunc(year);
    return serial(whole < 1900 ? whole + 1900 : whole, Math.trunc(month) - 1, Math.trunc(day));
  }),
  dated("YEAR", (date) => dateOf(date).getUTCFullYear()),
  dated("MONTH", (date) => dateOf(date).getUTCMonth() + 1),
  dated("DAY", (date) => dateOf(date).getUTCDate()),
  dated("DAYS", (end, start) => Math.trunc(end) - Math.trunc(start)),
  dated("EDATE", (start, months) => {
    const { date, year, month } = shifted(start, months);
    return serial(year, month, Math.min(date.getUTCDate(), lastDay(year, month)));
  }),
  dated("EOMONTH", (start, months) => {
    const { year, month } = shifted(start, months);
    return serial(year, month, lastDay(year, month));
  }),
  dated(
    "WEEKDAY",
    (date, kind = 1) => {
      const day = dateOf(date).getUTCDay();
      if (kind === 1) return day + 1;
      if (kind === 2) return ((day + 6) % 7) + 1;
      if (kind === 3) return (day + 6) % 7;
      throw new Unsupported("WEEKDAY with such a count");
    },
    1,
    2,
  ),
];
