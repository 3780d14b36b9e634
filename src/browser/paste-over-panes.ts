// browser: lets a paste reach over the edge of a frozen pane. The grid refuses it, though cells alone lose nothing by it;
// merged cells are still looked after by its handler for those.

type Handlers = {
  get(name: string): new (...given: any[]) => object;
  replace(name: string, handler: unknown): unknown;
};

/** Must run before the Model is made. */
export function allowPasteOverPanes(handlers: Handlers): void {
  const Sheet = handlers.get("sheet");
  handlers.replace(
    "sheet",
    class extends Sheet {
      isPasteAllowed(): string {
        return "Success";
      }
    },
  );
}
