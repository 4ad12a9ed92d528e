import type { CapacityMap, CapacityMapCell } from "@/lib/domain/evaluate/capacity-map";
import { cx } from "../ui/cx";

type Props = {
  readonly map: CapacityMap;
  readonly chosenAirflow: string | null;
  readonly chosenCapacity: string | null;
};

const SHAPES = { fits: "●", "too big": "▲", "too small": "▼", "coil too cold": "✳" } as const;

/** Every airflow setting with every capacity setting: whether it fits this house, and its drying. */
export function CapacityMapTable({ map, chosenAirflow, chosenCapacity }: Props) {
  const airflows = [...new Set(map.cells.map((cell) => cell.airflowSetting))];
  const capacities = [...new Set(map.cells.map((cell) => cell.capacitySetting))];
  const cellAt = (airflow: string, capacity: string) =>
    map.cells.find((cell) => cell.airflowSetting === airflow && cell.capacitySetting === capacity);
  return (
    <section
      aria-label="Capacity map"
      data-scroll-region=""
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
      tabIndex={0}
      className="overflow-x-auto border border-rule bg-sheet"
    >
      <table className="ruled-table">
        <caption className="p-3 text-left font-semibold">
          Airflow setting with capacity setting, on these ducts at design
        </caption>
        <thead>
          <tr>
            <th scope="col">Airflow</th>
            {capacities.map((capacity) => (
              <th key={capacity} scope="col">
                {capacity}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {airflows.map((airflow) => (
            <tr key={airflow}>
              <th scope="row">
                {airflow}
                <span className="block text-sm font-normal text-muted">
                  {figure(cellAt(airflow, capacities[0] ?? "")?.airflowCfm ?? null, 0, "cfm")}
                </span>
              </th>
              {capacities.map((capacity) => (
                <MapCell
                  key={capacity}
                  cell={cellAt(airflow, capacity)}
                  chosen={airflow === chosenAirflow && capacity === chosenCapacity}
                />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function MapCell({ cell, chosen }: { readonly cell: CapacityMapCell | undefined; readonly chosen: boolean }) {
  if (!cell) return <td>–</td>;
  return (
    <td className={cx("min-w-36 align-top", chosen && "outline-2 -outline-offset-2 outline-accent")}>
      <span className="block font-semibold">
        {cell.fit === null ? "not known" : `${SHAPES[cell.fit]} ${cell.fit}`}
        {chosen ? " (chosen)" : ""}
      </span>
      {cell.fit === null ? (
        <span className="text-sm text-muted">{cell.reason}</span>
      ) : (
        <span className="block text-sm">
          {figure(cell.moistureLbPerH, 1, "lb/h")}
          <br />
          {figure(cell.sensibleRatio, 2, "sensible ratio")}
          <br />
          {cell.leavingDewPointF === null
            ? "dew point not in the table"
            : `${figure(cell.leavingDewPointF, 1, "°F")} leaving dew point`}
          {chosen ? <span className="block text-muted">{cell.reason}</span> : null}
        </span>
      )}
    </td>
  );
}

function figure(value: number | null, decimals: number, unit: string): string {
  return value === null
    ? "not known"
    : `${value.toLocaleString("en-US", { minimumFractionDigits: decimals, maximumFractionDigits: decimals })} ${unit}`;
}
