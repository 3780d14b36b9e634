// fill: takes the records of a CSV file apart (RFC 4180) where they stand, so that they are copied as they are. The text
// has one sign for each byte of the file, whatever its encoding.

import { Refusal } from "../../workbook/workbook.ts";
import { CellError, type Scalar, valueError } from "../formula/values.ts";

const QUOTE = 0x22;
const LINE_FEED = 0x0a;
const CARRIAGE_RETURN = 0x0d;

/** Longer ones come of a quote that never ends. */
const LONGEST_RECORD = 16 * 2 ** 20;

/** A record in the text: where it starts and ends, without its line end, and where its fields end. */
export interface Record {
  start: number;
  end: number;
  /** Where the next record starts. */
  next: number;
  fields: number;
  readonly ends: number[];
}

export class RecordReader {
  private rest = "";
  private count = 0;
  private readonly record: Record = { start: 0, end: 0, next: 0, fields: 0, ends: [] };

  constructor(private readonly delimiter: number) {}

  /** Calls `visit` for each record that is whole; `isLast` says that no text follows. */
  read(text: string, isLast: boolean, visit: (text: string, record: Record) => void): void {
    const all = this.rest === "" ? text : this.rest + text;
    let at = 0;
    while (at < all.length && this.scan(all, at, isLast)) {
      this.count++;
      visit(all, this.record);
      at = this.record.next;
    }
    this.rest = at === 0 ? all : all.slice(at);
    if (this.rest.length > LONGEST_RECORD)
      throw new Refusal(`row ${this.count + 1} does not end: a quote may be missing`);
  }

  /** False if the record that starts there is not whole yet. */
  private scan(text: string, start: number, isLast: boolean): boolean {
    const { record, delimiter } = this;
    record.start = start;
    record.fields = 0;
    let at = start;
    let isFieldStart = true;
    for (; at < text.length; at++) {
      const sign = text.charCodeAt(at);
      if (sign === QUOTE && isFieldStart) {
        at = this.closingQuote(text, at, isLast);
        if (at < 0) return false;
        isFieldStart = false;
      } else if (sign === delimiter) {
        record.ends[record.fields++] = at;
        isFieldStart = true;
      } else if (sign === LINE_FEED) {
        record.end = at > start && text.charCodeAt(at - 1) === CARRIAGE_RETURN ? at - 1 : at;
        record.ends[record.fields++] = record.end;
        record.next = at + 1;
        return true;
      } else isFieldStart = false;
    }
    if (!isLast) return false;
    record.end = at;
    record.ends[record.fields++] = at;
    record.next = at;
    return true;
  }

  /** The quote that ends the field; two in a row are one inside it. -1 if the text ends before it is known. */
  private closingQuote(text: string, opening: number, isLast: boolean): number {
    for (let at = opening + 1; ; at += 2) {
      at = text.indexOf('"', at);
      if (at < 0) {
        if (isLast) throw new Refusal(`row ${this.count + 1} has a quote that does not end`);
        return -1;
      }
      if (at + 1 === text.length && !isLast) return -1;
      if (text.charCodeAt(at + 1) !== QUOTE) return at;
    }
  }
}

/** The text of a field, without its quotes, in Unicode. */
export function fieldText(text: string, record: Record, field: number): string {
  const start = field === 0 ? record.start : record.ends[field - 1] + 1;
  const end = record.ends[field];
  const content =
    text.charCodeAt(start) === QUOTE && end > start + 1 && text.charCodeAt(end - 1) === QUOTE
      ? text.slice(start + 1, end - 1).replaceAll('""', '"')
      : text.slice(start, end);
  return /[\u0080-\u00ff]/.test(content) ? unicode(content) : apart(content);
}

const strict = new TextDecoder("utf-8", { fatal: true });
const western = new TextDecoder("windows-1252");

function unicode(content: string): string {
  const bytes = Buffer.from(content, "latin1");
  try {
    return strict.decode(bytes);
  } catch {
    return western.decode(bytes);
  }
}

/** Longer pieces of a text keep the whole of it in memory; a copy does not. */
const apart = (content: string): string =>
  content.length < 13 ? content : Buffer.from(content, "latin1").toString("latin1");

const number = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?$/;
const code = /^#(?:N\/A|NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!)$/;

/** The sign before the decimals. */
export type DecimalSign = "." | ",";

const withComma = /^[+-]?\d*,\d+(?:[eE][+-]?\d{1,3})?$/;

/** The decimal sign in a field, if it has one. */
export const decimalSignIn = (field: string): DecimalSign | undefined =>
  withComma.test(field) ? "," : field.includes(".") && number.test(field) ? "." : undefined;

/** A field as a sheet would hold it. */
export function cellValue(field: string, decimal: DecimalSign): Scalar {
  if (field === "") return null;
  const first = field.charCodeAt(0);
  // Digits, or one of # + - . , before them.
  if (first < 0x3a && first >= 0x23) {
    if (decimal === "," && decimalSignIn(field) === ",")
      return finite(Number(field.replace(",", ".")), field);
    if (number.test(field)) {
      if (decimal === "," && field.includes("."))
        return valueError(
          `"${field.slice(0, 30)}" has a point, and this file has decimal commas. Write a comma.`,
        );
      return finite(Number(field), field);
    }
    if (first === 0x23 && code.test(field)) return new CellError(field);
    return field;
  }
  if (field.length <= 5 && /^(?:true|false)$/i.test(field)) return field.length === 4;
  return field;
}

const finite = (value: number, field: string): number | string => (Number.isFinite(value) ? value : field);

/** A result as a field, one sign for each of its bytes in UTF-8. */
export function writtenField(value: Scalar, delimiter: string, decimal: DecimalSign = "."): string {
  if (typeof value === "number") return decimal === "." ? String(value) : String(value).replace(".", decimal);
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (value === null) return "";
  const text = value instanceof CellError ? value.code : value;
  const plain = /^[\x20-\x7e]*$/.test(text) ? text : Buffer.from(text, "utf8").toString("latin1");
  return /["\r\n]|^\s|\s$/.test(plain) || plain.includes(delimiter)
    ? `"${plain.replaceAll('"', '""')}"`
    : plain;
}

/** Where the first line ends that is not inside quotes; -1 if it does not. */
export function firstLineEnd(text: string): number {
  let isQuoted = false;
  for (let at = 0; at < text.length; at++) {
    const sign = text.charCodeAt(at);
    if (sign === QUOTE) isQuoted = !isQuoted;
    else if (sign === LINE_FEED && !isQuoted) return at;
  }
  return -1;
}

/** The sign between the fields: the one of these that the header has most of, outside quotes. */
export function delimiterOf(header: string): string {
  const bare = header.replace(/"(?:[^"]|"")*"/g, "");
  const counts = [",", ";", "\t"].map((sign) => ({ sign, count: bare.split(sign).length }));
  return counts.reduce((best, one) => (one.count > best.count ? one : best)).sign;
}
