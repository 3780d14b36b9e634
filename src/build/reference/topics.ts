// build: how the reference is ordered: topics by the file that declares them, and tasks as people ask.

export const topics: readonly (readonly [topic: string, title: string])[] = [
  ["plans", "Plans and your own data"],
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
  ["How do I plan a hole in one row, with my own data?", ["PLAN", "DATAFOR", "HEADERS"]],
  ["What are the limits of this hole?", ["LIMITS", "MINSIZE", "MAXSIZE", "MIDSIZE", "TOLERANCE", "CALLOUT"]],
  ["What are the limit deviations of a class?", ["UPPERDEV", "LOWERDEV", "ITWIDTH"]],
  ["What fit do a hole and a shaft make?", ["CLEARANCE", "FITTYPE"]],
  ["Which process reaches this tolerance?", ["GRADEFOR"]],
  ["What size reamer do I order?", ["REAMERLIMITS", "REAMERSIZE", "CUTSOVER"]],
  [
    "Which drill do I use before the reamer?",
    ["DRILLFOR", "STOCKCHECK", "DRILLDEPTH", "PREDRILL", "DRILLNAME"],
  ],
  ["How much stock do I leave for the reamer?", ["STOCKRANGE", "STOCK", "STOCKCHECK", "CLEANUP"]],
  [
    "What speed and feed do I start with?",
    ["CUTTINGDATA", "STARTSPEED", "STARTFEED", "FLUTES", "RPM", "FEEDRATE", "DEPTHRATIO"],
  ],
  [
    "How do I convert one speed or feed to another?",
    ["RPM", "SURFACESPEED", "FEEDRATE", "FEEDPERREV", "FEEDPERTOOTH", "FEEDFROMTOOTH"],
  ],
  [
    "How long does it take per hole, part, or shift?",
    ["HOLETIME", "CYCLETIME", "PARTSPERSHIFT", "MACHINESNEEDED", "HOURSSAVED"],
  ],
  ["Can the spindle turn it?", ["TORQUE", "POWER"]],
  [
    "Which cutting speed costs least?",
    [
      "TAYLORFIT",
      "TAYLORLIFE",
      "TAYLORSPEED",
      "ECONOMICSPEED",
      "FASTESTSPEED",
      "COSTATSPEED",
      "LIFERANGE",
      "TOOLSNEEDED",
    ],
  ],
  [
    "What does a part cost, and what is its price?",
    ["EDGECOST", "PARTSPEREDGE", "TOOLCOST", "PARTCOST", "PRICE", "MACHINERATE"],
  ],
  ["How does a proposal compare with today's process?", ["COMPARE", "SAVING", "PAYBACK", "BREAKEVEN"]],
  [
    "How do I set up a reamer and read its runout?",
    ["RUNOUT", "SCREWMOVES", "RUNOUTCHECK", "RUNOUTAT", "DEFLECTION"],
  ],
  [
    "How do I measure a reamer or a hole?",
    ["VBLOCK", "INSPECT", "ACCEPTLIMITS", "SIZEAT20", "WEARALLOWANCE", "PLUGGAUGE", "HOTSIZE"],
  ],
  ["Is the process capable?", ["CAPABILITY", "INTOLERANCE", "GAUGESHARE", "CPKBOUND", "STACKUP"]],
  ["Why did the hole go wrong?", ["HOLEFORM", "REMEDIES", "RUNOUT", "STOCKCHECK"]],
  ["What size before plating or anodizing?", ["PREPLATE"]],
  ["Which holes can share a reamer?", ["SHAREDREAMERS", "TOOLFOR"]],
  ["How do the chips get out of the hole?", ["CHIPPATH", "COOLANTFLOW"]],
  ["How do I convert inch and metric?", ["CONVERT"]],
  [
    "Is a hand figure right, and how is it calculated?",
    ["CHECK", "CHECKOF", "CHECKLIMITS", "STEPS", "SOURCES", "MATERIALS"],
  ],
];
