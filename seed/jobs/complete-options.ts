import type { JobId } from "@/lib/domain/ids";
import type { OptionInputs } from "@/lib/domain/options";
import { chooseOption } from "@/lib/services/choose-option";
import { addOption, optionsView, saveOption } from "@/lib/services/options";
import type { DemoWorld } from "../world";

/**
 * What was weighed for the whole job: the same unit large at full airflow, small at low airflow, and small with a dehumidifier, which was
 * chosen and stands in the records.
 */
export async function seedOptions({ scopes }: DemoWorld, jobId: JobId): Promise<void> {
  const { office } = scopes;
  const weigh = async (label: string, changes: Partial<OptionInputs>): Promise<string> => {
    const optionId = await addOption(office, { jobId, label, copyOf: null });
    const { options } = await optionsView(office, jobId);
    const added = options.find((one) => one.id === optionId);
    if (added === undefined) throw new Error(`The option “${label}” is not there.`);
    const inputs = { ...added.inputs, ...changes };
    await saveOption(office, { jobId, optionId, expectedVersion: added.version, label, inputs });
    return optionId;
  };
  const none = { dehumidifierPintsPerDay: 0, dehumidifierAtHousePintsPerDay: null };
  await weigh("Three tons, full airflow", {
    ...none,
    capacitySetting: "3 tons",
    firstStageAirflowSetting: "E",
    secondStageAirflowSetting: "E",
    colderCoilCooling: false,
  });
  await weigh("Two tons, low airflow", {
    ...none,
    capacitySetting: "2 tons",
    firstStageAirflowSetting: "A",
    secondStageAirflowSetting: "B",
    colderCoilCooling: true,
  });
  const chosen = await weigh("2.5 tons and a dehumidifier", {});
  const { options } = await optionsView(office, jobId);
  await chooseOption(office, {
    jobId,
    optionId: chosen,
    expectedVersion: options.find((one) => one.id === chosen)?.version ?? 1,
    reason: "No cooling setting reaches the mild wet weeks; the dehumidifier does.",
    reopenSigned: false,
  });
}
