import { Fragment, type ReactNode } from "react";
import { Badge } from "@/components/ui/badge";
import { cx } from "@/components/ui/cx";
import type { ShownOption } from "./option-data";
import { OPTION_ROWS, type OptionRowGroup } from "./option-rows";

type Props = {
  readonly shown: readonly ShownOption[];
  readonly chosenId: string | null;
  readonly editedId: string | null;
  /** Groups of rows after the table's own. */
  readonly more: readonly OptionRowGroup[];
  readonly tools: (shown: ShownOption, index: number) => ReactNode;
};

/** The options side by side: one column each, one row a figure. */
export function OptionTable({ shown, chosenId, editedId, more, tools }: Props) {
  return (
    <section
      aria-label="Options side by side"
      data-scroll-region=""
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
      tabIndex={0}
      className="overflow-x-auto border border-rule bg-sheet"
    >
      <table className="ruled-table">
        <caption className="sr-only">Options side by side</caption>
        <thead>
          <tr>
            <td className="sticky left-0 z-10 bg-sheet max-sm:static" />
            {shown.map((one, index) => (
              <th key={one.option.id} scope="col" className="min-w-44 align-top">
                <span className="flex flex-wrap items-center gap-2 text-base text-ink">
                  {one.option.label}
                  {one.option.id === chosenId ? <Badge tone="accent">Chosen</Badge> : null}
                  {one.option.id === editedId ? <Badge>as typed</Badge> : null}
                </span>
                {tools(one, index)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {[...OPTION_ROWS, ...more].map((group) => (
            <Fragment key={group.title}>
              <tr>
                <th scope="rowgroup" colSpan={shown.length + 1} className="bg-sunk text-left font-semibold">
                  {group.title}
                </th>
              </tr>
              {group.rows.map((row) => (
                <tr key={row.label}>
                  <th
                    scope="row"
                    className="sticky left-0 z-10 min-w-36 bg-sheet max-sm:static max-sm:min-w-28"
                  >
                    {row.label}
                  </th>
                  {shown.map((one) => (
                    <td
                      key={one.option.id}
                      className={cx("align-top", one.option.id === chosenId && "bg-sunk/50")}
                    >
                      {row.cell(one)}
                    </td>
                  ))}
                </tr>
              ))}
            </Fragment>
          ))}
        </tbody>
      </table>
    </section>
  );
}
