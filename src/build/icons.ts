// build: `npm run icons` draws manifest/icons/: the bore of a hole, and in it a six-fluted reamer seen from its end.

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { launchBrowser } from "./browser.ts";
import { manifestFolder } from "./paths.ts";

const sizes = [16, 32, 64, 80, 128];
const flutes = 6;

/** The reamer's outline: from each cutting edge along a land, then into the flute and out to the next edge. */
function reamer(radius: number, core: number): string {
  const point = (r: number, turn: number) => {
    const angle = 2 * Math.PI * turn - Math.PI / 2;
    return `${(50 + r * Math.cos(angle)).toFixed(2)} ${(50 + r * Math.sin(angle)).toFixed(2)}`;
  };
  const step = 1 / flutes;
  const teeth = Array.from({ length: flutes }, (_, tooth) => {
    const from = tooth * step;
    return [
      `${tooth === 0 ? "M" : "L"} ${point(radius, from)}`,
      `A ${radius} ${radius} 0 0 1 ${point(radius, from + 0.4 * step)}`,
      `Q ${point(core, from + 0.62 * step)} ${point(core, from + step)}`,
    ].join(" ");
  });
  return `${teeth.join(" ")} Z`;
}

function drawing(size: number): string {
  // At 16 pixels a finer drawing turns to grey.
  const small = size < 32;
  const ring = small ? 13 : 10;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}" viewBox="0 0 100 100">
    <circle cx="50" cy="50" r="${49 - ring / 2}" fill="#ffffff" stroke="#1b5e7a" stroke-width="${ring}"/>
    <path d="${reamer(small ? 31 : 34, small ? 9 : 12)}" fill="#d9822b"/>
    ${small ? "" : '<circle cx="50" cy="50" r="4.5" fill="#ffffff"/>'}
  </svg>`;
}

const folder = join(manifestFolder, "icons");
mkdirSync(folder, { recursive: true });
const browser = await launchBrowser();
try {
  const page = await browser.newPage();
  for (const size of sizes) {
    await page.setViewportSize({ width: size, height: size });
    await page.setContent(`<style>body{margin:0}svg{display:block}</style>${drawing(size)}`);
    writeFileSync(join(folder, `icon-${size}.png`), await page.screenshot({ omitBackground: true }));
  }
} finally {
  await browser.close();
}
