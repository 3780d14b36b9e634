// data: the names that materials are found by: EN, DIN, ISO, AISI, SAE, UNS, AA, BS, JIS, GB, AFNOR, UNI, and shop words of
// five languages. Which material a name belongs to is a value from memory, reviewed. Names stand apart by "; ".

export const materialNames: Readonly<Record<string, string>> = {
  "free-cutting steel":
    "1.0711; 1.0715; 1.0718; 1.0721; 1.0722; 1.0725; 1.0726; 1.0727; 1.0736; 1.0737; 1.0756; 1.0757; 1.0760; " +
    "1.0761; 1.0762; 1.0763; 1.0764; 1.0765; 11SMn30; 11SMnPb30; 11SMn37; 11SMnPb37; 10S20; 10SPb20; 15SMn13; " +
    "35S20; 35SPb20; 36SMn14; 36SMnPb14; 38SMn28; 38SMnPb28; 44SMn28; 44SMnPb28; 46S20; 46SPb20; 9S20; " +
    "9SMn28; 9SMnPb28; 9SMn36; 9SMnPb36; 45S20; 60S20; 1211; 1212; 1213; 1215; 12L13; 12L14; 12L15; G12110; " +
    "G12120; G12130; G12150; G12144; 1108; 1109; 1117; 1118; 1137; 1139; 1140; 1141; 1144; 1146; 1151; " +
    "G11170; G11370; G11410; G11440; EN1A; EN1B; 220M07; 230M07; EN8M; 216M36; EN15AM; EN1A leaded; EN1APb; " +
    "230M07 leaded; 230M07Pb; SUM21; SUM22; SUM22L; SUM23; SUM23L; SUM24L; SUM25; SUM31; SUM31L; SUM32; " +
    "SUM41; SUM42; SUM43; Y12; Y12Pb; Y15; Y15Pb; Y20; Y30; Y35; Y40Mn; Y45; S250Pb; S300Pb; 45MF4; 35MF6; " +
    "free-machining steel; leaded steel; leaded mild steel; Automatenstahl; acier de décolletage; acciaio " +
    "automatico; acciaio al piombo; acero de fácil mecanización; acero de fácil maquinado",
  "low-carbon steel":
    "1.0035; 1.0036; 1.0037; 1.0038; 1.0039; 1.0044; 1.0045; 1.0114; 1.0116; 1.0117; 1.0143; 1.0145; 1.0149; " +
    "1.0308; 1.0330; 1.0338; 1.0345; 1.0347; 1.0402; 1.0425; 1.0545; 1.0546; 1.0553; 1.0570; 1.0576; 1.0577; " +
    "1.0580; 1.0596; 1.0976; 1.1151; 1.0301; 1.0401; 1.1121; 1.1141; 1.1148; S185; S235; S235JR; S235J0; " +
    "S235J2; S235JRG2; S275; S275JR; S275J0; S275J2; S355; S355JR; S355J0; S355J2; S355J2G3; S355K2; S355N; " +
    "S355NL; S355MC; S235JRH; S275J0H; S355J2H; E235; E355; P235GH; P265GH; P235TR1; DC01; DC03; DC04; DD11; " +
    "C22E; Ck22; St33; St37; St37-2; RSt37-2; USt37-2; St37-3; St44-2; St44-3; St52; St52-3; St35; St35.8; " +
    "St12; St14; C10; C10E; C15; C15E; C15R; Ck10; Ck15; Cm15; C10C; C15C; 1005; 1006; 1008; 1010; 1012; " +
    "1015; 1016; 1017; 1018; 1019; 1020; 1021; 1022; 1023; G10080; G10100; G10150; G10180; G10200; G10220; " +
    "A36; A283; A500; A572; A572 Gr 50; A992; A588; K02600; EN3; EN3A; EN3B; 070M20; EN14A; 150M19; EN32; " +
    "EN32B; EN32C; 080M15; 43A; 43B; 43C; 50B; 50C; 50D; SS330; SS400; SM400A; SM400B; SM490A; SM490B; SPCC; " +
    "SPHC; S10C; S12C; S15C; S17C; S20C; S22C; STKM11A; STKM13A; STK400; Q195; Q215; Q235; Q235A; Q235B; " +
    "Q235C; Q235D; Q275; Q345; Q345A; Q345B; Q345D; Q355; Q355B; Q355C; Q355D; 16Mn; 08#; 10#; 15#; 20#; 08F; " +
    "08Al; E24; E24-2; E28; E36; XC10; XC18; Fe360; Fe360B; Fe430; Fe430B; Fe510; Fe510C; mild steel; bright " +
    "mild steel; BMS; black mild steel; structural steel; cold-rolled steel; hot-rolled steel; CRS; HRS; " +
    "Baustahl; unlegierter Baustahl; acier doux; acciaio dolce; ferro dolce; acero dulce; acero bajo en " +
    "carbono",
  "medium-carbon steel":
    "1.0501; 1.0503; 1.0511; 1.0528; 1.0535; 1.0540; 1.1178; 1.1180; 1.1181; 1.1186; 1.1189; 1.1191; 1.1193; " +
    "1.1201; 1.1203; 1.1206; 1.1209; 1.1213; 1.1241; 1.0601; 1.1221; 1.1223; 1.0050; 1.0060; 1.0070; 1.1730; " +
    "C30; C30E; C35; C35E; C35R; C40; C40E; C40R; C45; C45E; C45R; C45+N; C50; C50E; C50R; C55; C55E; C55R; " +
    "Ck35; Ck40; Ck45; Ck50; Ck55; Cm35; Cm45; Cf45; Cf53; Cq35; Cq45; C60; C60E; C60R; Ck60; E295; E335; " +
    "E360; St50-2; St60-2; St70-2; St50; St60; St70; C45U; C45W; 1030; 1037; 1038; 1039; 1040; 1042; 1043; " +
    "1045; 1046; 1049; G10300; G10350; G10400; G10450; G10500; AISI 1035; SAE 1035; AISI 1050; SAE 1050; AISI " +
    "1060; SAE 1060; G10600; EN5; EN8; EN8D; EN9; EN15; EN43A; 080M30; 080M36; 080M40; 080A42; 080M46; " +
    "080M50; 070M55; 150M36; S30C; S33C; S35C; S38C; S40C; S43C; S45C; S48C; S50C; S53C; S55C; S58C; 30#; " +
    "35#; 40#; 45#; 50#; 55#; 45Mn; 40Mn; 50Mn; XC38; XC42; XC45; XC48; XC48H1; XC55; acier mi-dur; acero al " +
    "carbono medio; steel; Stahl; acier; acciaio; acero",
  "alloy steel":
    "1.6510; 1.6511; 1.6546; 1.6565; 1.6580; 1.6582; 1.6773; 1.7003; 1.7006; 1.7033; 1.7034; 1.7035; 1.7037; " +
    "1.7038; 1.7039; 1.7176; 1.7213; 1.7218; 1.7220; 1.7225; 1.7226; 1.7227; 1.7228; 1.7258; 1.7361; 1.7709; " +
    "1.7711; 1.8159; 1.7765; 1.8507; 1.8509; 1.8515; 1.8519; 1.8523; 1.8550; 25CrMo4; 25CrMoS4; 34CrMo4; " +
    "34CrMoS4; 42CrMo4; 42CrMoS4; 50CrMo4; 34Cr4; 34CrS4; 37Cr4; 37CrS4; 41Cr4; 41CrS4; 38Cr2; 46Cr2; " +
    "34CrNiMo6; 30CrNiMo8; 36CrNiMo4; 39NiCrMo3; 40NiCrMo2-2; 40NiCrMo6; 36NiCrMo16; 35NiCrMo16; 51CrV4; " +
    "50CrV4; 55Cr3; 24CrMo5; 21CrMoV5-7; 40CrMoV4-6; 40CrMoV4-7; 32CrMo12; 31CrMo12; 31CrMoV9; 34CrAlMo5; " +
    "34CrAlMo5-10; 41CrAlMo7; 41CrAlMo7-10; 34CrAlNi7; 34CrAlNi7-10; 32CrMoV12-10; 39CrMoV13-9; 40CrMoV13-9; " +
    "1330; 1335; 1340; 4037; 4130; 4135; 4137; 4140; 4140H; 4142; 4145H; 4150; 4161; 4340; E4340; 5130; 5132; " +
    "5135; 5140; 5145; 5147; 5150; 5155; 5160; 6150; 8630; 8637; 8640; 8645; 8650; 8655; 8740; 9254; 9260; " +
    "9840; G41300; G41350; G41400; G41420; G41450; G41500; G43400; G51300; G51400; G51600; G61500; G86300; " +
    "G86400; G87400; AISI 4047; SAE 4047; AISI 4145; SAE 4145; AISI 4147; SAE 4147; A193-B7; A320-L7; EN16; " +
    "EN16T; EN17; EN18; EN19; EN19T; EN19A; EN24; EN24T; EN25; EN26; EN30B; EN40B; EN40C; EN41A; EN41B; EN47; " +
    "EN100; EN110; EN111; 530M40; 605M36; 608M38; 640M40; 653M31; 708M40; 709M40; 709M40T; 816M40; 817M40; " +
    "817M40T; 826M31; 826M40; 835M30; 722M24; 897M39; 905M31; 905M39; 945M38; 735A50; SCM430; SCM432; SCM435; " +
    "SCM435H; SCM440; SCM440H; SCM445; SCr430; SCr435; SCr440; SCr445; SNCM431; SNCM439; SNCM447; SNCM625; " +
    "SNCM630; SNC631; SNC836; SMn433; SMn438; SMn443; SMnC443; SACM645; SNB7; SUP9; SUP10; SUP12; 40Cr; 45Cr; " +
    "35Cr; 30CrMo; 35CrMo; 42CrMo; 42CrMoA; 40CrMnMo; 40CrNi; 40CrNiMo; 40CrNiMoA; 30CrMnSi; 30CrMnSiA; " +
    "35CrMnSi; 35CrMnSiA; 30CrMnSiNi2A; 38CrMoAl; 38CrMoAlA; 50CrV; 50CrVA; 60Si2Mn; 60Si2MnA; 40MnB; 45MnB; " +
    "40MnVB; 40Mn2; 45Mn2; 35SiMn; 42SiMn; 27SiMn; 34CrNi3Mo; 45CrNiMoVA; 37CrNi3; 25Cr2MoVA; 42CD4; 35CD4; " +
    "25CD4; 30CD12; 40CAD6-12; 35NCD6; 35NCD16; 30NCD16; 30NCD8; 40NCD3; 50CV4; 42C4; 38C4; 32C4; 38NiCrMo4; " +
    "40NiCrMo7; 30NiCrMo12; chromoly; chrome-moly; chrome-moly steel; nitriding steel; legierter Stahl; " +
    "Nitrierstahl; acier allié; acier de nitruration; acciaio legato; acciaio da nitrurazione; acero aleado; " +
    "acero de nitruración",
  "tool steel":
    "1.2067; 1.2080; 1.2101; 1.2210; 1.2363; 1.2379; 1.2419; 1.2436; 1.2510; 1.2550; 1.2601; 1.2721; 1.2767; " +
    "1.2833; 1.2842; 1.2343; 1.2344; 1.2365; 1.2367; 1.2581; 1.2606; 1.2713; 1.2714; 1.2885; 1.2311; 1.2312; " +
    "1.2738; 1.1525; 1.1545; 1.1620; 1.1625; 1.1645; 1.3202; 1.3207; 1.3243; 1.3247; 1.3333; 1.3339; 1.3343; " +
    "1.3344; 1.3355; X153CrMoV12; X155CrVMo12-1; X155CrMoV12-1; X210Cr12; X210CrW12; X100CrMoV5; " +
    "X100CrMoV5-1; X165CrMoV12; 100MnCrW4; 95MnWCr5; 90MnCrV8; 60WCrV7; 60WCrV8; 102Cr6; 105WCr6; 115CrV3; " +
    "50NiCr13; 45NiCrMo16; X45NiCrMo4; 62SiMnCr4; 100V1; X37CrMoV5-1; X38CrMoV5-1; X40CrMoV5-1; X38CrMoV5-3; " +
    "X37CrMoW5-1; X30WCrV9-3; 32CrMoV12-28; X32CrMoV3-3; 55NiCrMoV6; 55NiCrMoV7; 56NiCrMoV7; 40CrMnMo7; " +
    "40CrMnMoS8-6; 40CrMnNiMo8-6-4; C70U; C80U; C90U; C105U; C80W1; C105W1; C80W2; C70W2; HS6-5-2; HS6-5-2C; " +
    "HS6-5-2-5; HS6-5-3; HS2-9-1-8; HS2-9-2; HS10-4-3-10; HS18-0-1; HS12-1-4-5; S6-5-2; S6-5-2-5; S6-5-3; " +
    "S2-10-1-8; S18-0-1; S10-4-3-10; D2; D3; D5; D7; O1; O2; O6; O7; A6; S1; S5; S7; W1; W2; T30402; T30403; " +
    "T31501; T31502; T30102; T41907; T72301; AISI A2; AISI A4; AISI L6; AISI T1; T12001; T61206; H10; H11; " +
    "H12; H13; H19; H21; T20810; T20811; T20812; T20813; T20821; P20; T51620; M2; M4; M7; M35; M42; T15; " +
    "T11302; T11342; T12015; BD2; BD3; BA2; BO1; BO2; BH11; BH13; BM2; BM42; BT1; SKD1; SKD2; SKD4; SKD5; " +
    "SKD6; SKD7; SKD10; SKD11; SKD12; SKD61; SKD62; SKS2; SKS3; SKS31; SKS93; SKS4; SKT4; SK3; SK4; SK5; " +
    "SK85; SK95; SK105; SKH2; SKH9; SKH51; SKH55; SKH57; SKH59; Cr12; Cr12MoV; Cr12Mo1V1; Cr5Mo1V; CrWMn; " +
    "9CrWMn; 9Mn2V; 9SiCr; 9CrSi; 4CrW2Si; 5CrW2Si; 6CrW2Si; 7CrSiMnMoV; 4Cr5MoSiV; 4Cr5MoSiV1; 3Cr2W8V; " +
    "5CrMnMo; 5CrNiMo; 3Cr2Mo; 3Cr2MnNiMo; T7A; T8; T8A; T10; T10A; T12; T12A; W18Cr4V; W6Mo5Cr4V2; " +
    "W9Mo3Cr4V; Z160CDV12; Z200C12; Z100CDV5; Z38CDV5; Z40CDV5; 90MV8; 90MCW5; 55NCDV7; 45NCD16; 55WC20; " +
    "Z85WDCV6; 35CMD7; 40CMD8; cold-work steel; hot-work steel; high-speed steel annealed; silver steel; " +
    "drill rod; gauge plate; Werkzeugstahl; Kaltarbeitsstahl; Warmarbeitsstahl; Schnellarbeitsstahl; " +
    "Silberstahl; acier à outils; acciaio per utensili; acciaio da utensili; acciaio rapido; acero de " +
    "herramientas; acero para herramientas; acero plata",
  "hardened steel":
    "NM500; NM550; NM600; hardened; through-hardened; case-hardened; hardened tool steel; gehärtet; " +
    "gehärteter Stahl; durchgehärtet; einsatzgehärtet; acier trempé dur; acciaio temprato duro; acero " +
    "templado duro; AR500; AR550; AR600",
  "free-cutting stainless":
    "1.4305; 1.4570; X8CrNiS18-9; X10CrNiS18-9; X12CrNiS18-8; X6CrNiCuS18-9-2; 303; 303Se; 303S; S30300; " +
    "S30323; 303S21; 303S31; EN58M; SUS303; SUS303Se; SUS303Cu; Y1Cr18Ni9; Y12Cr18Ni9; Y1Cr18Ni9Se; " +
    "Y12Cr18Ni9Se; Z10CNF18-09; Z8CNF18-09; free-machining stainless; rostfreier Automatenstahl; acier " +
    "inoxydable de décolletage; acciaio inox automatico",
  "austenitic stainless":
    "1.4301; 1.4303; 1.4306; 1.4307; 1.4310; 1.4311; 1.4315; 1.4318; 1.4361; 1.4371; 1.4372; 1.4373; 1.4401; " +
    "1.4404; 1.4406; 1.4429; 1.4432; 1.4435; 1.4436; 1.4438; 1.4439; 1.4441; 1.4466; 1.4541; 1.4550; 1.4567; " +
    "1.4571; 1.4578; 1.4580; 1.4529; 1.4539; 1.4547; 1.4828; 1.4833; 1.4835; 1.4841; 1.4845; 1.4878; 1.4919; " +
    "1.4948; 1.4308; 1.4309; 1.4408; 1.4409; 1.4552; 1.4581; X5CrNi18-10; X4CrNi18-12; X4CrNi18-10; " +
    "X2CrNi19-11; X2CrNi18-9; X10CrNi18-8; X12CrNi17-7; X2CrNiN18-10; X2CrNiN18-7; X5CrNiMo17-12-2; " +
    "X2CrNiMo17-12-2; X2CrNiMoN17-11-2; X2CrNiMoN17-13-3; X2CrNiMo17-12-3; X2CrNiMo18-14-3; X3CrNiMo17-13-3; " +
    "X2CrNiMo18-15-4; X2CrNiMoN17-13-5; X2CrNiMo18-15-3; X6CrNiTi18-10; X6CrNiNb18-10; X6CrNiMoTi17-12-2; " +
    "X6CrNiMoNb17-12-2; X3CrNiCu18-9-4; X12CrMnNiN17-7-5; X12CrMnNiN18-9-5; X1NiCrMoCu25-20-5; " +
    "X1NiCrMoCuN25-20-7; X1CrNiMoCuN20-18-7; X15CrNiSi20-12; X15CrNiSi25-21; X8CrNi25-21; X12CrNi23-13; " +
    "X8CrNiTi18-10; GX5CrNi19-10; GX5CrNiMo19-11-2; GX5CrNiNb19-11; GX5CrNiMoNb19-11-2; ISO 3506 A2; ISO 3506 " +
    "A4; 202; 301; 302; 304; 304H; 304L; 304LN; 305; 309; 309S; 310; 310S; 316; 316H; 316L; 316LN; 316Ti; " +
    "317; 317L; 321; 321H; 347; 347H; 348; 904L; XM-19; S20100; S20200; S20910; S30100; S30200; S30400; " +
    "S30403; S30409; S30500; S30900; S30908; S31000; S31008; S31600; S31603; S31635; S31700; S31703; S32100; " +
    "S34700; S31254; N08904; AISI 201; AISI 314; CF3; CF3M; CF8; CF8M; CF8C; CN7M; J92600; J92900; J92500; " +
    "J92800; A193-B8; A193-B8M; 302S25; 302S31; 304S11; 304S15; 304S31; 310S31; 316S11; 316S13; 316S16; " +
    "316S31; 316S33; 320S31; 321S12; 321S31; 347S31; EN58A; EN58E; EN58J; SUS201; SUS202; SUS301; SUS302; " +
    "SUS304; SUS304L; SUS304LN; SUS305; SUS309S; SUS310S; SUS316; SUS316L; SUS316Ti; SUS317; SUS317L; SUS321; " +
    "SUS347; SUSXM7; SCS13; SCS13A; SCS14; SCS14A; SCS16; SCS19; 06Cr19Ni10; 0Cr18Ni9; 0Cr19Ni9; 022Cr19Ni10; " +
    "00Cr19Ni10; 12Cr18Ni9; 1Cr18Ni9; 1Cr18Ni9Ti; 06Cr18Ni11Ti; 0Cr18Ni10Ti; 06Cr18Ni11Nb; 06Cr17Ni12Mo2; " +
    "0Cr17Ni12Mo2; 022Cr17Ni12Mo2; 00Cr17Ni14Mo2; 06Cr17Ni12Mo2Ti; 06Cr19Ni13Mo3; 022Cr19Ni13Mo3; 06Cr25Ni20; " +
    "0Cr25Ni20; 06Cr23Ni13; Z6CN18-09; Z7CN18-09; Z2CN18-10; Z6CND17-11; Z7CND17-11-02; Z2CND17-12; " +
    "Z6CNT18-10; Z6CNDT17-12; stainless steel; inox; rostfreier Stahl; Edelstahl rostfrei; acier inoxydable; " +
    "acier inox; acciaio inox; acciaio inossidabile; acero inoxidable; rostfrei; 18/8; 18/10; V2A; V4A; inox " +
    "304; inox 316; inox 304L; inox 316L; austenitischer Stahl; acier inoxydable austénitique; stainless",
  "martensitic stainless":
    "1.4006; 1.4021; 1.4024; 1.4028; 1.4031; 1.4034; 1.4057; 1.4109; 1.4112; 1.4116; 1.4122; 1.4125; 1.4313; " +
    "1.4418; 1.4005; 1.4029; 1.4035; 1.4104; 1.4317; X12Cr13; X10Cr13; X20Cr13; X15Cr13; X30Cr13; X39Cr13; " +
    "X46Cr13; X17CrNi16-2; X70CrMo15; X90CrMoV18; X50CrMoV15; X45CrMoV15; X39CrMo17-1; X105CrMo17; " +
    "X3CrNiMo13-4; X4CrNiMo16-5-1; GX4CrNi13-4; X12CrS13; X29CrS13; X46CrS13; X14CrMoS17; 403; 410; 414; 420; " +
    "422; 431; 440A; 440B; 440C; S40300; S41000; S41400; S41500; S42000; S42200; S43100; S44002; S44003; " +
    "S44004; CA15; CA6NM; J91540; 416; 420F; 440F; S41600; S42020; S44020; 410S21; 416S21; 416S29; 416S37; " +
    "416S41; 420S29; 420S37; 420S45; 431S29; EN56A; EN56AM; EN56B; EN56C; EN56D; EN57; SUS403; SUS410; " +
    "SUS416; SUS420J1; SUS420J2; SUS420F; SUS431; SUS440A; SUS440B; SUS440C; SUS440F; SCS1; SCS2; 12Cr13; " +
    "1Cr13; 20Cr13; 2Cr13; 30Cr13; 3Cr13; 40Cr13; 4Cr13; Y1Cr13; Y12Cr13; Y3Cr13; Y30Cr13; 14Cr17Ni2; " +
    "1Cr17Ni2; 17Cr16Ni2; 95Cr18; 9Cr18; 9Cr18Mo; 102Cr17Mo; 9Cr18MoV; 90Cr18MoV; Z12C13; Z10C13; Z20C13; " +
    "Z30C13; Z40C14; Z15CN16-02; Z100CD17; martensitischer rostfreier Stahl; acier inoxydable martensitique; " +
    "acciaio inox martensitico; acero inoxidable martensítico",
  "gray iron":
    "5.1100; 5.1200; 5.1300; 5.1301; 5.1302; 5.1303; 0.6010; 0.6015; 0.6020; 0.6025; 0.6030; 0.6035; 0.6040; " +
    "EN-GJL-100; EN-GJL-150; EN-GJL-200; EN-GJL-250; EN-GJL-300; EN-GJL-350; GJL-150; GJL-200; GJL-250; " +
    "GJL-300; GJL-350; EN-GJL-HB155; EN-GJL-HB175; EN-GJL-HB195; EN-GJL-HB215; EN-GJL-HB235; EN-GJL-HB255; " +
    "EN-JL1020; EN-JL1030; EN-JL1040; EN-JL1050; EN-JL1060; GG10; GG15; GG20; GG25; GG30; GG35; GG40; class " +
    "20; class 25; class 30; class 35; class 40; class 45; class 50; class 60; A48 class 30; F11401; F11701; " +
    "F12101; F12401; F12801; G1800; G2500; G3000; G3500; G4000; BS 1452 grade 150; BS 1452 grade 180; BS 1452 " +
    "grade 220; BS 1452 grade 250; BS 1452 grade 260; BS 1452 grade 300; BS 1452 grade 350; FC100; FC150; " +
    "FC200; FC250; FC300; FC350; FC10; FC15; FC20; FC25; FC30; FC35; HT100; HT150; HT200; HT250; HT275; " +
    "HT300; HT350; FGL150; FGL200; FGL250; FGL300; FGL350; Ft20; Ft25; Ft30; gray cast iron; lamellar " +
    "graphite iron; Grauguss; Gusseisen mit Lamellengraphit; fonte grise; fonte à graphite lamellaire; FGL; " +
    "ghisa grigia; ghisa lamellare; fundición gris; hierro fundido gris; hierro gris; cast iron; Gusseisen; " +
    "ghisa; fonte; hierro fundido; hierro colado",
  "ductile iron":
    "5.3102; 5.3105; 5.3106; 5.3107; 5.3108; 5.3109; 5.3110; 5.3200; 5.3201; 5.3300; 5.3301; 0.7033; 0.7040; " +
    "0.7043; 0.7050; 0.7060; 0.7070; 0.7080; EN-GJS-350-22; EN-GJS-350-22-LT; EN-GJS-400-15; EN-GJS-400-18; " +
    "EN-GJS-400-18-LT; EN-GJS-450-10; EN-GJS-450-18; EN-GJS-500-7; EN-GJS-500-14; EN-GJS-600-3; " +
    "EN-GJS-600-10; EN-GJS-700-2; EN-GJS-800-2; GJS-400-15; GJS-400-18; GJS-450-10; GJS-500-7; GJS-600-3; " +
    "GJS-700-2; GJS-400; GJS-500; GJS-600; GJS-700; EN-JS1030; EN-JS1050; EN-JS1060; EN-JS1070; GGG35.3; " +
    "GGG40; GGG40.3; GGG50; GGG60; GGG70; GGG80; 60-40-18; 65-45-12; 80-55-06; 100-70-03; 120-90-02; F32800; " +
    "F33100; F33800; F34800; F36200; D4018; D4512; D5506; D7003; SG 400/18; SG 420/12; SG 500/7; SG 600/3; SG " +
    "700/2; SNG 420/12; SNG 500/7; SNG 600/3; SNG 700/2; SNG 370/17; FCD350; FCD400; FCD450; FCD500; FCD600; " +
    "FCD700; FCD800; FCD40; FCD45; FCD50; FCD60; FCD70; QT350-22; QT400-15; QT400-18; QT450-10; QT500-7; " +
    "QT500-10; QT550-5; QT600-3; QT700-2; QT800-2; FGS350-22; FGS400-15; FGS400-18; FGS450-10; FGS500-7; " +
    "FGS600-3; FGS700-2; ductile cast iron; nodular iron; nodular cast iron; SG iron; spheroidal graphite " +
    "iron; Sphäroguss; Kugelgraphitguss; Gusseisen mit Kugelgraphit; fonte ductile; fonte GS; FGS; fonte à " +
    "graphite sphéroïdal; ghisa sferoidale; ghisa nodulare; fundición nodular; fundición dúctil; fundición " +
    "esferoidal; hierro dúctil; hierro nodular",
  "malleable iron":
    "5.4200; 5.4201; 5.4202; 5.4203; 0.8035; 0.8038; 0.8040; 0.8045; 0.8135; 0.8145; 0.8155; 0.8165; 0.8170; " +
    "EN-GJMW-350-4; EN-GJMW-360-12; EN-GJMW-400-5; EN-GJMW-450-7; EN-GJMB-300-6; EN-GJMB-350-10; " +
    "EN-GJMB-450-6; EN-GJMB-500-5; EN-GJMB-550-4; EN-GJMB-600-3; EN-GJMB-650-2; EN-GJMB-700-2; GJMB-350-10; " +
    "GJMW-400-5; GTS-35-10; GTS-45-06; GTS-55-04; GTS-65-02; GTS-70-02; GTW-35-04; GTW-S38-12; GTW-40-05; " +
    "GTW-45-07; 32510; 35018; 40010; 45006; 45008; 50005; 60004; 70003; 80002; F22200; B340/12; BS 310 " +
    "B340/12; FCMB27-05; FCMB30-06; FCMB35-10; FCMW35-04; FCMW38-12; FCMW40-05; FCMW45-07; FCMP45-06; " +
    "FCMP55-04; FCMP65-02; FCMP70-02; KTH300-06; KTH330-08; KTH350-10; KTH370-12; KTZ450-06; KTZ550-04; " +
    "KTZ650-02; KTZ700-02; KTB350-04; KTB380-12; KTB400-05; KTB450-07; malleable cast iron; blackheart " +
    "malleable; whiteheart malleable; Temperguss; fonte malléable; ghisa malleabile; fundición maleable; " +
    "hierro maleable; malleable",
  aluminum:
    "aluminum alloy; 3.0205; 3.0255; 3.0275; 3.0285; 3.0515; 3.0517; 3.0615; 3.1255; 3.1305; 3.1325; 3.1355; 3.1645; 3.1655; " +
    "3.1924; 3.2315; 3.3206; 3.3211; 3.3315; 3.3523; 3.3535; 3.3537; 3.3547; 3.3555; 3.4335; 3.4345; 3.4365; " +
    "EN AW-1050A; EN AW-1070A; EN AW-1080A; EN AW-1085; EN AW-1100; EN AW-1200; EN AW-1350; EN AW-2007; EN " +
    "AW-2011; EN AW-2014; EN AW-2014A; EN AW-2017A; EN AW-2024; EN AW-2030; EN AW-2117; EN AW-2618A; EN " +
    "AW-3003; EN AW-3004; EN AW-3103; EN AW-3105; EN AW-5005; EN AW-5019; EN AW-5049; EN AW-5052; EN AW-5083; " +
    "EN AW-5086; EN AW-5154A; EN AW-5182; EN AW-5251; EN AW-5454; EN AW-5754; EN AW-6005A; EN AW-6012; EN " +
    "AW-6026; EN AW-6060; EN AW-6061; EN AW-6063; EN AW-6082; EN AW-6101B; EN AW-6106; EN AW-6262; EN " +
    "AW-6351; EN AW-7010; EN AW-7020; EN AW-7021; EN AW-7022; EN AW-7049A; EN AW-7050; EN AW-7075; EN " +
    "AW-7175; EN AW-7475; EN AW-8011A; EN AW-1050; EN AW-1060; EN AW-1070; EN AW-1080; EN AW-4047; EN " +
    "AW-4047A; AlMgSi; AlMgSi0.5; AlMgSi0.7; AlMgSi1; AlSi1MgMn; AlMg0.7Si; AlSiMg; AlMg1SiCu; AlMgSiPb; " +
    "AlMg1; AlMg2; AlMg2.5; AlMg2Mn0.8; AlMg2.7Mn; AlMg3Mn; AlMg4; AlMg4.5Mn; AlMg4.5Mn0.7; AlMn1; AlMnCu; " +
    "AlMn1Cu; AlCuMg1; AlCuMg2; AlCuMgPb; AlCuBiPb; AlCuSiMn; AlCu4Mg1; AlCu4SiMg; AlCu4PbMg; AlCu4PbMgMn; " +
    "AlCu6BiPb; AlZn4.5Mg1; AlZnMgCu0.5; AlZnMgCu1.5; AlZn5.5MgCu; AlZn5Mg3Cu; AlZn6CuMgZr; Al99.5; Al99.7; " +
    "Al99.0; 1100; 1199; 1200; 2007; 2011; 2014; 2014A; 2017; 2017A; 2024; 2030; 2117; 2124; 2219; 2618; " +
    "2618A; 3003; 3004; 3103; 3105; 5005; 5052; 5056; 5083; 5086; 5154; 5182; 5251; 5454; 5456; 5754; 6005; " +
    "6005A; 6012; 6013; 6026; 6060; 6061; 6063; 6082; 6101; 6106; 6262; 6351; 6463; 7010; 7020; 7022; 7039; " +
    "7049; 7050; 7055; 7068; 7075; 7085; 7150; 7175; 7178; 7475; 8090; 1050A; 1070A; 1080A; A91050; A91060; " +
    "A91100; A92011; A92014; A92017; A92024; A92219; A92618; A93003; A95005; A95052; A95083; A95086; A95454; " +
    "A95754; A96005; A96060; A96061; A96063; A96082; A96262; A97050; A97075; A97475; AA 1050; AA 1060; AA " +
    "1070; AA 1080; HE9; HE15; HE20; HE30; HS30; HP30; NS4; NS5; NS8; A1050; A1070; A1100; A2011; A2014; " +
    "A2017; A2024; A2618; A3003; A3004; A5005; A5052; A5056; A5083; A6061; A6063; A7075; A7N01; A7003; 2A11; " +
    "2A12; 2A14; 2A50; 2A70; 3A21; 5A02; 5A05; 5A06; 6A02; 7A04; 7A09; LY11; LY12; LD5; LD10; LD30; LD31; " +
    "LF21; A-U4G; A-U4G1; A-Z5GU; A-SGM0.7; A-U4SG; Alu; wrought aluminum; aluminum bar; aluminum plate; " +
    "dural; duralumin; Duraluminium; Aluminiumknetlegierung; alliage d'aluminium corroyé; alluminio; aluminio",
  "cast aluminum":
    "EN AC-21000; EN AC-21100; EN AC-42000; EN AC-42100; EN AC-42200; EN AC-43000; EN AC-43100; EN AC-43200; " +
    "EN AC-43300; EN AC-43400; EN AC-43500; EN AC-44000; EN AC-44400; EN AC-45000; EN AC-45200; EN AC-45300; " +
    "EN AC-45400; EN AC-46000; EN AC-46100; EN AC-46200; EN AC-46300; EN AC-46400; EN AC-46500; EN AC-46600; " +
    "EN AC-51100; EN AC-51200; EN AC-51300; EN AC-71000; EN AC-44100; EN AC-44200; EN AC-44300; EN AC-47000; " +
    "EN AC-47100; EN AC-48000; 3.1371; 3.1841; 3.2151; 3.2161; 3.2163; 3.2341; 3.2371; 3.2373; 3.2381; " +
    "3.2383; 3.3241; 3.3541; 3.3561; 3.3292; 3.2581; 3.2582; 3.2583; 3.2982; AlSi7Mg; AlSi7Mg0.3; AlSi7Mg0.6; " +
    "AlSi9; AlSi9Mg; AlSi9Cu3; AlSi9Cu3(Fe); AlSi9Cu3(Fe)(Zn); AlSi9Cu1Mg; AlSi8Cu3; AlSi7Cu2; AlSi7Cu3Mg; " +
    "AlSi6Cu4; AlSi5Mg; AlSi5Cu1Mg; AlSi5Cu3; AlSi5Cu3Mn; AlSi10Mg; AlSi10Mg(a); AlSi10Mg(b); AlSi10Mg(Cu); " +
    "AlSi10Mg(Fe); AlSi10MnMg; AlSi11; AlSi11Cu2(Fe); AlCu4Ti; AlCu4MgTi; AlMg9; AlMg5(Si); AlZn5Mg; AlSi12; " +
    "AlSi12(b); AlSi12(Fe); AlSi12(Cu); AlSi12Cu1(Fe); AlSi12CuNiMg; G-AlSi12; GD-AlSi12; GK-AlSi12; " +
    "G-AlSi10Mg; GD-AlSi10Mg; G-AlSi9Mg; G-AlSi7Mg; GK-AlSi7Mg; G-AlSi6Cu4; GD-AlSi9Cu3; G-AlSi9Cu3; " +
    "GD-AlSi8Cu3; G-AlSi5Mg; G-AlMg3; G-AlMg5; G-AlMg3Si; GD-AlMg9; G-AlCu4Ti; G-AlCu4TiMg; 242.0; 295.0; " +
    "319.0; 332.0; 333.0; 336.0; 354.0; 355.0; C355; C355.0; 356.0; A356; A356.0; 357.0; A357.0; 359.0; " +
    "360.0; A360.0; 380.0; A380; A380.0; 383.0; 384.0; A413; 413.0; A413.0; 443.0; 514.0; 518.0; 520.0; " +
    "535.0; 712.0; 713.0; 206.0; A206.0; 201.0; A201.0; A03560; A13560; A03190; A03550; A03800; A13800; " +
    "A03830; A03600; A13600; A04130; A14130; LM0; LM2; LM4; LM5; LM9; LM10; LM12; LM16; LM18; LM21; LM22; " +
    "LM24; LM25; LM26; LM27; LM6; LM13; LM20; AC2A; AC2B; AC4A; AC4B; AC4C; AC4CH; AC4D; AC7A; AC8B; AC8C; " +
    "ADC3; ADC5; ADC6; ADC10; ADC12; AC3A; AC8A; ADC1; ZL101; ZL101A; ZL104; ZL105; ZL106; ZL111; ZL114A; " +
    "ZL115; ZL116; ZL201; ZL203; ZL205A; ZL301; ZL303; ZL401; ZL402; ZAlSi7Mg; ZAlSi9Mg; YL101; YL104; YL112; " +
    "YL113; YZAlSi9Cu4; ZL102; ZL108; ZL109; ZAlSi12; YL102; A-S7G; A-S7G03; A-S7G06; A-S9U3; A-S9U3Y4; " +
    "A-S10G; A-S5U3; aluminum casting; die-cast aluminum; Aluminiumguss; Aluguss; Aluminiumdruckguss; " +
    "Alu-Druckguss; fonte d'aluminium; aluminium coulé; aluminium moulé; alluminio pressofuso; alluminio da " +
    "getto; alluminio colato; fusione di alluminio; aluminio fundido; fundición de aluminio",
  magnesium:
    "3.5200; 3.5312; 3.5470; 3.5612; 3.5662; 3.5812; 3.5912; EN-MC21110; EN-MC21120; EN-MC21210; EN-MC21220; " +
    "EN-MC21230; EN-MC21320; EN-MC35110; EN-MC95310; EN-MC95320; MgAl9Zn1; MgAl8Zn1; MgAl6Mn; MgAl6; MgAl6Zn; " +
    "MgAl5Mn; MgAl3Zn; MgAl3Zn1; MgAl8Zn; MgAl4Si; MgAl2Mn; MgMn2; MgZn4RE1Zr; G-MgAl9Zn1; GD-MgAl9Zn1; AZ31; " +
    "AZ31B; AZ61; AZ61A; AZ63; AZ80; AZ80A; AZ81; AZ91; AZ91C; AZ91D; AZ91E; AM20; AM50; AM50A; AM60; AM60B; " +
    "AS21; AS41; AS41B; AE42; AE44; ZK51A; ZK60; ZK60A; ZE41; ZE41A; EZ33A; QE22A; WE43; WE54; M11311; " +
    "M11916; MAG1; MAG3; MAG7; MDC1D; MDC2B; ZM5; MB2; MB8; MB15; AZ40M; ME20M; magnesium alloy; cast " +
    "magnesium; Magnesiumguss; Magnesiumlegierung; alliage de magnésium; magnesio",
  brass:
    "CW500L; CW501L; CW502L; CW503L; CW505L; CW506L; CW507L; CW508L; CW509L; CW510L; CW511L; CW600N; CW601N; " +
    "CW602N; CW603N; CW605N; CW606N; CW607N; CW608N; CW609N; CW610N; CW611N; CW612N; CW614N; CW617N; CW712R; " +
    "CW717R; CW719R; CW724R; CC750S; CC754S; 2.0220; 2.0230; 2.0240; 2.0250; 2.0265; 2.0280; 2.0321; 2.0331; " +
    "2.0332; 2.0335; 2.0360; 2.0371; 2.0372; 2.0375; 2.0380; 2.0401; 2.0402; 2.0410; 2.0530; CuZn35Pb1; " +
    "CuZn35Pb2; CuZn36Pb1.5; CuZn36Pb2As; CuZn36Pb3; CuZn37Pb0.5; CuZn37Pb1; CuZn37Pb2; CuZn38Pb1; " +
    "CuZn38Pb1.5; CuZn38Pb2; CuZn38Pb4; CuZn39Pb0.5; CuZn39Pb1; CuZn39Pb2; CuZn39Pb3; CuZn40Pb2; CuZn44Pb2; " +
    "CuZn5; CuZn10; CuZn15; CuZn20; CuZn28; CuZn30; CuZn33; CuZn36; CuZn37; CuZn38As; CuZn40; CuZn42; " +
    "CuZn36Sn1Pb; CuZn38Sn1; CuZn38Sn1As; CuZn39Sn1; CuZn21Si3P; Ms58; Ms60; Ms63; Ms67; Ms70; Ms72; C360; " +
    "C36000; C260; C26000; C24000; C23000; C26800; C27000; C27200; C27400; C28000; C33000; C33500; C34000; " +
    "C34200; C34500; C35000; C35300; C35600; C36500; C37000; C37700; C38000; C38500; C46200; C46400; C48200; " +
    "C48500; CDA 360; CDA 260; CZ101; CZ102; CZ103; CZ106; CZ107; CZ108; CZ109; CZ112; CZ118; CZ119; CZ120; " +
    "CZ121; CZ122; CZ124; CZ128; CZ129; CZ130; CZ131; CZ132; DCB1; DCB3; SCB3; C2600; C2680; C2700; C2720; " +
    "C2800; C2801; C3501; C3560; C3561; C3601; C3602; C3603; C3604; C3605; C3710; C3712; C3713; C3771; C4621; " +
    "C4622; C4640; C4641; H59; H62; H63; H65; H68; H70; H80; H85; H90; H96; HPb59-1; HPb59-3; HPb61-1; " +
    "HPb62-3; HPb63-3; HSn62-1; ZCuZn38; ZCuZn40Pb2; ZCuZn33Pb2; free-cutting brass; free-machining brass; " +
    "cartridge brass; naval brass; DZR brass; leaded brass; forging brass; Messing; Automatenmessing; Tombak; " +
    "tombac; laiton; laiton de décolletage; ottone; latón",
  bronze:
    "CW450K; CW451K; CW452K; CW453K; CW459K; CC480K; CC481K; CC483K; CC484K; CW456K; CW458K; CC482K; CC490K; " +
    "CC491K; CC492K; CC493K; CC494K; CC495K; CC496K; CC497K; CC498K; 2.1016; 2.1020; 2.1030; 2.1050; 2.1052; " +
    "2.1060; 2.1061; 2.1086; 2.1090; 2.1096; 2.1176; 2.1182; 2.1188; CuSn4; CuSn5; CuSn6; CuSn8; CuSn8P; " +
    "CuSn10; CuSn10-C; CuSn11P; CuSn11Pb2; CuSn12; CuSn12-C; CuSn12Ni; CuSn12Ni2; CuSn4Pb4Zn4; CuSn5Pb1; " +
    "CuSn5Zn5Pb5; CuSn7Zn4Pb7; CuSn7Zn2Pb3; CuSn3Zn8Pb5; CuSn5ZnPb; CuSn7ZnPb; CuSn10Zn; CuSn10Pb10; " +
    "CuSn7Pb15; CuSn5Pb20; CuSn5Pb9; CuPb10Sn; CuPb15Sn; CuPb20Sn; G-CuSn12; G-CuSn10; G-CuSn7ZnPb; " +
    "GZ-CuSn7ZnPb; GC-CuSn7ZnPb; GZ-CuSn12; Rg5; Rg7; Rg10; GBz10; GBz12; C932; C93200; C93500; C93700; " +
    "C93800; C92200; C90300; C90500; C90700; C51000; C51100; C52100; C52400; C54400; C65500; C65100; SAE 64; " +
    "SAE 62; SAE 660; CDA 932; C83600; 85-5-5-5; PB1; PB2; PB4; PB101; PB102; PB103; PB104; LPB1; LG1; LG2; " +
    "LG4; LB1; LB2; LB4; LB5; C5191; C5212; C5210; C5102; C5111; C5441; CAC402; CAC403; CAC406; CAC407; " +
    "CAC502A; CAC502B; CAC503B; CAC603; CAC604; CAC605; BC2; BC3; BC6; PBC2; LBC3; QSn4-3; QSn4-4-4; " +
    "QSn6.5-0.1; QSn6.5-0.4; QSn7-0.2; QSn8-0.3; QSi3-1; ZCuSn10P1; ZCuSn10Zn2; ZCuSn5Pb5Zn5; " +
    "ZCuSn3Zn8Pb6Ni1; ZCuPb10Sn10; ZCuPb15Sn8; ZQSn10-1; ZQSn6-6-3; ZQSn5-5-5; UE9P; UE12P; UE7Z5Pb4; " +
    "UE5Pb5Z5; tin bronze; phosphor bronze; leaded bronze; bearing bronze; silicon bronze; gunmetal; " +
    "Zinnbronze; Lagerbronze; Rotguss; bronze phosphoreux; bronze au plomb; bronzo; bronzo fosforoso; bronce; " +
    "bronce fosforoso",
  copper:
    "CW003A; CW004A; CW005A; CW007A; CW008A; CW009A; CW013A; CW020A; CW021A; CW023A; CW024A; CW105C; CW106C; " +
    "CW113C; CW114C; CW118C; 2.1293; 2.1498; 2.1546; 2.1160; 2.0040; 2.0060; 2.0065; 2.0070; 2.0076; 2.0090; " +
    "Cu-ETP; Cu-ETP1; Cu-OF; Cu-OF1; Cu-OFE; Cu-DHP; Cu-DLP; Cu-PHC; Cu-HCP; Cu-FRHC; CuAg0.10; E-Cu; E-Cu57; " +
    "E-Cu58; OF-Cu; SE-Cu; SF-Cu; SW-Cu; CuTeP; CuSP; CuPb1P; CuCr1; CuCr1Zr; CuCrZr; C10100; C10200; C10300; " +
    "C10800; C11000; C12000; C12200; C101; C102; C110; C122; C14500; C145; C14700; C147; C18150; C18200; " +
    "C104; C106; C109; C111; C1011; C1100; C1201; C1220; C1221; TU1; TU2; TP1; TP2; TU0; Cu-a1; Cu-b1; Cu-c1; " +
    "Cu-c2; oxygen-free copper; OFHC; OFE copper; ETP; tellurium copper; sulphur copper; chromium copper; " +
    "Kupfer; Elektrolytkupfer; Tellurkupfer; cuivre; rame; cobre; ETP copper",
  titanium:
    "3.7025; 3.7035; 3.7055; 3.7065; 3.7105; 3.7115; 3.7145; 3.7164; 3.7165; 3.7175; 3.7185; 3.7195; 3.7235; " +
    "TiAl6V4; TiAl6V4 ELI; TiAl3V2.5; TiAl5Sn2.5; TiAl6Sn2Zr4Mo2; TiAl6V6Sn2; TiAl4Mo4Sn2; TiNi0.8Mo0.3; " +
    "TiAl6Nb7; Ti99.5; Ti1; Ti2; Ti3; Ti4; Ti-6Al-4V; Ti64; Ti-6Al-4V ELI; Ti-3Al-2.5V; Ti-5Al-2.5Sn; " +
    "Ti-6242; Ti-6246; Ti-6Al-6V-2Sn; Ti-6Al-7Nb; Ti-8Al-1Mo-1V; Ti-10-2-3; Ti-15-3; Ti-5553; CP titanium; " +
    "R50250; R50400; R50550; R50700; R52400; R52402; R53400; R54520; R54620; R54810; R56260; R56320; R56400; " +
    "R56401; R56620; R58640; titanium grade 1; titanium grade 2; titanium grade 3; titanium grade 4; titanium " +
    "grade 5; titanium grade 7; titanium grade 9; titanium grade 12; titanium grade 23; Ti grade 1; Ti grade " +
    "2; Ti grade 3; Ti grade 4; Ti grade 5; Ti grade 7; Ti grade 9; Ti grade 23; Ti Gr 2; Ti Gr 5; TP270; " +
    "TP340; TB270; TB340; TB480; TAB6400; TAP6400; TA1; TA2; TA3; TA7; TA10; TA15; TA18; TB6; TC2; TC4; TC4 " +
    "ELI; TC6; TC11; TC18; TC21; TA6V; TA6V4; TA6VE; titanium alloy; Titan; Titanlegierung; Reintitan; " +
    "titane; alliage de titane; titanio; lega di titanio; aleación de titanio; Ti",
  "nickel alloy":
    "2.4060; 2.4066; 2.4068; 2.4360; 2.4375; 2.4600; 2.4602; 2.4605; 2.4610; 2.4617; 2.4630; 2.4631; 2.4632; " +
    "2.4634; 2.4642; 2.4650; 2.4654; 2.4660; 2.4662; 2.4663; 2.4665; 2.4668; 2.4669; 2.4675; 2.4816; 2.4819; " +
    "2.4851; 2.4856; 2.4858; 2.4951; 2.4952; 2.4973; Ni99.2; LC-Ni99; Ni99.6; NiCu30Fe; NiCu30Al; NiCr15Fe; " +
    "NiCr23Fe; NiCr22Mo9Nb; NiCr19NbMo; NiCr19Fe19Nb5Mo3; NiCr15Fe7TiAl; NiMo16Cr15W; NiCr21Mo14W; " +
    "NiMo16Cr16Ti; NiMo28; NiCr21Mo; NiCr20CuMo; NiCr20TiAl; NiCr20Ti; NiCr20Co18Ti; NiCr20Co13Mo4Ti3Al; " +
    "NiCo20Cr20MoTi; NiCr22Fe18Mo; NiCr23Co12Mo; NiCr23Mo16Al; NiCr29Fe; N02200; N02201; N04400; N04405; " +
    "N05500; N06002; N06022; N06030; N06059; N06200; N06230; N06455; N06600; N06601; N06617; N06625; N06686; " +
    "N06690; N07001; N07041; N07080; N07090; N07208; N07263; N07500; N07718; N07725; N07750; N08020; N08825; " +
    "N09901; N09925; N10001; N10276; N10665; N10675; alloy 200; alloy 201; alloy 20; alloy 400; alloy K-500; " +
    "alloy 600; alloy 601; alloy 617; alloy 625; alloy 686; alloy 690; alloy 718; alloy X-750; alloy 80A; " +
    "alloy 90; alloy 105; alloy 263; alloy 825; alloy 901; alloy 925; alloy C-276; alloy C-22; alloy C-4; " +
    "alloy B-2; alloy X; alloy 59; alloy 282; nickel 200; nickel 201; NCF600; NCF601; NCF625; NCF690; NCF718; " +
    "NCF750; NCF80A; NCF825; NW2200; NW4400; NW0276; GH3030; GH3039; GH3044; GH3128; GH3536; GH3625; GH3600; " +
    "GH4033; GH4037; GH4049; GH4080A; GH4090; GH4099; GH4133; GH4141; GH4145; GH4169; GH4738; K403; K417; " +
    "K418; K4169; NCu28-2.5-1.5; NC15Fe; NC19FeNb; NC22DNb; NC20TA; NC22FeD; NC20K14; NU30; NU30AT; nickel; " +
    "nickel-base alloy; nickel-based superalloy; nickel-copper alloy; Nickelbasislegierung; Nickellegierung; " +
    "alliage de nickel; alliage base nickel; superalliage base nickel; lega di nichel; superlega di nichel; " +
    "aleación de níquel",
  plastic:
    "POM; POM-C; POM-H; PA; PA6; PA6G; PA66; PA46; PA11; PA12; PA612; PE; PE-LD; PE-HD; PE-UHMW; PP; PP-H; " +
    "PVC; PVC-U; PC; PMMA; ABS; PTFE; PVDF; PCTFE; PFA; PET; PET-P; PBT; PEEK; PPS; PPSU; PSU; PEI; PAI; SAN; " +
    "PS-HI; HDPE; LDPE; UHMWPE; UHMW; HIPS; plastics; thermoplastic; acetal; acetal copolymer; polyacetal; " +
    "polyoxymethylene; nylon; nylon 6; nylon 66; cast nylon; polyamide; polyethylene; polypropylene; " +
    "polycarbonate; acrylic; Kunststoff; Polyamid; Polyethylen; Polypropylen; Polycarbonat; Acrylglas; " +
    "plastique; matière plastique; plastica; materia plastica; poliammide; resina acetalica; polietilene; " +
    "plástico; poliamida; polietileno",
  "case-hardening steel":
    "1.5714; 1.5732; 1.5752; 1.5805; 1.5810; 1.5860; 1.5918; 1.5919; 1.5920; 1.6523; 1.6526; 1.6566; 1.6571; " +
    "1.6587; 1.6657; 1.7015; 1.7016; 1.7027; 1.7028; 1.7131; 1.7139; 1.7147; 1.7149; 1.7160; 1.7243; 1.7244; " +
    "1.7262; 1.7264; 1.7320; 1.7321; 1.7323; 1.7333; 16MnCr5; 16MnCrS5; 16MnCrB5; 20MnCr5; 20MnCrS5; " +
    "18CrNiMo7-6; 17CrNi6-6; 17NiCrMo6-4; 20NiCrMoS6-4; 20NiCrMo2-2; 20NiCrMoS2-2; 14NiCrMo13-4; 15NiCr13; " +
    "10NiCr5-4; 16NiCr4; 18NiCr5-4; 17Cr3; 18CrMo4; 18CrMoS4; 20MoCr3; 20MoCr4; 20MoCrS4; 22CrMoS3-5; 20Cr4; " +
    "20CrS4; 17CrNiMo6; 15CrNi6; 18CrNi8; 14NiCr14; 14NiCr10; 14NiCr18; 15Cr3; 15CrMo5; 20CrMo5; 21NiCrMo2; " +
    "3310; 3312; 3316; 4118; 4320; 4615; 4620; 4720; 4815; 4820; 5115; 5120; 8115; 8615; 8617; 8620; 8620H; " +
    "8622; 8720; 8822; 9310; E9310; G43200; G46200; G51200; G86170; G86200; G93106; EN34; EN36; EN36A; EN36B; " +
    "EN36C; EN39A; EN39B; EN351; EN352; EN353; EN354; EN355; EN361; EN362; EN363; 527M17; 590M17; 635M15; " +
    "637M17; 655M13; 659M15; 665M17; 805M17; 805M20; 805M22; 815M17; 820M17; 822M17; 832M13; 835M15; SCM415; " +
    "SCM415H; SCM418; SCM420; SCM420H; SCM421; SCM822; SCM822H; SCr415; SCr420; SCr420H; SNC415; SNC815; " +
    "SNCM220; SNCM220H; SNCM415; SNCM420; SNCM616; SNCM815; SMnC420; 15Cr; 15CrA; 20Cr; 20CrMnTi; 20CrMnTiH; " +
    "20CrMnMo; 20CrNi; 20CrNiMo; 20CrNi2Mo; 20CrNi3; 20CrNi3A; 20Cr2Ni4; 20Cr2Ni4A; 12CrNi3; 12CrNi3A; " +
    "12Cr2Ni4; 12Cr2Ni4A; 18Cr2Ni4W; 18Cr2Ni4WA; 17Cr2Ni2Mo; 20MnVB; 20CrMoH; 22CrMoH; 20CrMn; 15CrMn; 16MC5; " +
    "20MC5; 16NC6; 20NC6; 20NCD2; 18NCD6; 18NCD4; 14NC11; 10NC6; 18NiCrMo5; 20NiCrMo2; 16NiCrMo12; 16CrNi4; " +
    "carburizing steel; carburising steel; Einsatzstahl; acier de cémentation; acciaio da cementazione; acero " +
    "de cementación",
  "bearing steel":
    "1.3501; 1.3503; 1.3505; 1.3520; 1.3536; 1.3537; 1.3538; 1.3539; 100Cr2; 105Cr4; 100Cr6; 100CrMn6; " +
    "100CrMnSi4-4; 100CrMnSi6-4; 100CrMo7; 100CrMo7-3; 100CrMo7-4; 100CrMnMoSi8-4-6; 50100; 51100; 52100; " +
    "E50100; E51100; E52100; G50986; G51986; G52986; EN31; 534A99; 535A99; SUJ1; SUJ2; SUJ3; SUJ4; SUJ5; " +
    "GCr6; GCr9; GCr9SiMn; GCr15; GCr15SiMn; GCr15SiMo; GCr18Mo; 100C6; 100C2; ball-bearing steel; " +
    "Wälzlagerstahl; Kugellagerstahl; acier à roulement; acier à roulements; acciaio per cuscinetti; acero " +
    "para rodamientos; acero de rodamientos",
  "cast steel":
    "1.0420; 1.0443; 1.0446; 1.0449; 1.0455; 1.0551; 1.0552; 1.0558; 1.0619; 1.1120; 1.6220; GS-38; GS-45; " +
    "GS-52; GS-60; GS-38.3; GS-45.3; GS-C25; GE200; GS200; GE240; GS240; GE300; GP240GH; G20Mn5; GS-20Mn5; " +
    "WCA; WCB; WCC; LCB; LCC; A216 WCB; A352 LCB; A27 60-30; A27 65-35; A27 70-36; J02502; J03002; J03003; " +
    "SC360; SC410; SC450; SC480; SCPH1; SCPH2; SCW410; SCW450; SCW480; ZG200-400; ZG230-450; ZG270-500; " +
    "ZG310-570; ZG340-640; ZG25; ZG35; ZG45; steel casting; Stahlguss; acier moulé; acier coulé; acciaio " +
    "colato; getto d'acciaio; acciaio da getto; acero fundido; acero moldeado",
  "ferritic stainless":
    "1.4000; 1.4002; 1.4003; 1.4016; 1.4113; 1.4509; 1.4510; 1.4511; 1.4512; 1.4521; 1.4526; 1.4713; 1.4724; " +
    "1.4742; 1.4762; 1.4105; X6Cr13; X6CrAl13; X2CrNi12; X6Cr17; X8Cr17; X6CrMo17-1; X2CrTiNb18; X3CrTi17; " +
    "X3CrNb17; X2CrTi12; X2CrMoTi18-2; X6CrMoNb17-1; X10CrAlSi7; X10CrAlSi13; X10CrAlSi18; X10CrAlSi25; " +
    "X6CrMoS17; 405; 409; 429; 430; 430Ti; 434; 436; 439; 441; 444; 446; S40500; S40900; S42900; S43000; " +
    "S43035; S43400; S43600; S44400; S44600; 430F; S43020; 430S17; 434S17; EN60; SUS405; SUS429; SUS430; " +
    "SUS430LX; SUS434; SUS436L; SUS444; SUS447J1; SUH409; SUH446; SUS430F; 10Cr17; 1Cr17; 06Cr13Al; 0Cr13Al; " +
    "022Cr18Ti; 10Cr17Mo; 1Cr17Mo; 019Cr19Mo2NbTi; 022Cr11Ti; Z8C17; Z6C13; ferritischer rostfreier Stahl; " +
    "acier inoxydable ferritique; acciaio inox ferritico; acero inoxidable ferrítico",
  "duplex stainless":
    "1.4062; 1.4162; 1.4362; 1.4410; 1.4424; 1.4460; 1.4462; 1.4482; 1.4501; 1.4507; 1.4662; 1.4469; 1.4470; " +
    "X2CrNiN22-2; X2CrMnNiN21-5-1; X2CrMnNiN22-5-2; X2CrNiN23-4; X2CrNiMoN25-7-4; X3CrNiMoN27-5-2; " +
    "X2CrNiMoN22-5-3; X2CrMnNiMoN21-5-3; X2CrNiMoCuWN25-7-4; X2CrNiMoCuN25-6-3; X2CrNiMnMoCuN24-4-3-2; " +
    "GX2CrNiMoN22-5-3; GX2CrNiMoN26-7-4; 329; 2205; 2304; 2507; S31803; S32205; S32101; S32202; S32304; " +
    "S32550; S32750; S32760; S32900; S32003; S82441; F51; F53; F55; F60; CD4MCu; CD4MCuN; CD3MN; J92205; " +
    "J93370; 318S13; SUS329J1; SUS329J3L; SUS329J4L; SCS10; SCS11; 022Cr22Ni5Mo3N; 022Cr23Ni5Mo3N; " +
    "022Cr25Ni7Mo4N; 022Cr19Ni5Mo3Si2N; 00Cr18Ni5Mo3Si2; 022Cr23Ni4MoCuN; Z2CND22-05; Z3CND22-05Az; duplex; " +
    "super duplex; lean duplex; Duplexstahl; acier duplex; acciaio duplex; acero dúplex",
  "precipitation-hardening stainless":
    "1.4532; 1.4534; 1.4542; 1.4543; 1.4545; 1.4548; 1.4568; 1.4594; X5CrNiCuNb16-4; X5CrNiCuNb17-4-4; " +
    "X5CrNiCu15-5; X7CrNiAl17-7; X8CrNiMoAl15-7-2; X3CrNiMoAl13-8-2; X5CrNiMoCuNb14-5; 17-4PH; 17-4; 15-5PH; " +
    "15-5; 17-7PH; 13-8Mo; PH13-8Mo; PH15-7Mo; 631; XM-12; XM-13; XM-16; XM-25; S13800; S15500; S15700; " +
    "S17400; S17700; S45000; S45500; CB7Cu-1; CB7Cu-2; AISI 630; ASTM 630; A564 630; AISI 632; SUS630; " +
    "SUS631; SCS24; 05Cr17Ni4Cu4Nb; 0Cr17Ni4Cu4Nb; 05Cr15Ni5Cu4Nb; 07Cr17Ni7Al; 0Cr17Ni7Al; 07Cr15Ni7Mo2Al; " +
    "0Cr15Ni7Mo2Al; Z6CNU17-04; Z7CNU17-04; Z9CNA17-07; PH stainless; ausscheidungshärtender rostfreier " +
    "Stahl; acier inoxydable à durcissement structural; acciaio inox indurente per precipitazione; acero " +
    "inoxidable endurecible por precipitación",
  "compacted iron":
    "5.2100; 5.2200; 5.2201; 5.2300; 5.2301; EN-GJV-300; EN-GJV-350; EN-GJV-400; EN-GJV-450; EN-GJV-500; " +
    "GJV-300; GJV-350; GJV-400; GJV-450; GJV-500; GGV30; GGV40; GGV; A842 grade 250; A842 grade 300; A842 " +
    "grade 350; A842 grade 400; A842 grade 450; FCV300; FCV350; FCV400; FCV450; FCV500; RuT260; RuT300; " +
    "RuT340; RuT350; RuT380; RuT400; RuT420; RuT450; RuT500; compacted graphite iron; CGI; vermicular iron; " +
    "vermicular graphite iron; Vermikulargraphitguss; Gusseisen mit Vermiculargraphit; fonte vermiculaire; " +
    "fonte à graphite vermiculaire; ghisa vermicolare; fundición vermicular",
  "austempered iron":
    "5.3400; 5.3401; 5.3403; 5.3404; 5.3405; EN-GJS-800-8; EN-GJS-800-10; EN-GJS-900-8; EN-GJS-1000-5; " +
    "EN-GJS-1050-6; EN-GJS-1200-2; EN-GJS-1200-3; EN-GJS-1400-1; 130-90-09; 150-110-07; 175-125-04; " +
    "200-155-02; 230-185-01; 900-650-09; 1050-750-07; 1200-850-04; 1400-1100-02; 1600-1300-01; FCAD900-4; " +
    "FCAD900-8; FCAD1000-5; FCAD1200-2; FCAD1400-1; QTD800-10; QTD900-8; QTD1050-6; QTD1200-3; QTD1400-1; " +
    "ADI; austempered ductile iron; fonte ADI; ghisa ADI; fundición ADI; bainitisches Gusseisen mit " +
    "Kugelgraphit; fundición nodular austemperada; ghisa sferoidale austemperata",
  "silicon aluminum":
    "EN AC-48100; AlSi17Cu4Mg; AlSi17Cu5Mg; AlSi17Cu4; AlSi18CuNiMg; AlSi21CuNiMg; AlSi20; AlSi25; AlSi17; " +
    "AlSi18; G-AlSi17Cu4Mg; A390; 390.0; A390.0; B390.0; B390; 392.0; 393.0; A03900; A13900; A23900; LM28; " +
    "LM29; LM30; ADC14; AC9A; AC9B; YL117; YZAlSi17Cu5Mg; high-silicon aluminum; hypereutectic aluminum; " +
    "hypereutectic silicon aluminum; übereutektisches Aluminium; übereutektische AlSi-Legierung; aluminium " +
    "hypereutectique; aluminium-silicium hypereutectique; alluminio ipereutettico; aluminio hipereutéctico",
  "aluminum bronze":
    "CW300G; CW301G; CW302G; CW303G; CW304G; CW305G; CW306G; CW307G; CW308G; CC330G; CC331G; CC332G; CC333G; " +
    "CC334G; 2.0920; 2.0932; 2.0936; 2.0940; 2.0966; 2.0970; 2.0971; 2.0975; 2.0978; 2.0980; CuAl5As; " +
    "CuAl6Si2Fe; CuAl7Si2; CuAl8; CuAl8Fe3; CuAl9; CuAl9Ni3Fe2; CuAl10Fe; CuAl10Fe1; CuAl10Fe2; CuAl10Fe3Mn2; " +
    "CuAl10Ni; CuAl10Ni5Fe4; CuAl10Ni5Fe5; CuAl10Fe5Ni5; CuAl10Ni3Fe2; CuAl11Ni6Fe5; CuAl11Fe6Ni6; " +
    "G-CuAl10Ni; G-CuAl10Fe; C954; C955; C95200; C95300; C95400; C95500; C95800; C95900; C61300; C61400; " +
    "C61800; C62300; C62400; C63000; C63200; C64200; CDA 954; AB1; AB2; CA103; CA104; CA106; C6161; C6191; " +
    "C6241; C6280; C6301; CAC701; CAC702; CAC703; CAC704; AlBC1; AlBC2; AlBC3; QAl5; QAl7; QAl9-2; QAl9-4; " +
    "QAl10-3-1.5; QAl10-4-4; QAl11-6-6; ZCuAl9Mn2; ZCuAl10Fe3; ZCuAl10Fe3Mn2; ZCuAl9Fe4Ni4Mn2; " +
    "ZCuAl8Mn13Fe3Ni2; ZQAl9-4; UA9; UA10N; UA9N3Fe2; UA11N; nickel aluminum bronze; NAB; bronze d'aluminium; " +
    "cupro-aluminium; bronzo all'alluminio; cuproalluminio; bronce de aluminio; bronce al aluminio",
  "cobalt alloy":
    "2.4683; 2.4964; CoCr20W15Ni; CoCr22NiW; CoCr22W14Ni; CoCr28Mo6; CoCr28Mo; CoCrMo; CoNi35Cr20Mo10; ISO " +
    "5832-4; ISO 5832-5; ISO 5832-6; ISO 5832-12; L605; R30001; R30003; R30006; R30012; R30021; R30035; " +
    "R30075; R30188; R30605; R31537; R31538; R31539; ASTM F75; ASTM F90; ASTM F562; ASTM F799; ASTM F1537; " +
    "Co-28Cr-6Mo; Co-35Ni-20Cr-10Mo; alloy L605; alloy 188; alloy 6; alloy 6B; alloy 12; alloy 21; GH5605; " +
    "GH5188; GH605; GH188; K640; KC20WN; KC22WN; cobalt-base alloy; cobalt-chrome; cobalt chromium; CoCr; " +
    "Kobaltlegierung; Kobaltbasislegierung; Kobalt-Chrom; alliage de cobalt; cobalt-chrome alloy; " +
    "chrome-cobalt; lega di cobalto; cobalto-cromo; aleación de cobalto",
};
