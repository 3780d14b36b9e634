// fill: the spreadsheet's own functions that are computed here. Others keep the values they had; those of the clock and
// of chance (NOW, TODAY, RAND) are left out on purpose.

import type { Functions } from "../formula/evaluate.ts";
import { criteria } from "./criteria.ts";
import { dates } from "./dates.ts";
import { logic } from "./logic.ts";
import { lookups } from "./lookup.ts";
import { math } from "./math.ts";
import { references } from "./references.ts";
import { statistics } from "./statistics.ts";
import { texts } from "./texts.ts";

export const builtins: Functions = new Map([
  ...math,
  ...statistics,
  ...logic,
  ...texts,
  ...lookups,
  ...references,
  ...criteria,
  ...dates,
]);
