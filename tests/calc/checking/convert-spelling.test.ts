// tests: other ways to write a unit are that unit.

import { expect, test } from "vitest";
import { convert } from "../../../src/calc/checking/convert.ts";

test.each<[canonical: string, ...written: string[]]>([
  ["um", "µm", "μm", " UM ", "microns"],
  ["uin", "µin", "μin", "microinch"],
  ["m/min", "m / min", "m /min", "m/ min", "M/MIN"],
  ["cm3/min", "cm³/min", "CM³ / min"],
  ["in3/min", "in³/min", "in3 /min"],
  ["Nm", "N·m", "N m", "N-m", "N.m", "n ⋅ m"],
  ["lbf-in", "lbf·in", "in-lb", "in lbs", "lb·in", "in.lb"],
  ["lbf-ft", "lbf ft", "ft · lb", "ft-lbs", "lb ft"],
  ["MPa", "N/mm²", "n / mm2"],
  ["in", '"', "''", "inches", "ins"],
  ["sfm", "ft/min", "ft / min", "fpm"],
  ["ipm", "in/min"],
  ["mm/rev", "mm / rev"],
])("%s is %s", (canonical, ...written) => {
  for (const one of written) expect([one, convert(3, one, canonical)]).toEqual([one, 3]);
});
