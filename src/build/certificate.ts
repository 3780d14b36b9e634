// build: the certificate that `npm run excel` serves with, and how to trust it. What is told to be trusted is what is
// served.

import { X509Certificate } from "node:crypto";
import { chmodSync, existsSync, mkdirSync, readFileSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { generateCertificates } from "office-addin-dev-certs";
import { cacheFolder } from "./paths.ts";

const DAYS = 30;
const A_DAY = 24 * 3600 * 1000;

export interface Certificate {
  readonly authority: string;
  readonly cert: Buffer;
  readonly key: Buffer;
  /** Made and trusted by `npx office-addin-dev-certs install`, and not by us. */
  readonly isInstalled: boolean;
}

const filesIn = (folder: string) => ({
  authority: join(folder, "ca.crt"),
  cert: join(folder, "localhost.crt"),
  key: join(folder, "localhost.key"),
});

function isFresh(folder: string): boolean {
  const { authority, cert, key } = filesIn(folder);
  if (![authority, cert, key].every((file) => existsSync(file))) return false;
  return Date.parse(new X509Certificate(readFileSync(cert)).validTo) - Date.now() > A_DAY;
}

/** The one that office-addin-dev-certs has installed if there is one, else our own, made anew when nearly over. */
export async function certificateOf(
  installed = join(homedir(), ".office-addin-dev-certs"),
  own = join(cacheFolder, "certificates"),
): Promise<Certificate> {
  const isInstalled = isFresh(installed);
  const folder = isInstalled ? installed : own;
  const { authority, cert, key } = filesIn(folder);
  if (!isInstalled) {
    // A key is for nobody else's eyes.
    mkdirSync(folder, { recursive: true });
    chmodSync(folder, 0o700);
    if (!isFresh(folder)) await generateCertificates(authority, cert, key, DAYS, ["localhost"]);
    chmodSync(key, 0o600);
  }
  return { authority, cert: readFileSync(cert), key: readFileSync(key), isInstalled };
}

/** How to trust the authority on this kind of machine, and how to take that back. */
export function howToTrust({ authority, isInstalled }: Certificate, platform = process.platform): string[] {
  if (isInstalled)
    return [
      `The certificate is the one that office-addin-dev-certs installed: ${authority}`,
      "Take it back with: npx office-addin-dev-certs uninstall",
    ];
  const made = `The certificate was made on this machine, and nothing trusts it yet: ${authority}`;
  if (platform === "win32")
    return [
      made,
      `Trust it:     certutil -user -addstore Root "${authority}"`,
      'Take it back: certutil -user -delstore Root "Developer CA for Microsoft Office Add-ins"',
    ];
  if (platform === "darwin")
    return [
      made,
      `Trust it:     security add-trusted-cert -r trustRoot -k ~/Library/Keychains/login.keychain-db "${authority}"`,
      `Take it back: security remove-trusted-cert "${authority}"`,
    ];
  return [made, "Trust it in the browser that you use, under its settings for certificates."];
}
