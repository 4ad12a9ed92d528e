/** Does background work until it is killed. Its one task counts to five, slowly, and prints each number. */
import { setTimeout as pause } from "node:timers/promises";
import type { TaskDefinition } from "@/lib/work/tasks";
import { startWorker } from "@/lib/work/worker";

const counting: TaskDefinition = {
  actsFor: "company",
  run: async (_scope, _input, progress, report) => {
    for (let at = typeof progress === "number" ? progress + 1 : 1; at <= 5; at++) {
      await report({ done: at, total: 5, progress: at });
      process.stdout.write(`${at}\n`);
      await pause(400);
    }
    return "Counted to five.";
  },
};

startWorker(new Map([["test.count", counting]]));
