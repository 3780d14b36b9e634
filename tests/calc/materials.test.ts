import { describe, expect, it } from "vitest";
import { findMaterial, materialTable } from "../../src/calc/materials.ts";
import { findTool } from "../../src/calc/tools.ts";
import { materials } from "../../src/data/materials/materials.ts";

describe("a material", () => {
  it("is found by its key and each alias, in any case, with any spaces", () => {
    for (const material of materials)
      for (const name of [material.key, ...material.aliases])
        for (const written of [
          name,
          name.toUpperCase(),
          name.toLowerCase(),
          `  ${name.replace(/ /g, "  ")} `,
        ])
          expect(findMaterial(written).key, written).toBe(material.key);
  });

  it("is medium-carbon steel where none is given", () => {
    expect(findMaterial().key).toBe("medium-carbon steel");
    expect(findMaterial(undefined).key).toBe("medium-carbon steel");
  });

  it.each([
    ["Grey Cast Iron", "gray iron"],
    ["GREY IRON", "gray iron"],
    ["EN-GJL-250", "gray iron"],
    ["GG 25", "gray iron"],
    ["EN-GJS-400-15", "ductile iron"],
    ["cast aluminium", "cast aluminum"],
    ["Aluminium", "aluminum"],
    ["aluminium alloy", "aluminum"],
    ["6061-T6", "aluminum"],
    ["EN AW-6061-T651", "aluminum"],
    ["7075 aluminum", "aluminum"],
    ["A356-T6", "cast aluminum"],
    ["Ti6Al4V", "titanium"],
    ["TI-6AL-4V", "titanium"],
    ["Alloy718", "nickel alloy"],
    ["1.4301", "austenitic stainless"],
    ["SS316", "austenitic stainless"],
    ["X5CrNi18-10", "austenitic stainless"],
    ["17-4", "martensitic stainless"],
    ["1.7225", "alloy steel"],
    ["4140 PH", "alloy steel"],
    ["C45E", "medium-carbon steel"],
    ["S355", "low-carbon steel"],
    ["AW-6082", "aluminum"],
    ["EN-GJS-500-7", "ductile iron"],
    ["SAE 660", "bronze"],
    ["brass 360", "brass"],
    ["medium carbon steel", "medium-carbon steel"],
    ["Medium\u00a0Carbon  Steel", "medium-carbon steel"],
    ["low carbon", undefined],
    [1018, "low-carbon steel"],
    [304, "austenitic stainless"],
    ["AISI 4140", "alloy steel"],
    ["SAE 1045", "medium-carbon steel"],
    ["1018 steel", "low-carbon steel"],
    ["304 stainless", "austenitic stainless"],
    ["stainless steel 316L", "austenitic stainless"],
    ["austenitic stainless steel", "austenitic stainless"],
    ["free machining steel", "free-cutting steel"],
    ["17-4PH", "martensitic stainless"],
    ["D2 tool steel", "tool steel"],
    ["18/8", "austenitic stainless"],
    ["copper steel", undefined],
    ["nickel steel", undefined],
    ["aluminum bronze", undefined],
    ["304 aluminum", undefined],
    ["steel", undefined],
    ["unobtainium", undefined],
    ["", undefined],
    ["__proto__", undefined],
    ["constructor", undefined],
    ["x".repeat(5000), undefined],
  ])("written %j is %s", (written, key) => {
    if (key) expect(findMaterial(written).key).toBe(key);
    else expect(() => findMaterial(written)).toThrow(expect.objectContaining({ kind: "wrong" }));
  });

  it("that is unknown is answered with the near keys, or all of them", () => {
    expect(() => findMaterial("spring steel")).toThrow(
      'material "spring steel" is not known: write one of free-cutting steel, low-carbon steel, medium-carbon steel, alloy steel, tool steel, hardened steel',
    );
    expect(() => findMaterial("zinc")).toThrow(
      /"zinc" is not known: write one of free-cutting steel, .*, plastic$/,
    );
  });
});

describe("the table", () => {
  const rowOf = (key: string) => materialTable().find(([first]) => first === key)!;

  it("has a header and a row for each material, of as many cells", () => {
    const table = materialTable();
    expect(table.length).toBe(materials.length + 1);
    for (const row of table) expect(row.length).toBe(9);
    expect(table[0].slice(0, 5)).toEqual([
      "key",
      "ISO 513 group",
      "what it is",
      "speed range",
      "feed factor",
    ]);
  });

  it("says the speed in both units, in carbide where HSS is not used, and the source of each figure", () => {
    // 40 and 50 ft/min are 12.192 and 15.24 m/min, 30 and 60 are 9.144 and 18.288.
    expect(rowOf("medium-carbon steel").slice(0, 8)).toEqual([
      "medium-carbon steel",
      "P",
      "0.3 to 0.55 % C",
      "HSS 40–50 ft/min (12.2–15.2 m/min)",
      1,
      2220,
      0.14,
      11.5,
    ]);
    expect(rowOf("hardened steel")[3]).toBe("carbide 30–60 ft/min (9.1–18.3 m/min)");
    expect(rowOf("medium-carbon steel")[8]).toMatch(
      /^speed: USCTI handbook, .*; feed factor: .*; kc1\.1 and mc: .*; expansion: .+$/,
    );
  });
});

describe("a name that is near one, but none", () => {
  it.each([
    "4140 brass",
    "brass steel",
    "titanium steel",
    "4140 steel gray",
    "xaisi 4140",
    "aisix4140",
    "4140t6x",
    "steel",
    "a".repeat(61),
  ])("%s", (name) => {
    expect(() => findMaterial(name)).toThrow(/^material "/);
  });
  it.each([
    ["hardened steel", "hardened steel"],
    ["60 HRC steel", "hardened steel"],
    ["  304   stainless ", "austenitic stainless"],
    ["alloy  4140", "alloy steel"],
    ["D2 tool steel", "tool steel"],
    [`4140${" ".repeat(20)}steel`, "alloy steel"],
  ])("%s is one", (name, key) => {
    expect(findMaterial(name).key).toBe(key);
  });
});

describe("a tool", () => {
  it.each([
    ["HSS", "HSS"],
    ["hss", "HSS"],
    ["HSS-E", "HSS"],
    ["hsse", "HSS"],
    ["Cobalt", "HSS"],
    ["HSS-Co", "HSS"],
    ["high-speed steel", "HSS"],
    ["carbide", "carbide"],
    ["Carbide", "carbide"],
    ["solid  carbide", "carbide"],
    ["HM", "carbide"],
    ["vhm", "carbide"],
    [undefined, "HSS"],
  ])("written %j is %s", (written, tool) => {
    expect(findTool(written)).toBe(tool);
  });

  it.each(["", "PCD", "steel", "__proto__", "constructor"])("written %j is refused", (written) => {
    expect(() => findTool(written)).toThrow(expect.objectContaining({ kind: "wrong" }));
  });
});
