// tests: what is told about adding it to Excel: today's menus, files that are there, and the certificate that is served.

import { X509Certificate } from "node:crypto";
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { JSDOM } from "jsdom";
import { afterAll, describe, expect } from "vitest";
import { certificateOf, howToTrust } from "../../src/build/certificate.ts";
import { hostPage, ifItDoesNotWork, userPage, waysToAdd } from "../../src/build/how-to-add.ts";
import { projectFolder } from "../../src/build/paths.ts";
import { longTest, quickTest } from "../support/share.ts";

const folder = mkdtempSync(join(tmpdir(), "certificates-"));
afterAll(() => rmSync(folder, { recursive: true }));
const address = "https://tools.example/reaming";
const textOf = (page: string) => new JSDOM(page).window.document.body.textContent ?? "";

describe("the certificate", () => {
  longTest("that is told to be trusted has signed the one that is served", async () => {
    const served = await certificateOf(join(folder, "none"), join(folder, "own"));
    expect(served.isInstalled).toBe(false);
    const authority = new X509Certificate(readFileSync(served.authority));
    expect(new X509Certificate(served.cert).verify(authority.publicKey)).toBe(true);
    for (const platform of ["win32", "darwin", "linux"] as const)
      expect(howToTrust(served, platform).join(" ")).toContain(served.authority);
    for (const platform of ["win32", "darwin"] as const) {
      const [command] = howToTrust(served, platform).filter((line) => line.startsWith("Trust it"));
      expect(command).toContain(served.authority);
    }
    // The name by which Windows takes it back.
    expect(howToTrust(served, "win32").join(" ")).toContain(/CN=(.+)/.exec(authority.subject)![1]);
  });

  longTest(
    "has a key that its owner alone may read, in a folder that its owner alone may enter",
    async () => {
      const open = join(folder, "left-open");
      mkdirSync(open, { mode: 0o755 });
      for (const own of [open, join(folder, "deep", "own")]) {
        await certificateOf(join(folder, "none"), own);
        expect(statSync(own).mode & 0o777).toBe(0o700);
        expect(statSync(join(own, "localhost.key")).mode & 0o777).toBe(0o600);
        // Nor is the rest of the folder written by others.
        for (const name of readdirSync(own)) expect(statSync(join(own, name)).mode & 0o022).toBe(0);
      }
      // Nor a key that was there already.
      chmodSync(join(open, "localhost.key"), 0o644);
      await certificateOf(join(folder, "none"), open);
      expect(statSync(join(open, "localhost.key")).mode & 0o777).toBe(0o600);
    },
  );

  quickTest("that is installed already is the one that is served", async () => {
    const own = await certificateOf(join(folder, "none"), join(folder, "own"));
    const served = await certificateOf(join(folder, "own"), join(folder, "other"));
    expect(served.isInstalled).toBe(true);
    expect(served.cert.equals(own.cert)).toBe(true);
    expect(existsSync(join(folder, "other"))).toBe(false);
    expect(howToTrust(served, "win32").join(" ")).toContain("uninstall");
  });
});

describe("the page for the user", () => {
  const text = textOf(userPage(address));

  quickTest("names the menus of today, which Excel, and the local network", () => {
    for (const words of [
      "Home > Add-ins > More Settings > Upload My Add-in",
      "Home > Add-ins > Advanced > Shared Folder",
      "local network",
      "version 2102",
      "version 2311",
      "16.50",
      "LTSC 2021",
    ])
      expect(text).toContain(words);
    expect(text).not.toContain("More Add-ins");
  });

  quickTest("says what to do where it does not work", () => {
    for (const words of [
      "#NAME?",
      "#BUSY!",
      "restart Excel",
      "new workbook",
      "Calculation Options",
      "semicolons",
      "up to a day",
    ])
      expect(text).toContain(words);
    expect(ifItDoesNotWork.length).toBeGreaterThan(4);
  });

  quickTest("leads to files of the site alone", () => {
    const { document } = new JSDOM(userPage(address)).window;
    expect([...document.querySelectorAll("a")].map((link) => link.getAttribute("href"))).toEqual([
      "manifest.xml",
      "workbook.html",
      "reference/",
    ]);
  });
});

quickTest("the page for the host names its address, framing and the manifests", () => {
  const text = textOf(hostPage(address));
  for (const words of [
    address,
    "Access-Control-Allow-Origin",
    "excel.cloud.microsoft",
    "add-to-excel.html",
    "workbook.html",
    "reamwright.zip",
  ])
    expect(text).toContain(words);
});

quickTest("the terminal names the manifest where it lies", () => {
  const ways = waysToAdd("https://localhost:4180", join(projectFolder, "dist", "/"));
  const manifest = join(projectFolder, "dist", "manifest.xml");
  expect(ways[0].steps.join(" ")).toContain(manifest);
});
