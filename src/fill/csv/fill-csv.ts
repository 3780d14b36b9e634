// fill: a CSV file in, the same file with more columns out, a batch of rows at a time, so that its length does not matter.

import { createReadStream, mkdirSync, statSync } from "node:fs";
import { dirname, resolve } from "node:path";
import type { Metadata } from "../../build/metadata.ts";
import { Refusal } from "../../workbook/workbook.ts";
import { changedSince, fileRefusal, type NewFile, newFile } from "../files.ts";
import type { Functions } from "../formula/evaluate.ts";
import { CellError } from "../formula/values.ts";
import { ColumnComputer } from "./column-computer.ts";
import { type Plan, planColumns } from "./columns.ts";
import {
  cellValue,
  type DecimalSign,
  decimalSignIn,
  delimiterOf,
  fieldText,
  firstLineEnd,
  type Record,
  RecordReader,
  writtenField,
} from "./records.ts";

export interface RowFault {
  /** As a sheet numbers it: the header is row 1. */
  readonly row: number;
  readonly column: string;
  readonly error: string;
  readonly message: string;
}

export interface CsvReport {
  readonly rows: number;
  readonly columns: readonly string[];
  /** Cells in error. */
  readonly errors: number;
  readonly firstErrors: readonly RowFault[];
}

const BATCH = 10_000;
const LISTED = 100;
const CHUNK = 2 ** 20;

export interface CsvJob {
  readonly input: string;
  readonly output: string;
  readonly formulas: readonly string[];
  readonly units: "mm" | "in" | undefined;
}

export async function fillCsv(
  job: CsvJob,
  functions: Functions,
  metadata: Metadata,
  progress: (done: number, of: number) => void,
): Promise<CsvReport> {
  const { input, output } = job;
  const stamp = stampOf(input);
  const isSame = resolve(input) === resolve(output);
  let file: NewFile | undefined;
  const open = (): NewFile => {
    mkdirSync(dirname(resolve(output)), { recursive: true });
    file ??= newFile(output, isSame ? () => changedSince(input, stamp) : undefined);
    return file;
  };
  try {
    const filler = new CsvFiller(job, functions, metadata, (text) =>
      open().write(Buffer.from(text, "latin1")),
    );
    let done = 0;
    for await (const chunk of createReadStream(input, { encoding: "latin1", highWaterMark: CHUNK })) {
      filler.read(chunk as string, false);
      done += (chunk as string).length;
      progress(done, stamp.size);
    }
    filler.read("", true);
    const report = filler.end();
    open().finish();
    return report;
  } catch (error) {
    file?.giveUp();
    throw fileRefusal(error, "read");
  }
}

function stampOf(path: string) {
  try {
    const { size, mtimeMs } = statSync(path);
    return { size, time: mtimeMs };
  } catch (error) {
    throw fileRefusal(error, "read");
  }
}

class CsvFiller {
  private reader: RecordReader | undefined;
  private plan: Plan | undefined;
  private computer: ColumnComputer | undefined;
  private delimiter = ",";
  /** Told by the first batch. */
  private decimal: DecimalSign | undefined;
  private readonly decimals = { ".": 0, ",": 0 };
  private fields = 0;
  private row = 0;
  private rows = 0;
  private start = "";
  /** The batch: each row as it stands with the end of its line, and its number, 0 for one without fields. */
  private lines: { text: string; end: string }[] = [];
  private rowNumbers: number[] = [];
  private columns = new Map<string, string[]>();
  private errors = 0;
  private readonly firstErrors: RowFault[] = [];

  constructor(
    private readonly job: CsvJob,
    private readonly functions: Functions,
    private readonly metadata: Metadata,
    private readonly write: (text: string) => void,
  ) {}

  read(text: string, isLast: boolean): void {
    let rest = text;
    if (!this.reader) {
      this.start += text;
      const lineEnd = firstLineEnd(this.start);
      if (lineEnd < 0 && !isLast && this.start.length < CHUNK) return;
      rest = this.start;
      this.begin(rest, lineEnd);
      const mark = byteOrderMark(rest);
      this.write(mark);
      rest = rest.slice(mark.length);
    }
    if (text.includes("\0")) throw new Refusal("the file is no CSV text: it holds bytes that no text has");
    this.reader!.read(rest, isLast, (all, record) => this.take(all, record));
  }

  private begin(text: string, lineEnd: number): void {
    refuseOthers(text);
    const header = lineEnd < 0 ? text : text.slice(0, lineEnd);
    this.delimiter = delimiterOf(header);
    this.reader = new RecordReader(this.delimiter.charCodeAt(0));
  }

