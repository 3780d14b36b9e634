// build: `npm run excel`. Serves dist/ over https on localhost with a certificate made here, and says how to add the
// add-in to Excel. It changes no setting of the machine: trusting the certificate is left to the person.

import { X509Certificate } from "node:crypto";
import { chmodSync, existsSync, mkdirSync, readFileSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { logErrorMessage } from "office-addin-cli";
import { generateCertificates } from "office-addin-dev-certs";
import { waysToAdd } from "./how-to-add.ts";
import { addressSetting, defaultAddress } from "./manifest.ts";
import { cacheFolder, distFolder } from "./paths.ts";
import { createFileServer, listen, stopOnSignal } from "./server.ts";
import { buildIfStale } from "./stale.ts";

const days = 30;
const folder = join(cacheFolder, "certificates");
const authority = join(folder, "ca.crt");
const certificate = join(folder, "localhost.crt");
const key = join(folder, "localhost.key");
const trustedFolder = join(homedir(), ".office-addin-dev-certs");

interface Certificate {
  readonly cert: Buffer;
  readonly key: Buffer;
}

/** A certificate with its key, if both are there and do not end within a day. */
function freshCertificate(cert: string, key: string): Certificate | undefined {
  if (!existsSync(cert) || !existsSync(key)) return undefined;
  const ends = Date.parse(new X509Certificate(readFileSync(cert)).validTo);
  return ends - Date.now() > 24 * 3600 * 1000
    ? { cert: readFileSync(cert), key: readFileSync(key) }
    : undefined;
}

/** The certificate that `office-addin-dev-certs install` has made, and that this machine trusts. */
const trustedCertificate = () =>
  freshCertificate(join(trustedFolder, "localhost.crt"), join(trustedFolder, "localhost.key"));

/** The certificate of localhost, made anew when it is missing or nearly over. Its key is for nobody else's eyes. */
async function ownCertificate(): Promise<Certificate> {
  mkdirSync(folder, { recursive: true });
  chmodSync(folder, 0o700);
  if (!freshCertificate(certificate, key))
    await generateCertificates(authority, certificate, key, days, ["localhost"]);
  chmodSync(key, 0o600);
  return { cert: readFileSync(certificate), key: readFileSync(key) };
}

const howToTrust = `The certificate was made on this machine and nothing trusts it yet. Trust ${authority}
as an authority (Windows: certmgr; Mac: Keychain Access, "always trust"), or let
  npx office-addin-dev-certs install
make and trust one of its own. Remove it when you are done.`;

async function serveForExcel(): Promise<void> {
  if (addressSetting() !== defaultAddress)
    throw new Error(
      `npm run excel serves ${defaultAddress}: unset REAMWRIGHT_ADDRESS, or use npm run package`,
    );
  const wanted = Number(new URL(defaultAddress).port);
  buildIfStale();
  const trusted = trustedCertificate();
  const server = createFileServer(distFolder, trusted ?? (await ownCertificate()));
  const port = await listen(server, wanted);
  if (port !== wanted) {
    server.close();
    throw new Error(
      `Port ${wanted} is taken, and the manifest names it: stop what uses it, npm start perhaps.`,
    );
  }
  console.log(`
Serving ${defaultAddress} for Excel. Stop it with Ctrl+C.

${trusted ? `The certificate is the one in ${trustedFolder}.` : howToTrust}
The manifest is ${join(distFolder, "manifest.xml")}
`);
  for (const { where, steps } of waysToAdd(defaultAddress)) {
    console.log(`${where}:`);
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
