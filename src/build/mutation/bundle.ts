// build: the tests and all modules of the project that they use as one script, in which mutants can be switched on.

import { readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { pathToFileURL } from "node:url";
import { Instrumenter } from "@stryker-mutator/instrumenter";
import { build, type Plugin } from "esbuild";
import { functionFiles } from "../declarations.ts";
import { projectFolder } from "../paths.ts";
import type { Piece, Range } from "./pieces.ts";

export interface Mutant {
  /** Its number, as text. */
  readonly id: string;
  /** From the root of the project. */
  readonly file: string;
  /** From 0. */
  readonly line: number;
  readonly mutatorName: string;
  readonly replacement: string;
}

/** The sources of the pieces by path, each with its mutants behind switches. */
export async function withMutants(pieces: readonly Piece[]) {
  const ranges = new Map<string, Range[]>();
  for (const { file, range } of pieces) ranges.set(file, [...(ranges.get(file) ?? []), range]);
  const files = [...ranges].map(([file, mutate]) => {
    const name = join(projectFolder, file);
    return { name, content: readFileSync(name, "utf8"), mutate };
  });
  const silent = new Proxy({}, { get: () => () => false }) as ConstructorParameters<typeof Instrumenter>[0];
  const options = { plugins: null, excludedMutations: [], ignorers: [] };
  const result = await new Instrumenter(silent).instrument(files, options);
  const mutants: Mutant[] = result.mutants.map(({ id, fileName, location, mutatorName, replacement }) => ({
    id,
    file: relative(projectFolder, fileName).replaceAll("\\", "/"),
    line: location.start.line,
    mutatorName,
    replacement,
  }));
  return { mutants, sources: new Map(result.files.map(({ name, content }) => [name, content])) };
}

/** A script that gives the modules of tests by name, each loaded at its first call. Packages stay outside. */
export async function bundleOf(
  tests: readonly string[],
  sources: ReadonlyMap<string, string>,
): Promise<string> {
  const loaders = tests.map(
    (test) => `${JSON.stringify(test)}: () => require(${JSON.stringify(join(projectFolder, test))})`,
  );
  const plugin: Plugin = {
    name: "mutants",
    setup({ onLoad }) {
      onLoad({ filter: /\.ts$/ }, ({ path }) => {
        const text = withStaticImports(sources.get(path) ?? readFileSync(path, "utf8"));
        const address = JSON.stringify(pathToFileURL(path));
        return { contents: text.replaceAll("import.meta.url", address), loader: "ts" };
      });
    },
  };
  const { outputFiles } = await build({
    stdin: { contents: `module.exports = { ${loaders.join(",\n")} };`, resolveDir: projectFolder },
    bundle: true,
    write: false,
    platform: "node",
    format: "cjs",
    target: "node20",
    keepNames: true,
    packages: "external",
    plugins: [plugin],
    logLevel: "error",
  });
  return outputFiles[0].text;
}

/** Tests load the declared functions by paths that they work out; a script of one file has to name them. */
function withStaticImports(text: string): string {
  const dynamic = "await import(join(projectFolder, file))";
  if (!text.includes(dynamic)) return text;
  const modules = functionFiles().map((file, at) => ({
    name: `module${at}`,
    file: JSON.stringify(file),
    key: JSON.stringify(relative(projectFolder, file).replaceAll("\\", "/")),
  }));
  return [
    ...modules.map(({ name, file }) => `import * as ${name} from ${file};`),
    `const declaring: any = { ${modules.map(({ name, key }) => `${key}: ${name}`).join(", ")} };`,
    text.replace(dynamic, "declaring[file]"),
  ].join("\n");
}