  private take(text: string, record: Record): void {
    this.row++;
    if (!this.plan) {
      this.takeHeader(text, record);
      return;
    }
    const line = { text: text.slice(record.start, record.end), end: text.slice(record.end, record.next) };
    if (record.fields === 1 && line.text.trim() === "") {
      // An empty line stays one.
      this.lines.push(line);
      this.rowNumbers.push(0);
    } else this.takeRow(text, record, line);
    if (this.lines.length >= BATCH) this.flush();
  }

  private takeHeader(text: string, record: Record): void {
    const names = Array.from({ length: record.fields }, (_, field) => fieldText(text, record, field));
    this.fields = record.fields;
    const { formulas, units } = this.job;
    this.plan = planColumns(formulas, names, this.functions, this.metadata, units);
    this.computer = new ColumnComputer(this.plan, this.functions);
    for (const name of this.plan.read.values()) this.columns.set(name, []);
    const made = this.plan.columns.flatMap((column) => column.names);
    const header = [
      text.slice(record.start, record.end),
      ...made.map((name) => writtenField(name, this.delimiter)),
    ];
    this.write(header.join(this.delimiter) + text.slice(record.end, record.next));
  }

  private takeRow(text: string, record: Record, line: { text: string; end: string }): void {
    if (record.fields > this.fields)
      throw new Refusal(`row ${this.row} has ${record.fields} fields, and the header has ${this.fields}`);
    for (const [place, name] of this.plan!.read) {
      this.columns.get(name)!.push(place < record.fields ? fieldText(text, record, place) : "");
    }
    if (!this.decimal && this.delimiter !== ",")
      for (let field = 0; field < record.fields; field++) {
        const sign = decimalSignIn(fieldText(text, record, field));
        if (sign) this.decimals[sign]++;
      }
    // A row that ends early gets the fields it lacks, so that the new ones stand under their names.
    this.lines.push({ ...line, text: line.text + this.delimiter.repeat(this.fields - record.fields) });
    this.rowNumbers.push(this.row);
    this.rows++;
  }

  private flush(): void {
    const { plan, delimiter } = this;
    const rows = this.rowNumbers.reduce((count, number) => count + (number > 0 ? 1 : 0), 0);
    this.decimal ??= this.decimalSign();
    const { decimal } = this;
    const columns = new Map(
      [...this.columns].map(([name, fields]) => [name, fields.map((field) => [cellValue(field, decimal)])]),
    );
    const results = rows > 0 ? this.computer!.compute(columns, rows) : [];
    let text = "";
    let at = 0;
    this.lines.forEach((line, i) => {
      text += line.text;
      const row = this.rowNumbers[i];
      if (row > 0) {
        for (let k = 0; k < results.length; k++) {
          const cells = results[k][at];
          for (let n = 0; n < cells.length; n++) {
            const cell = cells[n] ?? null;
            text += delimiter + writtenField(cell, delimiter, decimal);
            if (cell instanceof CellError) this.fault(row, plan!.columns[k].names[n], cell);
          }
        }
        at++;
      }
      text += line.end;
    });
    this.write(text);
    this.lines = [];
    this.rowNumbers = [];
    for (const name of this.columns.keys()) this.columns.set(name, []);
  }

  /** Programs put semicolons between fields where decimals have commas: a point would be read as thousands there. */
  private decimalSign(): DecimalSign {
    const { ",": commas, ".": points } = this.decimals;
    return commas > points || (this.delimiter === ";" && commas === points) ? "," : ".";
  }

  private fault(row: number, column: string, { code, message = "" }: CellError): void {
    this.errors++;
    if (this.firstErrors.length < LISTED) this.firstErrors.push({ row, column, error: code, message });
  }

  end(): CsvReport {
    if (!this.plan) throw new Refusal("the file is empty: it has no header row");
    if (this.lines.length > 0) this.flush();
    const columns = this.plan.columns.flatMap(({ names }) => names);
    return { rows: this.rows, columns, errors: this.errors, firstErrors: this.firstErrors };
  }
}

const byteOrderMark = (text: string) => (text.startsWith("\u00ef\u00bb\u00bf") ? text.slice(0, 3) : "");

function refuseOthers(text: string): void {
  if (text === "") throw new Refusal("the file is empty: it has no header row");
  if (text.startsWith("PK\u0003\u0004"))
    throw new Refusal("the file is no CSV text but an archive, perhaps a workbook");
  if (/^(?:\u00ff\u00fe|\u00fe\u00ff)/.test(text))
    throw new Refusal("the file is in UTF-16: save it as CSV in UTF-8");
}
