// tests: how the engine runs them. A test file runs each thing a few times: most of what is compiled for speed, in threads
// beside it, is never used again, and a third of all time went there. Garbage is collected without threads for the same reason.

import { setFlagsFromString } from "node:v8";

for (const flag of [
  "--interrupt-budget=400000",
  "--max-semi-space-size=64",
  "--no-parallel-scavenge",
  "--always-sparkplug",
])
  setFlagsFromString(flag);
