// build: `npm run fuzz`. The random calls of tests/fuzz, many more of them and from a seed of its own, which it prints:
// FUZZ_SEED=that number npm run fuzz runs the same again.

import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { projectFolder } from "./paths.ts";

const program = join(projectFolder, "node_modules", "vitest", "vitest.mjs");
const { status } = spawnSync(process.execPath, [program, "run", "tests/fuzz", "--testTimeout=3600000"], {
  cwd: projectFolder,
  stdio: "inherit",
  env: {
    ...process.env,
    FUZZ_RUNS: process.env.FUZZ_RUNS ?? "20000",
    FUZZ_SEED: process.env.FUZZ_SEED ?? String(Date.now() % 2 ** 31),
  },
});
process.exitCode = status ?? 1;
