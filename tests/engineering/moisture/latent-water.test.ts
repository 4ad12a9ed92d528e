import { expect, test } from "vitest";
import { waterFromLatent } from "@/lib/engineering/moisture";

const SOURCE =
  "latent heat 1061 + 0.444·t Btu/lb (recalled); hand arithmetic: 1061 + 0.444·75 = 1094.3 (computed)";

test(`water behind a latent load. ${SOURCE}`, () => {
  expect(waterFromLatent(10_943, 75)).toBeCloseTo(10, 6);
  expect(waterFromLatent(0, 75)).toBe(0);
  expect(() => waterFromLatent(Number.NaN, 75)).toThrow(/latentBtuh/);
});
