// tests: Excel is listened to while the pane is in sight, and only then.

import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { onChangeInSight } from "../../src/workbook/excel-events.ts";

let show: (mode: string) => void;
let pageEvents: Map<string, () => void>;
let registered: number;
let runs: unknown[];
let refuse: number;

beforeEach(() => {
  vi.useFakeTimers();
  registered = 0;
  refuse = 0;
  runs = [];
  pageEvents = new Map();
  const context = {
    workbook: {},
    async sync() {
      if (refuse-- > 0) throw Object.assign(new Error("editing"), { code: "InvalidOperationInCellEditMode" });
    },
  };
  const event = {
    add: () => {
      registered++;
      return { context, remove: () => registered-- };
    },
  };
  Object.assign(context.workbook, { onSelectionChanged: event, worksheets: { onChanged: event } });
  Object.assign(globalThis, {
    document: {
      addEventListener: (name: string, heard: () => void) => pageEvents.set(name, heard),
      removeEventListener: (name: string) => pageEvents.delete(name),
    },
    Office: {
      VisibilityMode: { taskpane: "Taskpane", hidden: "Hidden" },
      addin: {
        async onVisibilityModeChanged(heard: (told: { visibilityMode: string }) => void) {
          show = (visibilityMode) => heard({ visibilityMode });
          return async () => {};
        },
      },
    },
    Excel: {
      async run(...given: any[]) {
        runs.push(given.length > 1 ? given[0] : undefined);
        return given.at(-1)(context);
      },
    },
  });
});
afterEach(() => {
  vi.useRealTimers();
  for (const name of ["document", "Office", "Excel"]) Reflect.deleteProperty(globalThis, name);
});
const settled = () => vi.advanceTimersByTimeAsync(0);

test("nothing is registered before the pane is shown, both are then, and neither after it is hidden", async () => {
  const heard = vi.fn();
  onChangeInSight(heard);
  await settled();
  expect(registered).toBe(0);
  show("Taskpane");
  await settled();
  expect(registered).toBe(2);
  expect(runs).toEqual([{ delayForCellEdit: true }]);
  expect(heard).toHaveBeenCalledTimes(1);
  show("Hidden");
  await settled();
  expect(registered).toBe(0);
});

test("whoever touches the pane sees it", async () => {
  onChangeInSight(() => {});
  await settled();
  pageEvents.get("pointerdown")!();
  pageEvents.get("focusin")!();
  await settled();
  expect(registered).toBe(2);
});

test("a listener that is refused is asked for again", async () => {
  refuse = 2;
  onChangeInSight(() => {});
  await settled();
  show("Taskpane");
  await settled();
  expect(runs.length).toBe(1);
  await vi.advanceTimersByTimeAsync(10_000);
  expect(runs.length).toBe(3);
});

test("stopping takes everything away", async () => {
  const stop = onChangeInSight(() => {});
  await settled();
  show("Taskpane");
  await settled();
  stop();
  await settled();
  expect(registered).toBe(0);
  expect(pageEvents.size).toBe(0);
});
