// data: fraction drills (source key "drill-sizes"): every 64th of an inch from 1/64 to 1.

export const fractionDrills = { denominator: 64, first: 1, last: 64 } as const;
