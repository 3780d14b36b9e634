// tests: one process that has the fill command loaded and runs one command line after the other, as main.ts does for one.

import { run } from "../../src/fill/main.ts";

const printed = { stdout: "", stderr: "" };
for (const name of ["stdout", "stderr"] as const)
  process[name].write = (text: string | Uint8Array) => {
    printed[name] += text;
    return true;
  };

process.on("message", async (args: string[]) => {
  printed.stdout = "";
  printed.stderr = "";
  const status = await run(args);
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.removeAllListeners(signal);
  process.send!({ status, ...printed });
});
