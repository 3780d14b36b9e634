// fill: tells a user, or a machine, how it went.

import { SingleBar } from "cli-progress";
import type { CsvReport } from "./csv/fill-csv.ts";
import { isAllWell, workbookLines } from "./report.ts";
import type { JobResult } from "./threads.ts";

const ALL_WELL = 0;
const SOME_IN_ERROR = 1;
export const NOT_READ = 2;

const number = (value: number) => value.toLocaleString("en-US");

export function showWorkbooks(results: readonly JobResult[], json: boolean): number {
  if (json) {
    const files = results.map((result) =>
      "refused" in result
        ? { file: result.job.input, refused: result.refused }
        : { file: result.job.input, output: result.job.output, written: result.isWritten, ...result.report },
    );
    console.log(JSON.stringify({ files }, null, 2));
  } else for (const result of results) showWorkbook(result, results.length > 1);
  if (results.some((result) => "refused" in result)) return NOT_READ;
  return results.every((result) => "report" in result && isAllWell(result.report)) ? ALL_WELL : SOME_IN_ERROR;
}

function showWorkbook(result: JobResult, isOneOfMany: boolean): void {
  const { input, output } = result.job;
  if ("refused" in result) {
    console.error(`${input}: ${result.refused}`);
    return;
  }
  if (isOneOfMany) console.log(`${input}:`);
  for (const line of workbookLines(result.report)) console.log(line);
  if (result.isWritten) console.log(`written to ${output}`);
}

export function showCsv(report: CsvReport, output: string, json: boolean, shown = 20): number {
  const { rows, columns, errors, firstErrors } = report;
  if (json) console.log(JSON.stringify({ output, ...report }, null, 2));
  else {
    console.log(`${number(rows)} rows computed for ${columns.join(", ")}, ${number(errors)} cells in error`);
    for (const { row, column, error, message } of firstErrors.slice(0, shown))
      console.log(`  row ${row}, ${column} ${error}${message ? ` ${message}` : ""}`);
    if (errors > shown) console.log(`  and ${number(errors - shown)} more`);
    console.log(`written to ${output}`);
  }
  return errors > 0 ? SOME_IN_ERROR : ALL_WELL;
}

export interface Bar {
  set(done: number, of: number): void;
  stop(): void;
}

/** A progress bar for long work; none where nobody watches. */
export function progressBar(unit: string): Bar {
  let bar: SingleBar | undefined;
  const started = Date.now();
  return {
    set(done, of) {
      if (!process.stderr.isTTY || Date.now() - started < 500) return;
      if (!bar) {
        bar = new SingleBar({ format: `{bar} {percentage} % of {total} ${unit}`, stream: process.stderr });
        bar.start(of, done);
      }
      bar.setTotal(of);
      bar.update(done);
    },
    stop: () => bar?.stop(),
  };
}
