// workbook: a workbook that is not known yet. The pane is there before Excel says that it is; what is asked of it
// meanwhile waits.

import type { Workbook } from "./workbook.ts";

export function laterWorkbook(known: Promise<Workbook>): Workbook {
  return {
    selected: async (...given) => (await known).selected(...given),
    places: async () => (await known).places(),
    active: async () => (await known).active(),
    read: async (...given) => (await known).read(...given),
    readComputed: async (...given) => (await known).readComputed(...given),
    sheets: async () => (await known).sheets(),
    homeOf: async (...given) => (await known).homeOf(...given),
    filledFrom: async (...given) => (await known).filledFrom(...given),
    meanings: async () => (await known).meanings(),
    tableAt: async (...given) => (await known).tableAt(...given),
    show: async (...given) => (await known).show(...given),
    used: async (...given) => (await known).used(...given),
    write: async (...given) => (await known).write(...given),
    stepsToUndo: async (...given) => (await known).stepsToUndo(...given),
    hasRules: async (...given) => (await known).hasRules(...given),
    addSheet: async (...given) => (await known).addSheet(...given),
    openNew: async (...given) => (await known).openNew(...given),
    copyAsValues: async (...given) => (await known).copyAsValues(...given),
    hasDecimalComma: async () => (await known).hasDecimalComma(),
    dayShift: async () => (await known).dayShift(),
    onChange(listener) {
      let isStopped = false;
      let stop = () => {};
      void known.then((workbook) => {
        if (isStopped) return;
        stop = workbook.onChange(listener);
        listener();
      });
      return () => {
        isStopped = true;
        stop();
      };
    },
  };
}
