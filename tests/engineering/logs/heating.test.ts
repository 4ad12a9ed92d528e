import { expect, it } from "vitest";
import { analyzeLog } from "@/lib/engineering/logs";
import { context, madeLog, times } from "./made-log";

const SOURCE =
  "no cooling below 55 °F outdoors is common practice, no source; what warms a room from colder outdoors is heat (conservation of energy)";

/** Two hours with one hour of running in the middle, 12 samples of 5 min. */
function hoursOfCooling(outdoorF: number, room: readonly [from: number, to: number], auxiliary = 0) {
  const [from, to] = room;
  const indoorF = [...times(6, from), ...times(6, from), ...times(12, to)];
  const { running } = analyzeLog(
    madeLog({
      firstStageShare: [...times(6, 0), ...times(12, 1), ...times(6, 0)],
      auxiliaryShare: times(24, auxiliary),
      outdoorF: times(24, outdoorF),
      indoorF,
    }),
    context,
  );
  return running?.coolingHours ?? 0;
}

it.each([
  // Outdoors, room before and after, auxiliary heat; hours that cooled of the one that ran.
  ["a summer's hour", 90, [76, 75], 0, 1],
  ["a summer's night in which the room still warms", 72, [75, 75.5], 0, 1],
  ["a mild day that is cooled", 60, [76, 75], 0, 1],
  ["a mild day that is heated", 60, [68, 70], 0, 0],
  ["a winter's hour that only holds the room", 40, [70, 70], 0, 0],
  ["auxiliary heat on a mild day", 60, [70, 70], 1, 0],
] as const)(`%s: ${SOURCE}`, (_, outdoorF, room, auxiliary, hours) => {
  expect(hoursOfCooling(outdoorF, room, auxiliary)).toBeCloseTo(hours, 9);
});
