import { describe, expect, it } from "vitest";
import { findMaterial } from "../../src/calc/materials.ts";
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
