// data: what stands around the name of a metal and does not change its material here: states, tempers, forms, hardness,
// standards in front, words for the kind of metal. Values from memory, reviewed. Each holds for the named materials only.

const STEELS = ["P", "M"];
const LIGHT = ["aluminum", "cast aluminum", "silicon aluminum", "magnesium"];
const CAST_LIGHT = ["cast aluminum", "silicon aluminum", "magnesium"];
const COPPER_ALLOYS = ["brass", "bronze", "aluminum bronze", "copper"];
const IRONS = ["K"];
const SUPERALLOYS = ["S"];
const HARDENABLE = ["precipitation-hardening stainless", "martensitic stainless"];

/** What a name must find for a part of it to be set aside: keys of materials and ISO 513 groups. */
export type Among = readonly string[];

export interface NamePart {
  /** The whole name, `base` the rest of it. */
  readonly pattern: RegExp;
  readonly among?: Among;
}

/** Behind the name, set aside one at a time from the end. */
export const suffixes: readonly NamePart[] = [
  // EN delivery states and strengths: 42CrMo4+QT, 1.4057+QT800, S355J2+Z25.
  {
    pattern:
      /^(?<base>.+?) ?\+ ?(?:N|NT|NW|AR?|M|U|SH?|AC|CR?|QT?|T|TH|HH|FP|BF|I|P|LC|AT|SL|QL|(?:QT|C|P)\d{2,4}|Z(?:15|25|35)|\d[A-Z])$/i,
    among: STEELS,
  },
  // Old DIN states.
  { pattern: /^(?<base>.+?)[ -](?:V|N|G|BG|BF|B|K|SH|E)$/, among: STEELS },
  // BS 970 states: EN24T, 817M40 T.
  { pattern: /^(?<base>EN ?\d{1,2}[A-M]?|\d{3}[AMSH]\d{2}) ?[P-Z]$/i, among: STEELS },
  // Hardenability of SAE and JIS: 4140H, 8620 RH, SCM440H.
  { pattern: /^(?<base>\d{4,5}|S[A-Z]{2,4}\d{3}) ?R?H$/i, among: STEELS },
  // Precipitation-hardening states: H900, RH950, Condition A.
  { pattern: /^(?<base>.+?)[ -]?(?:H(?:9|10|11)\d{2}[DM]?|RH950|TH1050|CH900)$/i, among: HARDENABLE },
  { pattern: /^(?<base>.+?)[ -](?:Cond(?:ition|\.)? ?A|SA)$/i, among: HARDENABLE },
  // JIS forms: SUS304-CP, S45C-D.
  { pattern: /^(?<base>S.+?)-(?:B|CB|P|CP|W|D)$/i, among: STEELS },
  { pattern: /^(?<base>C\d{4}) ?(?:BD|BE|P|T|W|R)(?:S)?$/i, among: COPPER_ALLOYS },
  { pattern: /^(?<base>A\d{4}) ?(?:P|BE|BD|S|BES|TE|TD|H)$/i, among: LIGHT },
  // GB grades and states: 40CrNiMoA, 20CrMnTiH, LY12-CZ, H62 Y2.
  { pattern: /^(?<base>\d{1,2}[A-Z][A-Za-z0-9]*)[AEZFbH]$/, among: STEELS },
  { pattern: /^(?<base>.+?)[ -](?:R|M|Y|Y2|Y4|T|CZ|CS)$/, among: [...LIGHT, ...COPPER_ALLOYS] },
  // Tempers of aluminum and magnesium: 6061-T6, 5083 H111, AZ31B-F.
  {
    pattern: /^(?<base>.+?)[ -]?(?:H1[1-9]\d?|H[1-3][1-9]\d{0,2}|T\d{1,5}(?:\/T?\d{1,4})?)$/i,
    among: LIGHT,
  },
  { pattern: /^(?<base>.+?)[ -](?:F|O|W|[FWG]\d{2}|ka|wa|ho)$/i, among: LIGHT },
  // Casting processes with their temper: AC-42100-KT6, LM25-TF, ZL101A-JT6, French Y33.
  {
    pattern: /^(?<base>.+?)[ -](?:[SKDLJRY]?(?:F|O|T\d{1,2})?|M|TB7?|TE|TF|TS|Y(?:20|23|30|33|40))$/,
    among: CAST_LIGHT,
  },
  // Copper alloys: CW614N-R430, C36000 H02, CuSn12-C-GZ.
  {
    pattern: /^(?<base>.+?)[ -](?:M|D|[RHYG]\d{3}|F\d{2}|H0\d|O[56]0|M20|HR50|C|GS|GM|GZ|GC|GP)$/i,
    among: COPPER_ALLOYS,
  },
  { pattern: /^(?<base>.+?) (?:half[ -]hard|hard|halbhart|hart|demi-dur|1\/2 ?H)$/i, among: COPPER_ALLOYS },
  // Iron: sample letters, impact grades, matrix.
  { pattern: /^(?<base>.+?)[ -](?:RT|LT)$/i, among: IRONS },
  { pattern: /^(?<base>.+\d)[ -]?[SUCAZ]$/i, among: IRONS },
  { pattern: /^(?<base>.+?)[ ,-]+(?:ferritic|pearlitic|annealed)$/i, among: IRONS },
  // States in words.
  {
    pattern:
      /^(?<base>.+?)[ ,-]+(?:HT|PH|QT|Q&T|pre-?hard(?:ened)?|(?:vor)?vergütet|normali[sz]iert|normali[sz]ed|norm\.|(?:weich)?geglüht|gezogen|blank|kaltgezogen|CDS?|HR|CR|TGP|2B|cold[ -]drawn|hot[ -]rolled)$/i,
    among: STEELS,
  },
  {
    pattern: /^(?<base>.+?)[ ,-]+(?:(?:mill |solution )?annealed|ann\.?)$/i,
    among: [...STEELS, ...SUPERALLOYS, ...COPPER_ALLOYS],
  },
  {
    pattern: /^(?<base>.+?)[ ,-]+(?:STA|ST|solution treated|aged|ELI|LVM|VAR|ESR|ESU|bar)$/i,
    among: [...SUPERALLOYS, ...HARDENABLE],
  },
  { pattern: /^(?<base>.+?), ?(?:AMS|ASTM) ?[A-Z]? ?\d{2,5}$/i },
  {
    pattern: /^(?<base>.+?)[ ,-]+(?:natural|natur|black|schwarz|extruded|cast|[NEG])$/i,
    among: ["plastic"],
  },
  // Strength and hardness that leave the material as it is.
  {
    pattern:
      /^(?<base>.+?)[ ,(]+(?:max\.? ?)?(?:\d{2,3}(?: ?- ?\d{2,3})? ?(?:HBW?|HV|HRB)|HBW? ?\d{2,3}(?: ?- ?\d{2,3})?|Rm ?\d{3,4}|\d{3,4} ?(?:N\/mm[2²]|MPa)|\d{2,3} ?ksi)\)?$/i,
  },
];

