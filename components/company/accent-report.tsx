import { type AccentShade, accentContrast, NIGHT, PAPER } from "@/lib/charts/accent-contrast";
import { numberText } from "@/lib/charts/number-text";

/** How the company's color will be read: as text on paper, in the dark theme, and behind a button's words. */
export function AccentReport({ color }: { readonly color: string }) {
  const report = accentContrast(color);
  return (
    <div aria-live="polite" className="min-w-0 text-sm">
      {report === null ? (
        <p className="text-muted">Enter # and six digits or letters a to f to see how the color reads.</p>
      ) : (
        <>
          <p>
            Your color has a contrast of {numberText(report.brandOnPaperRatio, 1)} to 1 on paper.{" "}
            {report.adjustedOnPaper
              ? `Text in it would be hard to read on tinted paper, so a darker shade, ${report.onPaper.color}, is used there.`
              : "It is used as it is."}
          </p>
          <ul className="mt-2 grid gap-2 sm:grid-cols-2">
            <Sample name="On paper" shade={report.onPaper} background={PAPER} />
            <Sample name="In the dark theme" shade={report.onNight} background={NIGHT} />
          </ul>
          <p className="mt-2 text-xs text-muted">
            Text needs at least 4.5 to 1: WCAG 2.2, 1.4.3. The packet's paper uses the shade for paper.
          </p>
        </>
      )}
    </div>
  );
}

type SampleProps = { readonly name: string; readonly shade: AccentShade; readonly background: string };

function Sample({ name, shade, background }: SampleProps) {
  return (
    <li className="border border-rule p-3" style={{ background, color: shade.color }}>
      <p className="font-semibold">{name}</p>
      <p>
        {shade.color}, {numberText(shade.ratio, 1)} to 1
      </p>
      <p className="mt-2 inline-block px-2 py-1" style={{ background: shade.color, color: shade.text }}>
        Button, {numberText(shade.textRatio, 1)} to 1
      </p>
    </li>
  );
}
