// tests: materials by the names people write, and the tools.

import { readFileSync } from "node:fs";
import { describe, expect, it, test } from "vitest";
import { packedNamesFile, packedNamesModule, spellingsOf } from "../../../src/build/pack-names.ts";
import { findMaterial, meaningsOf } from "../../../src/calc/materials/find-material.ts";
import { materialTable } from "../../../src/calc/materials/material-table.ts";
import { findTool, tools } from "../../../src/calc/tools.ts";
import { materials } from "../../../src/data/materials/materials.ts";
import { materialNames } from "../../../src/data/materials/names.ts";
import { twoMetalNames } from "../../../src/data/materials/two-metal-names.ts";
import { readTable } from "../../support/csv.ts";

const refused = (name: string | number) => {
  try {
    return findMaterial(name).key;
  } catch (thrown) {
    return (thrown as Error).message;
  }
};

describe("a material", () => {
  it("is medium-carbon steel where none is given", () => {
    expect(findMaterial().key).toBe("medium-carbon steel");
  });

  it("is found by each of its names, in any case, with any spaces", () => {
    const rows = [
      ...readTable("material-names").map(({ name, key }) => [name, key]),
      ...materials.map(({ key }) => [key, key]),
    ];
    expect(rows.length).toBeGreaterThan(450);
    for (const [name, key] of rows)
      for (const written of [
        name,
        name.toUpperCase(),
        name.toLowerCase(),
        `  ${name.replace(/ /g, "\u00a0 ")} `,
        name.replaceAll("-", "\u2011"),
        name.normalize("NFD"),
      ])
        expect(findMaterial(written).key, written).toBe(key);
  });

  // States, tempers, forms, standards, kinds and hardness around a name: values from memory, as trade usage has them.
  it.each([
    ["42CrMo4+QT", "alloy steel"],
    ["C45E+C+QT", "medium-carbon steel"],
    ["1.4057+QT800", "martensitic stainless"],
    ["S355J2+Z25", "low-carbon steel"],
    ["S355JO", "low-carbon steel"],
    ["42CrMo4 V", "alloy steel"],
    ["20MnCr5 BG", "case-hardening steel"],
    ["EN24T", "alloy steel"],
    ["817M40 T", "alloy steel"],
    ["4140H", "alloy steel"],
    ["SCM440H", "alloy steel"],
    ["C1045", "medium-carbon steel"],
    ["E4340", "alloy steel"],
    ["G41400", "alloy steel"],
    ["4140 HT", "alloy steel"],
    ["4140 pre-hard", "alloy steel"],
    ["42CrMo4 vergütet", "alloy steel"],
    ["8620 annealed", "case-hardening steel"],
    ["17-4PH H900", "precipitation-hardening stainless"],
    ["17-4 PH Cond. A", "precipitation-hardening stainless"],
    ["SUS304-CP", "austenitic stainless"],
    ["C3604BD", "brass"],
    ["A6061BE", "aluminum"],
    ["A5052P", "aluminum"],
    ["6061-T6", "aluminum"],
    ["6061T651", "aluminum"],
    ["EN AW-6082 T6/T651", "aluminum"],
    ["7075-T7351", "aluminum"],
    ["5083-H111", "aluminum"],
    ["AZ31B-F", "magnesium"],
    ["A356-T6", "cast aluminum"],
    ["EN AC-42100-KT6", "cast aluminum"],
    ["EN AC-46000-DF", "cast aluminum"],
    ["AlSi7Mg0,3 KT6", "cast aluminum"],
    ["LM25-TF", "cast aluminum"],
    ["AlMg4,5Mn", "aluminum"],
    ["CW614N-R430", "brass"],
    ["CuZn39Pb3 R430", "brass"],
    ["C36000 H02", "brass"],
    ["CuSn12-C-GZ", "bronze"],
    ["EN-GJS-400-18U-LT", "ductile iron"],
    ["EN-GJL250", "gray iron"],
    ["ENGJL250", "gray iron"],
    ["GJS-1000-5", "austempered iron"],
    ["Ti-6Al-4V ELI", "titanium"],
    ["POM natural", "plastic"],
    ["PA6 black", "plastic"],
    ["AISI 304", "austenitic stainless"],
    ["SS 316L", "austenitic stainless"],
    ["type 304", "austenitic stainless"],
    ["W.-Nr. 1.4301", "austenitic stainless"],
    ["ASTM A276 304", "austenitic stainless"],
    ["EN 10025 S355J2", "low-carbon steel"],
    ["304 stainless", "austenitic stainless"],
    ["stainless steel 316L", "austenitic stainless"],
    ["Alu 6082", "aluminum"],
    ["D2 tool steel", "tool steel"],
    ["brass 360", "brass"],
    ["gray iron 220 HB", "gray iron"],
    ["GG25 max. 250 HB", "gray iron"],
    ["4140 28-32 HRC", "alloy steel"],
    ["X5CrNi 18 10", "austenitic stainless"],
    ["Grey Cast Iron", "gray iron"],
    ["aluminium alloy", "aluminum"],
    [1018, "low-carbon steel"],
    [304, "austenitic stainless"],
    [1.431, "austenitic stainless"],
    [1.722, "alloy steel"],
    [1.0503, "medium-carbon steel"],
  ])("written %j is %s", (written, key) => {
    expect(refused(written)).toBe(key);
  });

  it.each([
    ...[
      "low carbon",
      "copper steel",
      "304 aluminum",
      "4140 brass",
      "titanium steel",
      "PA66-GF30",
      "unobtainium",
    ],
    ...["", "__proto__", "constructor", "x".repeat(5000), "xaisi 4140", "4140t6x", "AISI 6061"],
    ...["66 HRC", "28 HRC", "500 HB", "D2 600 HB", "413.00.1", "4140,5"],
  ])("%j is refused", (written) => {
    expect(() => findMaterial(written)).toThrow(expect.objectContaining({ kind: "wrong" }));
  });

  it("keeps the dot of a number: 413.0 is cast, 4130 is steel", () => {
    expect(refused("413.0")).toBe("cast aluminum");
    expect(refused("4130")).toBe("alloy steel");
    expect(refused(1.43)).toMatch(/^material "1\.4300" is not known/);
  });
});

