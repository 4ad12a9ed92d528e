import type { MarkShape } from "./geometry";

/** Path data of each mark around its own middle, about 10 units wide. A ring is stroked, the others are filled. */
export const MARK_PATHS: Readonly<Record<MarkShape, string>> = {
  dot: "M-4,0a4,4 0 1,0 8,0a4,4 0 1,0 -8,0Z",
  ring: "M-4,0a4,4 0 1,0 8,0a4,4 0 1,0 -8,0Z",
  square: "M-4,-4H4V4H-4Z",
  lozenge: "M0,-6L5,0L0,6L-5,0Z",
  wedge: "M-5,-4.5H5L0,5Z",
};
