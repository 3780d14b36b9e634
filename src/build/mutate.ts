// build: `npm run mutate`. Mutation testing of src/calc, with --fill of src/fill. The whole takes hours; --sample 0.1
// tests the faults in a tenth of the functions, drawn by chance, and prints the score with its margin.

import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { parseArgs } from "node:util";
import ts from "typescript";
import { cacheFolder, projectFolder } from "./paths.ts";

/** A function, a member of a class, or another statement of a module: drawn with all its faults, or not. */
interface Piece {
  readonly file: string;
  readonly first: number;
  readonly last: number;
}

/** What Stryker writes of each fault that it made. */
interface Mutant {
  readonly mutatorName: string;
  readonly replacement: string;
  readonly status:
    | "Killed"
    | "Survived"
    | "NoCoverage"
    | "Timeout"
    | "Ignored"
    | "CompileError"
    | "RuntimeError";
  readonly location: { readonly start: { readonly line: number } };
}

interface Config {
  readonly mutate: readonly string[];
  readonly jsonReporter: { readonly fileName: string };
}

const { values } = parseArgs({
  options: {
    sample: { type: "string", default: "1" },
    seed: { type: "string", default: String(Date.now() % 1_000_000) },
    fill: { type: "boolean", default: false },
    concurrency: { type: "string", default: "2" },
  },
});
const share = Number(values.sample);
if (!(share > 0 && share <= 1)) throw new Error("--sample is a share over 0, up to 1");

const ownConfig = values.fill ? "stryker.fill.config.json" : "stryker.config.json";
const config: Config = JSON.parse(readFileSync(join(projectFolder, ownConfig), "utf8"));

/** The pieces of the modules that the globs name, in the order of files. */
function piecesOf(globs: readonly string[]): Piece[] {
  const includes = globs.filter((glob) => !glob.startsWith("!"));
  const excludes = globs.filter((glob) => glob.startsWith("!")).map((glob) => glob.slice(1));
  return ts.sys
    .readDirectory(projectFolder, [".ts"], excludes, includes)
    .sort()
    .flatMap((path) => {
      const source = ts.createSourceFile(path, readFileSync(path, "utf8"), ts.ScriptTarget.Latest);
      const lineAt = (at: number) => source.getLineAndCharacterOfPosition(at).line + 1;
      return source.statements
        .filter(
          (one) =>
            !ts.isImportDeclaration(one) &&
            !ts.isInterfaceDeclaration(one) &&
            !ts.isTypeAliasDeclaration(one),
        )
        .flatMap((one): readonly ts.Node[] => (ts.isClassDeclaration(one) ? one.members : [one]))
        .map((one) => ({
          file: relative(projectFolder, path).replaceAll("\\", "/"),
          first: lineAt(one.getStart(source)),
          last: lineAt(one.end),
        }));
    });
}

/** Every nth piece from a random one on, so that each file has its share. */
function drawn(pieces: readonly Piece[]): Piece[] {
  // A generator of Park and Miller: the same pieces for the same seed.
  const random = ((Number(values.seed) * 48_271) % 2_147_483_647) / 2_147_483_647;
  const kept: Piece[] = [];
  for (let at = random / share; at < pieces.length; at += 1 / share) kept.push(pieces[Math.floor(at)]);
  return kept;
}

const pieces = piecesOf(config.mutate);
const sample = share === 1 ? pieces : drawn(pieces);
mkdirSync(cacheFolder, { recursive: true });
const configFile = join(cacheFolder, "stryker.json");
const mutate =
  share === 1 ? config.mutate : sample.map(({ file, first, last }) => `${file}:${first}-${last}`);
writeFileSync(configFile, JSON.stringify({ ...config, mutate, concurrency: Number(values.concurrency) }));
console.log(`Seed ${values.seed}: ${sample.length} of ${pieces.length} functions and other pieces.`);
const reportFile = join(projectFolder, config.jsonReporter.fileName);
rmSync(reportFile, { force: true });
const stryker = join(projectFolder, "node_modules", "@stryker-mutator", "core", "bin", "stryker.js");
const { status } = spawnSync(process.execPath, [stryker, "run", configFile], {
  cwd: projectFolder,
  stdio: "inherit",
});
// Under the lowest score that the configuration allows, Stryker fails after its report.
if (existsSync(reportFile)) report();
process.exitCode = status ?? 1;

/** Kills by a failed test over the faults that tests could have found; what ran out of time is counted apart. */
function report(): void {
  const { files } = JSON.parse(readFileSync(reportFile, "utf8")) as {
    files: Readonly<Record<string, { readonly mutants: readonly Mutant[] }>>;
  };
  const counts = sample.map(({ file, first, last }) => {
    const here = (files[file]?.mutants ?? []).filter(
      ({ location: { start } }) => start.line >= first && start.line <= last,
    );
    const count = (...statuses: Mutant["status"][]) =>
      here.filter((one) => statuses.includes(one.status)).length;
    return { killed: count("Killed"), alive: count("Survived", "NoCoverage"), late: count("Timeout") };
  });
  for (const [file, { mutants }] of Object.entries(files))
    for (const { status, location, mutatorName, replacement } of mutants)
      if (status === "Survived" || status === "NoCoverage")
        console.log(`${status} ${file}:${location.start.line} ${mutatorName}: ${replacement.slice(0, 60)}`);
  const sum = (key: "killed" | "alive" | "late") => counts.reduce((all, one) => all + one[key], 0);
  const tested = sum("killed") + sum("alive");
  const score = sum("killed") / tested;
  // Faults of one function live or die together, so it is functions that vary: the ratio estimator of a cluster sample.
  const spread = counts.reduce((all, { killed, alive }) => all + (killed - score * (killed + alive)) ** 2, 0);
  const margin = (1.96 * Math.sqrt((1 - share) * spread * (counts.length / (counts.length - 1)))) / tested;
  const percent = (part: number) => `${(100 * part).toFixed(1)} %`;
  console.log(
    `${percent(score)} of ${tested} faults killed by a failed test${share < 1 ? `, ± ${percent(margin)} at 95 %` : ""}; ${sum("late")} more ran out of time.`,
  );
}
