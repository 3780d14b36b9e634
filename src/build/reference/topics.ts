// build: how the reference is ordered: topics by the file that declares them, and tasks in a person's words.

export const topics: readonly (readonly [topic: string, title: string])[] = [
  ["fits", "Callouts, limits and fits"],
  ["reamers", "The reamer for the hole"],
  ["stock", "Stock and the pre-ream drill"],
  ["speeds", "Speeds and feeds"],
  ["time", "Time"],
  ["torque", "Torque and power"],
  ["tool-life", "Tool life"],
  ["cost", "Cost"],
  ["setup", "Setting up"],
  ["measuring", "Measuring"],
  ["checking", "Converting and checking"],
  ["reference", "Steps, materials and sources"],
];

export const tasks: readonly (readonly [task: string, ids: readonly string[]])[] = [
  [
    "I have a callout and need the limits of the hole",
    ["LIMITS", "MINSIZE", "MAXSIZE", "MIDSIZE", "TOLERANCE", "CALLOUT"],
  ],
  ["I have a class and a size and need the deviations", ["UPPERDEV", "LOWERDEV", "ITWIDTH"]],
  ["I need to know how a hole and a shaft go together", ["CLEARANCE", "FITTYPE"]],
  ["I have a tolerance and ask what process reaches it", ["GRADEFOR"]],
  ["I have a callout and need the size to order the reamer at", ["REAMERLIMITS", "REAMERSIZE", "CUTSOVER"]],
  ["I have a callout and need a drill", ["PREDRILL", "DRILLNAME", "STOCKCHECK", "DRILLDEPTH"]],
  ["I ask how much stock to leave", ["STOCKRANGE", "STOCK", "STOCKCHECK", "CLEANUP"]],
  [
    "I need speed and feed to start with",
    ["CUTTINGDATA", "STARTSPEED", "STARTFEED", "RPM", "FEEDRATE", "DEPTHRATIO"],
  ],
  [
    "I turn one speed or feed into another",
    ["RPM", "SURFACESPEED", "FEEDRATE", "FEEDPERREV", "FEEDPERTOOTH", "FEEDFROMTOOTH"],
  ],
  [
    "I need the time per hole, per part, per shift",
    ["HOLETIME", "CYCLETIME", "PARTSPERSHIFT", "MACHINESNEEDED", "HOURSSAVED"],
  ],
  ["I ask whether the spindle can turn it", ["TORQUE", "POWER"]],
  [
    "I have life records and ask what speed costs least",
    ["TAYLORFIT", "TAYLORLIFE", "TAYLORSPEED", "ECONOMICSPEED", "FASTESTSPEED", "COSTATSPEED"],
  ],
  ["I need the cost of a part and a price", ["EDGECOST", "PARTSPEREDGE", "TOOLCOST", "PARTCOST", "PRICE"]],
  ["I compare a proposal with the way it is made today", ["COMPARE", "SAVING", "PAYBACK", "BREAKEVEN"]],
  ["I set a reamer up and read its run-out", ["RUNOUT", "RUNOUTAT", "RUNOUTCHECK"]],
  [
    "I measure a reamer or a hole",
    ["VBLOCK", "INSPECT", "ACCEPTLIMITS", "SIZEAT20", "WEARALLOWANCE", "PLUGGAUGE"],
  ],
  [
    "I have measured holes and ask whether the process holds",
    ["CAPABILITY", "INTOLERANCE", "GAUGESHARE", "STACKUP"],
  ],
  ["I plate or anodize after reaming", ["PREPLATE"]],
  ["I want few reamers for many holes", ["SHAREDREAMERS", "TOOLFOR"]],
  ["I ask where the chips go", ["CHIPPATH"]],
  ["I convert inch and metric", ["CONVERT"]],
  ["I check a hand figure or show how one comes about", ["CHECK", "STEPS", "SOURCES", "MATERIALS"]],
];
