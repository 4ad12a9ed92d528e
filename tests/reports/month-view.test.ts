import { expect, test } from "vitest";
import { compared } from "@/lib/domain/across-jobs";
import { monthView } from "@/lib/services/packet-views/month";
import { PLAIN_BRAND } from "../support/packet-parts";

test("of more settings than fit, the month shows those most surely troubled", () => {
  const counted = Array.from({ length: 9 }, (_, tap) => ({
    value: `tap ${tap}`,
    name: `tap ${tap}`,
    jobs: 20,
    complaints: tap,
  }));
  const view = monthView({
    brand: PLAIN_BRAND,
    paper: "letter",
    month: "2026-07",
    createdOn: "2026-07-31",
    revision: 1,
    reported: [],
    waiting: 4,
    comparisons: [
      {
        by: "secondStageAirflowSetting",
        groups: compared("secondStageAirflowSetting", counted),
        words: "What they share",
      },
    ],
  });
  const table = view.sections[1]?.blocks[0];
  expect(table?.kind === "table" && table.rows.map((row) => row[0])).toEqual(
    [8, 7, 6, 5, 4, 3].map((tap) => `tap ${tap}`),
  );
  expect(view.facts).toContainEqual({ label: "Callbacks not closed, of any month", text: "4" });
});
