// calc: the words and symbols that stand around a size on a drawing, by what they do there and by language.

/** The diameter sign, and what is written for it: Greek and Cyrillic letters, and what a symbol font leaves in a copy. */
export const DIAMETER_SIGNS = "⌀∅ØøΦφϕФфÆ";

/** What a word or symbol does in a callout. */
export type Role =
  | "after"
  | "before"
  | "change"
  | "chamfer"
  | "circle"
  | "coat"
  | "coated"
  | "count"
  | "count-before"
  | "deep"
  | "deep-sign"
  | "diameter"
  | "drill"
  | "extreme"
  | "frame"
  | "hole"
  | "joint"
  | "known"
  | "micron"
  | "modifier"
  | "on"
  | "phrase"
  | "radius"
  | "ream"
  | "roughness"
  | "stop"
  | "stop-sign"
  | "taper"
  | "thread"
  | "through"
  | "times"
  | "unit";

/** Words in capitals, without accents, points and apostrophes; a phrase of several words counts as one. */
const words: Readonly<Record<Role, readonly string[]>> = {
  through: [
    ...["THRU", "THROUGH", "THRU ALL", "THROUGH ALL", "THRU HOLE", "THROUGH HOLE", "THRU HOLES"],
    ...["THRO", "THRO ALL"],
    ...["DURCH", "DURCHGEHEND", "DURCHGANG", "DURCHGANGSBOHRUNG", "DURCHGANGSLOCH"],
    ...["DEBOUCHANT", "DEBOUCHANTS", "TRAVERSANT", "TRAVERSANTS", "A TRAVERS", "DE PART EN PART"],
    ...["PASSANTE", "PASSANTI", "PASANTE", "PASANTES"],
    ...["通し", "通シ", "トオシ", "貫通", "通孔", "贯通", "贯穿", "通"],
  ],
  deep: [
    ...["MIN DEPTH", "MINIMUM DEPTH", "MAX DEPTH", "MAXIMUM DEPTH", "FULL DEPTH", "DEPTH OF"],
    ...["DEEP", "DP", "DEPTH", "TIEF", "TIEFE", "PROF", "PROFONDEUR", "PROFOND", "DE PROFONDEUR"],
    ...["PROFONDITA", "PROFONDO", "PROFUNDIDAD", "DE PROFUNDIDAD", "PROFUNDO", "深さ", "深サ", "深度", "深"],
  ],
  "deep-sign": ["↧"],
  times: ["X", "×"],
  count: [
    ...[
      "PL",
      "PLACES",
      "PLACE",
      "PLCS",
      "PLC",
      "OFF",
      "NO",
      "NOS",
      "POSNS",
      "POSN",
      "POSITIONS",
      "PCS",
      "STUCK",
      "STK",
      "ST",
    ],
    ...["MAL", "FOIS", "VECES", "個", "箇所", "ヶ所", "カ所", "ケ所", "か所", "个", "处"],
  ],
  "count-before": ["QTY", "QUANTITY", "ANZAHL", "QTE", "QTA", "CANT", "N°", "Nº", "N", "NR", "NUM"],
  // A count where a whole number stands before it.
  hole: [
    ...["HOLE", "HOLES", "BLIND", "BLIND HOLE", "BLIND HOLES", "DOWEL HOLE", "DOWEL HOLES"],
    ...["BOHRUNG", "BOHRUNGEN", "LOCH", "LOCHER", "PASSBOHRUNG", "LAGERBOHRUNG", "STIFTBOHRUNG", "GRUNDLOCH"],
    ...[
      "STIFTLOCH",
      "REIBBOHRUNG",
      "SACKLOCH",
      "TROU",
      "TROUS",
      "ALESAGE",
      "ALESAGES",
      "TROU BORGNE",
      "FORO",
      "FORI",
      "FORO CIECO",
    ],
    ...["AGUJERO", "AGUJEROS", "TALADRO", "TALADROS", "穴", "孔", "盲孔", "销孔", "止まり穴"],
  ],
  ream: [
    ...["REAM", "REAMED", "REAM TO", "LINE REAM", "HAND REAM", "FINISH REAM", "MACHINE REAM"],
    ...["BORE OR REAM", "REAM OR BORE", "DRILL OR REAM"],
    ...["REIBEN", "GERIEBEN", "AUFREIBEN", "AUFGERIEBEN", "FERTIGREIBEN"],
    ...["ALESER", "ALESE", "ALESER A", "ALESARE", "ALESATO", "ALESATI", "ALESATURA"],
    ...[
      "ESCARIAR",
      "ESCARIADO",
      "ESCARIADOS",
      "リーマ",
      "リーマ加工",
      "リーマ仕上げ",
      "铰",
      "铰孔",
      "铰制",
      "配铰",
    ],
  ],
  // Operations before or beside reaming: their sizes are not the reamed one.
  drill: [
    ...["DRILL", "DRILLED", "BORE", "BORED", "PREDRILL", "PILOT DRILL", "DRILL TO", "DRILL AND", "DRILL &"],
    ...["BOHREN", "GEBOHRT", "VORBOHREN", "VORGEBOHRT", "PERCER", "PERCE", "PERCAGE", "FORARE", "FORATURA"],
    ...[
      "PREFORARE",
      "PREFORO",
      "TALADRAR",
      "TALADRADO",
      "PRETALADRAR",
      "キリ",
      "下穴",
      "钻",
      "钻孔",
      "预钻",
      "配钻",
    ],
  ],
  diameter: ["DIA", "DIAM", "DIAMETER", "DURCHMESSER", "DIAMETRE", "DIAMETRO", "直径"],
  extreme: ["MIN", "MAX", "MINIMUM", "MAXIMUM"],
  joint: ["TO", "BIS", "A", "HASTA"],
  unit: ["MM", "IN", "INCH", "INCHES", '"', "″", "”", "''"],
  micron: ["µM", "ΜM", "UM", "MICRON", "MICRONS"],
  modifier: ["ENVELOPE", "CT"],
  // Said of a size, and changing nothing.
  known: [
    ...["TYP", "TYPICAL", "ALL", "AND", "EQ SP", "EQUALLY SPACED", "EQUISPACED", "EQUAL SPACED"],
    ...["GLEICHMASSIG VERTEILT", "UND", "EQUIDISTANTS", "EQUIDISTANTI", "EQUIDISTANTES", "ET", "E", "Y"],
    ...["均布", "配作", "等分", "等配", "加工", "仕上げ"],
  ],
  // At these the description of another feature begins.
  "stop-sign": ["⌴", "⌵"],
  stop: [
    ...["CBORE", "COUNTERBORE", "COUNTERBORED", "C BORE", "CSK", "CSINK", "COUNTERSINK", "COUNTERSUNK"],
    ...[
      "SPOTFACE",
      "SPOT FACE",
      "SF",
      "SFACE",
      "SENKUNG",
      "SENKEN",
      "ANSENKUNG",
      "FLACHSENKUNG",
      "KEGELSENKUNG",
    ],
    ...["ANGESENKT", "GESENKT", "LAMAGE", "LAMER", "FRAISURE", "FRAISER", "LAMATURA", "SVASATURA", "SVASARE"],
    ...["AVELLANADO", "AVELLANAR", "REFRENTADO", "CAJEADO"],
    ...["ザグリ", "座ぐり", "座グリ", "深ザグリ", "皿モミ", "皿もみ", "沉孔", "沉头孔", "锪平", "锪"],
  ],
  frame: [
    ..."⌖⟂⊥⌭◎○⌰⏥⌓⌒∥∠⌯↗⌮|",
    ...["POSITION", "TRUE POSITION", "PERP", "PERPENDICULAR", "PERPENDICULARITY", "PARALLEL", "CONCENTRIC"],
    ...["CONCENTRICITY", "COAXIAL", "RUNOUT", "TOTAL RUNOUT", "CYLINDRICITY", "ROUNDNESS", "CIRCULARITY"],
    ...[
      "STRAIGHTNESS",
      "POSIZIONE",
      "POSICION",
      "RECHTWINKLIG",
      "RUNDHEIT",
      "位置度",
      "垂直度",
      "同轴度",
      "圆度",
    ],
  ],
  roughness: ["√", "RA", "RZ", "RT", "RMAX", "RMS", "FINISH", "RUGOSITE", "RUGOSITA", "RUGOSIDAD", "RAUHEIT"],
  on: ["ON", "AUF", "SUR", "SU", "SOBRE", "EN"],
  circle: [
    ...[
      "BC",
      "PC",
      "PCD",
      "BCD",
      "BOLT CIRCLE",
      "BOLT",
      "CIRCLE",
      "BHC",
      "LOCHKREIS",
      "TK",
      "LK",
      "TEILKREIS",
    ],
    ...["CERCLE", "CERCHIO", "CIRCULO"],
  ],
  chamfer: ["CHAMFER", "CHAM", "CHAMF", "FASE", "CHANFREIN", "SMUSSO", "CHAFLAN", "BISEL", "面取り", "倒角"],
  // What begins these belongs to the note up to its end.
  phrase: [
    ...["FOR", "PER", "SEE", "NOTE", "NOTES", "ITEM", "DETAIL", "SPEC", "SPECIFICATION"],
    ...["FUR", "SIEHE", "LAUT", "GEMASS", "GEM", "HINWEIS", "EINZELHEIT", "POUR", "SELON", "VOIR", "REPERE"],
    ...["SECONDO", "VEDI", "NOTA", "DETTAGLIO", "PARTICOLARE", "PARA", "SEGUN", "VER", "DETALLE"],
    ...["参照", "见", "按", "注", "热处理", "热处理后"],
  ],
  after: [
    ...[
      "AFTER",
      "POST",
      "INCLUDES",
      "INCLUDING",
      "INCL",
      "WITH",
      "NACH",
      "NACH DEM",
      "NACH DER",
      "MIT",
      "INKL",
    ],
    ...["APRES", "AVEC", "DOPO", "DOPO IL", "DOPO LA", "CON", "DESPUES DE", "DESPUES DEL", "TRAS"],
  ],
  before: [
    ...["BEFORE", "PRIOR TO", "VOR", "VOR DEM", "VOR DER", "AVANT", "PRIMA DI", "PRIMA DEL", "PRIMA DELLA"],
    ...["ANTES DE", "ANTES DEL"],
  ],
  coat: [
    ...[
      "PLATING",
      "PLATE",
      "ANODIZE",
      "ANODIZING",
      "ANODISE",
      "ANODISING",
      "ANO",
      "COATING",
      "COAT",
      "CHROME",
    ],
    ...[
      "CHROMING",
      "NICKEL",
      "ZINC",
      "GALVANIZING",
      "PAINT",
      "PAINTING",
      "PHOSPHATE",
      "PHOSPHATING",
      "NITRIDE",
    ],
    ...["NITRIDING", "BLACK OXIDE", "SURFACE TREATMENT", "FINISHING", "PASSIVATION"],
    ...["BESCHICHTUNG", "BESCHICHTEN", "VERZINKEN", "VERZINKUNG", "VERCHROMEN", "VERCHROMUNG", "VERNICKELN"],
    ...[
      "VERNICKELUNG",
      "ELOXIEREN",
      "ELOXAL",
      "BRUNIEREN",
      "PHOSPHATIEREN",
      "NITRIEREN",
      "LACKIEREN",
      "GALVANIK",
    ],
    ...["OBERFLACHENBEHANDLUNG", "TRAITEMENT", "TRAITEMENT DE SURFACE", "REVETEMENT", "CHROMAGE", "ZINGAGE"],
    ...["NICKELAGE", "ANODISATION", "NITRURATION", "TRATTAMENTO", "TRATTAMENTO SUPERFICIALE", "RIVESTIMENTO"],
    ...[
      "CROMATURA",
      "ZINCATURA",
      "NICHELATURA",
      "ANODIZZAZIONE",
      "NITRURAZIONE",
      "TRATAMIENTO",
      "RECUBRIMIENTO",
    ],
    ...["NIQUELADO", "NITRURACION"],
  ],
  // Said of the hole itself.
  coated: [
    ...[
      "PLATED",
      "COATED",
      "ANODIZED",
      "ANODISED",
      "NITRIDED",
      "POST-PLATING",
      "POST-PLATE",
      "POST-COATING",
      "AFTER FINISH",
    ],
    ...["VERZINKT", "VERCHROMT", "VERNICKELT", "ELOXIERT", "BESCHICHTET", "BRUNIERT", "NITRIERT", "ZINGUE"],
    ...[
      "CROMATO",
      "ZINCATO",
      "NICHELATO",
      "ANODIZZATO",
      "RIVESTITO",
      "CROMADO",
      "CINCADO",
      "ZINCADO",
      "ANODIZADO",
    ],
    ...[
      "めっき後",
      "メッキ後",
      "アルマイト後",
      "表面処理後",
      "处理后",
      "电镀后",
      "镀后",
      "表面处理后",
      "氧化后",
    ],
  ],
  thread: [
    ...["UNC", "UNF", "UNEF", "UNS", "UN", "UNJF", "NPT", "NPTF", "BSP", "BSPP", "BSPT", "TR"],
    ...["TAP", "TAPPED", "THREAD", "THD", "GEWINDE", "GEWINDEBOHRUNG", "TARAUDAGE", "TARAUDER", "FILETAGE"],
    ...["FILETTATURA", "FILETTATO", "MASCHIARE", "ROSCA", "ROSCADO", "ROSCAR"],
    ...["タップ", "ネジ", "ねじ", "螺纹", "螺纹孔", "攻丝"],
  ],
  taper: [
    ...["TAPER", "TAPERED", "CONE", "CONICAL", "KEGEL", "KEGELBOHRUNG", "KEGELIG", "KONISCH", "CONIQUE"],
    ...[
      "CONICITE",
      "CONICO",
      "CONICA",
      "CONICITA",
      "CONICIDAD",
      "テーパ",
      "テーパー",
      "锥度",
      "锥",
      "锥销孔",
    ],
  ],
  radius: ["R", "SR", "RAD", "RADIUS", "RADIUSES", "RAYON", "RAGGIO", "RADIO"],
  // What is no round hole, not the size that counts, or another unit.
  change: [
    ...[
      "REF",
      "REFERENCE",
      "BSC",
      "BASIC",
      "SQ",
      "SQUARE",
      "HEX",
      "SLOT",
      "SLOTS",
      "KEYWAY",
      "WIDE",
      "WIDTH",
    ],
    ...["LANGLOCH", "VIERKANT", "SECHSKANT", "RAINURE", "ASOLA", "RANURA", "长孔", "長穴", "方孔"],
    ...["OR", "ODER", "OU", "NOT", "NICHT", "EXCEPT", "UNLESS", "WAS", "CM", "DM", "FT", "FEET"],
    ...["OVERSIZE", "UNDERSIZE", "PLUS", "MINUS", "HONE", "LAP", "OD", "SPHERICAL"],
  ],
};

export const roles: ReadonlyMap<string, Role> = new Map(
  Object.entries(words).flatMap(([role, list]) => list.map((word) => [word, role as Role] as const)),
);

/** A word as the table has it: capitals, no accents, points or apostrophes. */
export function plainWord(word: string): string {
  const capitals = word.toUpperCase();
  return (
    /^[\x20-\x7e]*$/.test(capitals) ? capitals : capitals.normalize("NFD").replace(/[\u0300-\u036f]/g, "")
  )
    .replace(/([A-Z])[.'’]/g, "$1")
    .normalize("NFC");
}

/** The longest word, or phrase of words, of the table has this many. */
export const LONGEST_PHRASE = 4;
/** Inside a tolerance frame, a roughness or a bolt circle after its number. */
export const FRAME_WORDS = new Set(["TO", "WITHIN", "TIR", "FIM", "DATUM", "WRT", "RFS", "MMC"]);
export const ROUGHNESS_WORDS = new Set(["µIN", "ΜIN", "UIN", "AA", "CLA", "<", "≤", "=", ":"]);
