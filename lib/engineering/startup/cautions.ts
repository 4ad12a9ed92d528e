/** Defers to codes, the manufacturer and licensed practice. */
export const ELECTRICAL_CAUTION =
  "Mains voltage and charged capacitors: isolate, lock and verify with a meter proved before and after on a live source. Local codes, the maker's instructions and licensed practice govern.";
