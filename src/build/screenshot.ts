// build: `npm run screenshot` makes src/browser/screenshot.png, the picture in the README, from the running page: the
// first columns of the quote, and its last ones below, at a size that can be read.

import { join } from "node:path";
import { launchBrowser } from "./browser.ts";
import { distFolder, sourceFolder } from "./paths.ts";
import { createFileServer, listen } from "./server.ts";
import { buildIfStale } from "./stale.ts";

const [width, height] = [900, 560];

buildIfStale();
const server = createFileServer(distFolder);
const port = await listen(server, 0);
const browser = await launchBrowser();
try {
  const page = await browser.newPage({ viewport: { width: width + 315, height } });
  await page.goto(`http://127.0.0.1:${port}/workbook.html`);
  await page.waitForFunction(() => document.getElementById("state")?.textContent?.includes("ready"));
  const strips: string[] = [];
  for (const cell of ["A6", process.argv[2] ?? "AD6"]) {
    const name = page.locator(".o-named-range-selector input");
    await name.fill(cell);
    await name.press("Enter");
    await page.waitForFunction((at) => document.querySelector("#selected dd")?.textContent === at, cell);
    const top = strips.length === 0 ? 0 : 145;
    const shot = await page.screenshot({ clip: { x: 0, y: top, width, height: 480 - top } });
    strips.push(`<img width="${width}" src="data:image/png;base64,${shot.toString("base64")}" alt="">`);
  }
  const whole = await browser.newPage({ viewport: { width, height } });
  await whole.setContent(`<body style="margin:0;font-size:0;display:grid;gap:8px">${strips.join("")}</body>`);
  await whole.screenshot({ path: join(sourceFolder, "browser", "screenshot.png"), fullPage: true });
} finally {
  await browser.close();
  server.closeAllConnections();
  server.close();
}
