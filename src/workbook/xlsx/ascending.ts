// workbook: places in lists that rise.

/** The first place in a list that rises which is not below the value. */
export function firstFrom<Item extends number | string>(list: readonly Item[], value: Item): number {
  let [low, high] = [0, list.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (list[middle] < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
