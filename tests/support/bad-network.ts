import type { Answer, Doors } from "@/lib/offline/doors";
import { NO_CONNECTION } from "@/lib/offline/doors";

const LOST: Answer<never> = { done: false, why: "later", message: NO_CONNECTION };

/**
 * Doors behind a network that drops, delays, cuts, repeats and fails, as chance has it. What was delayed arrives
 * later, long after its phone gave up on it, and out of order.
 */
export function behindBadNetwork(doors: Doors, random: () => number): Doors {
  const late: (() => Promise<unknown>)[] = [];
  const send = async <T>(call: () => Promise<Answer<T>>): Promise<Answer<T>> => {
    if (random() < 0.5) for (const one of late.splice(0)) await one();
    const chance = random();
    if (chance < 0.15) return LOST; // dropped on its way there, or a 500 before anything was written
    if (chance < 0.3) {
      late.push(call);
      return LOST;
    }
    if (chance < 0.5) {
      await call(); // written, and the answer lost or cut in the middle
      return LOST;
    }
    if (chance < 0.65) await call(); // the same request twice
    return call();
  };
  return {
    readBundle: (...asked) => send(() => doors.readBundle(...asked)),
    sendFields: (...asked) => send(() => doors.sendFields(...asked)),
    sendPhoto: (photo) => send(() => doors.sendPhoto(photo)),
    sendOriginal: (...asked) => send(() => doors.sendOriginal(...asked)),
    sayNoOriginal: (...asked) => send(() => doors.sayNoOriginal(...asked)),
    sendLetter: (letter) => send(() => doors.sendLetter(letter)),
    handOver: (...asked) => send(() => doors.handOver(...asked)),
    handOverPhoto: (photo) => send(() => doors.handOverPhoto(photo)),
  };
}
