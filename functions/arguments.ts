// functions: every argument name of the add-in: one meaning, one unit, one check.
// A plain number within its limits never comes here at run time (see `min`, `max`); texts and the rest do.

import { readCallout } from "../src/calc/callouts/read-callout.ts";
import { LONGEST, type Units } from "../src/calc/lengths.ts";
import { findMaterial } from "../src/calc/materials/find-material.ts";
import {
  plainText,
  readLengthText,
  readNumberText,
  readOwnNumberText,
  refuseUnit,
} from "../src/calc/number-text.ts";
import { namedMaterial, namedTool } from "../src/calc/plans/shop-table.ts";
import { shown, wrong } from "../src/calc/problem.ts";
import { namedDrill } from "../src/calc/stock/named-drill.ts";
import { findTool } from "../src/calc/tools.ts";
import { remedies, type Symptom } from "../src/data/remedies.ts";

/** The unit of a value, or the two of the metric and the inch set. */
export type UnitText = string | readonly [mm: string, inch: string];

export interface Argument {
  /** Its unit, "" for a number without one. */
  readonly unit: UnitText;
  /** What a cell may hold, in the words of the help. */
  readonly accepts: string;
  /** An empty cell may arrive as 0: is a 0 then a value or a blank? */
  readonly zeroCounts: boolean;
  /** A plain number from `min` to `max`, both included, is taken as it is. */
  readonly min: number;
  readonly max: number;
  /** A length: its greatest value and its text depend on the unit. */
  readonly isLength: boolean;
  /** Whether reading it needs the unit of the row. */
  readonly needsUnits: boolean;
  /** Reads any other cell that is neither blank nor an error; throws a Problem. */
  readonly read: (cell: unknown, name: string, units: Units, hasUnits: boolean) => any;
}

const LEAST_POSITIVE = Number.MIN_VALUE;
const UNDER_ONE = 1 - 2 ** -53;
/** No number is at least this. */
const NEVER = Number.NaN;

interface Limits {
  min: number;
  max: number;
  whole?: boolean;
  /** May be written in percent. */
  isShare?: boolean;
  says: string;
  /** A number that it may well be. */
  example?: string;
}

const ANY: Limits = { min: -Number.MAX_VALUE, max: Number.MAX_VALUE, says: "a number" };
const POSITIVE: Limits = { min: LEAST_POSITIVE, max: Number.MAX_VALUE, says: "a number over 0" };
const NOT_NEGATIVE: Limits = { min: 0, max: Number.MAX_VALUE, says: "a number of 0 or more" };
const WHOLE: Limits = { min: 1, max: 1e9, whole: true, says: "a whole number of 1 or more", example: "6" };
const WHOLE_OR_NONE: Limits = {
  min: 0,
  max: 1e9,
  whole: true,
  says: "a whole number of 0 or more",
  example: "3",
};
const SHARE: Limits = {
  min: LEAST_POSITIVE,
  max: 1,
  isShare: true,
  says: "a share over 0, up to 1",
  example: "0.85",
};
const PART: Limits = {
  min: 0,
  max: UNDER_ONE,
  isShare: true,
  says: "a share from 0 to under 1",
  example: "0.15",
};
const EXPONENT: Limits = {
  min: LEAST_POSITIVE,
  max: UNDER_ONE,
  says: "a number between 0 and 1",
  example: "0.25",
};
const ANGLE: Limits = { min: LEAST_POSITIVE, max: 180 - 1e-9, says: "an angle in degrees over 0, under 180" };
const CHAMFER: Limits = { min: LEAST_POSITIVE, max: 90, says: "an angle in degrees over 0, up to 90" };
const CELSIUS: Limits = { min: -459.67, max: 1e4, says: "a temperature" };

function holds(limits: Limits, value: number): boolean {
  return value >= limits.min && value <= limits.max && (!limits.whole || Number.isInteger(value));
}

const unitIn = (unit: UnitText, units: Units) =>
  typeof unit === "string" ? unit : unit[units === "mm" ? 0 : 1];

/** A number that such an argument may well be, for messages. */
function exampleOf(limits: Limits, unit: string): string {
  return limits.example ?? EXAMPLES[unit] ?? "2.5";
}

