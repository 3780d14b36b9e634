// browser: the holes that the invented shop quotes. Invented parts and batches; callouts in the ways drawings write them.

export type Units = "mm" | "in";

export interface Hole {
  readonly part: string;
  readonly callout: string;
  readonly kind: "through" | "blind";
  readonly material: string;
  readonly tool: "HSS" | "carbide";
  /** Reamed depth, in `units`. */
  readonly depth: number;
  readonly units: Units;
  readonly holes: number;
  readonly batch: number;
}

const hole = (
  part: string,
  callout: string,
  kind: Hole["kind"],
  material: string,
  tool: Hole["tool"],
  depth: number,
  units: Units,
  holes: number,
  batch: number,
): Hole => ({ part, callout, kind, material, tool, depth, units, holes, batch });

export const holes: readonly Hole[] = [
  hole("Pump body", "12 H7 THRU", "through", "gray iron", "HSS", 30, "mm", 2, 400),
  hole("Pump body", "Ø20 H7", "through", "gray iron", "carbide", 35, "mm", 1, 400),
  hole("Pump cover", "4X 8 H8", "through", "gray iron", "HSS", 12, "mm", 4, 400),
  hole("Gear case", "25 H7 ↧40", "blind", "ductile iron", "carbide", 40, "mm", 2, 150),
  hole("Gear case", "10 +0.022/0", "through", "ductile iron", "HSS", 25, "mm", 6, 150),
  hole("Link arm", ".5000 +.0005/-.0000", "through", "alloy steel", "HSS", 1.225, "in", 2, 1000),
  hole("Link arm", ".3750 +.0008/-.0000", "through", "alloy steel", "HSS", 0.75, "in", 1, 1000),
  hole("Valve block", "4X ⌀16 H7 THRU", "through", "ductile iron", "carbide", 40, "mm", 4, 250),
  hole("Valve block", "6 ±0.01", "blind", "ductile iron", "carbide", 18, "mm", 8, 250),
  hole("Valve block", "14 F7", "through", "ductile iron", "HSS", 30, "mm", 1, 250),
  hole("Manifold", ".4995/.5005", "blind", "austenitic stainless", "carbide", 1, "in", 4, 80),
  hole("Manifold", ".2500 +.0005/-.0000", "blind", "austenitic stainless", "carbide", 0.5, "in", 6, 80),
  hole("Bearing cap", "18 H8", "through", "low-carbon steel", "HSS", 28, "mm", 1, 600),
  hole("Bearing cap", "12.000-12.018", "through", "low-carbon steel", "HSS", 20, "mm", 2, 600),
  hole("Fixture plate", "10 H7", "through", "tool steel", "HSS", 20, "mm", 12, 10),
  hole("Fixture plate", "16", "through", "tool steel", "HSS", 25, "mm", 4, 10),
  hole("Clevis", ".7500 ±.0005", "through", "medium-carbon steel", "HSS", 1.5, "in", 2, 300),
  hole("Clevis", "1.0000 RC4", "through", "medium-carbon steel", "HSS", 1.25, "in", 1, 300),
  hole("Rocker", "18 H9", "through", "malleable iron", "HSS", 22, "mm", 1, 900),
  hole("Rocker", "22 N7", "through", "malleable iron", "HSS", 22, "mm", 1, 900),
  hole("Bushing", ".6250 +.001/-.000", "through", "bronze", "HSS", 0.875, "in", 1, 2000),
  hole("Bushing", "12 H8", "through", "bronze", "HSS", 16, "mm", 1, 2000),
  hole(
    "Guide rail",
    "4X .3125 +.0006/-.0000 THRU",
    "through",
    "free-cutting steel",
    "HSS",
    0.5,
    "in",
    4,
    120,
  ),
  hole("Guide rail", ".1875 +.0005/-.0000", "blind", "free-cutting steel", "HSS", 0.375, "in", 2, 120),
  hole("Housing half", "24 H7", "through", "cast aluminum", "carbide", 50, "mm", 1, 220),
  hole("Housing half", "5 H7", "blind", "cast aluminum", "HSS", 10, "mm", 2, 220),
  hole("Terminal block", ".1250 +.0005/-.0000", "through", "brass", "HSS", 0.25, "in", 10, 5000),
  hole("Hinge", ".484 DRILL, REAM .500 +.0005/-.0000", "through", "titanium", "carbide", 0.8, "in", 2, 40),
  hole("Spindle nose", "24 H7", "blind", "alloy steel", "carbide", 60, "mm", 1, 25),
  hole("Spindle nose", "8 H7 x 20 deep", "blind", "alloy steel", "HSS", 20, "mm", 4, 25),
];
