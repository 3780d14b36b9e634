// build: `npm run screenshot` makes src/browser/screenshot.png, the picture in the README, from the running page.

import { join } from "node:path";
import { launchBrowser } from "./browser.ts";
import { distFolder, sourceFolder } from "./paths.ts";
import { createFileServer, listen } from "./server.ts";
import { buildIfStale } from "./stale.ts";

buildIfStale();
const server = createFileServer(distFolder);
const port = await listen(server, 0);
const browser = await launchBrowser();
try {
  const page = await browser.newPage({ viewport: { width: 1560, height: 800 } });
  await page.goto(`http://127.0.0.1:${port}/workbook.html`);
  await page.waitForFunction(() => document.getElementById("state")?.textContent?.includes("ready"));
  const name = page.locator(".o-named-range-selector input");
  await name.fill("F6");
  await name.press("Enter");
  await page.waitForFunction(() => document.querySelector("#selected dd")?.textContent === "F6");
  await page.screenshot({ path: join(sourceFolder, "browser", "screenshot.png") });
} finally {
  await browser.close();
  server.closeAllConnections();
  server.close();
}
