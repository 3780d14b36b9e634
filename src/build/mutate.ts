// build: `npm run mutate`. Mutation testing of src/calc, with --fill of src/fill. --sample 0.1 tries the mutants in a
// tenth of the functions, drawn by chance, and prints the score with its margin; --file those of one module.

import { type ChildProcess, fork } from "node:child_process";
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { bundleOf, type Mutant, withMutants } from "./mutation/bundle.ts";
import { drawn, filesOf, isIn, piecesOf } from "./mutation/pieces.ts";
import type { DryRun, Trial, Verdict } from "./mutation/worker.ts";
import { cacheFolder, projectFolder } from "./paths.ts";

const { values } = parseArgs({
  options: {
    sample: { type: "string", default: "1" },
    seed: { type: "string", default: String(Date.now() % 1_000_000) },
    fill: { type: "boolean", default: false },
    file: { type: "string", multiple: true, default: [] },
    concurrency: { type: "string", default: "2" },
  },
});
const share = Number(values.sample);
if (!(share > 0 && share <= 1)) throw new Error("--sample is a share over 0, up to 1");

/** What is mutated, and the tests of it: those that use it directly come first, for they find most and take least. */
const subject = values.fill
  ? {
      sources: filesOf(
        ["src/fill/**/*.ts"],
        [
          // Command line, its progress bar, threads, and loading: what tests them starts processes of its own.
          ...["main", "show", "threads", "workbook-worker", "load-functions"].map(
            (name) => `src/fill/${name}.ts`,
          ),
        ],
      ),
      direct: filesOf(["tests/fill/**/*.test.ts"]),
      indirect: [],
    }
  : {
      sources: filesOf(["src/calc/**/*.ts"]),
      direct: filesOf(["tests/calc/**/*.test.ts", "tests/data/*.test.ts"]),
      indirect: filesOf(["tests/functions/*.test.ts"]),
    };
const testFiles = [...subject.direct, ...subject.indirect];

const started = Date.now();
const elapsed = () => `after ${((Date.now() - started) / 1000).toFixed(0)} s`;
const all = subject.sources
  .filter((file) => values.file.length === 0 || values.file.includes(file))
  .flatMap(piecesOf);
const pieces = drawn(all, share, Number(values.seed));
const { mutants, sources } = await withMutants(pieces);
mkdirSync(cacheFolder, { recursive: true });
const scriptFile = join(cacheFolder, `mutants-${process.pid}.cjs`);
writeFileSync(scriptFile, await bundleOf(testFiles, sources));
console.log(
  `Seed ${values.seed}: ${mutants.length} mutants in ${pieces.length} of ${all.length} functions and other pieces.`,
);

/** A process that runs tests. One that does not answer in time is ended, and the next question has a new one. */
class Worker {
  #process: ChildProcess | undefined;

  ask(question: string | Trial, milliseconds: number): Promise<unknown> {
    this.#process ??= fork(join(import.meta.dirname, "mutation", "worker.ts"), [scriptFile], {
      execArgv: ["--import", "tsx"],
      env: { ...process.env, CALLOUT_RUNS: "300", NODE_ENV: "test" },
      serialization: "advanced",
    });
    const child = this.#process;
    return new Promise((resolve) => {
      const end = (answer: unknown) => {
        clearTimeout(timer);
        child.removeAllListeners();
        if (answer === undefined) this.end();
        resolve(answer);
      };
      const timer = setTimeout(() => end(undefined), milliseconds);
      child.on("exit", () => end(undefined));
      child.on("message", end);
      child.send(question);
    });
  }

  end(): void {
    this.#process?.kill("SIGKILL");
    this.#process = undefined;
  }
}

/** For each mutant the tests that pass it, by file. */
const passing = mutants.map(() => new Map<string, { readonly place: number; readonly took: number }[]>());
const hits = mutants.map(() => 0);
/** For each mutant the files that pass it as they load. */
const atLoad = mutants.map(() => new Set<string>());
const testCounts = new Map<string, number>();
const workers = Array.from({ length: Number(values.concurrency) }, () => new Worker());
await each(testFiles, async (file, worker) => {
  const run = (await worker.ask(file, 3_600_000)) as DryRun | undefined;
  if (!run || run.failed.length > 0)
    throw new Error(`${file} fails without a mutant:\n${run?.failed.join("\n")}`);
  testCounts.set(file, run.tests.length);
  for (const id of run.atLoad) atLoad[Number(id)].add(file);
  for (const [id, count] of Object.entries(run.hits)) hits[Number(id)] += count;
  for (const [place, { took, passed }] of run.tests.entries())
    for (const id of passed) passing[id].set(file, [...(passing[id].get(file) ?? []), { place, took }]);
});
console.log(
  `${[...testCounts.values()].reduce((sum, one) => sum + one)} tests, without mutants ${elapsed()}.`,
);

