import type { ReactNode } from "react";
import {
  type CapacityAgainstAirflowInput,
  capacityAgainstAirflow,
} from "@/lib/charts/capacity-against-airflow";
import { humidityChart } from "@/lib/charts/humidity-chart";
import type { HumidityChartInput } from "@/lib/charts/humidity-input";
import { psychrometricChart } from "@/lib/charts/psychrometric-chart";
import type { PsychrometricChartInput } from "@/lib/charts/psychrometric-input";
import { type SpreadStripsInput, spreadStrips } from "@/lib/charts/spread-strips";
import { type StaticStackInput, staticStack } from "@/lib/charts/static-stack";
import { type ThermostatTimelineInput, thermostatTimeline } from "@/lib/charts/thermostat-timeline";
import { type VerdictSharesGroup, verdictShares } from "@/lib/charts/verdict-shares";
import { ChartFigure } from "./chart-figure";

/** A chart's data without the width, which its place decides. */
type DrawnChartProps<Input> = Omit<Input, "width"> & { readonly title: string; readonly note?: ReactNode };

export type HumidityChartProps = DrawnChartProps<HumidityChartInput>;

/** Relative humidity over time, its band, and the dew point. */
export function HumidityChart({ title, note, ...data }: HumidityChartProps) {
  return (
    <ChartFigure
      title={title}
      note={note}
      geometryAt={(width) => humidityChart({ ...data, width })}
      empty="No humidity readings yet. Add a log of the house."
    />
  );
}

export type PsychrometricChartProps = DrawnChartProps<PsychrometricChartInput>;

/** States of air and the way through the coil. */
export function PsychrometricChart({ title, note, ...data }: PsychrometricChartProps) {
  return (
    <ChartFigure
      title={title}
      note={note}
      geometryAt={(width) => psychrometricChart({ ...data, width })}
      empty="No state of air is known yet."
    />
  );
}

export type CapacityAgainstAirflowProps = DrawnChartProps<CapacityAgainstAirflowInput>;

/** What the equipment gives at each airflow against what the house needs. */
export function CapacityAgainstAirflow({ title, note, ...data }: CapacityAgainstAirflowProps) {
  return (
    <ChartFigure
      title={title}
      note={note}
      geometryAt={(width) => capacityAgainstAirflow({ ...data, width })}
      empty="No capacity is computed yet. Choose equipment with a performance table."
    />
  );
}

export type StaticStackProps = DrawnChartProps<StaticStackInput>;

/** Where the static pressure goes. */
export function StaticStack({ title, note, ...data }: StaticStackProps) {
  return (
    <ChartFigure
      title={title}
      note={note}
      geometryAt={(width) => staticStack({ ...data, width })}
      empty="No pressure drop is entered yet."
    />
  );
}

export type ThermostatTimelineProps = DrawnChartProps<ThermostatTimelineInput>;

/** Room, setpoint and what ran. */
export function ThermostatTimeline({ title, note, ...data }: ThermostatTimelineProps) {
  return (
    <ChartFigure
      title={title}
      note={note}
      geometryAt={(width) => thermostatTimeline({ ...data, width })}
      empty="No temperatures to draw yet."
    />
  );
}

export type SpreadStripsProps = DrawnChartProps<SpreadStripsInput>;

/** How a measure is spread over jobs, one strip a group. */
export function SpreadStrips({ title, note, ...data }: SpreadStripsProps) {
  return (
    <ChartFigure
      title={title}
      note={note}
      geometryAt={(width) => spreadStrips({ ...data, width })}
      empty="No job has a value of this yet."
    />
  );
}

type VerdictSharesProps = { readonly title: string; readonly groups: readonly VerdictSharesGroup[] };

/** The verdicts of jobs, one bar a group. */
export function VerdictShares({ title, groups }: VerdictSharesProps) {
  return (
    <ChartFigure
      title={title}
      geometryAt={(width) => verdictShares({ groups, width })}
      empty="No group has enough jobs."
      note="A bar is all jobs of its group; what is left empty has not been judged."
    />
  );
}
