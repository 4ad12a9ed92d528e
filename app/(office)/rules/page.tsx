import type { Metadata } from "next";
import { LimitHistory } from "@/components/rules/limit-history";
import { LimitTable } from "@/components/rules/limit-table";
import { RuleEntry } from "@/components/rules/rule-entry";
import { PageHeader } from "@/components/shell/page-header";
import { Notice } from "@/components/ui/notice";
import { pageScope } from "@/lib/server/page";
import { rulesView } from "@/lib/services/rules";
import { previewLimit, setLimit } from "./actions";

export const metadata: Metadata = { title: "Rules" };

export default async function RulesPage() {
  const scope = await pageScope("rules.read");
  const { chapters, problems, history, mayEdit, timeZone } = await rulesView(scope);
  return (
    <>
      <PageHeader
        title="Rules"
        lead="Every rule this product applies: its equation, what it rests on and how sure that is, the company limits it reads and the test that checks it. Written from the code itself."
      />
      {problems.length === 0 ? null : (
        <Notice kind="problem" title="Some limits cannot be used. Jobs are not judged until they are mended.">
          {problems.map(({ field, message }) => (
            <p key={field}>{message}</p>
          ))}
        </Notice>
      )}
      <nav aria-label="Chapters" className="no-print my-4">
        <ul className="flex flex-wrap gap-x-4 gap-y-1">
          {chapters.map(({ folder, title, rules }) => (
            <li key={folder}>
              <a href={`#${folder}`} className="text-link inline-block py-1">
                {title}
              </a>{" "}
              <span className="text-sm text-muted">{rules.length}</span>
            </li>
          ))}
          <li>
            <a href="#history" className="text-link inline-block py-1">
              Changes of limits
            </a>
          </li>
        </ul>
      </nav>
      {chapters.map(({ folder, title, rules, limits }) => (
        <section key={folder} aria-labelledby={folder} className="mb-8">
          <h2 id={folder} className="mb-2 text-lg">
            {title}
          </h2>
          <div className="mb-4 border border-rule bg-sheet">
            {rules.map((rule) => (
              <RuleEntry key={rule.id} rule={rule} />
            ))}
          </div>
          {limits.length === 0 ? null : (
            <LimitTable
              label={`Company limits: ${title}`}
              limits={limits}
              timeZone={timeZone}
              doors={mayEdit ? { setLimit, previewLimit } : undefined}
            />
          )}
        </section>
      ))}
      <section aria-labelledby="history">
        <h2 id="history" className="mb-2 text-lg">
          Changes of limits
        </h2>
        <LimitHistory history={history} timeZone={timeZone} />
      </section>
    </>
  );
}