/** Verdicts on mutants; what is passed as modules load alone is a table, which tests of its own hold to print. */
const verdicts = new Map<Mutant, Verdict | "NoCoverage">();
await each(mutants, async (mutant, worker) => {
  const files = testFiles.filter((file) => passing[Number(mutant.id)].has(file));
  if (files.length > 0) verdicts.set(mutant, await verdictOn(mutant.id, files, worker));
  else if (atLoad[Number(mutant.id)].size === 0) verdicts.set(mutant, "NoCoverage");
  const verdict = verdicts.get(mutant);
  if (verdict === undefined) return;
  const { file, line, mutatorName, replacement } = mutant;
  if (verdict !== "Killed")
    console.log(
      `${verdict} ${file}:${line + 1} ${mutatorName}: ${replacement.replace(/\s+/g, " ").slice(0, 90)}`,
    );
  if (verdicts.size % 100 === 0) console.log(`${verdicts.size} mutants ${elapsed()}`);
});
for (const worker of workers) worker.end();
rmSync(scriptFile);
report();

async function each<One>(list: readonly One[], run: (one: One, worker: Worker) => Promise<void>) {
  const queue = list.values();
  await Promise.all(
    workers.map(async (worker) => {
      for (const one of queue) await run(one, worker);
    }),
  );
}

async function verdictOn(id: string, files: readonly string[], worker: Worker): Promise<Verdict> {
  const own = passing[Number(id)];
  const hitLimit = 100 * hits[Number(id)];
  const ask = async (tests: Trial["tests"], milliseconds: number, isOnAtLoad: boolean) => {
    const trial: Trial = { mutant: id, tests, hitLimit, isOnAtLoad };
    return ((await worker.ask(trial, milliseconds)) as Verdict | undefined) ?? "Timeout";
  };
  // The quick tests first. A slow machine ends nothing: there is ten times the time that they took, and a minute.
  const runs = files.map((file) => [file, own.get(file)!.toSorted((a, b) => a.took - b.took)] as const);
  const took = runs.flatMap(([, tests]) => tests).reduce((sum, one) => sum + one.took, 0);
  const verdict = await ask(
    runs.map(([file, tests]) => [file, tests.map(({ place }) => place)]),
    60_000 + 10 * took,
    false,
  );
  if (verdict !== "Survived") return verdict;
  // A test that finds a result kept from an earlier one, or made as its file was loaded, passes nothing of what made
  // it: now all tests of those files, the mutant on from the beginning.
  const others = testFiles.filter(
    (file) => atLoad[Number(id)].has(file) || (subject.direct.includes(file) && own.has(file)),
  );
  return ask(
    others.map((file) => [file, Array.from({ length: testCounts.get(file)! }, (_, place) => place)]),
    600_000,
    true,
  );
}

/** Kills by a failed test over the mutants that tests could have found; what ran out of time is counted apart. */
function report(): void {
  mkdirSync(join(projectFolder, "reports"), { recursive: true });
  const listed = [...verdicts].map(([mutant, verdict]) => ({ ...mutant, line: mutant.line + 1, verdict }));
  writeFileSync(join(projectFolder, "reports", "mutants.json"), JSON.stringify(listed, undefined, 1));
  const counts = pieces.map(({ file, range }) => {
    const here = [...verdicts].filter(([one]) => one.file === file && isIn(range, one.line));
    const count = (...wanted: string[]) => here.filter(([, verdict]) => wanted.includes(verdict)).length;
    return { killed: count("Killed"), alive: count("Survived", "NoCoverage"), late: count("Timeout") };
  });
  const sum = (key: "killed" | "alive" | "late") => counts.reduce((total, one) => total + one[key], 0);
  const tested = sum("killed") + sum("alive");
  const score = sum("killed") / tested;
  // Mutants of one function live or die together, so it is functions that vary: the ratio estimator of a cluster sample.
  const spread = counts.reduce(
    (total, { killed, alive }) => total + (killed - score * (killed + alive)) ** 2,
    0,
  );
  const margin = (1.96 * Math.sqrt((1 - share) * spread * (counts.length / (counts.length - 1)))) / tested;
  const percent = (part: number) => `${(100 * part).toFixed(1)} %`;
  const within = share < 1 ? `, ± ${percent(margin)} at 95 %` : "";
  console.log(
    `${percent(score)} of ${tested} mutants killed by a failed test${within}; ${sum("late")} more ran out of time ${elapsed()}.`,
  );
}
