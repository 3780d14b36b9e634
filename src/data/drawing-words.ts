// data: the words and symbols that stand around a size on a drawing, by what they do there, in the languages that
// drawings are written in: common practice, no source.

const words = (list: string) => list.split("; ");

/** Words in capitals, without accents, points and apostrophes; a phrase of several words counts as one. */
export const drawingWords = {
  through: words(
    "THRU; THROUGH; THRU ALL; THROUGH ALL; THRU HOLE; THROUGH HOLE; THRU HOLES; " +
      "THRO; THRO ALL; " +
      "DURCH; DURCHGEHEND; DURCHGANG; DURCHGANGSBOHRUNG; DURCHGANGSLOCH; " +
      "DEBOUCHANT; DEBOUCHANTS; TRAVERSANT; TRAVERSANTS; A TRAVERS; DE PART EN PART; " +
      "PASSANTE; PASSANTI; PASANTE; PASANTES; " +
      "通し; 通シ; トオシ; 貫通; 通孔; 贯通; 贯穿; 通",
  ),
  deep: words(
    "PROF UTILE; PROFONDEUR UTILE; PROFONDITA UTILE; NUTZTIEFE; 有効深さ; 有效深度; " +
      "MIN DEPTH; MINIMUM DEPTH; MAX DEPTH; MAXIMUM DEPTH; FULL DEPTH; DEPTH OF; TO DEPTH; " +
      "TO A DEPTH OF; " +
      "DEEP; DP; DEPTH; TIEF; TIEFE; PROF; PROFONDEUR; PROFOND; DE PROFONDEUR; " +
      "PROFONDITA; PROFONDO; PROFUNDIDAD; DE PROFUNDIDAD; PROFUNDO; 深さ; 深サ; 深度; 深",
  ),
  "deep-sign": words("↧; ↓"),
  times: words("X; ×"),
  count: words(
    "PL; PLACES; PLACE; PLCS; PLC; OFF; NO; NOS; POSNS; POSN; POSITIONS; PCS; STUCK; STK; ST; " +
      "REQD; EA; " +
      "MAL; FOIS; VECES; 個; 個所; 箇所; ヶ所; カ所; ケ所; か所; 个; 处",
  ),
  "count-before": words("QTY; QUANTITY; ANZAHL; QTE; QTA; CANT; N°; Nº; N; NR; NUM"),
  // A count where a whole number stands before it.
  hole: words(
    "HLS; HL; HOLE; HOLES; BLIND; BLIND HOLE; BLIND HOLES; DOWEL HOLE; DOWEL HOLES; " +
      "BOHRUNG; BOHRUNGEN; LOCH; LOCHER; PASSBOHRUNG; LAGERBOHRUNG; STIFTBOHRUNG; GRUNDLOCH; " +
      "STIFTLOCH; REIBBOHRUNG; SACKLOCH; TROU; TROUS; ALESAGE; ALESAGES; TROU BORGNE; FORO; FORI; " +
      "FORO CIECO; " +
      "AGUJERO; AGUJEROS; TALADRO; TALADROS; 穴; 孔; 盲孔; 销孔; 止まり穴",
  ),
  ream: words(
    "REAM; REAMED; REAM TO; LINE REAM; HAND REAM; FINISH REAM; MACHINE REAM; " +
      "BORE OR REAM; REAM OR BORE; DRILL OR REAM; " +
      "REIBEN; GERIEBEN; AUFREIBEN; AUFGERIEBEN; FERTIGREIBEN; " +
      "ALESER; ALESE; ALESER A; ALESARE; ALESATO; ALESATI; ALESATURA; " +
      "ESCARIAR; ESCARIADO; ESCARIADOS; リーマ; リーマ加工; リーマ仕上げ; 铰; 铰孔; 铰制; 配铰",
  ),
  // Operations before or beside reaming: their sizes are not the reamed one.
  drill: words(
    "DRILL; DRILLED; BORE; BORED; PREDRILL; PILOT DRILL; DRILL TO; DRILL AND; DRILL &; " +
      "BOHREN; GEBOHRT; VORBOHREN; VORGEBOHRT; PERCER; PERCE; PERCAGE; FORARE; FORATURA; " +
      "PREFORARE; PREFORO; TALADRAR; TALADRADO; PRETALADRAR; キリ; 下穴; 钻; 钻孔; 预钻; 配钻",
  ),
  diameter: words("DIA; DIAM; DIAMETER; DURCHMESSER; DIAMETRE; DIAMETRO; 直径"),
  extreme: words("MIN; MAX; MINIMUM; MAXIMUM"),
  joint: words("TO; BIS; A; HASTA"),
  unit: words("MM; IN; INCH; INCHES; \"; ″; ”; ''"),
  micron: words("µM; ΜM; UM; MICRON; MICRONS"),
  modifier: words("ENVELOPE; CT"),
  // Said of a size, and changing nothing.
  known: words(
    "TO DEPTH SHOWN; DEPTH SHOWN; " +
      "TYP; TYPICAL; ALL; AND; EQ SP; EQUALLY SPACED; EQUISPACED; EQUAL SPACED; " +
      "GLEICHMASSIG VERTEILT; UND; EQUIDISTANTS; EQUIDISTANTI; EQUIDISTANTES; ET; E; Y; " +
      "均布; 配作; 等分; 等配; 加工; 仕上げ",
  ),
  // At these the description of another feature begins.
  "stop-sign": words("⌴; ⌵"),
  stop: words(
    "CBORE; COUNTERBORE; COUNTERBORED; C BORE; C-BORE; CSK; CSINK; COUNTERSINK; COUNTERSUNK; " +
      "SPOTFACE; SPOT FACE; SF; SFACE; SENKUNG; SENKEN; ANSENKUNG; FLACHSENKUNG; KEGELSENKUNG; " +
      "ANGESENKT; GESENKT; LAMAGE; LAMER; FRAISURE; FRAISER; LAMATURA; SVASATURA; SVASARE; " +
      "AVELLANADO; AVELLANAR; REFRENTADO; CAJEADO; " +
      "ザグリ; 座ぐり; 座グリ; 深ザグリ; 皿モミ; 皿もみ; 沉孔; 沉头孔; 锪平; 锪",
  ),
  frame: words(
    "⌖; ⟂; ⊥; ⌭; ◎; ○; ⌰; ⏥; ⌓; ⌒; ∥; ∠; ⌯; ↗; ⌮; |; " +
      "POSITION; TRUE POSITION; PERP; PERPENDICULAR; PERPENDICULARITY; PARALLEL; CONCENTRIC; " +
      "CONCENTRICITY; COAXIAL; RUNOUT; TOTAL RUNOUT; CYLINDRICITY; ROUNDNESS; CIRCULARITY; " +
      "STRAIGHTNESS; POSIZIONE; POSICION; RECHTWINKLIG; RUNDHEIT; 位置度; 垂直度; 同轴度; 圆度",
  ),
  roughness: words("√; RA; RZ; RT; RMAX; RMS; FINISH; RUGOSITE; RUGOSITA; RUGOSIDAD; RAUHEIT"),
  on: words("ON; AUF; SUR; SU; SOBRE; EN"),
  circle: words(
    "BC; B/C; PC; PCD; BCD; BOLT CIRCLE; BOLT HOLE CIRCLE; CIRCLE; BHC; LOCHKREIS; TK; LK; TEILKREIS; " +
      "CERCLE; CERCHIO; CIRCULO",
  ),
  chamfer: words("CHAMFER; CHAM; CHAMF; FASE; CHANFREIN; SMUSSO; CHAFLAN; BISEL; 面取り; 倒角"),
  // What begins these belongs to the note up to its end.
  phrase: words(
    "FOR; PER; SEE; NOTE; NOTES; ITEM; DETAIL; SPEC; SPECIFICATION; " +
      "FUR; SIEHE; LAUT; GEMASS; GEM; HINWEIS; EINZELHEIT; POUR; SELON; VOIR; REPERE; " +
      "SECONDO; VEDI; NOTA; DETTAGLIO; PARTICOLARE; PARA; SEGUN; VER; DETALLE; " +
      "参照; 见; 按; 注; 热处理; 热处理后",
  ),
  after: words(
    "AFTER; AFT; NACH; NACH DEM; NACH DER; APRES; DOPO; DOPO IL; DOPO LA; DESPUES DE; DESPUES DEL; TRAS",
  ),
  including: words("POST; INCLUDES; INCLUDING; INCL; WITH; MIT; INKL; AVEC; CON"),
  before: words(
    "BEFORE; PRIOR TO; VOR; VOR DEM; VOR DER; AVANT; PRIMA DI; PRIMA DEL; PRIMA DELLA; " +
      "ANTES DE; ANTES DEL",
  ),
  coat: words(
    "PLATING; PLATE; PLTG; HARDCOAT; BONDERIZING; ENAMEL; ANODIZE; ANODIZING; ANODISE; ANODISING; ANO; COATING; COAT; CHROME; " +
      "CHROMING; NICKEL; ZINC; GALVANIZING; PAINT; PAINTING; PHOSPHATE; PHOSPHATING; NITRIDE; " +
      "NITRIDING; BLACK OXIDE; SURFACE TREATMENT; FINISHING; PASSIVATION; " +
      "BESCHICHTUNG; BESCHICHTEN; SCHICHT; VERZINKEN; VERZINKUNG; VERCHROMEN; VERCHROMUNG; VERNICKELN; " +
      "VERNICKELUNG; ELOXIEREN; ELOXAL; BRUNIEREN; PHOSPHATIEREN; NITRIEREN; LACKIEREN; GALVANIK; " +
      "OBERFLACHENBEHANDLUNG; TRAITEMENT; TRAITEMENT DE SURFACE; REVETEMENT; CHROMAGE; ZINGAGE; " +
      "NICKELAGE; ANODISATION; NITRURATION; TRATTAMENTO; TRATTAMENTO SUPERFICIALE; RIVESTIMENTO; " +
      "CROMATURA; ZINCATURA; NICHELATURA; ANODIZZAZIONE; NITRURAZIONE; TRATAMIENTO; RECUBRIMIENTO; " +
      "NIQUELADO; NITRURACION",
  ),
  // Said of the hole itself.
  coated: words(
    "PLATED; COATED; ANODIZED; ANODISED; NITRIDED; HARDCOATED; POST-PLATING; POST-PLATE; " +
      "POST-PLATED; POST-COATING; POST-ANODIZE; POST-ANODISE; POSTPLATE; POST FINISH; AFTER-PLATING; PLATING INCLUDED; " +
      "COATING INCLUDED; AFTER FINISH; " +
      "HARTVERCHROMT; HARTANODISIERT; BESCHICHTETEN; BESCHICHTETER; VERZINKT; VERCHROMT; VERNICKELT; ELOXIERT; BESCHICHTET; BRUNIERT; NITRIERT; ZINGUE; " +
      "CROMATO; ZINCATO; NICHELATO; ANODIZZATO; RIVESTITO; CROMADO; CINCADO; ZINCADO; ANODIZADO; " +
      "めっき後; メッキ後; アルマイト後; 表面処理後; 处理后; 电镀后; 镀后; 表面处理后; 氧化后",
  ),
  thread: words(
    "UNC; UNF; UNEF; UNS; UN; UNJF; NPT; NPTF; BSP; BSPP; BSPT; TR; " +
      "TAP; TAPPED; THREAD; THD; GEWINDE; GEWINDEBOHRUNG; TARAUDAGE; TARAUDER; FILETAGE; " +
      "FILETTATURA; FILETTATO; MASCHIARE; ROSCA; ROSCADO; ROSCAR; " +
      "タップ; ネジ; ねじ; 螺纹; 螺纹孔; 攻丝",
  ),
  taper: words(
    "TAPER; TAPERED; CONE; CONICAL; KEGEL; KEGELBOHRUNG; KEGELIG; KONISCH; CONIQUE; " +
      "CONICITE; CONICO; CONICA; CONICITA; CONICIDAD; テーパ; テーパー; 锥度; 锥; 锥销孔",
  ),
  radius: words("R; SR; RAD; RADIUS; RADIUSES; RAYON; RAGGIO; RADIO"),
  // What is no round hole, not the size that counts, or another unit.
  change: words(
    "REF; REFERENCE; BSC; BASIC; SQ; SQUARE; HEX; OVAL; OBLONG; OBROUND; ELONGATED; ELLIPTICAL; SLOTTED; SLOT; SLOTS; KEYWAY; WIDE; WIDTH; " +
      "LANGLOCH; LANGLOCHER; VIERKANT; SECHSKANT; RAINURE; OVALE; ASOLA; RANURA; 长孔; 長穴; 方孔; " +
      "OR; ODER; OU; NOT; NICHT; EXCEPT; UNLESS; WAS; CM; DM; FT; FEET; " +
      "OVERSIZE; UNDERSIZE; PLUS; MINUS; HONE; LAP; OD; SPHERICAL",
  ),
};

