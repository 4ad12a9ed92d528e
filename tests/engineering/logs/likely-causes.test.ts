import { describe, expect, it } from "vitest";
import { seedLimits } from "@/lib/engineering/limit-definition";
import { analyzeLog, likelyCauses, logsLimits } from "@/lib/engineering/logs";
import { context, madeLog, times } from "./made-log";

const SOURCE = "common practice, no source [P]; each made log has one fault built in";
const DAY = 288;
const WEEK = 7 * DAY;

const causesOf = (channels: Parameters<typeof madeLog>[0], change = {}) =>
  likelyCauses(analyzeLog(madeLog(channels), { ...context, ...change }), seedLimits(logsLimits));
const ids = (channels: Parameters<typeof madeLog>[0]) => causesOf(channels).map(({ id }) => id);

const cycling = (on: number, off: number) =>
  Array.from({ length: WEEK }, (_, index) => (index % (on + off) < off ? 0 : 1));
const moving = (around: number) => Array.from({ length: WEEK }, (_, index) => around + (index % 4) / 10);

describe(`causes: ${SOURCE}`, () => {
  it("five-minute runs point to short cycles, with the share in words", () => {
    const [first] = causesOf({ firstStageShare: cycling(1, 3), indoorRhPct: moving(58) });
    expect(first?.id).toBe("short-cycles");
    expect(first?.evidence).toContain("100 % of the runs are shorter than 10 min");
    expect(first?.nextCheck.length).toBeGreaterThan(10);
  });

  it("a fan that never stops points to the coil drying back", () => {
    expect(ids({ firstStageShare: cycling(6, 6), fanShare: times(WEEK, 1) })[0]).toBe("fan-between-calls");
    expect(ids({ firstStageShare: cycling(6, 6), fanShare: cycling(6, 6) })).not.toContain(
      "fan-between-calls",
    );
  });

  it("a second stage on most of a lightly loaded time points to its offset", () => {
    const share = cycling(3, 9);
    expect(ids({ firstStageShare: share, secondStageShare: share.map((on) => on * 0.8) })).toContain(
      "second-stage-eager",
    );
  });

  it("wet hours at 65 °F with nothing running point to mild wet weather", () => {
    expect(
      ids({ indoorRhPct: moving(60), outdoorF: times(WEEK, 65), firstStageShare: times(WEEK, 0) }),
    ).toContain("mild-wet-weather");
  });

  it("without a stage column nobody knows what ran: no word on calls", () => {
    const [cause] = causesOf({ indoorRhPct: moving(60), outdoorF: times(WEEK, 65) });
    expect(cause?.evidence.join() ?? "").not.toContain("without cooling");
  });

  it("long runs in a wet house point to airflow, and the fit capacity supports it", () => {
    const found = causesOf({ firstStageShare: cycling(9, 3), indoorRhPct: moving(60) });
    expect(found.map(({ id }) => id)).toContain("airflow-too-high");
    expect(found.map(({ id }) => id)).not.toContain("short-cycles");
  });

  it("a sensor that stands still for a week is suspected itself", () => {
    expect(ids({ indoorRhPct: times(WEEK, 60) })).toContain("sensor-error");
    expect(ids({ indoorRhPct: moving(60) })).not.toContain("sensor-error");
  });

  it("a setpoint that drops by 4 °F every day points to habits", () => {
    const setpointF = Array.from({ length: WEEK }, (_, index) => (index % DAY < 144 ? 76 : 72));
    expect(ids({ setpointF })).toEqual(["setpoint-habits"]);
    expect(ids({ setpointF: times(WEEK, 75) })).toEqual([]);
  });

  it("what speaks against a cause is said beside it", () => {
    const share = cycling(1, 3);
    const cause = causesOf({
      firstStageShare: share,
      fanShare: share.map((on) => Math.min(1, on + 0.2)),
    }).find(({ id }) => id === "short-cycles");
    expect(cause?.evidence.length).toBeGreaterThan(0);
    const second = causesOf({
      firstStageShare: cycling(10, 2),
      secondStageShare: cycling(10, 2).map((on) => on * 0.8),
    }).find(({ id }) => id === "second-stage-eager");
    // 10 of 12 intervals: 83 % of the time, so the second stage may well be needed.
    expect(second?.against).toEqual(["cooling runs 83 % of the time in all"]);
  });

  it("a dry, steady house has none", () => {
    expect(ids({ firstStageShare: cycling(6, 6), fanShare: cycling(6, 6), indoorRhPct: moving(48) })).toEqual(
      [],
    );
  });
});
