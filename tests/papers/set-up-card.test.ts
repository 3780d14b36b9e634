// tests: the set-up card, filled in as at the tool bench. Figures worked out in Python from the rules behind the
// functions: limits and window of ISO 286 and ISO 522, v·1000/(π·D), the four readings as a circle, √(2Δp/ρ).

import { describe, expect, test } from "vitest";
import { setUpCard } from "../../src/papers/set-up-card.ts";
import { shopTable } from "../../src/taskpane/actions/shop-table.ts";
import { type PaperPage, paperPage } from "../support/paper-page.ts";

const vb40 = {
  part: "VB-40",
  drawing: "",
  callout: "4X ⌀16 H7 THRU",
  units: "mm",
  material: "ductile iron",
  tool: "coated carbide",
  depth: 40,
  holes: 4,
} as const;
const lives = [940, 1010, 1080, 990, 1030];

async function filled(maxRpm = 6000): Promise<PaperPage> {
  const table = "'Shop table mm'!$A$4:$P$204";
  const page = paperPage(setUpCard({ row: vb40, table, maxRpm }, "A4"), shopTable("mm"));
  page.fill("Gauge uncertainty", 0.002);
  page.fill("Reamer measured", 16.01);
  page.fill("Coolant bore, mm", 2);
  page.fill("Pressure, bar", 40);
  page.fill("Bores", 1);
  page.fill("Before", 0, 0.003, 0.008, 0.005);
  page.fill("After", 0.001, 0.002, 0.002, 0.001);
  page.fill("Trial holes", 16.012, 16.013, 16.012, 16.011, 16.012);
  page.fill("Lives, parts", ...lives);
  return page;
}

