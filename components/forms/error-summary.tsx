import type { FieldProblem } from "@/lib/domain/problems";

export type ErrorSummaryProps = {
  readonly title?: string;
  readonly problems: readonly FieldProblem[];
};

/** Everything that keeps a form from being saved, each line leading to its field. */
export function ErrorSummary({
  title = "Not saved yet: some entries need attention",
  problems,
}: ErrorSummaryProps) {
  if (problems.length === 0) return null;
  return (
    <div role="alert" className="border border-l-4 border-short bg-sheet p-3 text-sm">
      <p className="font-semibold">{title}</p>
      <ul className="mt-1 list-disc pl-5">
        {problems.map((problem) => (
          <li key={`${problem.field} ${problem.message}`}>
            <a className="text-link" href={`#field-${problem.field}`}>
              {problem.message}
            </a>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The message for one field, to pass as its `error`. */
export function problemOf(problems: readonly FieldProblem[], field: string): string | undefined {
  return problems.find((problem) => problem.field === field)?.message;
}
