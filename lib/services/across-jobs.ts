import { acrossJobs, type JobOfGroup } from "@/lib/db/across-jobs";
import { catalog } from "@/lib/db/catalog";
import { members } from "@/lib/db/members";
import { withTenant } from "@/lib/db/with-tenant";
import { type ComparedBy, type ComparedGroup, compared, comparisonInWords } from "@/lib/domain/across-jobs";
import type { TenantScope } from "@/lib/domain/scope";
import type { AcrossJobsQuery } from "@/lib/schemas/across-jobs";

const JOBS_SHOWN = 100;

export type AcrossJobsView = {
  readonly by: ComparedBy;
  readonly groups: readonly ComparedGroup[];
  readonly words: string;
  /** The jobs of the chosen group; `null` while none is chosen. */
  readonly chosen: { readonly name: string; readonly jobs: readonly JobOfGroup[] } | null;
};

/** Humidity complaints by one setting, over all jobs with a signed startup. */
export function acrossJobsView(scope: TenantScope, { by, value }: AcrossJobsQuery): Promise<AcrossJobsView> {
  return withTenant(scope, async () => {
    const counted = await acrossJobs(scope).complaintsBy(by);
    const names = await namesOf(scope, by);
    const nameOf = (key: string | null) =>
      key === null || key === "" ? "not recorded" : (names.get(key) ?? key);
    const groups = compared(
      by,
      counted.map((group) => ({ ...group, name: nameOf(group.value) })),
    );
    const jobs =
      value === null ? null : await acrossJobs(scope).jobsOf(by, value === "" ? null : value, JOBS_SHOWN);
    return {
      by,
      groups,
      words: comparisonInWords(by, groups),
      chosen: jobs && { name: nameOf(value), jobs },
    };
  });
}

async function namesOf(scope: TenantScope, by: ComparedBy): Promise<ReadonlyMap<string, string>> {
  if (by === "techId") return new Map((await members(scope).list()).map((one) => [one.userId, one.name]));
  if (by !== "equipmentModelId") return new Map();
  const models = await catalog(scope).listEquipment();
  return new Map(models.map((model) => [model.id, `${model.maker} ${model.name}`]));
}
