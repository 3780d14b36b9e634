// fill: spreads workbooks over threads. A workbook that takes more memory than a thread may have ends its thread, and
// with it only itself.

import { Worker } from "node:worker_threads";
import { fillThreadFile } from "../build/paths.ts";
import type { WorkbookReport } from "./report.ts";
import type { Job, Message } from "./workbook-worker.ts";

export type JobResult =
  | { readonly job: Job; readonly report: WorkbookReport; readonly isWritten: boolean }
  | { readonly job: Job; readonly refused: string };

/** In MiB. */
const MEMORY = 2048;

export interface Watch {
  progress(job: Job, done: number, of: number): void;
  finished(result: JobResult): void;
}

/** The results in the order of the jobs. */
export async function runJobs(jobs: readonly Job[], threads: number, watch: Watch): Promise<JobResult[]> {
  const results: JobResult[] = new Array(jobs.length);
  let next = 0;
  const work = async () => {
    let thread: Thread | undefined;
    while (next < jobs.length) {
      const at = next++;
      thread ??= new Thread();
      const { result, isAlive } = await thread.run(jobs[at], watch);
      if (!isAlive) thread = undefined;
      results[at] = result;
      watch.finished(result);
    }
    await thread?.end();
  };
  await Promise.all(Array.from({ length: Math.min(threads, jobs.length) }, work));
  return results;
}

class Thread {
  private readonly worker = new Worker(fillThreadFile, {
    resourceLimits: { maxOldGenerationSizeMb: MEMORY },
  });
  private heard: (message: Message) => void = () => {};
  private broken: (error: Error & { code?: string }) => void = () => {};

  constructor() {
    this.worker.on("message", (message: Message) => this.heard(message));
    this.worker.on("error", (error) => this.broken(error));
  }

  run(job: Job, watch: Watch): Promise<{ result: JobResult; isAlive: boolean }> {
    return new Promise((resolve, reject) => {
      this.heard = (message) => {
        if (message.kind === "progress") watch.progress(job, message.done, message.of);
        else if (message.kind === "failed") reject(new Error(message.error));
        else if (message.kind === "refused")
          resolve({ result: { job, refused: message.why }, isAlive: true });
        else {
          const { report, isWritten } = message;
          resolve({ result: { job, report, isWritten }, isAlive: true });
        }
      };
      this.broken = (error) => {
        if (error.code !== "ERR_WORKER_OUT_OF_MEMORY") return reject(error);
        const refused = `the workbook takes more than ${MEMORY} MiB of memory to compute`;
        return resolve({ result: { job, refused }, isAlive: false });
      };
      this.worker.postMessage(job);
    });
  }

  async end(): Promise<void> {
    await this.worker.terminate();
  }
}
