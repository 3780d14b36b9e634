// tests: what a person types, and the function that stands first or among the first.

import { expect, test } from "vitest";
import { readDeclarations } from "../../src/build/declarations.ts";
import { paneHelp } from "../../src/build/pane-help.ts";
import { functionFinder } from "../../src/taskpane/actions/find-functions.ts";
import { readTable } from "../support/csv.ts";

const help = paneHelp(readDeclarations());
const find = functionFinder(help);
const names = (query: string, most = 3) =>
  find(query)
    .functions.slice(0, most)
    .map(({ id }) => id);

test.each([
  ["rpm", "RPM"],
  ["how much stock", "STOCK"],
  ["How much stock should I leave?", "STOCK"],
  ["feed rate", "FEEDRATE"],
  ["price", "PRICE"],
  ["convert", "CONVERT"],
  ["payback", "PAYBACK"],
  ["run-out", "RUNOUT"],
  ["limits", "LIMITS"],
  ["shared reamers", "SHAREDREAMERS"],
])("%s finds %s first", (query, id) => {
  expect(names(query, 1)).toEqual([id]);
});

test.each([
  ["spindle speed for a surface speed", "RPM"],
  ["revs", "RPM"],
  ["which drill", "DRILLNAME"],
  ["what speed costs least", "ECONOMICSPEED"],
  ["size to order the reamer", "REAMERSIZE"],
  ["cpk", "CAPABILITY"],
  ["anodise", "PREPLATE"],
  ["cost of a part", "PARTCOST"],
  ["chips", "CHIPPATH"],
  ["deviations of a class", "UPPERDEV"],
])("%s finds %s among the first", (query, id) => {
  expect(names(query, 5)).toContain(id);
});

test("nine of ten questions of the shop have their function among the first three, and none stays empty", () => {
  const questions = readTable("questions");
  expect(questions.length).toBeGreaterThan(200);
  const missed = questions.filter(({ question, functions }) => {
    const first = names(question);
    expect(first, question).not.toEqual([]);
    return !functions.split(" ").some((id) => first.includes(id));
  });
  expect(missed.length, missed.map(({ question }) => question).join("; ")).toBeLessThan(
    questions.length / 10,
  );
});

test("every function is found by its name, in any case; the likeliest stand in for a word that is nowhere", () => {
  for (const { id } of help.functions) expect(names(id.toLowerCase(), 1)).toEqual([id]);
  expect(find("xylophone")).toMatchObject({ fits: false });
  expect(names("xylophone", 10)).toContain("LIMITS");
  expect(find("  ").functions).toEqual([]);
});

test("the help knows lists, choices and tasks", () => {
  const argument = (id: string, name: string) =>
    help.functions.find((one) => one.id === id)!.parameters.find((one) => one.name === name)!;
  const lists = help.functions.flatMap(({ id, parameters }) =>
    parameters.filter(({ whole }) => whole).map(({ name }) => `${id} ${name}`),
  );
  expect(lists).toEqual(
    expect.arrayContaining([
      "CAPABILITY measured",
      "CHECKOF inputs",
      "COMPARE present",
      "COMPARE proposed",
      "DATAFOR table",
      "HOLEFORM diameters",
      "HOLEFORM positions",
      "LIFERANGE lives",
      "PLAN table",
      "CUTSOVER measured",
      "SHAREDREAMERS callouts",
      "STACKUP contribution1",
      "STEPS inputs",
      "TAYLORFIT lives",
      "TAYLORFIT speeds",
      "TOOLFOR entries",
      "TOOLFOR over",
      "TOOLFOR upTo",
    ]),
  );
  expect(lists).not.toContain("RPM diameter");
  expect(argument("RPM", "units").choices).toEqual(["mm", "in"]);
  expect(argument("STOCK", "material").choices).toContain("gray iron");
  expect(argument("STARTSPEED", "tool").choices).toContain("guided blade");
  for (const { ids } of help.tasks)
    for (const id of ids) expect(help.functions.map((one) => one.id)).toContain(id);
});
