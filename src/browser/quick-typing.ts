// browser: keys that come faster than the page is drawn. What the first key typed into a cell replaces, and what a suggestion
// adds that was taken, the grid shows only with the next frame: a second key before it went among the old letters, and 257
// typed over 12 became 25712.

interface Composer {
  readonly props: {
    readonly composerStore: {
      readonly editionMode: string;
      readonly currentContent: string;
      readonly composerSelection: { readonly start: number; readonly end: number };
    };
  };
  readonly contentHelper: { getText(): string; selectRange(start: number, end: number): void };
  onInput(event: Event): void;
  onKeydown(event: Event): void;
  processContent(): void;
}

type Components = { readonly Composer: { readonly prototype: unknown } };

/** Must run before the grid is shown. */
export function keepUpWithKeys({ Composer }: Components): void {
  const composer = Composer.prototype as Composer;
  for (const name of ["onInput", "onKeydown"] as const) {
    const handle = composer[name];
    composer[name] = function (event) {
      handle.call(this, event);
      const { editionMode, currentContent, composerSelection } = this.props.composerStore;
      if (editionMode === "inactive" || this.contentHelper.getText() === currentContent) return;
      this.processContent();
      this.contentHelper.selectRange(composerSelection.start, composerSelection.end);
    };
  }
}
