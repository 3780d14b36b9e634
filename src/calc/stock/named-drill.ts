// calc: a drill by its name: a number (#15, No. 15), a letter, or a fraction of an inch.

import { letterDrills } from "../../data/drills/letter-drills.ts";
import { numberDrills } from "../../data/drills/number-drills.ts";

const NUMBER = /^(?:#|no\.?|n[°º]) ?(\d{1,2})$/i;
const FRACTION = /^(?:(\d{1,2})[ -])?(\d{1,3}) ?\/ ?(\d{1,3})$/;

const letters: ReadonlyMap<string, number> = new Map(Object.entries(letterDrills));

/** Diameter in inches of the drill of that name; undefined where the text names none. */
export function namedDrill(name: string): number | undefined {
  const number = NUMBER.exec(name);
  const tenThousandths = number ? numberDrills[Number(number[1]) - 1] : letters.get(name.toUpperCase());
  if (tenThousandths !== undefined) return tenThousandths / 1e4;
  const fraction = FRACTION.exec(name);
  if (!fraction) return undefined;
  const [, whole = "0", over, under] = fraction;
  return Number(under) > 0 ? Number(whole) + Number(over) / Number(under) : undefined;
}
