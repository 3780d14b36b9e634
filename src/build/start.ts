// build: `npm start`. Builds dist/ if it has to, serves it on the loopback address, says where.

import { logErrorMessage, parseNumber } from "office-addin-cli";
import { distFolder } from "./paths.ts";
import { createFileServer, listen, stopOnSignal } from "./server.ts";
import { buildIfStale } from "./stale.ts";

const defaultPort = 4180;

function wantedPort(): number {
  const port =
    parseNumber(process.env.PORT || undefined, `PORT "${process.env.PORT}" must be a number`) ?? defaultPort;
  if (!Number.isInteger(port) || port < 0 || port > 65535)
    throw new Error(`PORT ${port} must be a whole number from 0 to 65535`);
  return port;
}

async function start(): Promise<void> {
  const wanted = wantedPort();
  buildIfStale();
  const server = createFileServer(distFolder);
  const port = await listen(server, wanted);
  if (wanted !== 0 && port !== wanted) console.log(`Port ${wanted} is taken; using ${port}.`);
  console.log(`
Browser workbook: http://127.0.0.1:${port}/workbook.html
Stop it with Ctrl+C.

Reference pages:  http://127.0.0.1:${port}/reference/

In Excel on this machine: npm run excel serves it over https and says how to add it.
For others: REAMWRIGHT_ADDRESS=https://that.address npm run package, and open package/for-the-host.html.
`);
  stopOnSignal(server);
}

start().catch((error) => {
  logErrorMessage(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
