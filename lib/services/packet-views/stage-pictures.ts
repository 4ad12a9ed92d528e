import { capacityAgainstAirflow } from "@/lib/charts/capacity-against-airflow";
import { ductCurve } from "@/lib/charts/duct-curve";
import type { ChartGeometry } from "@/lib/charts/geometry";
import { numberText } from "@/lib/charts/number-text";
import { psychrometricChart } from "@/lib/charts/psychrometric-chart";
import { staticStack } from "@/lib/charts/static-stack";
import { thermostatTimeline } from "@/lib/charts/thermostat-timeline";
import type { CapacityMapCell } from "@/lib/domain/evaluate/capacity-map";
import { afternoonPicture } from "@/lib/domain/pictures/afternoon";
import { capacityLinesPicture } from "@/lib/domain/pictures/capacity-lines";
import { coilPathPicture } from "@/lib/domain/pictures/coil-path";
import { ductCurvePicture } from "@/lib/domain/pictures/duct-curve";
import { staticPartsPicture } from "@/lib/domain/pictures/static-parts";
import type { StageKey } from "@/lib/domain/stages";
import type { Block } from "@/lib/reports/sheet/view";
import { CHART_WIDTH } from "./lived-chart";
import type { PacketParts } from "./parts";

/** The pictures of a stage as its page shows them, of the records as they stand. */
export function stagePictures({ context, evaluation }: PacketParts, stage: StageKey): readonly Block[] {
  const width = CHART_WIDTH;
  if (stage === "equipment_selection") {
    const lines = capacityLinesPicture(context, evaluation);
    const path = coilPathPicture(context, evaluation);
    return [
      ...capacityMap({ context, evaluation }),
      ...titled("Capacity against airflow at design", lines && capacityAgainstAirflow({ ...lines, width })),
      ...titled("The air’s way through the coil at design", path && psychrometricChart({ ...path, width })),
    ];
  }
  if (stage === "airflow_setup") {
    const ducts = ductCurvePicture(context, evaluation);
    const drops = staticPartsPicture(context);
    return [
      ...titled("The ducts on the fan table", ducts && ductCurve({ ...ducts, width })),
      ...titled("Where the static pressure goes", drops && staticStack({ ...drops, width })),
    ];
  }
  if (stage === "control_setup") {
    const afternoon = afternoonPicture(context, evaluation);
    return titled(
      "A hot design afternoon under these settings",
      afternoon && thermostatTimeline({ ...afternoon, width }),
    );
  }
  return [];
}

function titled(text: string, chart: ChartGeometry | null): readonly Block[] {
  return chart === null
    ? []
    : [
        { kind: "heading", text },
        { kind: "chart", chart },
      ];
}

/** Every airflow setting with every capacity setting: whether it fits this house, and what it dries. */
function capacityMap({ context, evaluation }: Pick<PacketParts, "context" | "evaluation">): readonly Block[] {
  const { capacityMap: map } = evaluation.results;
  if (!map.known) return [];
  const { secondStageAirflowSetting: airflow } = context.inputs.airflow_setup;
  const { capacitySetting: capacity } = context.inputs.equipment_selection;
  const text = (value: number | null, decimals: number, unit: string) =>
    value === null ? "–" : `${numberText(value, decimals)} ${unit}`.trim();
  return [
    {
      kind: "heading",
      text: "Airflow setting with capacity setting, on these ducts at design",
      ...notKnown(map.value.cells),
    },
    {
      kind: "table",
      columns: [
        { head: "Airflow", width: 46 },
        { head: "Capacity", width: 66 },
        { head: "Moves", width: 62, align: "right" },
        { head: "Fits this house" },
        { head: "Takes out", width: 54, align: "right" },
        { head: "Sensible", width: 46, align: "right" },
        { head: "Leaving dew point", width: 80, align: "right" },
      ],
      rows: map.value.cells.filter(isKnown).map((cell) => {
        const isChosen = cell.airflowSetting === airflow && cell.capacitySetting === capacity;
        return [
          cell.airflowSetting,
          cell.capacitySetting,
          text(cell.airflowCfm, 0, "cfm"),
          `${cell.fit ?? ""}${isChosen ? ", chosen" : ""}`,
          text(cell.moistureLbPerH, 1, "lb/h"),
          text(cell.sensibleRatio, 2, ""),
          text(cell.leavingDewPointF, 1, "°F"),
        ];
      }),
      ifNone: "No setting can be told yet.",
    },
  ];
}

const isKnown = ({ fit }: CapacityMapCell) => fit !== null;

/** How many combinations cannot be told, and why; a row of dashes each would say less. */
function notKnown(cells: readonly CapacityMapCell[]): { readonly note?: string } {
  const left = cells.filter((cell) => !isKnown(cell));
  if (left.length === 0) return {};
  const names = [...new Set(left.map(({ airflowSetting }) => airflowSetting))].join(", ");
  const reasons = [...new Set(left.map(({ reason }) => reason))].join(" ");
  return { note: `${left.length} of ${cells.length} cannot be told (airflow ${names}): ${reasons}` };
}
