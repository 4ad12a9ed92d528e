import type { DemoWorld } from "../world";
import { seedGoodStartup, seedLoadDone, seedReopenedStartup, seedSelectedEquipment } from "./hickorane-steps";
import { seedMeasuredHouseJob } from "./measured-house-job";

/** The Indiana company's jobs, oldest first. */
export async function seedHickoraneJobs(world: DemoWorld): Promise<void> {
  await seedMeasuredHouseJob(world);
  await seedGoodStartup(world);
  await seedReopenedStartup(world);
  await seedSelectedEquipment(world);
  await seedLoadDone(world);
}