/** A hardness in HRC behind or in place of a name; a range counts with its middle. */
export const hrcPattern =
  /^(?<base>.*?)[ ,(]*(?:(?<low>\d{2}(?:\.\d)?)(?: ?- ?(?<high>\d{2}(?:\.\d)?))? ?HRC|HRC ?(?<low2>\d{2}(?:\.\d)?)(?: ?- ?(?<high2>\d{2}(?:\.\d)?))?)\)?$/i;

/** A Brinell hardness behind or in place of a name. */
export const brinellPattern =
  /^(?<base>.*?)[ ,(]*(?:max\.? ?)?(?:(?<value>\d{2,3})(?: ?- ?\d{2,3})? ?HBW?|HBW? ?(?<value2>\d{2,3})(?: ?- ?\d{2,3})?)\)?$/i;

/** Brinell hardness from which a steel counts as hardened, about 45 HRC. */
export const HARDENED_FROM_HB = 430;

/** A steel with one of these behind it is hardened. */
export const hardenedPattern = /^(?<base>.+?)[ ,(-]+(?:gehärtet|hardened|trempée?|temprato|templado)\)?$/i;

/** In front of the name: standards, number signs, words for a grade. `system` tells two metals of one name apart. */
export const prefixes: readonly NamePart[] = [
  { pattern: /^(?<system>AISI|SAE|ASTM)[ -]?(?<base>.+)$/i, among: [...STEELS, "H", "K", ...COPPER_ALLOYS] },
  { pattern: /^(?<system>EN ?[-]? ?A[WC]|A[WC]|AA)[ -]*(?<base>.+)$/i, among: LIGHT },
  {
    pattern:
      /^(?<system>(?:ASTM|AMS|EN|DIN|ISO|BS|JIS|GB|UNI|NF|SAE) ?(?:EN |ISO |\/T ?)*[A-Z]? ?\d{2,5}(?:[-:/]\d{1,4})*) +(?<base>.+)$/i,
  },
  { pattern: /^(?<system>UNS|CDA|ASTM|AMS|EN|DIN|ISO|BS|JIS|GB|AFNOR|NF|UNI|GOST)[ -]+(?<base>.+)$/i },
  { pattern: /^EN-(?<base>GJ.+)$/i, among: IRONS },
  {
    pattern:
      /^(?:W(?:kst|st)?\.?[ -]?Nr\.?|Werkstoff(?:nummer|-?Nr\.?)?|Wst\.?|Mat(?:erial)?\.?(?:[ -]?Nr\.?)?) *:? *(?<base>.+)$/i,
  },
  { pattern: /^(?:type|typ|alloy|grade|gr\.?|class|cl\.?|S\/?S)[ -]?(?<base>.+)$/i },
  // Casting processes in old DIN names: G-AlSi12, GK-AlMg3; they decide for the casting.
  {
    pattern: /^G[SKDFZC]?-(?<base>(?:Al|Mg|Cu).+)$/,
    among: [...CAST_LIGHT, "brass", "bronze", "aluminum bronze", "copper"],
  },
  // Leading letters of AISI: C1045, E4340, B1112.
  { pattern: /^[CEBG][ -]?(?<base>\d{4})$/i, among: STEELS },
  { pattern: /^E[ -]?(?<base>\d{5})$/i, among: STEELS },
  // Unified numbers made from the older ones: G41400, A96061.
  { pattern: /^G[ -]?(?<base>\d{4})0$/i, among: STEELS },
  { pattern: /^A[ -]?9(?<base>\d{4})$/i, among: LIGHT },
];

