// tests: before a file that reads dist/, its build has ended (tests/in-browser/build-aside.ts).

import { existsSync, readFileSync } from "node:fs";
import { setTimeout } from "node:timers/promises";
import { inject } from "vitest";

const ended = inject("buildEnded");
while (!existsSync(ended)) await setTimeout(100);
const fault = readFileSync(ended, "utf8");
if (fault) throw new Error(`dist/ could not be built: ${fault}`);
