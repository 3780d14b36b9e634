// build: `npm run excel`. Serves dist/ over https on localhost with a certificate made here, and says how to add the
// add-in to Excel. It changes no setting of the machine: trusting the certificate is left to the person.

import { join } from "node:path";
import { logErrorMessage } from "office-addin-cli";
import { certificateOf, howToTrust } from "./certificate.ts";
import { ifItDoesNotWork, waysToAdd, whichExcel } from "./how-to-add.ts";
import { addressSetting, defaultAddress } from "./manifest.ts";
import { distFolder } from "./paths.ts";
import { createFileServer, listen, stopOnSignal } from "./server.ts";
import { buildIfStale } from "./stale.ts";

async function serveForExcel(): Promise<void> {
  if (addressSetting() !== defaultAddress)
    throw new Error(
      `npm run excel serves ${defaultAddress}: unset REAMWRIGHT_ADDRESS, or use npm run package`,
    );
  const wanted = Number(new URL(defaultAddress).port);
  buildIfStale();
  const certificate = await certificateOf();
  const server = createFileServer(distFolder, certificate);
  const port = await listen(server, wanted);
  if (port !== wanted) {
    server.close();
    throw new Error(
      `Port ${wanted} is taken, and the manifest names it: stop what uses it, npm start perhaps.`,
    );
  }
  const manifest = join(distFolder, "manifest.xml");
  console.log(`
Serving ${defaultAddress} for Excel. Stop it with Ctrl+C.
The manifest is ${manifest}

${howToTrust(certificate).join("\n")}

On Windows and on a Mac this adds the add-in and starts Excel, and takes it out again:
  npx office-addin-debugging start "${manifest}" desktop
  npx office-addin-debugging stop "${manifest}"
By hand:
`);
  for (const { title, steps } of [
    { title: "Which Excel", steps: whichExcel },
    ...waysToAdd(defaultAddress, join(distFolder, "/")),
    ...ifItDoesNotWork,
  ]) {
    console.log(`${title}:`);
    for (const step of steps) console.log(`  - ${step}`);
  }
  if (process.platform === "linux")
    console.log(`
This is Linux: there is no Excel here to add it to, and the certificate can't be made trusted for Excel on another
machine from here. What works: Excel on the web in a browser on this machine, once that browser trusts the
certificate; npm start for the browser workbook; npm run package for a host that Excel elsewhere can reach.`);
  stopOnSignal(server);
}

serveForExcel().catch((error) => {
  logErrorMessage(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
