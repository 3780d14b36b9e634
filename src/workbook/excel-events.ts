// workbook: hears of changed selections and cells in Excel, but only while the pane is in sight: on older Excels a
// listener costs the list of steps to undo.

import { inExcel } from "./excel-run.ts";

/** Excel may refuse a listener, as while a cell is edited; it is asked again after so long. */
const AGAIN_AFTER = 3000;

/** Calls back after the selection or a cell changed while the pane is in sight; gives the means to stop. */
export function onChangeInSight(listener: () => void): () => void {
  const listening = new Listening(listener);
  const inSight = () => listening.want(true);
  // The pane that you touch is in sight, also where Excel has told nothing of it.
  for (const name of ["pointerdown", "focusin"]) document.addEventListener(name, inSight);
  const told = Office.addin
    .onVisibilityModeChanged(({ visibilityMode }) => {
      listening.want(visibilityMode === Office.VisibilityMode.taskpane);
    })
    .catch(() => undefined);
  return () => {
    for (const name of ["pointerdown", "focusin"]) document.removeEventListener(name, inSight);
    listening.want(false);
    void told.then((stop) => stop?.());
  };
}

/** The listeners in Excel, added and taken away one after the other. */
class Listening {
  private isWanted = false;
  private handlers: readonly OfficeExtension.EventHandlerResult<any>[] = [];
  private turn: Promise<void> = Promise.resolve();

  constructor(private readonly listener: () => void) {}

  want(isWanted: boolean): void {
    if (isWanted === this.isWanted) return;
    this.isWanted = isWanted;
    if (isWanted) this.listener();
    this.turn = this.turn.then(() => this.settle());
  }

  private async settle(): Promise<void> {
    try {
      if (this.isWanted && this.handlers.length === 0) await this.add();
      else if (!this.isWanted && this.handlers.length > 0) await this.remove();
    } catch {
      setTimeout(() => {
        this.turn = this.turn.then(() => this.settle());
      }, AGAIN_AFTER);
    }
  }

  private add(): Promise<void> {
    return inExcel(
      async (context) => {
        const { workbook } = context;
        const added = [
          workbook.onSelectionChanged.add(async () => this.listener()),
          workbook.worksheets.onChanged.add(async () => this.listener()),
        ];
        await context.sync();
        this.handlers = added;
      },
      { delayForCellEdit: true },
    );
  }

  private async remove(): Promise<void> {
    const [{ context }] = this.handlers;
    await inExcel(async (same) => {
      for (const handler of this.handlers) handler.remove();
      await same.sync();
      this.handlers = [];
    }, context as Excel.RequestContext);
  }
}