/** Numbers in words, from two on. */
export const numberWords: ReadonlyMap<string, number> = new Map(
  [
    "TWO; THREE; FOUR; FIVE; SIX; SEVEN; EIGHT; NINE; TEN; ELEVEN; TWELVE",
    "ZWEI; DREI; VIER; FUNF; SECHS; SIEBEN; ACHT; NEUN; ZEHN; ELF; ZWOLF",
    "DEUX; TROIS; QUATRE; CINQ; SIX; SEPT; HUIT; NEUF; DIX; ONZE; DOUZE",
    "DUE; TRE; QUATTRO; CINQUE; SEI; SETTE; OTTO; NOVE; DIECI; UNDICI; DODICI",
    "DOS; TRES; CUATRO; CINCO; SEIS; SIETE; OCHO; NUEVE; DIEZ",
    "两; 三; 四",
  ].flatMap((list) => words(list).map((word, at) => [word, at + 2] as const)),
);

/** How words begin that name no coating behind AFTER: heat treatment, joining, machining, and NACH DIN. */
export const uncoatedBeginnings = words(
  "HEAT; HT; HARDEN; CARBURI; QUENCH; TEMP; ANNEAL; AGING; STRESS; ASS; INSTALL; INSERT; PRESS; SHRINK; WELD; BRA; " +
    "SOLD; BOND; GRIND; MACHIN; DRILL; BORE; BORING; REAM; HON; LAP; POLI; BLAST; PEEN; DEBURR; CLEAN; BEND; FORM; " +
    "HARTEN; HARTUNG; VERGUT; WARMEBEH; SCHWEI; KLEB; MONT; ZUSAMM; EINPRESS; SCHLEIF; BOHR; BEARBEIT; " +
    "DIN; ISO; NORM; ZEICHN; MUSTER; ANGABE; " +
    "TREMP; SOUD; COLL; RECTIF; RETTIF; USIN; SALD; LAVOR; MECAN",
);

/** What a word or symbol does in a callout. */
export type Role = keyof typeof drawingWords;
