// build: what people call what a function does, in other words than its help: words of the shop, abbreviations, questions.
// The search of pane and reference looks here first. Phrases stand apart by "; ".

export const keywords: Readonly<Record<string, string>> = {
  // Plans and the shop's own data
  PLAN: "setup sheet; thread; tapped hole; batch; work instruction; operation sheet; whole plan; everything for one hole; process plan; routing; all at once; quote a hole; start here; one row; complete",
  DATAFOR:
    "own speeds and feeds; our own feeds and speeds; own cutting data; my data; shop table; tool library; lookup table; database; our speeds; own feeds; vlookup; cutting data table",
  HEADERS: "headings; column headings; column titles; header row; names of columns; labels; captions",
  REMEDIES:
    "surface finish; ra; roughness; roundness; round; lobed; out of round; taper; hole not round; torn; galling; poor surface; troubleshooting; troubleshoot; problem; defect; what went wrong; bad hole; oversize hole; hole too big; hole too small; chatter; bell mouth; rough finish; poor finish; scratches; drag line; tool breaks; short tool life; built-up edge; chips jam; fix; cure; cause; causes; why",
  // Callouts, limits and fits
  LIMITS:
    "limits of size; lower and upper limit; tolerance limits; h7; hole limits; max and min; drawing; callout; tolerance; limit dimensions; bore tolerance; what does h7 mean; read a callout",
  MINSIZE: "smallest hole; minimum; smallest size; lower limit; least; min diameter; maximum material",
  MAXSIZE:
    "biggest hole; biggest; maximum; largest size; upper limit; greatest; max diameter; least material",
  MIDSIZE:
    "mean size; middle; nominal middle; mid limit; center of tolerance; target size; average of the limits",
  TOLERANCE: "width of tolerance; tolerance band; total tolerance; tolerance zone; range; how tight",
  CALLOUT:
    "thread; bolt circle; position; note; parts of a callout; nominal; count; number of holes; depth from callout; through or blind; note; parse; read drawing text; quantity",
  UPPERDEV: "upper deviation; es; fundamental deviation; iso 286; upper allowance; class",
  LOWERDEV: "lower deviation; ei; fundamental deviation; iso 286; class",
  ITWIDTH: "standard tolerance; it grade; it7; international tolerance; grade width; iso 286",
  CLEARANCE:
    "true position; position; pin in hole; fit; play; gap; interference; dowel; dowel pin; pin and hole; press fit; shrink fit; slip fit; sliding fit; hole and shaft; allowance; tightness; shaft",
  FITTYPE:
    "kind of fit; press fit; clearance fit; transition; interference fit; dowel fit; loose or tight; fit class",
  GRADEFOR:
    "which process; can it be reamed; honing; drilling; process for tolerance; it grade of a tolerance; feasibility; how to make; second pass; achievable",
  ACCEPTLIMITS:
    "guard band; acceptance; uncertainty; gauging limits; inspection limits; measurement uncertainty; iso 14253; conformance; reject",
  // The reamer
  REAMERLIMITS:
    "reamer diameter; reamer tolerance; new reamer; grind; window; make a reamer; reamer size limits; din 1420; sharpen; grinding limits",
  REAMERSIZE:
    "order reamer; buy reamer; reamer size; which reamer; stock reamer; what size reamer; purchase; select reamer; catalog size; nominal reamer",
  WEARALLOWANCE:
    "wear; how worn; reamer life left; worn reamer; remaining; can i still use; undersize reamer; wear limit",
  CUTSOVER:
    "student t; confidence of trial; oversize; cutting oversize; cuts big; cuts large; trial holes; overcut; reamer cuts bigger; cut oversize",
  PREPLATE:
    "plating; anodize; anodise; anodising; coating; hard coat; chrome; before plating; coat thickness; nickel plate; electroless; galvanize; pre-plate size",
  SHAREDREAMERS:
    "one reamer for two holes; same reamer; fewest reamers; family of holes; common reamer; one reamer for several holes; reduce tools; standardize; inventory; group holes",
  // Stock and drills
  STOCKRANGE:
    "allowance; material to leave; min max stock; reaming allowance; how much to leave; stock limits",
  STOCK:
    "allowance; how much stock; material to leave; reaming allowance; stock removal; amount to ream; leave for reaming",
  PREDRILL:
    "pilot drill; drill before reamer; pre-ream drill; calculated drill; drill diameter; underdrill; tap drill",
  DRILLFOR:
    "which drill; what drill; drill size; pilot drill; drill before reaming; pre drill; core drill; undersize drill; choose a drill; standard drill; drill bit; reamer drill",
  DRILLNAME:
    "drill chart; drill index; number drill; letter drill; fraction; standard drill under; drill gauge; nearest drill; wire gauge; decimal equivalent",
  STOCKCHECK:
    "is this drill ok; check drill; enough stock; too little stock; too much stock; is this drill right; verify drill",
  CLEANUP:
    "misaligned drill; drill off center; wandered drill; off center; offset; hole not cleaned up; eccentric drill; misalignment; per side; true up; clean up",
  DRILLDEPTH:
    "how deep to drill; drill point; blind hole depth; depth of drill; point length; point angle; 118; bottom; chip room; drill tip; how deep must i drill",
  // Speeds and feeds
  RPM: "spindle speed; revs; revolutions; how fast; turns; speed n; s word; rotational speed; spindle; rev per minute; speed",
  SURFACESPEED:
    "cutting speed; sfm; surface feet; vc; surface speed; peripheral speed; speed from rpm; meters per minute",
  FEEDRATE: "table feed; feed per minute; ipm; mm/min; vf; f word; penetration rate; feed; program feed",
  FEEDPERREV: "ipr; feed per revolution; mm/rev; fn; advance per revolution",
  FEEDPERTOOTH: "chip load; chipload; fz; ipt; feed per flute; feed per tooth; load per tooth",
  FEEDFROMTOOTH: "chip load to feed; fz to f; feed per rev from tooth; from chip load; teeth to feed",
  STARTSPEED:
    "surface finish; ra; guided blade; gun reamer; carbide; hss; tool material; material; recommended speed; speed for material; cutting speed table; how fast for stainless; speed for aluminum; starting speed; speeds and feeds; sfm chart; what speed",
  STARTFEED:
    "surface finish; finish needed; material; recommended feed; feed for material; starting feed; feed chart; what feed; speeds and feeds",
  CUTTINGDATA:
    "material; speeds and feeds; speed and feed; cutting conditions; parameters; cutting data; cnc data; program data; machining data; feeds and speeds",
  FLUTES:
    "teeth of a reamer; number of teeth; teeth; how many flutes; number of flutes; tooth count; z; blades",
  DEPTHRATIO:
    "l/d; length to diameter; depth to diameter; deep hole; how deep in diameters; aspect ratio; times diameter",
  // Time
  HOLETIME:
    "how long does a hole take; lead; approach; chamfer; time per hole; machining time; cutting time; cycle per hole; how long; seconds per hole; retract; feed time; time to ream",
  CYCLETIME:
    "how long does a part take; time per part; floor to floor; cycle; takt; load time; piece time; total time; standard time",
  PARTSPERSHIFT:
    "output; production; throughput; parts per day; how many parts; oee; productivity; pieces per shift; per hour",
  MACHINESNEEDED:
    "capacity; how many machines; load; utilization; machine count; capacity planning; equipment",
  HOURSSAVED: "hours saved; time saving; hours freed; saved time; labor saved; faster cycle",
  // Torque and power
  TORQUE:
    "moment; cutting force; twisting; torsion; can the machine take it; nm; inch pounds; kienzle; kc; force",
  POWER:
    "kw needed; power needed; kilowatt; horsepower; hp; kw; motor; spindle power; watts; enough power; spindle load",
  // Tool life and cost
  TAYLORFIT: "taylor; tool life equation; fit n and c; exponent; regression; tool life records; life data",
  TAYLORLIFE:
    "tool life; how long does it last; life at speed; minutes of life; life of the tool; durability; expected life",
  TAYLORSPEED: "speed for life; longer life; speed for tool life; slow down; vt",
  PARTSPEREDGE:
    "parts per tool; holes per edge; pieces per edge; how many parts per tool; tool change interval; holes per reamer; how many holes",
  ECONOMICSPEED: "cheapest speed; least cost; minimum cost; optimum; optimal speed; economic; cost optimum",
  FASTESTSPEED:
    "maximum production; most parts; fastest; maximum output; highest productivity; peak production",
  COSTATSPEED: "cost curve; cost over speed; cost per hole; cost at a speed; what if speed; trade off",
  LIFERANGE:
    "student t; confidence interval; average life; scatter of life; mean life; spread of tool life; how sure; statistics of life",
  TOOLSNEEDED:
    "how many reamers to buy; buy tools; reamers to order; how many tools; tools to order; tool quantity; annual tools; reamers per year; number of reamers; tool consumption; tooling quantity",
  EDGECOST:
    "regrind; regrinds; regrind; sharpen; resharpen; sharpening; grind cost; tool cost; price per edge; tool price; regrinding; cost of a regrind; reconditioning; insert cost",
  TOOLCOST: "tool cost per part; tooling cost; cost per piece of the tool; consumables; perishable tooling",
  PARTCOST:
    "scrap; scrap cost; batch cost; cost per part; piece cost; unit cost; manufacturing cost; cost price; machining cost; what does a part cost; cost breakdown",
  PRICE:
    "batch price; lot; batch; quote; quotation; selling price; sell; bid; offer; margin; markup; estimate; charge; setup cost; price break; profit; overhead",
  SAVING: "worth; saving; savings; difference; benefit; reduction; cost down; how much cheaper",
  PAYBACK:
    "is it worth it; worth buying; roi; return on investment; amortization; pay off; payoff; investment; justify; how soon; recoup; months; capital",
  BREAKEVEN:
    "break even; breakeven point; quantity; when does it pay; crossover; lot size; batch size; how many parts before",
  COMPARE:
    "before and after; comparison; present and proposed; versus; vs; alternatives; compare processes; old and new; test report; business case; proposal",
  MACHINERATE:
    "hourly rate; machine hour rate; burden; shop rate; cost per hour; depreciation; machine cost; rate per hour; overhead rate; hour",
  // Setting up
  RUNOUT:
    "tir; eccentricity; indicator; dial; wobble; high spot; concentricity; clock the tool; dti; run out; four readings; total indicator reading; out of true; true running",
  RUNOUTAT:
    "angle of the holder; bent holder; tilted; angle; runout at the tip; at the nose; projection; tip runout; extrapolate; angular runout; further out",
  SCREWMOVES:
    "adjusting screws; adjust; radial adjustment; center the tool; which screw; dial in; alignment; set screws; adjustable holder",
  RUNOUTCHECK:
    "is the runout ok; allowed runout; runout limit; acceptable runout; how much runout; permissible",
  CHIPPATH:
    "chips; chip evacuation; helix; left hand helix; right hand spiral; spiral; straight flute; blind or through; coolant through; flush; swarf; flute direction",
  TOOLFOR:
    "tool list; which tool; crib; tool number; lookup by size; own tools; tool catalog; range lookup; inventory; pick a tool",
  COOLANTFLOW:
    "coolant; flow; pressure; pump; nozzle; through coolant; liters; gallons; gpm; high pressure; flow rate; jet",
  DEFLECTION:
    "stick out; stickout; stick-out; hang out; bending; stiffness; rigidity; overhang; projection; flex; spring; long tool; side force; push off; cantilever; bend",
  // Measuring
  VBLOCK:
    "odd flutes; three flute; measure diameter odd; vee block; micrometer for odd teeth; 3 flutes; 5 flutes; v anvil",
  STACKUP:
    "rss; root sum square; tolerance stack; error budget; combine errors; uncertainty budget; quadrature; add tolerances",
  INSPECT:
    "does the hole pass; is the hole good; in tolerance; pass or fail; check size; go no go; accept; measured size; within limits; good or bad; ok or not; inspection",
  CAPABILITY:
    "average of measured sizes; mean of measurements; cp; cpk; pp; ppk; process capability; six sigma; spc; standard deviation; sigma; statistics; capable; ability",
  CPKBOUND: "cpk confidence; lower bound; sample size; few parts; cpk of 30 parts; minimum cpk; how sure",
  INTOLERANCE:
    "scrap; scrap rate; percent good; yield; ppm; defect rate; reject rate; normal distribution; share good; scrap expected; out of tolerance",
  GAUGESHARE:
    "gage r&r; gauge r&r; grr; msa; measurement system; repeatability; reproducibility; gage study; is my gauge good enough; gage capability",
  SIZEAT20:
    "degrees; celsius; temperature; warm part; cold; expansion; 20 degrees; thermal; correct to 20; size at 68; temperature compensation; heat",
  HOTSIZE:
    "degrees; hole at 35 degrees; hot; warm; size when warm; thermal growth; how big when hot; expands; growth; hot part",
  PLUGGAUGE:
    "thread; plug gauge; plug gage; go no go; gage limits; gauge limits; gauge maker; pin gage; limit gauge; no-go; thread plug",
  HOLEFORM:
    "roundness; bell mouth; bellmouth; taper; barrel; cylindricity; hole shape; form error; tapered hole; conical; out of shape; profile; hourglass; straightness",
  // Converting and checking
  CONVERT:
    "units; unit conversion; inch to mm; mm to inch; metric; imperial; convert units; thou; micron; psi to bar; newton; fahrenheit; sfm to m/min; roughness units; hp to kw",
  CHECK:
    "is it right; is my figure right; right or wrong; is this correct; check a figure; verify; hand calculation; mistake; error; wrong number; compare two numbers; double check; proof; audit",
  CHECKLIMITS:
    "check limits; verify limits; wrong limits; checked by hand; training; homework; review limits",
  CHECKOF:
    "is my result right; is this correct; right or wrong; check a result; find the mistake; verify calculation; why is my number different; teach; training; review; audit; wrong result",
  STEPS:
    "prove it; prove; show the working; formula; explain; how is it calculated; derivation; how does it work; show calculation; proof; step by step",
  MATERIALS:
    "316l; 17-4; 4140; 6061; hrc; hb; rockwell; brinell; steel grade; en number; group of a metal; materials; steel; stainless; aluminum; titanium; cast iron; material list; hardness; kc; groups; metal; alloy; equivalents",
  SOURCES:
    "where does this number come from; where from; source; reference; standard; where from; trust; citation; evidence; handbook; which standard",
};

