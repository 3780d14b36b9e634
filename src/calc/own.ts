// calc: what an object has of its own, and lists, in words that Excel's oldest engine knows.

/** Object.hasOwn, which Safari has from 15.4 on only. */
export function hasOwn<Name extends PropertyKey>(
  object: object,
  name: Name,
): object is Record<Name, unknown> {
  // biome-ignore lint/suspicious/noPrototypeBuiltins: the newer call is what is missing.
  return Object.prototype.hasOwnProperty.call(object, name);
}

/** Where the last entry that passes stands, −1 if none does: findLastIndex, which Safari has from 15.4 on. */
export function lastIndexOf<Entry>(list: readonly Entry[], passes: (entry: Entry) => boolean): number {
  let at = list.length - 1;
  while (at >= 0 && !passes(list[at])) at--;
  return at;
}
