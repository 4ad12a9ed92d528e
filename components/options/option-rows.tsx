import type { ReactNode } from "react";
import { VerdictMark } from "@/components/findings/verdict-mark";
import { Quantity } from "@/components/ui/quantity";
import { numberText } from "@/lib/charts/number-text";
import type { Derived } from "@/lib/domain/evaluate/context";
import type { Sensitivity } from "@/lib/domain/options";
import type { ShownOption } from "./option-data";

export type OptionRow = {
  readonly label: string;
  readonly cell: (shown: ShownOption) => ReactNode;
};
export type OptionRowGroup = { readonly title: string; readonly rows: readonly OptionRow[] };

const text = (value: string | null) => value ?? <span className="text-muted">not chosen</span>;

/** A figure, or why there is none: fields still empty, or something impossible. */
function figure<T>(derived: Derived<T>, pick: (value: T) => number | null, unit: string, decimals: number) {
  if (derived.known) return <Quantity value={pick(derived.value)} unit={unit} decimals={decimals} />;
  return derived.problem === null ? (
    <Quantity value={null} unit={unit} decimals={decimals} />
  ) : (
    <span className="block max-w-56 text-sm text-muted">{derived.problem}</span>
  );
}

const split = (of: "design" | "wetMild"): readonly OptionRow[] => [
  { label: "Total capacity", cell: ({ figures }) => figure(figures[of], (one) => one.totalBtuh, "Btu/h", 0) },
  { label: "Sensible", cell: ({ figures }) => figure(figures[of], (one) => one.sensibleBtuh, "Btu/h", 0) },
  { label: "Latent", cell: ({ figures }) => figure(figures[of], (one) => one.latentBtuh, "Btu/h", 0) },
  {
    label: "Moisture removal while it runs",
    cell: ({ figures }) => figure(figures[of], (one) => one.moistureLbPerH, "lb/h", 1),
  },
  {
    label: "Leaving dew point",
    cell: ({ figures }) => figure(figures[of], (one) => one.leavingDewPointF, "°F", 1),
  },
];

/** Everything the options are compared by, in the order of the chain. A year's forecast is a group of its own after these. */
export const OPTION_ROWS: readonly OptionRowGroup[] = [
  {
    title: "What it is",
    rows: [
      { label: "Equipment", cell: ({ model }) => text(model && `${model.maker} ${model.name}`) },
      { label: "Capacity setting", cell: ({ inputs }) => text(inputs.capacitySetting) },
      {
        label: "Airflow setting, full capacity",
        cell: ({ inputs }) => text(inputs.secondStageAirflowSetting),
      },
      { label: "Airflow setting, first stage", cell: ({ inputs }) => text(inputs.firstStageAirflowSetting) },
      {
        label: "Mechanical outdoor air",
        cell: ({ context }) => (
          <Quantity value={context.inputs.load_summary.ventilationCfm} unit="cfm" decimals={0} />
        ),
      },
      {
        label: "Supplemental dehumidifier",
        cell: ({ inputs }) => (
          <Quantity value={inputs.dehumidifierPintsPerDay} unit="pints/day" decimals={0} />
        ),
      },
    ],
  },
  {
    title: "Sizing",
    rows: [
      { label: "Selection", cell: ({ figures }) => <VerdictMark verdict={figures.selection} /> },
      { label: "Airflow", cell: ({ figures }) => <VerdictMark verdict={figures.airflow} /> },
      { label: "What falls short", cell: (shown) => <Shortfalls {...shown} /> },
    ],
  },
  {
    title: "At the cooling design condition",
    rows: [
      ...split("design"),
      {
        label: "Lowest humidity it can hold",
        cell: ({ figures }) => <Quantity value={figures.lowestRhPct} unit="%" decimals={0} />,
      },
    ],
  },
  {
    title: "In wet mild weather (design dew point)",
    rows: [
      ...split("wetMild"),
      {
        label: "Water brought by mechanical outdoor air",
        cell: ({ figures }) => figure(figures.ventilationLbPerH, (one) => one, "lb/h", 1),
      },
    ],
  },
  {
    title: "Airflow",
    rows: [
      {
        label: "Airflow at full capacity",
        cell: ({ figures }) => <Quantity value={figures.airflowCfm} unit="cfm" decimals={0} />,
      },
      {
        label: "Airflow per ton as set",
        cell: ({ figures }) => <Quantity value={figures.cfmPerTon} unit="cfm/ton" decimals={0} />,
      },
      {
        label: "External static pressure",
        cell: ({ figures }) => <Quantity value={figures.staticInWc} unit="in. w.c." decimals={2} />,
      },
    ],
  },
  {
    title: "Heating",
    rows: [
      {
        label: "Balance point",
        cell: ({ figures }) => figure(figures.heating, (one) => one.balancePointF, "°F", 1),
      },
      {
        label: "Auxiliary heat needed at design",
        cell: ({ figures }) => figure(figures.heating, (one) => one.auxiliaryAtDesignKw, "kW", 1),
      },
    ],
  },
  {
    title: "Most sensitive to",
    rows: [
      {
        label: "Computed again with one change",
        cell: ({ figures }) => <Sensitivities all={figures.sensitivities} />,
      },
    ],
  },
];

function Shortfalls({ figures }: ShownOption) {
  if (figures.shortfalls.length === 0) return <span className="text-muted">nothing</span>;
  return (
    <ul className="grid max-w-64 gap-1 text-sm">
      {figures.shortfalls.map((one, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: one rule may speak more than once, as for each stage
        <li key={`${one.ruleId} ${index}`} title={one.statement}>
          {one.title}
        </li>
      ))}
    </ul>
  );
}

const signed = (value: number, decimals: number) => `${value > 0 ? "+" : ""}${numberText(value, decimals)}`;

function Sensitivities({ all }: { readonly all: readonly Sensitivity[] }) {
  if (all.length === 0) return <Quantity value={null} unit="" decimals={0} />;
  const [strongest, ...rest] = all.map((one) => (
    <li key={one.change}>
      <strong>{one.change}</strong>: covers {signed(one.latentPoints, 0)} points of the latent and{" "}
      {signed(one.sensiblePoints, 0)} of the sensible load, {signed(one.moistureLbPerH, 1)} lb/h
      {one.verdictAfter === one.verdictBefore ? "" : `; then “${one.verdictAfter ?? "no verdict"}”`}
    </li>
  ));
  return (
    <div className="max-w-64 text-sm">
      <ul>{strongest}</ul>
      {rest.length > 0 ? (
        <details className="mt-1">
          <summary className="cursor-pointer text-muted">{rest.length} weaker changes</summary>
          <ul className="mt-1 grid gap-1">{rest}</ul>
        </details>
      ) : null}
    </div>
  );
}
