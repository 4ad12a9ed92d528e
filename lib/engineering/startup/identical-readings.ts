import type { SanityQuestion } from "./question";
import type { ReadingName } from "./readings";
import type { StartupStage } from "./startup-stage";

/** Readings that change from stage to stage, by what they are about. */
const GROUPS = {
  air: [
    "airflowCfm",
    "returnDryBulbF",
    "returnWetBulbF",
    "returnRelativeHumidityPct",
    "supplyDryBulbF",
    "supplyWetBulbF",
    "supplyRelativeHumidityPct",
    "externalStaticInWc",
  ],
  refrigerant: ["suctionPressurePsig", "suctionLineF", "liquidPressurePsig", "liquidLineF"],
  electrical: ["outdoorUnitAmps", "outdoorUnitPowerW", "fanPowerW"],
} as const satisfies Record<string, readonly ReadingName[]>;

/** One equal pair is chance; all of at least this many are a copy. */
const LEAST_IDENTICAL = 2;

/** Asks when every reading of a group is the same as in the stage before: copied, or not yet taken? */
export function identicalToLastStage(stage: StartupStage, previous: StartupStage): readonly SanityQuestion[] {
  return Object.entries(GROUPS).flatMap(([group, names]: [string, readonly ReadingName[]]) => {
    const both = names.filter((name) => stage.readings[name] !== null && previous.readings[name] !== null);
    const same = both.every((name) => stage.readings[name]?.value === previous.readings[name]?.value);
    if (!same || both.length < LEAST_IDENTICAL) return [];
    return [
      {
        id: `startup.identical-${group}`,
        question: `All ${both.length} ${group} readings of ${stage.stage} are the same as those of ${previous.stage}. Were they taken again after the stage changed?`,
        fields: both,
      },
    ];
  });
}
