// bench: `npm run bench`. Each part in a process of its own; one that misses its limits stops no other.

import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

for (const part of ["functions", "page", "fill"]) {
  const file = fileURLToPath(new URL(`${part}.ts`, import.meta.url));
  const { status } = spawnSync(process.execPath, ["--import", "tsx", file], { stdio: "inherit" });
  if (status !== 0) process.exitCode = 1;
}
