// calc: the smallest and largest of a list, however long it is (a call with the list spread out has a limit).

export const minimumOf = (numbers: readonly number[]): number => numbers.reduce((a, b) => Math.min(a, b));
export const maximumOf = (numbers: readonly number[]): number => numbers.reduce((a, b) => Math.max(a, b));
