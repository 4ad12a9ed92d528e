import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { FindingList } from "@/components/findings/finding-list";
import { VerdictMark } from "@/components/findings/verdict-mark";
import type { LedgerLine } from "@/components/ledger/ledger-line";
import { LedgerTable } from "@/components/ledger/ledger-table";
import { NumberField } from "@/components/ui/number-field";
import { type Finding, VERDICTS } from "@/lib/engineering/findings";

const finding = (verdict: Finding["verdict"], title: string): Finding => ({
  ruleId: "airflow.external-static",
  title,
  verdict,
  binding: true,
  statement: "Measured 0.62 in. w.c. against 0.50 in. w.c.",
  figures: [{ label: "Measured", value: 0.62, unit: "in. w.c.", decimals: 2, uncertainty: 0.01 }],
  basis: { kind: "common practice, no source", source: "trade habit", certainty: "practice" },
  nextStep: null,
  caution: null,
  inputs: [],
});

describe("a verdict", () => {
  test("has a word and a shape of its own, each different", () => {
    const marks = VERDICTS.map((verdict) => renderToStaticMarkup(<VerdictMark verdict={verdict} />));
    expect(marks.map((mark) => mark.replace(/<[^>]*>/g, ""))).toEqual([
      "Meets",
      "Falls short",
      "Can’t tell",
      "Not measured",
    ]);
    const shapes = marks.map((mark) => /<svg.*<\/svg>/.exec(mark)?.[0]);
    expect(new Set(shapes).size).toBe(VERDICTS.length);
  });

  test("keeps its word for a screen reader when only the shape shows", () => {
    const mark = renderToStaticMarkup(<VerdictMark verdict="falls short" look="shape" />);
    expect(mark).toContain('<span class="sr-only">Falls short</span>');
  });
});

describe("findings", () => {
  test("come in the order a person needs them, each once", () => {
    const given = (["meets", null, "not measured", "can't tell", "falls short"] as const).map((verdict) =>
      finding(verdict, `about ${verdict}`),
    );
    const html = renderToStaticMarkup(<FindingList findings={given} />);
    const titles = Array.from(html.matchAll(/<h4[^>]*>(.*?)<\/h4>/g), (match) => match[1]);
    expect(titles).toEqual([
      "about falls short",
      "about can&#x27;t tell",
      "about not measured",
      "about meets",
      "about null",
    ]);
  });

  test("say a habit of the trade once, and the uncertainty with the number", () => {
    const html = renderToStaticMarkup(<FindingList findings={[finding("meets", "Static")]} />);
    expect(html.match(/common practice, no source/g)).toHaveLength(1);
    expect(html.replace(/<[^>]*>/g, "")).toContain("0.62 ± 0.01 in. w.c.");
  });
});

describe("the ledger", () => {
  const line = (key: string): LedgerLine => ({
    key,
    label: `Line ${key}`,
    unit: "cfm",
    decimals: 0,
    verdict: "meets",
    cells: { measured: { value: 1_284, uncertainty: 64, verdict: "meets", href: "/evidence" } },
  });

  test("draws every line once, also one that no group names", () => {
    const html = renderToStaticMarkup(
      <LedgerTable
        label="Ledger"
        lines={[line("a"), line("b"), line("c")]}
        groups={[{ key: "g", title: "Airflow", lines: ["b", "a", "unknown"] }]}
      />,
    );
    expect(Array.from(html.matchAll(/id="line-(\w)"/g), (match) => match[1])).toEqual(["b", "a", "c"]);
    expect(html).toContain("Other lines");
  });

  test("a cell leads to its evidence; an empty one says so in words", () => {
    const html = renderToStaticMarkup(<LedgerTable label="Ledger" lines={[line("a")]} />);
    expect(html.match(/href="\/evidence"/g)).toHaveLength(1);
    expect(html.match(/not recorded/g)).toHaveLength(3);
    expect(html.replace(/<[^>]*>/g, "")).toContain("1,284 cfm± 64");
  });
});

describe("a number field", () => {
  test("keeps what was typed, and ties unit, hint and error to the input", () => {
    const html = renderToStaticMarkup(
      <NumberField
        name="airflow"
        label="Airflow"
        unit="cfm"
        defaultValue="12,50 cfm"
        hint="As read."
        error="Not a number."
      />,
    );
    expect(html).toContain('value="12,50 cfm"');
    expect(html).toContain('inputMode="decimal"');
    expect(html).toContain('aria-describedby="field-airflow-unit field-airflow-hint field-airflow-error"');
    expect(html).toContain('aria-invalid="true"');
  });
});
