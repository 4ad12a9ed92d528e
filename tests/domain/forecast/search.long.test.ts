import { expect, it } from "vitest";
import { type SearchEvent, type SearchStanding, searchBoard, searchEvents } from "@/lib/domain/forecast";
import { BASE, COASTAL, SYSTEM } from "../../engineering/simulation/fixtures";
import { LOAD } from "../../engineering/simulation/load-of-a-house";

const asIs = { name: "as it is", effort: 0 };
const { controls, ventilation } = BASE;
const order = {
  house: { kind: "load summary" as const, load: LOAD, changed: {} },
  weather: COASTAL,
  humidityLimitPct: 55,
  mostHoursAboveLimit: 8_784,
  mostAboveSetpointDegreeHours: 100_000,
  space: {
    capacity: [asIs],
    airflow: [asIs],
    systems: [[SYSTEM]],
    controls: [
      { ...asIs, value: controls },
      { name: "warmer", effort: 1, value: { ...controls, coolingSetpointF: 77 } },
    ],
    ventilation: [{ ...asIs, value: ventilation }],
    dehumidifier: [{ ...asIs, value: null }],
  },
  keep: 1,
};

/** As the page runs it: every share in turn, a share's next event each time, until the board has what it needs. */
function shared(
  asked: typeof order,
  of: number,
): { readonly standing: SearchStanding; readonly tried: number } {
  const board = searchBoard(asked);
  const told: Record<SearchEvent["kind"], number> = { ready: 0, tried: 0, turned: 0, failed: 0, done: 0 };
  let standing: SearchStanding = { progress: null, settings: [], around: null, isDone: false };
  for (const phase of ["try", "turn"]) {
    const shares = Array.from({ length: of }, (_, index) =>
      searchEvents(asked, { around: phase === "try" ? null : standing.around, index, of }),
    );
    while (phase === "try" ? standing.around === null : !standing.isDone) {
      // The last share first: results arrive out of order.
      for (const share of shares.toReversed()) {
        const { value, done } = share.next();
        if (done !== true) {
          told[value.kind] += 1;
          standing = board(value);
        }
      }
    }
  }
  return { standing, tried: told.tried };
}

it("searches from the least effort on, then turns each setting around what it found", () => {
  const { standing, tried } = shared(order, 1);
  // The promise asks nothing: the first, without effort, keeps it; that what follows takes more shows with the second.
  expect(standing.progress?.best.map(({ effort }) => effort)).toEqual([0]);
  expect(standing.progress?.tried).toBe(1);
  expect(tried).toBe(2);
  const [first, second] = standing.settings;
  expect(standing.settings).toHaveLength(5);
  expect(first?.axis).toBe("controls");
  expect(first?.spreadHours).toBeGreaterThan(0);
  expect(second?.spreadHours).toBe(0);
});

it("gives the same answer however many share it", () => {
  // A promise that nothing keeps: all are tried.
  const hard = { ...order, mostHoursAboveLimit: 0, keep: 2 };
  const alone = shared(hard, 1);
  expect(alone.standing.progress).toMatchObject({ tried: 2, of: 2, best: [] });
  expect(shared(hard, 3).standing).toEqual(alone.standing);
});

it("fails in words", () => {
  const task = { around: null, index: 0, of: 1 };
  expect([...searchEvents({ ...order, mostHoursAboveLimit: -1 }, task)]).toEqual([
    { kind: "failed", problem: expect.stringMatching(/mostHoursAboveLimit/) },
  ]);
});