describe("a set-up card in mm", () => {
  test("prints the hole, the tool and its window", async () => {
    const page = await filled();
    expect(page.line("Lower limit of size")).toEqual([
      "Lower limit of size",
      "16.000",
      "Upper limit of size",
      "16.018",
    ]);
    expect([page.beside("Work to, lower"), page.beside("Work to, upper")]).toEqual(["16.002", "16.016"]);
    expect([page.beside("Reamer minimum, new"), page.beside("Reamer maximum, new")]).toEqual([
      "16.008",
      "16.015",
    ]);
    expect(page.beside("Size to order")).toBe("16.010");
    expect(page.beside("Wear allowance left")).toBe("0.010");
    expect(page.beside("Teeth")).toBe("8");
  });

  test("prints the data for the program from the shop's table", async () => {
    const page = await filled();
    expect(page.line("Pre-ream drill")).toEqual([
      "Pre-ream drill",
      "15.75",
      "Stock on diameter, mm",
      "0.250",
    ]);
    expect(page.line("Drill depth, full diameter")).toEqual([
      "Drill depth, full diameter",
      "through",
      "Drill depth, to the point",
      "through",
    ]);
    expect(page.beside("Reamed depth, mm")).toBe("40.0");
    expect(page.beside("Depth in diameters")).toBe("2.5");
    expect(page.line("Cutting speed, m/min")).toEqual([
      "Cutting speed, m/min",
      "90.0",
      "Spindle speed, rev/min",
      "1790",
    ]);
    expect(page.line("Feed per revolution, mm")).toEqual([
      "Feed per revolution, mm",
      "1.200",
      "Feed rate, mm/min",
      "2149",
    ]);
    expect(page.beside("Time per hole, s")).toBe("1.7");
    expect(page.beside("Retract")).toBe("at up to 3 × feed, turning forward");
    expect(page.beside("Flow, L/min")).toBe("11.8");
    expect(page.beside("Coolant way")).toMatch(/flush forward/i);
    expect(page.beside("Coolant and concentration")).toBe("emulsion 8–12 %");
  });

  test("with a lower spindle limit prints what is left and why", async () => {
    const page = await filled(1500);
    expect(page.line("Cutting speed, m/min").filter((_, at) => at % 2)).toEqual(["75.4", "1500"]);
    expect(page.beside("Feed rate, mm/min")).toBe("1800");
    expect(page.beside("Time per hole, s")).toBe("2.0");
    expect(page.text()).toContain("limited by the spindle");
  });

  test("turns readings into moves of the screws", async () => {
    const page = await filled();
    expect(page.line("Before").slice(5)).toEqual(["0.0082", "194°", "over by 0.0032"]);
    expect(page.line("Screw moves").slice(1, 5)).toEqual(["0.0000", "0.0000", "0.0040", "0.0010"]);
    expect(page.line("After").slice(5)).toEqual(["0.0014", expect.stringMatching(/°$/), "ok"]);
  });

  test("turns trial holes into the next reamer, and lives into a count", async () => {
    const page = await filled();
    expect(page.line("Cutting oversize")).toEqual(["Cutting oversize", "0.002", "Spread", "0.002"]);
    expect([page.beside("Reamer minimum now"), page.beside("Reamer maximum now")]).toEqual([
      "16.006",
      "16.013",
    ]);
    expect(page.beside("Next reamer")).toBe("16.008");
    expect(page.beside("Wear allowance left now")).toBe("0.012");
    expect(page.beside(/^Measure every part/)).toBe("16.0045");
    expect(page.beside("Change after, parts")).toBe("752");
    expect(page.beside("holes")).toBe("3,008");
  });

  test("asks for what nobody typed instead of printing a zero", async () => {
    const page = paperPage(setUpCard({ row: vb40 }, "A4"));
    expect(page.text()).toContain("Check the limits");
    expect(page.text()).not.toMatch(/Work to|#[A-Z]/);
    for (const label of ["Wear allowance left", "Change after, parts", "Cutting oversize", "Flow, L/min"])
      expect(page.beside(label), label).toBe("");
    expect(page.line("Before")).toEqual(["Before"]);
    page.fill("Reamer measured", 15.99);
    expect(page.text()).toContain("Do not use");
    page.fill("Before", 0, 0.02, 0.001, 0);
    expect(page.line("Before")).toContain("clean and read again");
    page.fill("Gauge uncertainty", 0.02);
    expect(page.beside("Work to, lower")).toBe("gauge too coarse");
  });
});

describe("a set-up card of a blind hole", () => {
  test("prints the depth of the drill, and the steps of a plain reamer", async () => {
    const page = paperPage(
      setUpCard(
        {
          row: {
            ...vb40,
            part: "PB-12",
            callout: "2X ⌀12 H7 x 30 deep",
            material: "medium-carbon steel",
            tool: "HSS",
            depth: "",
            holes: 2,
          },
        },
        "A4",
      ),
    );
    page.fill("Chamfer of the reamer, mm", 1.5);
    page.fill("Chip room below", 3);
    expect(page.beside("Reamed depth, mm")).toBe("30.0");
    expect([page.beside("Drill depth, full diameter"), page.beside("Drill depth, to the point")]).toEqual([
      "34.5",
      "38.0",
    ]);
    expect(page.beside("Retract")).toBe("at feed, turning forward");
    const boxes = page
      .text()
      .split("\n")
      .filter((line) => line.startsWith("☐"))
      .map((line) => Number(/\d+/.exec(line)![0]));
    expect(boxes).toEqual([1, 2, 4, 5, 9, 10]);
  });
});

describe("a set-up card in inches", () => {
  test("prints the same in inches", async () => {
    const page = paperPage(
      setUpCard(
        {
          row: {
            ...vb40,
            part: "LV-5",
            callout: ".5000 +.0005/-.0000 THRU",
            units: "in",
            material: "alloy steel",
            tool: "HSS",
            depth: 1.25,
            holes: 1,
          },
        },
        "Letter",
      ),
    );
    page.fill("Gauge uncertainty", 0.00005);
    page.fill("Before", 0, 0.0001, 0.0003, 0.0002);
    page.fill("Coolant bore, in", 0.08);
    page.fill("Pressure, psi", 580);
    expect(page.line("Lower limit of size").filter((_, at) => at % 2)).toEqual(["0.5000", "0.5005"]);
    expect([page.beside("Reamer minimum, new"), page.beside("Reamer maximum, new")]).toEqual([
      "0.5002",
      "0.5004",
    ]);
    expect(page.beside("Size to order")).toBe("0.5002");
    expect(page.line("Pre-ream drill").filter((_, at) => at % 2)).toEqual(["31/64", "0.0156"]);
    expect(page.line("Cutting speed, ft/min").filter((_, at) => at % 2)).toEqual(["30", "229"]);
    expect(page.line("Feed per revolution, in").filter((_, at) => at % 2)).toEqual(["0.0132", "3.03"]);
    expect(page.beside("Time per hole, s")).toBe("57.5");
    expect(page.beside("Depth in diameters")).toBe("2.5");
    expect([page.beside("Work to, lower"), page.beside("Work to, upper")]).toEqual(["0.50005", "0.50045"]);
    expect(page.beside(/^Measure every part/)).toBe("0.50013");
    expect(page.line("Before").slice(5)).toEqual(["0.00032", "198°", "over by 0.00012"]);
    expect(page.line("Screw moves").slice(1, 5)).toEqual(["0.00000", "0.00000", "0.00015", "0.00005"]);
    expect(page.beside("Flow, US gpm")).toBe("3.2");
  });
});

describe("words on the card", () => {
  test("magnesium asks for its coolant and warns of its chips, carbide of its dust", async () => {
    const page = paperPage(setUpCard({ row: { ...vb40, material: "magnesium" } }, "A4"));
    expect(page.beside("Coolant and concentration")).toBe("");
    expect(page.text()).toContain("class D extinguisher here, no water");
    expect(page.text()).toContain("holds cobalt");
  });

  test("never tell a cost, and never a torque of ours", async () => {
    const page = await filled();
    expect(page.text()).not.toMatch(/price|cost|margin/i);
    expect(page.beside("Final torque, N·m: from the shop's own table")).toBe("");
  });
});
