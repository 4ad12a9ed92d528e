import { describe, expect, it, test } from "vitest";
import { airflowLimits } from "@/lib/engineering/airflow";
import { seedLimits } from "@/lib/engineering/limit-definition";
import { refrigerantLimits } from "@/lib/engineering/refrigerant";
import { type Readings, type StartupStage, sanityQuestions, startupLimits } from "@/lib/engineering/startup";
import { bare, GOOD_STAGE, SITE, withReadings } from "./example-stage";

const LIMITS = {
  ...seedLimits(startupLimits),
  ...seedLimits(airflowLimits),
  ...seedLimits(refrigerantLimits),
};
const ask = (stage: StartupStage, previous: StartupStage | null = null) =>
  sanityQuestions({ stage, previous, site: SITE }, LIMITS);
const idsFor = (changes: Partial<Readings>) => ask(withReadings(changes)).map((question) => question.id);

test("a good stage raises no question", () => {
  expect(ask(GOOD_STAGE)).toEqual([]);
});

describe("each contradiction asks its question and names its readings", () => {
  it.each<[string, Partial<Readings>, string]>([
    [
      "supply warmer than return",
      { supplyDryBulbF: bare(76), supplyWetBulbF: bare(62) },
      "startup.supply-warmer",
    ],
    ["wet bulb above dry bulb", { returnWetBulbF: bare(75.1) }, "startup.return-wet-bulb-above-dry-bulb"],
    ["wet bulb above dry bulb", { supplyWetBulbF: bare(56) }, "startup.supply-wet-bulb-above-dry-bulb"],
    // 63 °F wet bulb at 75 °F is about 51 % relative humidity.
    [
      "humidity twice, disagreeing",
      { returnRelativeHumidityPct: bare(60) },
      "startup.return-humidity-disagrees",
    ],
    ["supply wetter than return", { returnWetBulbF: bare(55) }, "startup.supply-wetter"],
    [
      "pressures swapped",
      { suctionPressurePsig: bare(340), liquidPressurePsig: bare(130) },
      "startup.pressures-swapped",
    ],
    // R-410A at 130 psig boils near 45 °F.
    ["superheat below zero", { suctionLineF: bare(40) }, "startup.superheat-below-zero"],
    ["subcooling below zero", { liquidLineF: bare(110) }, "startup.subcooling-below-zero"],
    ["liquid line below outdoor air", { outdoorDryBulbF: bare(97) }, "startup.liquid-line-below-outdoor-air"],
    // 238 V · 11 A = 2,618 VA.
    ["power above volts times amps", { outdoorUnitPowerW: bare(2_700) }, "startup.power-above-volt-amps"],
    ["more than expected", { airflowCfm: bare(1_600) }, "startup.more-than-expected"],
  ])("%s", (_name, changes, id) => {
    const question = ask(withReadings(changes)).find((candidate) => candidate.id === id);
    expect(question?.question.endsWith("?")).toBe(true);
    expect(question?.fields.some((field) => field in changes)).toBe(true);
  });

  it("the same humidity read two ways raises none", () => {
    expect(idsFor({ returnRelativeHumidityPct: bare(51) })).toEqual([]);
  });
});

test("heating asks when the supply is colder than the return", () => {
  const questions = ask({ ...GOOD_STAGE, mode: "heating" });
  expect(questions.map((question) => question.id)).toContain("startup.supply-colder");
});

describe("identical to the last stage", () => {
  it("asks by group when all readings are the same", () => {
    const second = { ...withReadings({ suctionLineF: bare(56) }), stage: "Second stage" };
    const ids = ask(second, GOOD_STAGE).map((question) => question.id);
    expect(ids).toEqual(["startup.identical-air", "startup.identical-electrical"]);
  });

  it("one changed reading in a group, or a single common reading, is enough not to ask", () => {
    const second = withReadings({
      airflowCfm: bare(1_210),
      suctionLineF: bare(56),
      outdoorUnitAmps: null,
      outdoorUnitPowerW: null,
    });
    expect(ask(second, GOOD_STAGE)).toEqual([]);
  });
});

test("missing readings raise no question; an impossible reading is refused with its field", () => {
  const empty = Object.fromEntries(
    Object.keys(GOOD_STAGE.readings).map((name) => [name, null]),
  ) as unknown as Readings;
  expect(ask(withReadings(empty))).toEqual([]);
  expect(() => ask(withReadings({ returnDryBulbF: bare(500) }))).toThrow("readings.returnDryBulbF");
});
