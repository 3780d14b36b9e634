// browser: the part of the grid that computes its formulas, and a way to put another value in the place of its own, which
// all formulas that read the cell get as well. It is no part of the grid's published interface; the version is fixed, and
// a test fails if it looks otherwise.

import type { Model } from "@odoo/o-spreadsheet";

export interface Position {
  readonly sheetId: string;
  readonly row: number;
  readonly col: number;
}

/** What a cell has in the place of what the grid computes for it; undefined if it keeps that. */
type Replace = (position: Position, own: any) => object | undefined;

interface Evaluator {
  computeFormulaCell(position: Position, cell: object): object;
  evaluate(ranges: unknown): void;
}

export function evaluatorOf(model: Model) {
  const handlers = (model as any).handlers as { evaluator?: Partial<Evaluator> }[];
  const evaluator = handlers.find((handler) => handler.evaluator?.computeFormulaCell)!.evaluator as Evaluator;
  const { computeFormulaCell, evaluate } = Object.getPrototypeOf(evaluator) as Evaluator;
  const computeAll = () => model.dispatch("EVALUATE_CELLS" as never);
  return {
    /** Computes all, and replaces results from now on; `begin` is called each time before some are computed. */
    take(replace: Replace, begin: () => void = () => {}): void {
      evaluator.evaluate = (ranges) => {
        begin();
        evaluate.call(evaluator, ranges);
      };
      evaluator.computeFormulaCell = (position, cell) => {
        const own = computeFormulaCell.call(evaluator, position, cell);
        return replace(position, own) ?? own;
      };
      computeAll();
    },
    /** Computes all as the grid does, if something else was in its place. */
    release(): void {
      if (!Object.hasOwn(evaluator, "computeFormulaCell")) return;
      delete (evaluator as Partial<Evaluator>).computeFormulaCell;
      delete (evaluator as Partial<Evaluator>).evaluate;
      computeAll();
    },
  };
}
