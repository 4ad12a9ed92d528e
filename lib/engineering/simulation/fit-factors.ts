/** What is fitted, each as a factor on the house as assumed. */
export const FIT_FACTORS = ["conductance", "leakage", "gains", "moisture", "buffer"] as const;
export type FitFactor = (typeof FIT_FACTORS)[number];
export type FitFactors = { readonly [K in FitFactor]: number };

/** A factor beyond would be another house. Common practice, no source. */
export const FIT_BOUNDS = { low: 0.3, high: 3 };