const EXAMPLES: Readonly<Record<string, string>> = {
  mm: "12.5",
  in: "0.5",
  "m/min": "15",
  "ft/min": "80",
  "rev/min": "6000",
  "mm/min": "290",
  "in/min": "12",
  s: "30",
  min: "45",
  h: "8",
  parts: "400",
  "°": "118",
  "°C": "25",
  "°F": "70",
  "per hour": "90",
};

function number(limits: Limits, unit: UnitText = "", zero: "counts" | "is blank" = "is blank"): Argument {
  return {
    unit,
    accepts: limits.says,
    zeroCounts: zero === "counts",
    min: limits.whole ? NEVER : limits.min,
    max: limits.max,
    isLength: false,
    needsUnits: Array.isArray(unit),
    read(cell, name, units, hasUnits) {
      const isKnown = typeof unit === "string" || hasUnits;
      const own = limits.isShare ? "%" : isKnown ? unitIn(unit, units) : "";
      const example = exampleOf(limits, isKnown ? unitIn(unit, units) : "");
      const value = plainNumber(cell, name, limits.says, example, (text) =>
        readOwnNumberText(text, name, example, own),
      );
      if (!holds(limits, value)) refuseNumber(cell, value, name, limits, example);
      return value;
    },
  };
}

function refuseNumber(cell: unknown, value: number, name: string, limits: Limits, example: string): never {
  if (limits.isShare && value > 1 && value <= 100)
    wrong(`${name} is ${shown(cell)}. Write ${Number((value / 100).toPrecision(12))} for ${value} %.`);
  return wrong(`${name} is ${shown(cell)}. Write ${limits.says}, like ${example}.`);
}

function length(limits: Limits, zero: "counts" | "is blank" = "is blank"): Argument {
  const says = limits.says.replace("a number", "a length");
  return {
    unit: ["mm", "in"],
    accepts: says,
    zeroCounts: zero === "counts",
    min: limits.min,
    max: limits.max,
    isLength: true,
    needsUnits: true,
    read(cell, name, units, hasUnits) {
      const example = exampleOf(limits, units);
      const value = plainNumber(cell, name, says, example, (text) => {
        if (hasUnits) return readLengthText(text, name, units, example);
        const read = readNumberText(text, name, example);
        if (read.unit !== "") refuseUnit(text, name, "");
        return read.value;
      });
      if (Math.abs(value) > LONGEST[units])
        wrong(
          `${name} is ${shown(cell)}, over ${LONGEST[units]} ${units}. A fraction typed into a plain cell (1/2) becomes a date, so write 0.5 or '1/2.`,
        );
      if (!(value >= limits.min && value <= limits.max))
        wrong(`${name} is ${shown(cell)}. Write ${says}, like ${example}.`);
      return value;
    },
  };
}

function plainNumber(
  cell: unknown,
  name: string,
  says: string,
  example: string,
  fromText: (text: string) => number,
): number {
  if (typeof cell === "number" && Number.isFinite(cell)) return cell;
  if (typeof cell === "string") return fromText(cell);
  return wrong(`${name} is ${shown(cell)}. Write ${says}, like ${example}.`);
}

function word(accepts: string, read: Argument["read"], needsUnits = false): Argument {
  return { unit: "", accepts, zeroCounts: false, min: NEVER, max: NEVER, isLength: false, needsUnits, read };
}

const LONGEST_TEXT = 200;

/** A text short enough to be looked through. */
function brief(text: string, name: string): string {
  if (text.length > LONGEST_TEXT)
    wrong(`${name} is a text of ${text.length} characters. Write at most ${LONGEST_TEXT}.`);
  return text;
}

const briefText = (text: string, name: string) => plainText(brief(text, name));

/** `a`, `a or b`, `a, b, or c` */
const listed = (words: readonly string[]) =>
  words.length < 3 ? words.join(" or ") : `${words.slice(0, -1).join(", ")}, or ${words[words.length - 1]}`;

/** One of a few words, any case, with other ways to write them. */
function choice<T extends string>(words: readonly T[], others: Readonly<Record<string, T>> = {}): Argument {
  const known = new Map<string, T>([...words.map((one) => [one, one] as const), ...Object.entries(others)]);
  const says = listed(words.map((one) => `"${one}"`));
  return word(says, (cell, name) => {
    const read = typeof cell === "string" ? known.get(briefText(cell, name).toLowerCase()) : undefined;
    return read ?? wrong(`${name} ${shown(cell)} is not known. Write ${says}.`);
  });
}

