import { expect, test } from "vitest";
import { airSideCapacity, moistAir } from "@/lib/engineering/air";
import { airAfterCoil } from "@/lib/engineering/equipment";
import { RATING_AIR } from "./fixtures";

const SOURCE =
  "rated point 80/67, 36,000 Btu/h, 0.75, 1,200 cfm with real-gas moist air (computed); dew point from steam tables, 0.2219 psia at 56 °F and 0.2302 at 57 °F (recalled)";

/** 9,000 Btu/h of latent heat over 1061 + 0.444 · 80 = 1096.5 Btu/lb. */
const RATED_WATER = 8.208;

test(`what leaves the coil at the rated point: ${SOURCE}`, () => {
  const leaving = airAfterCoil({
    entering: RATING_AIR,
    airflowCfm: 1_200,
    totalBtuh: 36_000,
    moistureLbPerH: RATED_WATER,
  });
  // Real-gas moist air holds 0.5 % more water than the ideal-gas equations.
  expect(Math.abs((leaving?.dryBulbF ?? 0) - 58.78)).toBeLessThan(0.06);
  expect(Math.abs((leaving?.humidityRatio ?? 0) / 0.009644 - 1)).toBeLessThan(0.006);
  // 0.009644 · 14.696 / (0.621945 + 0.009644) = 0.2244 psia: 56.3 °F; 0.5 % less water is 0.15 °F.
  expect(Math.abs((leaving?.dewPointF ?? 0) - 56.3)).toBeLessThan(0.2);
});

test("the air side measures the total that was put in, but for the heat of the drain water", () => {
  const entering = moistAir({ dryBulbF: 75, wetBulbF: 63, pressurePsia: 13.2 });
  const leaving = airAfterCoil({ entering, airflowCfm: 900, totalBtuh: 27_000, moistureLbPerH: 8 });
  if (leaving === null) throw new Error("There is such air.");
  const back = airSideCapacity({ airflowCfm: 900, entering, leaving });
  expect(back.moistureLbPerH).toBeCloseTo(8, 4);
  expect(back.totalBtuh + back.condensateBtuh).toBeCloseTo(27_000, 0);
});

test("figures that make no air together are told by nothing", () => {
  const asked = { entering: RATING_AIR, airflowCfm: 1_200, totalBtuh: 36_000 };
  // All sensible: the air would leave near 52 °F with the 0.0112 lb/lb it came with, which is fog.
  expect(airAfterCoil({ ...asked, moistureLbPerH: 0 })).toBeNull();
  // 5,200 lb/h of air hold 58 lb/h of water.
  expect(airAfterCoil({ ...asked, moistureLbPerH: 60 })).toBeNull();
  expect(() => airAfterCoil({ ...asked, moistureLbPerH: 1, airflowCfm: 0 })).toThrow(/airflowCfm/);
});
