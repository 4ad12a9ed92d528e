import type { LogPreview } from "@/lib/schemas/log-file";

const DELIMITERS: Readonly<Record<string, string>> = {
  ";": "semicolons",
  "\t": "tabs",
  "|": "bars",
  ",": "commas",
};

/** The first rows of a file as they stand in it. */
export function PreviewTable({ preview }: { readonly preview: LogPreview }) {
  const { headings, rows, delimiter } = preview;
  return (
    <figure className="grid gap-1">
      <figcaption className="text-sm text-muted">
        {headings.length} columns between {DELIMITERS[delimiter] ?? delimiter}; the first rows:
      </figcaption>
      <section
        aria-label="First rows of the file"
        data-scroll-region=""
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
        tabIndex={0}
        className="overflow-x-auto border border-rule"
      >
        <table className="ruled-table text-sm">
          <thead>
            <tr>
              {headings.map((heading) => (
                <th key={heading} scope="col">
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((cells) => (
              <tr key={cells.join(" ")}>
                {headings.map((heading, at) => (
                  <td key={heading}>{cells[at] ?? ""}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </figure>
  );
}
