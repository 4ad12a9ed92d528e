import type { ReactNode } from "react";
import type { ChartGeometry } from "@/lib/charts/geometry";
import { ChartDrawing } from "./chart-drawing";

/** Widths a chart is drawn for; the place the figure stands in decides which drawing shows. */
const DRAWINGS = [
  { width: 340, className: "chart-narrow" },
  { width: 600, className: "chart-middle" },
  { width: 1080, className: "chart-broad" },
] as const;

export type ChartFigureProps = {
  readonly title: string;
  /** The chart at a width: its text keeps its size on a phone and on a broad screen. */
  readonly geometryAt: (width: number) => ChartGeometry | null;
  /** Said when there is nothing to draw. */
  readonly empty: string;
  /** What else the reader should know: where the data come from. */
  readonly note?: ReactNode;
};

/** A chart with its sentences and its numbers. */
export function ChartFigure({ title, geometryAt, empty, note }: ChartFigureProps) {
  const drawings = DRAWINGS.flatMap(({ width, className }) => {
    const geometry = geometryAt(width);
    return geometry === null ? [] : { geometry, className };
  });
  const words = drawings[0]?.geometry;
  if (words === undefined) {
    return (
      <div className="border border-rule bg-sheet p-4">
        <p className="font-semibold">{title}</p>
        <p className="text-sm text-muted">{empty}</p>
      </div>
    );
  }
  return (
    <figure className="chart-figure border border-rule bg-sheet p-4">
      <figcaption>
        <p className="font-semibold">{title}</p>
        <p className="mb-3 text-sm text-muted">{words.textAlternative}</p>
      </figcaption>
      {drawings.map(({ geometry, className }) => (
        <ChartDrawing key={className} geometry={geometry} name={title} className={className} />
      ))}
      {note === undefined ? null : <div className="mt-2 text-sm text-muted">{note}</div>}
      <ChartTable title={title} geometry={words} />
    </figure>
  );
}

function ChartTable({ title, geometry }: { readonly title: string; readonly geometry: ChartGeometry }) {
  return (
    <details className="no-print mt-2 border-t border-rule pt-1 text-sm">
      <summary className="inline-block min-h-8 cursor-pointer py-1.5 text-accent">Show the numbers</summary>
      <section
        aria-label={`${title}: numbers`}
        data-scroll-region=""
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
        tabIndex={0}
        className="max-h-80 overflow-auto border border-rule"
      >
        <table className="ruled-table">
          <thead>
            <tr>
              {geometry.tableHead.map((head, index) => (
                <th key={head} scope="col" className={index === 0 ? undefined : "numeric"}>
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {geometry.tableRows.map((row) => (
              <tr key={row.join(" ")}>
                {row.map((text, index) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a column is its position
                  <td key={index} className={index === 0 ? undefined : "numeric"}>
                    {text}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
