import type { DemoWorld } from "../world";
import { seedCallbackPattern } from "./callback-pattern";
import { seedCompleteJob } from "./complete-job";
import { seedHumidJob } from "./humid-job";
import { seedLeakyJob } from "./leaky-job";
import {
  seedContradictingControls,
  seedHighAirflow,
  seedNewJob,
  seedStartupBegun,
  seedUndecidedStartup,
} from "./tidewillow-steps";

/** The Gulf coast company's jobs, oldest first. */
export async function seedTidewillowJobs(world: DemoWorld): Promise<void> {
  await seedCallbackPattern(world);
  await seedCompleteJob(world);
  await seedHumidJob(world);
  await seedLeakyJob(world);
  await seedUndecidedStartup(world);
  await seedStartupBegun(world);
  await seedContradictingControls(world);
  await seedHighAirflow(world);
  await seedNewJob(world);
}
