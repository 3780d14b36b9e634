// bench: `npm run fill` against its bounds: a CSV file against the same functions called on arrays, memory for ten
// times the rows, a workbook of 20,000 cells. Run it with `npm run bench`; it takes some minutes.

import { spawnSync } from "node:child_process";
import { closeSync, mkdtempSync, openSync, readFileSync, rmSync, writeFileSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strToU8, zipSync } from "fflate";
import { projectFolder } from "../build/paths.ts";
import { buildIfStale } from "../build/stale.ts";
import { ColumnComputer } from "../fill/csv/column-computer.ts";
import { planColumns } from "../fill/csv/columns.ts";
import { fillCsv } from "../fill/csv/fill-csv.ts";
import type { Matrix, Scalar } from "../fill/formula/values.ts";
import { loadFunctions, readMetadata } from "../fill/load-functions.ts";

const MILLION = 1_000_000;
const SLOWEST = 5;
const MORE_MEMORY = 1.5;
const LONGEST_SECONDS = 10;
const CELLS = 20_000;

const header = ["part", "callout", "speed", "diameter", "depth", "feed", "material"];
const materials = ["alloy steel", "gray iron", "low-carbon steel"];
const rowOf = (i: number): Scalar[] => [
  `P-${i}`,
  `${6 + (i % 60) / 2} H7`,
  10 + (i % 21),
  5 + (i % 97) / 8,
  20 + (i % 31),
  0.1 + (i % 9) / 50,
  materials[i % 3],
];
const formulas = [
  "rpm=REAM.RPM(speed,diameter)",
  "rate=REAM.FEEDRATE(feed,rpm)",
  "seconds=REAM.HOLETIME(depth,rate)",
  "tolerance=REAM.TOLERANCE(callout)",
  "stock=REAM.STOCK(diameter,material)",
  "cost=REAM.PARTCOST(seconds,90)",
];

const folder = mkdtempSync(join(tmpdir(), "bench-fill-"));
process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
let missed = 0;
const tell = (isReached: boolean, text: string) => {
  if (!isReached) missed++;
  console.log(text);
};

function writeCsv(name: string, rows: number): string {
  const path = join(folder, name);
  const file = openSync(path, "w");
  writeSync(file, `${header.join(",")}\n`);
  for (let i = 0; i < rows; i += 10_000) {
    const lines = Array.from({ length: Math.min(10_000, rows - i) }, (_, k) => rowOf(i + k).join(","));
    writeSync(file, `${lines.join("\n")}\n`);
  }
  closeSync(file);
  return path;
}

async function timed(run: () => unknown): Promise<number> {
  const start = performance.now();
  await run();
  return (performance.now() - start) / 1000;
}

/** Of three, so that neither pays for a bad moment. */
async function leastOf(run: () => unknown): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 3; i++) least = Math.min(least, await timed(run));
  return least;
}

async function speed(): Promise<void> {
  const functions = loadFunctions();
  const metadata = readMetadata();
  const input = writeCsv("million.csv", MILLION);
  const job = { input, output: join(folder, "out.csv"), formulas, units: undefined };
  const csv = await leastOf(() => fillCsv(job, functions, metadata, () => {}));
  const plan = planColumns(formulas, header, functions, metadata, undefined);
  const columns = new Map<string, Matrix>(header.map((name) => [name, []]));
  for (let i = 0; i < MILLION; i++)
    rowOf(i).forEach((value, k) => {
      columns.get(header[k])!.push([value]);
    });
  const direct = await leastOf(() => new ColumnComputer(plan, functions).compute(columns, MILLION));
  const ratio = csv / direct;
  tell(
    ratio <= SLOWEST,
    `CSV of ${MILLION} rows, six columns: ${csv.toFixed(2)} s, ${ratio.toFixed(2)}× the functions called on arrays (at most ${SLOWEST}×)`,
  );
}

const loader = join(projectFolder, "node_modules", "tsx", "dist", "loader.mjs");
const tail = join(folder, "tail.cjs");
const peakFile = join(folder, "peak.txt");

/** Runs the command; its seconds, and the most memory it had in MiB. */
function command(...args: string[]): { seconds: number; peak: number } {
  writeFileSync(
    tail,
    `process.on("exit", () => require("node:fs").writeFileSync(${JSON.stringify(peakFile)}, String(process.resourceUsage().maxRSS)))`,
  );
  const start = performance.now();
  const main = join(projectFolder, "src", "fill", "main.ts");
  const { status, stderr } = spawnSync(
    process.execPath,
    ["--require", tail, "--import", loader, main, ...args],
    { encoding: "utf8" },
  );
  if (status !== 0) throw new Error(`npm run fill ended with ${status}: ${stderr}`);
  return { seconds: (performance.now() - start) / 1000, peak: Number(readFileSync(peakFile, "utf8")) / 1024 };
}

function memory(): void {
  const orders = formulas.flatMap((formula) => ["--formula", formula]);
  const peaks = [1, 10].map((millions) => {
    const path = writeCsv(`${millions}.csv`, millions * MILLION);
    const { peak } = command(path, ...orders);
    rmSync(path);
    return peak;
  });
  const ratio = peaks[1] / peaks[0];
  tell(
    ratio <= MORE_MEMORY,
    `memory for ten million rows: ${peaks[1].toFixed(0)} MiB, ${ratio.toFixed(2)}× that for one million (at most ${MORE_MEMORY}×)`,
  );
}

function workbook(): void {
  const rows = Array.from({ length: CELLS / 2 }, (_, i) => {
    const row = i + 1;
    const inputs = `<c r="A${row}"><v>${10 + (i % 21)}</v></c><c r="B${row}"><v>${5 + (i % 97) / 8}</v></c>`;
    const rpm = `<c r="C${row}"><f>_xldudf_REAM_RPM(A${row},B${row})</f></c>`;
    const rate = `<c r="D${row}"><f>_xldudf_REAM_FEEDRATE(0.1,C${row})</f></c>`;
    return `<row r="${row}">${inputs}${rpm}${rate}<c r="E${row}"><f>SUM(D$1:D${row})</f></c></row>`;
  });
  const path = join(folder, "quote.xlsx");
  writeFileSync(path, zipSync(partsOf(rows.join(""))));
  const { seconds } = command(path);
  tell(
    seconds < LONGEST_SECONDS,
    `workbook of ${CELLS} cells with our functions: ${seconds.toFixed(2)} s (under ${LONGEST_SECONDS} s)`,
  );
}

function partsOf(rows: string): Record<string, Uint8Array> {
  const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const list = (id: string, kind: string, target: string) =>
    strToU8(
      `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="${id}" Type="${relations}/${kind}" Target="${target}"/></Relationships>`,
    );
  return {
    "[Content_Types].xml": strToU8(
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>',
    ),
    "_rels/.rels": list("r1", "officeDocument", "xl/workbook.xml"),
    "xl/workbook.xml": strToU8(
      `<workbook xmlns="${main}" xmlns:r="${relations}"><sheets><sheet name="Quote" sheetId="1" r:id="r1"/></sheets></workbook>`,
    ),
    "xl/_rels/workbook.xml.rels": list("r1", "worksheet", "sheet1.xml"),
    "xl/sheet1.xml": strToU8(`<worksheet xmlns="${main}"><sheetData>${rows}</sheetData></worksheet>`),
  };
}

buildIfStale();
workbook();
await speed();
memory();
process.exitCode = missed ? 1 : 0;
