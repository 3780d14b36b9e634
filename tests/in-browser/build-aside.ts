// tests: what the browser is shown is what the sources make now. The build runs beside the tests that do without it.

import { mkdtempSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { buildIfStaleAside } from "../../src/build/stale.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** A file that comes when the build has ended: with its fault, or empty. */
    readonly buildEnded: string;
  }
}

export default function setup(project: TestProject): () => Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "build-"));
  const file = join(folder, "ended");
  const end = (fault: string) => {
    writeFileSync(`${file}.new`, fault);
    renameSync(`${file}.new`, file);
  };
  const build = buildIfStaleAside().then(
    () => end(""),
    (error) => end(String(error)),
  );
  project.provide("buildEnded", file);
  return async () => {
    await build;
    rmSync(folder, { recursive: true });
  };
}
