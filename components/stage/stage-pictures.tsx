import type { Evaluation, JobContext } from "@/lib/domain/evaluate";
import { afternoonPicture } from "@/lib/domain/pictures/afternoon";
import { capacityLinesPicture } from "@/lib/domain/pictures/capacity-lines";
import { coilPathPicture } from "@/lib/domain/pictures/coil-path";
import { ductCurvePicture } from "@/lib/domain/pictures/duct-curve";
import { paddingPicture } from "@/lib/domain/pictures/padding";
import { staticPartsPicture } from "@/lib/domain/pictures/static-parts";
import type { StageKey } from "@/lib/domain/stages";
import {
  CapacityAgainstAirflow,
  PsychrometricChart,
  StaticStack,
  ThermostatTimeline,
} from "../charts/charts";
import { DuctCurve } from "../charts/duct-curve";
import { CapacityMapTable } from "./capacity-map-table";
import { PaddingTable } from "./padding-table";

type Props = {
  readonly stage: StageKey;
  readonly context: JobContext;
  readonly evaluation: Evaluation;
};

/** What a stage's entries look like, from the same evaluation as its findings. */
export function StagePictures({ stage, context, evaluation }: Props) {
  if (stage === "load_summary") {
    const effects = paddingPicture(context);
    return effects ? <PaddingTable effects={effects} /> : null;
  }
  if (stage === "equipment_selection") return <Selection context={context} evaluation={evaluation} />;
  if (stage === "airflow_setup") {
    const picture = staticPartsPicture(context);
    const ducts = ductCurvePicture(context, evaluation);
    return (
      <>
        {ducts ? <DuctCurve title="The ducts on the fan table" {...ducts} /> : null}
        {picture ? <StaticStack title="Where the static pressure goes" {...picture} /> : null}
      </>
    );
  }
  if (stage === "control_setup") {
    const picture = afternoonPicture(context, evaluation);
    return picture ? (
      <ThermostatTimeline
        title="A hot design afternoon under these settings"
        note="The room as one heat capacity; a fan that runs without cooling is not drawn."
        {...picture}
      />
    ) : null;
  }
  return null;
}

function Selection({ context, evaluation }: Omit<Props, "stage">) {
  const { capacityMap } = evaluation.results;
  const lines = capacityLinesPicture(context, evaluation);
  const path = coilPathPicture(context, evaluation);
  return (
    <>
      {capacityMap.known ? (
        <CapacityMapTable
          map={capacityMap.value}
          chosenAirflow={context.inputs.airflow_setup.secondStageAirflowSetting}
          chosenCapacity={context.inputs.equipment_selection.capacitySetting}
        />
      ) : null}
      {lines ? <CapacityAgainstAirflow title="Capacity against airflow at design" {...lines} /> : null}
      {path ? (
        <PsychrometricChart
          title="The air's way through the coil at design"
          note={
            path.coilPath.length === 0
              ? "The state of the leaving air is not known: the maker's table does not say it, or nothing is chosen yet."
              : undefined
          }
          {...path}
        />
      ) : null}
    </>
  );
}
