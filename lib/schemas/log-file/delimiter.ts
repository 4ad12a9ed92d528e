/** In order of preference: a comma may also be a decimal sign, so it has to earn its place. */
export const DELIMITERS = [";", "\t", "|", ","] as const;
export type Delimiter = (typeof DELIMITERS)[number];
