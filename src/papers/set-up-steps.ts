// papers: the words of the set-up card: the steps of setting, and the cautions. Common practice, no source.

export interface Step {
  readonly number: number;
  readonly text: string;
  /** Whether a plain reamer in a collet has it too. */
  readonly isPlain?: boolean;
}

export const steps: readonly Step[] = [
  {
    number: 1,
    isPlain: true,
    text: "Switch the drive off and lock it out. Gloves on to handle the head, off again before the drive is unlocked.",
  },
  {
    number: 2,
    isPlain: true,
    text: "Clean: holder taper, seat, face, threads, and head. No chips, no grease film on the seat. Look at the seat for dents.",
  },
  {
    number: 3,
    text: "Seat the head with the cutting part in its sleeve. Turn it in by hand until it rests on the face.",
  },
  {
    number: 4,
    isPlain: true,
    text: "Snug: tighten lightly, so that the head no longer rocks but can still be moved. Set all four adjusting screws until they just touch.",
  },
  {
    number: 5,
    isPlain: true,
    text: "Protect the cutting part. Put the indicator on the body band, never on the edges. Zero at mark 0; plus is toward the plunger.",
  },
  {
    number: 6,
    text: "Turn by hand. Write readings at 0, 90, 180, 270. Back at 0 it must read zero again, to 0.001 mm (0.00005 in); if not, fix the stand first.",
  },
  {
    number: 7,
    text: "Take the screws from the table: only those with a move, the screw opposite backed off first, in two steps, half each.",
  },
  {
    number: 8,
    text: "Tighten to the final torque from the shop's own table, with a torque wrench. Bring the free screws to light contact as that table says.",
  },
  {
    number: 9,
    isPlain: true,
    text: "Read all four again. Over target: loosen, repeat from 4. Three tries without success: clean, change the head, then tell the lead.",
  },
  {
    number: 10,
    isPlain: true,
    text: "Remove indicator, sleeve and wrench. Close the guard, unlock the drive, check the speed limit. Tool longer than 6 diameters: enter the hole at about 200 rev/min, then full speed.",
  },
  {
    number: 11,
    text: "First part: stock checked, coolant on before entry, one hole, stop, measure at three depths in two directions. Write down size and cutting oversize. Then run.",
  },
];

export const cautions: readonly string[] = [
  "Guard closed before the spindle turns.",
  "Never reverse or stop in the hole.",
  "Long tools never at full speed in air.",
  "Chips with a hook, spindle stopped; no air gun toward people.",
  "Edges cut: sleeve on for carrying.",
  "No gloves near the spindle.",
];

export const BURNING = "Chips burn: class D extinguisher here, no water.";
export const COBALT = "Dust from grinding holds cobalt.";

export const MEASURING =
  "First part: every hole. Parts 2 to 5, then 1 in 20. First part after each change, start of each shift.";
export const CHANGE_WHEN =
  "Or when a hole leaves the work-to limits, roughness or chatter marks appear, a chip is missing, the sound or load changes.";
