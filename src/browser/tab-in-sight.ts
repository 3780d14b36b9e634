// browser: keeps the page where it is when the grid brings the tab of a sheet into sight.

/**
 * The grid has the browser scroll to the tab, and where the page is longer than the window that scrolls the sheet out
 * of it. From now on only the row of tabs scrolls.
 */
export function keepPageInPlace(): void {
  const { scrollIntoView } = Element.prototype;
  Element.prototype.scrollIntoView = function (options) {
    const row = this.closest(".o-sheet-list");
    if (!row) return scrollIntoView.call(this, options);
    const [tab, seen] = [this.getBoundingClientRect(), row.getBoundingClientRect()];
    if (tab.left < seen.left) row.scrollLeft -= seen.left - tab.left;
    else if (tab.right > seen.right) row.scrollLeft += tab.right - seen.right;
  };
}
