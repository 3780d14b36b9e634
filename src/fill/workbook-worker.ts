// fill: fills one workbook after the other in a thread of its own, whose memory is bounded.

import { mkdirSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { parentPort } from "node:worker_threads";
import { Refusal } from "../workbook/workbook.ts";
import { changedSince, readWhole, replaceFile } from "./files.ts";
import { fillWorkbook } from "./fill-workbook.ts";
import { loadFunctions } from "./load-functions.ts";
import type { WorkbookReport } from "./report.ts";

export interface Job {
  readonly input: string;
  readonly output: string;
  /** Whether the output computes without our functions. */
  readonly ownFormulas: boolean;
}

export type Message =
  | { readonly kind: "progress"; readonly done: number; readonly of: number }
  | { readonly kind: "filled"; readonly report: WorkbookReport; readonly isWritten: boolean }
  | { readonly kind: "refused"; readonly why: string }
  | { readonly kind: "failed"; readonly error: string };

const functions = loadFunctions();

export function runJob({ input, output, ownFormulas }: Job, tell: (message: Message) => void): void {
  const { bytes, stamp } = readWhole(input);
  const { pieces, report } = fillWorkbook(
    bytes,
    functions,
    (done, of) => tell({ kind: "progress", done, of }),
    ownFormulas,
  );
  const isSame = resolve(input) === resolve(output);
  const isWritten = pieces !== undefined || !isSame;
  if (isWritten) {
    mkdirSync(dirname(resolve(output)), { recursive: true });
    replaceFile(output, pieces ?? [bytes], isSame ? () => changedSince(input, stamp) : undefined);
  }
  tell({ kind: "filled", report, isWritten });
}

parentPort?.on("message", (job: Job) => {
  const tell = (message: Message) => parentPort!.postMessage(message);
  try {
    runJob(job, tell);
  } catch (error) {
    if (error instanceof Refusal) tell({ kind: "refused", why: error.message });
    else
      tell({
        kind: "failed",
        error: error instanceof Error ? (error.stack ?? error.message) : String(error),
      });
  }
});