/** Words of the shop floor for words of the help. */
export const otherWords: Readonly<Record<string, string>> = {
  ...each("bore bores bored boring orifice", "hole"),
  ...each("gage gages gauging gaging", "gauge"),
  ...each("sharpen sharpening resharpen regrinding recondition", "regrind"),
  ...each("tir dti wobble runnout", "runout"),
  ...each("revs revolutions turns", "rpm"),
  ...each("chipload", "chip"),
  ...each("tooth", "teeth"),
  ...each("anodise anodised anodising anodized anodizing", "anodize"),
  ...each("plate plated coat coated", "plating"),
  ...each("quotation quoting bid", "quote"),
  ...each("dowels pin pins", "dowel"),
  ...each("roi amortisation", "payback"),
  ...each("cheap cheaper cheapest economical", "cost"),
  ...each("expensive money", "cost"),
  ...each("pilot predrill predrilling", "drill"),
  ...each("troubleshooting", "troubleshoot"),
  ...each("imperial", "inch"),
  ...each("lubricant", "coolant"),
  ...each("swarf", "chips"),
  ...each("spiral", "helix"),
  ...each("aluminium alu", "aluminum"),
  ...each("diameter dia", "diameter"),
  ...each("tolerances tol", "tolerance"),
  ...each("calc calculate", "calculation"),
};

function each(words: string, meant: string): Record<string, string> {
  return Object.fromEntries(words.split(" ").map((word) => [word, meant]));
}
