// build: `npm run icons` draws manifest/icons/: the bore of a hole, and in it a six-fluted reamer seen from its end.

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { launchBrowser } from "./browser.ts";
import { manifestFolder } from "./paths.ts";

const sizes = [16, 32, 64, 80, 128];
/** What the unified manifest asks for: its own outline on nothing, and the icon in full. */
const unified = { "outline.png": 32, "color.png": 192 };
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
  // At 16 pixels a finer drawing turns to gray.
  const small = size < 32;
  const ring = small ? 13 : 10;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}" viewBox="0 0 100 100">
    <circle cx="50" cy="50" r="${49 - ring / 2}" fill="#ffffff" stroke="#1b5e7a" stroke-width="${ring}"/>
    <path d="${reamer(small ? 31 : 34, small ? 9 : 12)}" fill="#d9822b"/>
    ${small ? "" : '<circle cx="50" cy="50" r="4.5" fill="#ffffff"/>'}
  </svg>`;
}

/** White lines alone. */
function outline(size: number): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}" viewBox="0 0 100 100">
    <circle cx="50" cy="50" r="43" fill="none" stroke="#ffffff" stroke-width="9"/>
    <path d="${reamer(30, 11)}" fill="#ffffff"/>
  </svg>`;
}

const folder = join(manifestFolder, "icons");
mkdirSync(folder, { recursive: true });
const browser = await launchBrowser();
try {
  const page = await browser.newPage();
  const draw = async (name: string, size: number, picture: string) => {
    await page.setViewportSize({ width: size, height: size });
    await page.setContent(`<style>body{margin:0}svg{display:block}</style>${picture}`);
    writeFileSync(join(folder, name), await page.screenshot({ omitBackground: true }));
  };
  for (const size of sizes) await draw(`icon-${size}.png`, size, drawing(size));
  await draw("outline.png", unified["outline.png"], outline(unified["outline.png"]));
  await draw("color.png", unified["color.png"], drawing(unified["color.png"]));
} finally {
  await browser.close();
}
