import { company } from "@/lib/db/company";
import { withTenant } from "@/lib/db/with-tenant";
import testSources from "@/lib/domain/generated/test-sources.json";
import { changedLimits } from "@/lib/domain/limit-change";
import { LIMIT_KEYS, limitDefinition, limitProblems } from "@/lib/domain/limits";
import type { FieldProblem } from "@/lib/domain/problems";
import { may } from "@/lib/domain/roles";
import { chapterFolderOf, RULE_BOOK } from "@/lib/domain/rule-book";
import type { TenantScope } from "@/lib/domain/scope";
import { type TrailChange, trailChanges } from "@/lib/domain/trail";
import type { Rule } from "@/lib/engineering/findings";
import type { LimitDefinition } from "@/lib/engineering/limit-definition";
import { invalidInput } from "@/lib/errors";
import type { ChangeLimitInput } from "@/lib/schemas/rules";
import { queueJudging } from "./judge-again";

export type LimitView = LimitDefinition & {
  readonly key: string;
  readonly inForce: number;
  /** True when the company has set its own value. */
  readonly isOwn: boolean;
  /** Why the company's value cannot be used; `null` when it can. */
  readonly problem: string | null;
};

export type RuleView = Rule & {
  readonly reads: readonly LimitView[];
  /** The published sources its test checks it against. */
  readonly sources: readonly string[];
};

export type RulesView = {
  readonly chapters: readonly {
    readonly folder: string;
    readonly title: string;
    readonly rules: readonly RuleView[];
    readonly limits: readonly (LimitView & {
      /** The changes of this limit alone, newest first. */
      readonly history: readonly LimitRevision[];
    })[];
  }[];
  /** Values the company has set that no rule of this release can use. */
  readonly problems: readonly FieldProblem[];
  readonly history: readonly LimitRevision[];
  readonly mayEdit: boolean;
  readonly timeZone: string;
};

export type LimitRevision = {
  readonly revision: number;
  readonly at: string;
  readonly who: string;
  readonly reason: string;
  readonly changes: readonly TrailChange[];
};

/** Every rule with what it rests on, and every limit with the value in force. */
export async function rulesView(scope: TenantScope): Promise<RulesView> {
  const [overrides, revisions, { timeZone }] = await Promise.all([
    company(scope).limitOverrides(),
    company(scope).limitHistory(),
    company(scope).get(),
  ]);
  const limits = limitViews(overrides);
  const history = limitHistory(revisions);
  const sources: Readonly<Record<string, readonly string[]>> = testSources;
  return {
    chapters: RULE_BOOK.map(({ folder, title, rules }) => ({
      folder,
      title,
      rules: rules.map((rule) => ({
        ...rule,
        reads: limits.filter(({ key }) => rule.limits.includes(key)),
        sources: sources[rule.checkedBy] ?? [],
      })),
      limits: limits
        .filter(({ key }) => chapterFolderOf(key) === folder)
        .map((limit) => ({ ...limit, history: historyOf(limit.key, history) })),
    })),
    problems: limitProblems(overrides),
    history,
    mayEdit: may(scope.role, "rules.edit"),
    timeZone,
  };
}

/** Sets one limit of the company, or goes back to its seed value. The reason stays with it. */
export function changeLimit(scope: TenantScope, { key, value, reason }: ChangeLimitInput): Promise<void> {
  // As if alone, so that two owners who change two limits at once both get theirs.
  const alone = { isolation: "Serializable" } as const;
  return withTenant(
    scope,
    async () => {
      const change = changedLimits(await company(scope).limitOverrides(), key, value);
      if (!change.ok) throw invalidInput([change.problem]);
      await company(scope).setLimits(change.values, reason);
      await queueJudging(scope, "a company limit has changed");
    },
    alone,
  );
}

/** All limits with the company's own values laid over the seeds. */
export function limitViews(overrides: Readonly<Record<string, number>>): readonly LimitView[] {
  const problems = limitProblems(overrides);
  return LIMIT_KEYS.map((key) => {
    const definition = limitDefinition(key);
    return {
      ...definition,
      key,
      inForce: overrides[key] ?? definition.seed,
      isOwn: overrides[key] !== undefined,
      problem: problems.find((problem) => problem.field === key)?.message ?? null,
    };
  });
}

type StoredRevision = {
  readonly revision: number;
  readonly at: string;
  readonly byName: string;
  readonly reason: string;
  readonly values: Readonly<Record<string, number>>;
};

/** What each revision changed, newest first. */
export function limitHistory(newestFirst: readonly StoredRevision[]): readonly LimitRevision[] {
  return newestFirst.map(({ revision, at, byName, reason, values }, index) => ({
    revision,
    at,
    who: byName,
    reason,
    changes: trailChanges(
      {
        action: "rule limits changed",
        entity: "rule limits",
        before: newestFirst[index + 1]?.values ?? {},
        after: values,
      },
      new Map(),
    ),
  }));
}

/** What happened to one limit. */
function historyOf(key: string, all: readonly LimitRevision[]): readonly LimitRevision[] {
  return all.flatMap((revision) => {
    const changes = revision.changes.filter((change) => change.key === key);
    return changes.length === 0 ? [] : [{ ...revision, changes }];
  });
}
