// fill: the spreadsheet's dates: days counted from 1900, in which the program has a 29 February 1900 that never was, or
// from 1904, where the workbook says so.

import type { Context } from "../formula/evaluate.ts";
import { Area, numberError, type Scalar, toNumber, Unsupported } from "../formula/values.ts";
import { type Named, ranged, throwIfError, value } from "./define.ts";

const DAY = 86_400_000;
const FIRST = Date.UTC(1899, 11, 30);
/** 1 March 1900: days before it count one less than the calendar has. */
const MARCH_1900 = 61;
const LAST = 2_958_465;
/** The day from which a workbook that says so counts. */
const YEAR_1904 = 1462;

/** The day's number; the month may be past the year's end, the day past the month's. */
function serial(year: number, month: number, day: number): number {
  const first = Math.round((Date.UTC(year, month, 1) - FIRST) / DAY);
  return (first < MARCH_1900 ? first - 1 : first) + day - 1;
}

interface Day {
  readonly year: number;
  /** From 0. */
  readonly month: number;
  readonly day: number;
}

function dayOf(number: number): Day {
  const whole = Math.floor(number);
  if (whole < 0 || whole > LAST) throw numberError();
  if (whole === 0) return { year: 1900, month: 0, day: 0 };
  if (whole === MARCH_1900 - 1) return { year: 1900, month: 1, day: 29 };
  const date = new Date(FIRST + (whole < MARCH_1900 ? whole + 1 : whole) * DAY);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth(), day: date.getUTCDate() };
}

const lastDay = (year: number, month: number): number => serial(year, month + 1, 1) - serial(year, month, 1);

/** `shift` is what the workbook's count is behind. */
type OfDays = (numbers: readonly number[], shift: number) => number;

const dated = (
  name: string,
  fewestArguments: number,
  mostArguments: number,
  takes: string,
  call: OfDays,
): Named =>
  ranged(name, fewestArguments, mostArguments, takes, (args, { cells }: Context): Scalar => {
    const numbers = args.map((arg, i) => {
      const isCell = arg instanceof Area && arg.isCell;
      return throwIfError(toNumber(isCell ? cells.cell(arg.sheet, arg.top, arg.left) : value(args, i)));
    });
    return call(numbers, cells.from1904 ? YEAR_1904 : 0);
  });

/** A date as the workbook counts it. */
function counted(day: number, shift: number): number {
  if (!(day >= shift && day <= LAST)) throw numberError();
  return day - shift;
}

const part = (name: string, of: (day: Day) => number): Named =>
  dated(name, 1, 1, "v", ([date], shift) => {
    if (date < 0) throw numberError();
    return of(dayOf(date + shift));
  });

/** So many months later: the year, and the month of it from 0. */
function shifted([start, months]: readonly number[], shift: number): Day {
  if (start < 0) throw numberError();
  const { year, month, day } = dayOf(start + shift);
  const later = month + Math.trunc(months);
  const laterYear = year + Math.floor(later / 12);
  if (laterYear < 1900 || laterYear > 9999) throw numberError();
  return { year: laterYear, month: ((later % 12) + 12) % 12, day };
}

export const dates: readonly Named[] = [
  dated("DATE", 3, 3, "v", (numbers, shift) => {
    const [given, month, day] = numbers.map(Math.trunc);
    const year = given < 1900 ? given + 1900 : given;
    if (given < 0 || year > 9999 || Math.abs(month) > 200_000) throw numberError();
    if (shift > 0 && given < 1904) throw new Unsupported("a year before 1904 where dates count from it");
    return counted(serial(year, month - 1, day), shift);
  }),
  part("YEAR", ({ year }) => year),
  part("MONTH", ({ month }) => month + 1),
  part("DAY", ({ day }) => day),
  dated("DAYS", 2, 2, "v", ([end, start]) => Math.trunc(end) - Math.trunc(start)),
  // Ranges of several cells are an error in some versions and a result for each cell in others.
  dated("EDATE", 2, 2, "r", (numbers, shift) => {
    const { year, month, day } = shifted(numbers, shift);
    return counted(serial(year, month, Math.min(day, lastDay(year, month))), shift);
  }),
  dated("EOMONTH", 2, 2, "r", (numbers, shift) => {
    const { year, month } = shifted(numbers, shift);
    return counted(serial(year, month + 1, 0), shift);
  }),
  dated("WEEKDAY", 1, 2, "v", ([date, kind = 1], shift) => {
    if (date < 0 || date + shift > LAST + 1) throw numberError();
    // 1 is a Sunday.
    const day = (Math.floor(date) + shift + 6) % 7;
    const first =
      [0, 1][Math.trunc(kind) - 1] ?? (kind >= 11 && kind < 18 ? (Math.trunc(kind) - 10) % 7 : -1);
    if (Math.trunc(kind) === 3) return (day + 6) % 7;
    if (first < 0) throw numberError();
    return ((day - first + 7) % 7) + 1;
  }),
];
