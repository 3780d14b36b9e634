// fill: `npm run fill`. Computes the worksheet functions in workbooks and CSV files without a spreadsheet program.

import { readdirSync, rmSync, statSync } from "node:fs";
import { extname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { buildIfStale } from "../build/stale.ts";
import { Refusal } from "../workbook/workbook.ts";
import { type Order, readOrder, usage } from "./command-line.ts";
import { fillCsv } from "./csv/fill-csv.ts";
import { besideName, realPath } from "./files.ts";
import { loadFunctions, readMetadata } from "./load-functions.ts";
import { NOT_READ, progressBar, showCsv, showWorkbooks } from "./show.ts";
import { runJobs } from "./threads.ts";
import type { Job } from "./workbook-worker.ts";

const THREADS = 2;
const workbookEndings = [".xlsx", ".xlsm"];

/** A person names files from where they are; npm runs commands in the folder of the project. */
const absolute = (path: string) =>
  resolve(process.env.npm_lifecycle_event === "fill" ? (process.env.INIT_CWD ?? ".") : ".", path);

/** Does what the command line asks for, and gives the status to end with. */
export async function run(args: readonly string[]): Promise<number> {
  try {
    return await runOrder(readOrder(args));
  } catch (error) {
    console.error(error instanceof Refusal ? error.message : error);
    return NOT_READ;
  }
}

async function runOrder(order: Order | "help"): Promise<number> {
  if (order === "help") {
    console.log(usage);
    return 0;
  }
  const input = absolute(order.input);
  const output = order.output === undefined ? input : absolute(order.output);
  const stats = statSync(input, { throwIfNoEntry: false });
  if (!stats) throw new Refusal(`${order.input}: there is no such file or folder`);
  const ending = extname(input).toLowerCase();
  const isCsv = !stats.isDirectory() && [".csv", ".txt", ".tsv"].includes(ending);
  if (!isCsv && (order.formulas.length > 0 || order.units))
    throw new Refusal(
      `${order.formulas.length > 0 ? "--formula" : "--units"} is for CSV files, and ${order.input} is none`,
    );
  if (isCsv && order.ownFormulas)
    throw new Refusal(`--own-formulas is for workbooks, and ${order.input} is none`);
  if (order.ownFormulas && realPath(output) === realPath(input))
    throw new Refusal("--own-formulas makes a copy. Name another file or folder for it");
  if (isCsv) return await runCsv(input, output, order);
  if (!stats.isDirectory() && !workbookEndings.includes(ending))
    throw new Refusal(`${order.input} is no .xlsx, .xlsm or .csv file`);
  const { ownFormulas } = order;
  const jobs = stats.isDirectory() ? jobsOf(input, output, ownFormulas) : [{ input, output, ownFormulas }];
  return await runWorkbooks(jobs, order.json);
}

/** The workbooks of a folder; not those that a program keeps beside an open one. */
function jobsOf(folder: string, output: string, ownFormulas: boolean): Job[] {
  const names = readdirSync(folder)
    .filter((name) => workbookEndings.includes(extname(name).toLowerCase()) && !/^(?:~\$|\.)/.test(name))
    .sort();
  if (names.length === 0) throw new Refusal(`${folder} holds no .xlsx or .xlsm file`);
  return names.map((name) => ({ input: join(folder, name), output: join(output, name), ownFormulas }));
}

async function runWorkbooks(jobs: readonly Job[], json: boolean): Promise<number> {
  buildIfStale();
  removeOnInterrupt(jobs.map(({ output }) => output));
  const bar = progressBar(jobs.length === 1 ? "formulas" : "workbooks");
  let finished = 0;
  const results = await runJobs(jobs, THREADS, {
    progress: (_, done, of) => jobs.length === 1 && bar.set(done, of),
    finished: () => jobs.length > 1 && bar.set(++finished, jobs.length),
  }).finally(bar.stop);
  return showWorkbooks(results, json);
}

async function runCsv(input: string, output: string, order: Order): Promise<number> {
  if (order.formulas.length === 0)
    throw new Refusal('a CSV file needs a --formula, as in --formula "rpm=REAM.RPM(speed,diameter)"');
  buildIfStale();
  removeOnInterrupt([output]);
  const bar = progressBar("bytes");
  const { formulas, units } = order;
  const report = await fillCsv(
    { input, output, formulas, units },
    loadFunctions(),
    readMetadata(),
    bar.set,
  ).finally(bar.stop);
  return showCsv(report, output, order.json);
}

function removeOnInterrupt(outputs: readonly string[]): void {
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const)
    process.once(signal, () => {
      for (const output of outputs) rmSync(besideName(output), { force: true });
      process.exit(NOT_READ);
    });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await run(process.argv.slice(2));
