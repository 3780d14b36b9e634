// bench: the built worksheet functions over columns against a bare loop that builds the same result arrays, in one run.
// Prints ratios of least times; run it with `npm run bench`. Times are those of this process on the processor, threads
// that collect garbage among them, so that other programs on the machine count little. Garbage is collected before each
// time is taken, so that neither pays for what the other left.

import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { type Case, cases } from "./cases.ts";

const ROWS = 100_000;
const ROUNDS = 15;

setFlagsFromString("--expose-gc");
const collect: (how: { type: "minor" }) => void = runInNewContext("gc");
/** Of the young alone: a full collection would shrink their room, and the call after it would collect in the middle. */
const collectGarbage = () => collect({ type: "minor" });

function milliseconds(run: () => unknown): number {
  collectGarbage();
  const start = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

/** Least times of both, taken in turn so that neither has the quieter moments. */
function leastTimes(one: Case, rows: number): { call: number; bare: number } {
  let call = Number.POSITIVE_INFINITY;
  let bare = Number.POSITIVE_INFINITY;
  const columns = JSON.parse(JSON.stringify(one.columns(rows)));
  const repeat = Math.max(1, Math.round(10_000 / rows));
  const time = (run: () => unknown) =>
    milliseconds(() => {
      for (let again = 0; again < repeat; again++) run();
    }) / repeat;
  for (let round = 0; round < ROUNDS; round++) {
    bare = Math.min(
      bare,
      time(() => one.bare(columns)),
    );
    call = Math.min(
      call,
      time(() => one.call(columns)),
    );
  }
  return { call, bare };
}

let missed = 0;
for (const one of cases) {
  const few = leastTimes(one, 1000);
  const many = leastTimes(one, ROWS);
  const ratio = many.call / many.bare;
  const growth = many.call / few.call / (many.bare / few.bare);
  if (ratio > one.limit || growth > 1.6) missed++;
  console.log(
    `${one.name}: ${ratio.toFixed(2)}× a bare loop (at most ${one.limit}×), ${many.call.toFixed(1)} ms for ${ROWS} rows; growth per row ${growth.toFixed(2)}× the loop's own (at most 1.6×)`,
  );
}
process.exitCode = missed ? 1 : 0;
