import psychrolib from "psychrolib";

// The library is one shared object with a unit system inside it. This is the only file that imports it,
// so the system is chosen once and cannot change under anyone's feet.
psychrolib.SetUnitSystem(psychrolib.IP);

/** Equations of ASHRAE Handbook, Fundamentals 2017, chapter 1, in inch-pound units. */
export const psychrometrics = psychrolib;

/** Below this the library silently puts 1e-7 in place of the humidity ratio, so this code refuses it first. */
export const LEAST_HUMIDITY_RATIO = 1e-7;

/** Grains in a pound, by definition. */
export const GRAINS_PER_POUND = 7_000;
