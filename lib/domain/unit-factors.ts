/** 1 ton of refrigeration = 12,000 Btu/h (definition). */
export const BTUH_PER_TON = 12_000;
/** International Table Btu, exact definition 1,055.05585262 J. */
export const BTUH_PER_KW = 3_412.142;
/** 1 ft³ = 28.316847 L (exact foot of 0.3048 m). */
const L_PER_FT3 = 28.316847;
export const CFM_PER_L_PER_S = 60 / L_PER_FT3;
export const CFM_PER_M3_PER_H = 1_000 / L_PER_FT3 / 60;
/** Conventional inch of water, 4 °C. */
export const PA_PER_IN_WC = 249.0889;