function text(
  accepts: string,
  read: (text: string, name: string, units: Units) => any,
  needsUnits = false,
): Argument {
  return word(
    accepts,
    (cell, name, units) =>
      typeof cell === "string"
        ? read(brief(cell, name), name, units)
        : typeof cell === "number"
          ? read(String(cell), name, units)
          : wrong(`${name} is ${shown(cell)}. Write ${accepts}.`),
    needsUnits,
  );
}

const callout = text('a callout such as "12 H7" or "12 +0.018/0"', readCallout, true);
const holeCallout = text(
  'a callout of a hole such as "12 H7"',
  (value, name, units) => {
    const read = readCallout(value, name, units);
    if (read.kind === "shaft")
      wrong(
        `${name} ${shown(value)}: ${read.className} is a shaft class. Is ${read.className.toUpperCase()} meant?`,
      );
    return read;
  },
  true,
);
/** A number cell may have lost the zeros of its designation, so it is handed over as a number. */
const materialName = word('a material such as "4140", "6061-T6", or "58 HRC"', (cell, name) =>
  typeof cell === "number"
    ? findMaterial(cell)
    : typeof cell === "string"
      ? findMaterial(brief(cell, name))
      : wrong(`${name} is ${shown(cell)}. Write a material such as "4140".`),
);
const className = text('a tolerance class such as "H7"', (value) => plainText(value));
const yesOrNo = word("TRUE or FALSE", (cell, name) => {
  if (typeof cell === "boolean") return cell;
  const said = typeof cell === "string" ? briefText(cell, name).toLowerCase() : cell;
  if (said === 1 || said === "true" || said === "yes") return true;
  if (said === 0 || said === "false" || said === "no") return false;
  return wrong(`${name} is ${shown(cell)}. Write TRUE or FALSE.`);
});
const holeWords = choice(["through", "blind"], {
  thru: "through",
  "thru all": "through",
  "through hole": "through",
  true: "through",
  "blind hole": "blind",
  false: "blind",
});
/** As CALLOUT gives it: TRUE or FALSE. */
const holeKind: Argument = {
  ...holeWords,
  accepts: '"through" or "blind", or TRUE for through and FALSE for blind',
  read: (cell, name, units, hasUnits) =>
    typeof cell === "boolean" ? (cell ? "through" : "blind") : holeWords.read(cell, name, units, hasUnits),
};
const retractRate: Argument = (() => {
  const rate = number(POSITIVE, ["mm/min", "in/min"]);
  return {
    ...rate,
    accepts: 'a feed rate over 0 or "rapid"',
    read(cell, name, units, hasUnits) {
      const word = typeof cell === "string" ? briefText(cell, name).toLowerCase() : "";
      if (word === "rapid") return "rapid";
      if (/^[a-z ]+$/.test(word))
        wrong(`${name} ${shown(cell)} is not a number. Write a feed rate, or "rapid".`);
      return rate.read(cell, name, units, hasUnits);
    },
  };
})();
/** A reading taken as it is; the calculation decides what it is. */
const anything = word("a value", (cell) => cell);

const size = length(POSITIVE);
/** A diameter, or the name of an inch drill in either unit. */
const drill: Argument = {
  ...size,
  accepts: "a diameter over 0, or a drill's name such as 31/64, #15, or F",
  read(cell, name, units, hasUnits) {
    const inches = typeof cell === "string" ? namedDrill(briefText(cell, name)) : undefined;
    if (inches === undefined) return size.read(cell, name, units, hasUnits);
    return units === "in" ? inches : inches * 25.4;
  },
};
const distance = length(NOT_NEGATIVE, "counts");
const deviation = length(ANY, "counts");
const time = number(NOT_NEGATIVE, "s", "counts");
const money = number(NOT_NEGATIVE, "", "counts");
const rate = (unit: UnitText = "") => number(POSITIVE, unit);
const temperature = number(CELSIUS, ["°C", "°F"], "counts");
const reading = number(ANY, "", "counts");
const turn = number({ min: -360, max: 360, says: "an angle in degrees from -360 to 360" }, "°", "counts");