/** Words for a kind of metal, and what may be of that kind. */
export const kindWords: Readonly<Record<string, Among>> = {
  ...each("steel stahl acier acciaio acero", ["P", "M", "H"]),
  ...each("stainless stainless_steel ss inox rostfrei edelstahl inossidabile inoxydable inoxidable", ["M"]),
  ...each("tool_steel werkzeugstahl", ["tool steel"]),
  ...each("alloy_steel", ["alloy steel", "case-hardening steel"]),
  ...each("carbon_steel", ["low-carbon steel", "medium-carbon steel"]),
  ...each("iron cast_iron guss gusseisen fonte ghisa fundicion", IRONS),
  ...each("aluminum alu aluminum_alloy alluminio aluminio", [
    "aluminum",
    "cast aluminum",
    "silicon aluminum",
  ]),
  ...each("cast_aluminum", CAST_LIGHT),
  ...each("magnesium", ["magnesium"]),
  ...each("brass messing laiton ottone laton", ["brass"]),
  ...each("bronze bronzo bronce", ["bronze", "aluminum bronze"]),
  ...each("copper kupfer cuivre rame cobre", ["copper"]),
  ...each("titanium titan titane titanio ti", ["titanium"]),
  ...each("nickel nickel_alloy", ["nickel alloy"]),
  ...each("cobalt cobalt_alloy", ["cobalt alloy"]),
  ...each("plastic kunststoff", ["plastic"]),
  ...each("duplex", ["duplex stainless"]),
};

function each(words: string, among: Among): Record<string, Among> {
  return Object.fromEntries(words.split(" ").map((word) => [word.replaceAll("_", ""), among]));
}
