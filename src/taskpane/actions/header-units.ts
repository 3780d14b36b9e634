// taskpane: the unit that a header names, and its counterpart: "Depth (in)" becomes "Depth (mm)".

import type { ConversionKind, Direction } from "./conversion-kinds.ts";

/** The unit that a units cell or argument names. */
export function unitNamed(text: string): "mm" | "in" | undefined {
  if (/^\s*(?:in|inch|inches|")\s*$/i.test(text)) return "in";
  return /^\s*(?:mm|metric)\s*$/i.test(text) ? "mm" : undefined;
}

/** Ways to write a unit in a header, each a pattern without anchors. "in" alone is also an English word. */
const SPELLINGS: Readonly<Record<string, { readonly metric: string; readonly inch: string }>> = {
  length: { metric: "mm|millimet(?:er|re)s?", inch: 'in\\.?|inch(?:es)?|"|″' },
  "surface speed": {
    metric: "m ?/ ?min|mpm",
    inch: "ft ?/ ?min|sfm|sfpm|fpm|surface feet per minute",
  },
  "feed per revolution": {
    metric: "mm ?/ ?(?:rev|U|tooth|z)|mm",
    inch: 'in\\.? ?/ ?(?:rev|tooth)|ipr|ipt|in\\.?|inch(?:es)?|"|″',
  },
  "feed rate": { metric: "mm ?/ ?min", inch: "in\\.? ?/ ?min|ipm" },
  torque: {
    metric: "N ?[·⋅*.-]? ?m|newton[- ]met(?:er|re)s?",
    inch: "lbf? ?[·⋅*.-]? ?in|in ?[·⋅*.-]? ?lbf?s?",
  },
  roughness: { metric: "[µμu]m|micromet(?:er|re)s?|microns?", inch: '[µμu]in|[µμu]["″]|micro-?inch(?:es)?' },
};

/** A unit stands alone, in brackets, or at the end after a blank, a comma, a colon or a slash between words. */
const places = (unit: string): RegExp[] => [
  new RegExp(`^(\\s*)(${unit})(\\s*)$`, "iu"),
  new RegExp(`([([{<]\\s*)(${unit})(\\s*[\\])}>])`, "iu"),
  new RegExp(`([\\s,:;]\\s*)(${unit})(\\s*)$`, "iu"),
  new RegExp(`(,\\s*)(${unit})(\\s*(?:[,;(]))`, "iu"),
];

export interface HeaderChange {
  /** The header with the new unit, or undefined if it names none that changes. */
  readonly after: string | undefined;
  /** True if the header names the unit that is converted to: it may have been done before. */
  readonly namesTarget: boolean;
  /** What the header names a unit of, if it is of another kind: "surface speed". */
  readonly otherKind: string | undefined;
}

export function changeHeader(header: string, kind: ConversionKind, direction: Direction): HeaderChange {
  const { metric, inch } = SPELLINGS[kind.key];
  const [from, to] = direction === "to metric" ? [inch, metric] : [metric, inch];
  const after = replaceUnit(header, from, newUnit(kind, direction === "to metric" ? "mm" : "in"));
  const namesTarget = after === undefined && names(header, to);
  return {
    after,
    namesTarget,
    otherKind: after === undefined && !namesTarget ? otherKindOf(header) : undefined,
  };
}

/** The kind of which a header names a unit: "Speed, sfm". */
function otherKindOf(header: string): string | undefined {
  return Object.entries(SPELLINGS).find(
    ([, { metric, inch }]) => names(header, metric) || names(header, inch),
  )?.[0];
}

/** The new unit in the style of the old: a bare "in" of a feed becomes a bare "mm", per tooth stays per tooth. */
function newUnit(kind: ConversionKind, unit: "mm" | "in"): (old: string) => string {
  const written = unit === "mm" ? kind.metricHeader : kind.inchHeader;
  return (old) => {
    if (kind.key !== "feed per revolution") return written;
    if (/tooth|ipt|\/ ?z/i.test(old)) return `${unit}/tooth`;
    return /rev|ipr|\/ ?U/i.test(old) ? `${unit}/rev` : unit;
  };
}

function names(header: string, unit: string): boolean {
  return places(unit).some((place) => place.test(header));
}

function replaceUnit(header: string, unit: string, to: (old: string) => string): string | undefined {
  for (const place of places(unit)) {
    if (!place.test(header)) continue;
    return header.replace(
      place,
      (_all, before: string, old: string, after: string) => `${before}${to(old)}${after}`,
    );
  }
  return undefined;
}