export const units = choice<Units>(["mm", "in"], {
  metric: "mm",
  inch: "in",
  inches: "in",
  '"': "in",
});

/** The vocabulary. A worksheet function may only use these names. */
export const vocabulary = {
  // A: callouts, limits and fits
  callout,
  part: choice(["nominal", "lower", "upper", "class", "count", "depth", "note", "through", "marks"]),
  size,
  class: className,
  grade: text('a grade from IT01 to IT18 such as 7 or "IT7"', (value) => plainText(value)),
  hole: callout,
  shaft: callout,
  uncertainty: length(NOT_NEGATIVE),
  // B: the reamer for the hole
  cutsOver: deviation,
  step: size,
  reamer: size,
  measured: size,
  thickness: size,
  thicknessTolerance: distance,
  buildUp: number(SHARE),
  callouts: holeCallout,
  // C: stock and drills
  diameter: size,
  material: materialName,
  tool: text('a tool such as "HSS" or "coated carbide"', (name) => findTool(name)),
  drilledOver: deviation,
  series: choice(["metric", "fraction", "number", "letter", "inch"]),
  drill,
  stock: size,
  offset: distance,
  reamedDepth: size,
  bevelLead: size,
  chipRoom: size,
  pointAngle: number(ANGLE, "°"),
  // D: speeds and feeds
  surfaceSpeed: rate(["m/min", "ft/min"]),
  rpm: rate("rev/min"),
  maxRpm: rate("rev/min"),
  feedPerRev: rate(["mm", "in"]),
  feedRate: rate(["mm/min", "in/min"]),
  feedPerTooth: rate(["mm", "in"]),
  flutes: number({ ...WHOLE, max: 200 }),
  depth: size,
  // E: time
  leadIn: distance,
  overrun: distance,
  retractRate,
  holeTime: time,
  holes: number(WHOLE),
  moveTime: time,
  toolChange: time,
  loadTime: time,
  cycleTime: time,
  shiftHours: rate("h"),
  uptime: number(SHARE),
  partsPerYear: rate("parts"),
  hoursPerYear: rate("h"),
  scrapRate: number(PART, "", "counts"),
  presentCycle: time,
  proposedCycle: time,
  // F: torque and power
  chamferAngle: number(CHAMFER, "°"),
  torque: rate(["N·m", "lbf·in"]),
  efficiency: number(SHARE),
  // G: tool life and cost
  speeds: rate(["m/min", "ft/min"]),
  lives: rate("min"),
  n: number(EXPONENT),
  c: rate(),
  life: rate("min"),
  cutTime: time,
  changeTime: time,
  edgeCost: money,
  machineRate: rate("per hour"),
  timeFactor: rate(),
  price: money,
  edges: number(WHOLE),
  regrinds: number(WHOLE_OR_NONE, "", "counts"),
  regrindCost: money,
  partsPerEdge: rate("parts"),
  otherCost: money,
  cost: money,
  setupTime: number(NOT_NEGATIVE, "min", "counts"),
  setupRate: rate("per hour"),
  batch: rate("parts"),
  overhead: number(
    { min: 0, max: 2, isShare: true, says: "a share from 0 to 2", example: "0.12" },
    "",
    "counts",
  ),
  margin: number(PART, "", "counts"),
  presentCost: money,
  proposedCost: money,
  investment: money,
  savingPerPart: number(ANY, "", "counts"),
  presentFixed: money,
  proposedFixed: money,
  present: number(NOT_NEGATIVE, "", "counts"),
  proposed: number(NOT_NEGATIVE, "", "counts"),
  // H: setting up and measuring
  at0: deviation,
  at90: deviation,
  at180: deviation,
  at270: deviation,
  reading1: reading,
  distance1: reading,
  reading2: reading,
  distance2: reading,
  distance: reading,
  angle1: turn,
  angle2: turn,
  runout: distance,
  limit: size,
  reading: distance,
  angle: number(ANGLE, "°"),
  contribution1: reading,
  mean: size,
  deviation: size,
  repeatability: distance,
  reproducibility: distance,
  temperature,
  gaugeTemperature: temperature,
  gaugeMaterial: materialName,
  holeKind,
  blocked: yesOrNo,
  interrupted: yesOrNo,
  over: reading,
  upTo: number(POSITIVE),
  entries: anything,
  // I: reference and checking
  value: reading,
  from: text("a unit that CONVERT knows", (value) => plainText(value)),
  to: text("a unit that CONVERT knows", (value) => plainText(value)),
  handFigure: reading,
  lower: size,
  upper: size,
  expected: reading,
  allowedShare: number({ ...SHARE, example: "0.01" }),
  functionName: text("the name of a function", (value) => plainText(value)),
  inputs: anything,
  // J: plans, the shop's own data, and what the whole job needs
  table: { ...anything, accepts: "a range with a header row" },
  column: text("the header of a column", (value) => plainText(value)),
  symptom: choice(Object.keys(remedies) as Symptom[]),
  diameters: size,
  positions: distance,
  confidence: number({
    min: LEAST_POSITIVE,
    max: UNDER_ONE,
    isShare: true,
    says: "a share between 0 and 1",
    example: "0.95",
  }),
  parts: rate("parts"),
  years: rate(),
  hours: rate("h"),
  interest: number(PART, "", "counts"),
  space: money,
  energy: money,
  upkeep: money,
  bore: size,
  pressure: rate(["bar", "psi"]),
  bores: number(WHOLE),
  coefficient: number({ min: LEAST_POSITIVE, max: 1, says: "a number over 0, up to 1", example: "0.7" }),
  force: number(NOT_NEGATIVE, ["N", "lbf"], "counts"),
  length: size,
  toolMaterial: choice(["steel", "carbide"], { hss: "steel" }),
  cpk: reading,
  count: number(WHOLE),
  units,
} as const satisfies Record<string, Argument>;

