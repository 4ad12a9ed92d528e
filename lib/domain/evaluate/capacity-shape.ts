/** What a system gives at one set of conditions. */
export type Capacity = {
  readonly totalBtuh: number;
  readonly sensibleBtuh: number;
  readonly latentBtuh: number;
  readonly sensibleRatio: number;
  readonly moistureLbPerH: number;
  /** `null` where the maker's table is for other air, or its figures do not make air together. */
  readonly leavingDewPointF: number | null;
  readonly leavingDbF: number | null;
  /** Coil surface, °F; `null` where the maker's table says nothing of it. */
  readonly coilF: number | null;
  readonly from: "maker's table" | "coil temperature held";
  /** What the answer does not correct for, in words. */
  readonly remarks: readonly string[];
};

export type Conditions = {
  readonly indoorDbF: number;
  readonly indoorWbF: number;
  readonly outdoorDbF: number;
  readonly airflowCfm: number;
  readonly elevationFt: number;
};