test("every name of the table is found in any spelling, packed as functions.js has it, and the packed file is the current one", () => {
  const faults: string[] = [];
  for (const [key, written] of Object.entries(materialNames))
    for (const name of written.split("; "))
      for (const spelling of spellingsOf(name))
        if (refused(spelling) !== key) faults.push(`${spelling}: ${refused(spelling)}`);
  expect(faults).toEqual([]);
  expect(readFileSync(packedNamesFile, "utf8")).toBe(packedNamesModule());
});

describe("a name that two metals bear", () => {
  it.each(Object.entries(twoMetalNames))("%s alone is refused with both", (name, meanings) => {
    const message = refused(name);
    expect(meanings.split("; or ").length).toBeGreaterThan(1);
    for (const meaning of meanings.split("; or ")) expect(message).toContain(meaning.replace(/ = .*/, ""));
  });

  it("names a material, or none where the table has none for it", () => {
    const keys = Object.values(twoMetalNames).map((meanings) => meaningsOf(meanings).map(({ key }) => key));
    expect(keys.flat().filter((key) => key === "").length).toBe(29);
    expect(meaningsOf(twoMetalNames["commercial bronze"]).map(({ key }) => key)).toEqual(["brass", "bronze"]);
    expect(meaningsOf(twoMetalNames.T3).map(({ key }) => key)).toEqual(["copper", "tool steel"]);
    expect(meaningsOf(twoMetalNames.fundición).map(({ key }) => key)).toEqual(["gray iron", ""]);
  });

  it.each([
    ["AISI A2", "tool steel"],
    ["A2 tool steel", "tool steel"],
    ["ISO 3506 A2", "austenitic stainless"],
    ["A2 stainless", "austenitic stainless"],
    ["SAE 660", "bronze"],
    ["660 bronze", "bronze"],
    ["AISI 1050", "medium-carbon steel"],
    ["EN AW-1050A", "aluminum"],
    ["1050-H14", "aluminum"],
    ["Ti Gr. 5", "titanium"],
    ["grade 5 titanium", "titanium"],
    ["356-T6", "cast aluminum"],
    ["GK-AlMg3", "cast aluminum"],
    ["alloy 718", "nickel alloy"],
    ["ASTM A48 class 30", "gray iron"],
  ])("%s is %s", (written, key) => {
    expect(refused(written)).toBe(key);
  });

  it("with a metal or a standard that it is not, or that has no group, it stays refused", () => {
    for (const name of ["660 aluminum", "A2 steel", "AISI 1070", "Gr. 5", "C1020 H02 steel"])
      expect(refused(name), name).toMatch(/^material "/);
  });
});

describe("a hardness", () => {
  // kc1.1 runs straight from 2550 at 45 HRC to 4870 at 62 HRC: 2320/17 to a point.
  it.each([
    ["45 HRC", 2550],
    ["58 HRC", 2550 + (13 * 2320) / 17],
    ["HRC 58", 2550 + (13 * 2320) / 17],
    ["58-62 HRC", 2550 + (15 * 2320) / 17],
    ["D2 60 HRC", 2550 + (15 * 2320) / 17],
    ["100Cr6, 64 HRC", 4870],
    ["hardened steel", 3915],
    ["16MnCr5 gehärtet", 3915],
  ])("%s cuts as hardened steel of kc1.1 %d", (written, kc11) => {
    const material = findMaterial(written);
    expect(material.key).toBe("hardened steel");
    expect(Math.round(material.kc11)).toBe(Math.round(kc11));
  });
});

describe("expansion", () => {
  it("goes by the designation where a group has two (values from memory)", () => {
    expect(findMaterial("303").expansion).toBe(17.3);
    expect(findMaterial("416").expansion).toBe(9.9);
    expect(findMaterial("1.4005").expansion).toBe(9.9);
    expect(findMaterial("420").expansion).toBe(10.5);
  });
});

describe("the table", () => {
  const rowOf = (key: string) => materialTable().find(([first]) => first === key)!;

  it("has a header and a row for each material, of as many cells, and is the caller's own", () => {
    const table = materialTable();
    expect(table.length).toBe(materials.length + 1);
    for (const row of table) expect(row.length).toBe(11);
    table[0][0] = "changed";
    expect(materialTable()[0][0]).toBe("key");
  });

  it("has the speed in both units, in carbide where HSS is not used, and the source of each figure", () => {
    // 40 and 50 ft/min are 12.192 and 15.24 m/min, 30 and 60 are 9.144 and 18.288.
    expect(rowOf("medium-carbon steel").slice(0, 10)).toEqual([
      ...[
        "medium-carbon steel",
        "P",
        "0.3 to 0.55 % C",
        "HSS 12.2–15.2",
        "HSS 40–50",
        1,
        1,
        2220,
        0.14,
        11.5,
      ],
    ]);
    expect(rowOf("hardened steel").slice(3, 5)).toEqual(["carbide 9.1–18.3", "carbide 30–60"]);
    expect(rowOf("medium-carbon steel")[10]).toMatch(
      /^speed: USCTI handbook, .*; feed and stock factors: .*; kc1\.1 and mc: .*; expansion: .+$/,
    );
  });
});

describe("a tool", () => {
  it.each([
    ["HSS", "HSS"],
    ["hss", "HSS"],
    ["HSS-E", "HSS"],
    ["Cobalt", "HSS"],
    ["HSS-PM", "HSS"],
    ["high-speed steel", "HSS"],
    ["Carbide", "carbide"],
    ["solid  carbide", "carbide"],
    ["HM", "carbide"],
    ["vhm", "carbide"],
    ["Hartmetall", "carbide"],
    ["carbide-tipped", "brazed carbide"],
    ["carbide head", "coated carbide"],
    ["TiAlN", "coated carbide"],
    ["indexable", "coated carbide"],
    ["PKD", "PCD"],
    ["Cermet", "cermet"],
    ["cbn", "CBN"],
    ["single blade", "guided blade"],
    [undefined, "HSS"],
  ])("written %j is %s", (written, tool) => {
    expect(findTool(written)).toBe(tool);
  });

  it("has its own name", () => {
    expect(tools.map((tool) => findTool(tool))).toEqual(tools);
    expect(tools.length).toBe(8);
  });

  it.each(["", "steel", "ceramic", "__proto__", "constructor"])("written %j is refused", (written) => {
    expect(() => findTool(written)).toThrow(expect.objectContaining({ kind: "wrong" }));
  });
});
