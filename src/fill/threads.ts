// fill: spreads workbooks over threads. A workbook that takes more memory than a thread may have ends its thread, and
// with it only itself.

import { Worker } from "node:worker_threads";
import type { WorkbookReport } from "./report.ts";
import type { Job, Message } from "./workbook-worker.ts";

export type JobResult =
  | { readonly job: Job; readonly report: WorkbookReport; readonly isWritten: boolean }
  | { readonly job: Job; readonly refused: string };

/** In MiB. */
const MEMORY = 3072;

export interface Watch {
  progress(job: Job, done: number, of: number): void;
  finished(result: JobResult): void;
}

/** The results in the order of the jobs. */
export async function runJobs(jobs: readonly Job[], threads: number, watch: Watch): Promise<JobResult[]> {
  const results: JobResult[] = new Array(jobs.length);
  let next = 0;
  const work = async () => {
    let worker: Worker | undefined;
    while (next < jobs.length) {
      const at = next++;
      worker ??= start();
      const { result, isAlive } = await runIn(worker, jobs[at]!, watch);
      if (!isAlive) worker = undefined;
      results[at] = result;
      watch.finished(result);
    }
    await worker?.terminate();
  };
  await Promise.all(Array.from({ length: Math.min(threads, jobs.length) }, work));
  return results;
}

/** A thread knows TypeScript only once it is told. */
const program = `
const { workerData } = require("node:worker_threads");
import(workerData.loader).then(({ register }) => { register(); return import(workerData.worker); });
`;

const start = () =>
  new Worker(program, {
    eval: true,
    workerData: {
      loader: import.meta.resolve("tsx/esm/api"),
      worker: new URL("./workbook-worker.ts", import.meta.url).href,
    },
    resourceLimits: { maxOldGenerationSizeMb: MEMORY },
  });

function runIn(worker: Worker, job: Job, watch: Watch): Promise<{ result: JobResult; isAlive: boolean }> {
  return new Promise((resolve, reject) => {
    const end = (result: JobResult, isAlive: boolean) => {
      worker.removeAllListeners();
      resolve({ result, isAlive });
    };
    worker.on("message", (message: Message) => {
      if (message.kind === "progress") watch.progress(job, message.done, message.of);
      else if (message.kind === "filled")
        end({ job, report: message.report, isWritten: message.isWritten }, true);
      else if (message.kind === "refused") end({ job, refused: message.why }, true);
      else {
        worker.removeAllListeners();
        reject(new Error(message.error));
      }
    });
    worker.on("error", (error: Error & { code?: string }) => {
      if (error.code === "ERR_WORKER_OUT_OF_MEMORY")
        end({ job, refused: `the workbook takes more than ${MEMORY} MiB of memory to compute` }, false);
      else reject(error);
    });
    worker.postMessage(job);
  });
}