export type ArgumentName = keyof typeof vocabulary;

/** What a calculation reads itself, taken as it is. */
export const wholeCell = anything;

/** The material of the shop's own table: any text, and the one of ours that it is, if it is one. */
export const shopMaterial: Argument = {
  ...materialName,
  read: (cell, name) =>
    typeof cell === "string" || (typeof cell === "number" && Number.isFinite(cell))
      ? namedMaterial(typeof cell === "string" ? brief(cell, name) : String(cell))
      : materialName.read(cell, name, "mm", false),
};

/** A material of ours, with the text that it was asked for by. */
export const knownMaterial: Argument = {
  ...materialName,
  read: (cell, name) => ({ text: String(cell), material: materialName.read(cell, name, "mm", false) }),
};

/** The tool of the shop's own table: any text, and the kind of ours that it is, if it is one. */
export const shopTool: Argument = {
  ...vocabulary.tool,
  read: (cell, name) =>
    typeof cell === "string" ? namedTool(brief(cell, name)) : vocabulary.tool.read(cell, name, "mm", false),
};

/** A kind of tool of ours, with the text that it was asked for by. */
export const knownTool: Argument = {
  ...vocabulary.tool,
  read: (cell, name) => ({ text: String(cell), tool: vocabulary.tool.read(cell, name, "mm", false) }),
};

/** DEPTHRATIO has no `units`, and yet its lengths may carry one: a text with a unit is read to a stated length. */
export const eitherUnit: Argument = {
  ...size,
  read(cell, name) {
    const stated = typeof cell === "string" ? readNumberText(cell, name) : undefined;
    const value: number = size.read(stated?.value ?? cell, name, stated?.units ?? "mm", true);
    return stated?.units ? { value, units: stated.units } : value;
  },
};

/** A list of sizes among other texts, which are skipped; a text of digits that cannot be read is still refused. */
export const sizeAmongTexts: Argument = {
  ...size,
  read(cell, name, units, hasUnits) {
    if (typeof cell === "string" && !readsAsNumber(cell)) {
      const digits = cell.length <= 40 && /^[+-]?[.,]*\d[\d.,]*$/.test(plainText(cell.normalize("NFKC")));
      if (!digits) return undefined;
    }
    return size.read(cell, name, units, hasUnits);
  },
};

function readsAsNumber(text: string): boolean {
  try {
    readNumberText(text, "");
    return true;
  } catch {
    return false;
  }
}
