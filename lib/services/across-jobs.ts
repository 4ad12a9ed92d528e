import type { SpreadStrip } from "@/lib/charts/spread-strips";
import { acrossJobs } from "@/lib/db/across-jobs";
import { catalog } from "@/lib/db/catalog";
import { members } from "@/lib/db/members";
import { withTenant } from "@/lib/db/with-tenant";
import {
  type ComparedBy,
  type ComparedGroup,
  type Contrast,
  type CountedGroup,
  compared,
  comparisonInWords,
  contrasts,
  type JobOfGroup,
  type Measure,
  SETTINGS_LOOKED_AT,
} from "@/lib/domain/across-jobs";
import { valueInWords } from "@/lib/domain/across-jobs-names";
import { type GroupVerdicts, groupVerdicts } from "@/lib/domain/group-verdicts";
import type { TenantScope } from "@/lib/domain/scope";
import type { AcrossJobsQuery } from "@/lib/schemas/across-jobs";

export const JOBS_A_PAGE = 50;
const BINS = 24;

export type Comparison = {
  readonly by: ComparedBy;
  readonly groups: readonly ComparedGroup[];
  readonly words: string;
  /** The measure asked for, by group; `null` while none is asked for. */
  readonly spread: Spread | null;
  /** How many jobs of each group, as listed, have which verdict; `null` when they are grouped by it. */
  readonly verdicts: readonly GroupVerdicts[] | null;
  /** The jobs of the chosen group; `null` while none is chosen. */
  readonly chosen: {
    readonly name: string;
    readonly value: string;
    readonly jobs: readonly JobOfGroup[];
    readonly of: number;
  } | null;
};

export type Spread = {
  readonly least: number;
  readonly most: number;
  readonly strips: readonly SpreadStrip[];
};

export type WhatGoesWith = {
  readonly jobs: number;
  readonly complaints: number;
  readonly contrasts: readonly Contrast[];
  /** About the setting that stands out most; `null` where none does. */
  readonly words: string | null;
};

/** An outcome by one setting, over all jobs with a signed startup that the question is about. */
export function comparison(
  scope: TenantScope,
  query: AcrossJobsQuery & { readonly by: ComparedBy },
): Promise<Comparison> {
  const { by, outcome, measure, value, page } = query;
  return withTenant(scope, async () => {
    const repository = acrossJobs(scope, filterOf(query));
    const names = await namesOf(scope, by);
    const counted = named(by, await repository.countedBy(by, outcome), names);
    const groups = compared(by, counted);
    const key = value === "" ? null : value;
    const jobs =
      value === null
        ? null
        : await repository.jobsOf(by, key, {
            outcome,
            measure,
            take: JOBS_A_PAGE,
            skip: (page - 1) * JOBS_A_PAGE,
          });
    return {
      by,
      groups,
      words: comparisonInWords(by, counted, outcome),
      verdicts: by === "verdict" ? null : groupVerdicts(groups, await repository.verdictsBy(by)),
      spread: measure === null ? null : await spread(scope, query, measure, groups),
      chosen: jobs && {
        name: valueInWords(by, key, names),
        value: value ?? "",
        jobs,
        of: counted.find((group) => group.value === key)?.jobs ?? 0,
      },
    };
  });
}

/** Which settings go with an outcome, most certain first. */
export function whatGoesWith(scope: TenantScope, query: AcrossJobsQuery): Promise<WhatGoesWith> {
  return withTenant(scope, async () => {
    const rows = await acrossJobs(scope, filterOf(query)).settingsCounted(query.outcome);
    const counted = Object.fromEntries(
      SETTINGS_LOOKED_AT.map((by) => [
        by,
        named(
          by,
          rows.filter((row) => row.by === by),
          NO_NAMES,
        ),
      ]),
    ) as Record<ComparedBy, CountedGroup[]>;
    const found = contrasts(counted);
    const first = found[0];
    const any = counted[SETTINGS_LOOKED_AT[0] ?? "capacitySetting"];
    return {
      jobs: any.reduce((sum, group) => sum + group.jobs, 0),
      complaints: any.reduce((sum, group) => sum + group.complaints, 0),
      contrasts: found,
      words: first ? comparisonInWords(first.by, counted[first.by], query.outcome) : null,
    };
  });
}

async function spread(
  scope: TenantScope,
  query: AcrossJobsQuery & { readonly by: ComparedBy },
  measure: Measure,
  groups: readonly ComparedGroup[],
): Promise<Spread | null> {
  const repository = acrossJobs(scope, filterOf(query));
  const found = await repository.spreadBy(query.by, measure);
  if (found.length === 0) return null;
  const least = Math.min(...found.map((group) => group.least));
  const most = Math.max(...found.map((group) => group.most));
  const binned = most > least ? await repository.binned(query.by, measure, { least, most, bins: BINS }) : [];
  const strips = groups.flatMap(({ value, name }) => {
    const one = found.find((group) => group.value === value);
    if (!one) return [];
    const bins = Array.from({ length: BINS }, () => 0);
    for (const { value: of, bin, jobs } of binned) if (of === value) bins[bin] = jobs;
    return [{ name, jobs: one.jobs, quantiles: one.quantiles, bins, values: one.values }];
  });
  return { least, most, strips };
}

function named(
  by: ComparedBy,
  rows: readonly Omit<CountedGroup, "name">[],
  names: ReadonlyMap<string, string>,
): CountedGroup[] {
  return rows.map(({ value, jobs, complaints }) => ({
    value,
    jobs,
    complaints,
    name: valueInWords(by, value, names),
  }));
}

export function filterOf({ from, to, equipment }: AcrossJobsQuery) {
  return { from, to, equipmentFamilyId: equipment };
}

/** The equipment jobs can be narrowed to. */
export async function equipmentNames(
  scope: TenantScope,
): Promise<readonly { readonly value: string; readonly label: string }[]> {
  return (await catalog(scope).listFamilies()).map(({ id, name }) => ({ value: id, label: name }));
}

/** Settings are told by their own values. */
const NO_NAMES: ReadonlyMap<string, string> = new Map();

/** What the ids of a comparison stand for, those no longer in use too: old jobs rest on them. */
async function namesOf(scope: TenantScope, by: ComparedBy): Promise<ReadonlyMap<string, string>> {
  switch (by) {
    case "techId":
      return new Map((await members(scope).list()).map((one) => [one.userId, one.name]));
    case "equipment":
      return new Map((await catalog(scope).listFamilies()).map(({ id, name }) => [id, name]));
    case "controlModelId":
      return new Map(
        (await catalog(scope).listControls("all")).map((one) => [one.id, `${one.maker} ${one.name}`]),
      );
    default:
      return NO_NAMES;
  }
}
