import type { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { COMPRESSOR_KINDS } from "@/lib/domain/catalog";
import { ROLES } from "@/lib/domain/roles";
import { STAGES } from "@/lib/domain/stages";
import { VERDICTS } from "@/lib/engineering/findings";
import { type Table, tenantTables, wordsOf } from "../support/catalog";
import { connect } from "../support/connect";

let client: Client;
let tables: readonly Table[];

beforeAll(async () => {
  client = await connect();
  tables = await tenantTables(client);
});
afterAll(() => client.end());

/** The lists of words of every column the name of which fits. */
function wordLists(fits: RegExp): readonly (readonly [string, readonly string[] | null])[] {
  return tables.flatMap((table) =>
    table.columns
      .filter((column) => fits.test(`${table.name}.${column.name}`))
      .map((column) => [`${table.name}.${column.name}`, wordsOf(table, column.name)] as const),
  );
}

test.each([
  ["verdicts", /\.(.+_)?verdict$/, VERDICTS, 10],
  ["stages", /\.(current_)?stage$/, STAGES, 3],
  ["roles", /\.role$/, ROLES, 2],
  ["compressor kinds", /^equipment_model\.compressor_kind$/, COMPRESSOR_KINDS, 1],
] as const)("the database knows the same %s as the code", (_, fits, words, atLeast) => {
  const lists = wordLists(fits);
  expect(lists.length).toBeGreaterThanOrEqual(atLeast);
  for (const [column, known] of lists)
    expect([column, known?.toSorted()]).toEqual([column, words.toSorted()]);
});

test("every state is one of a list of words", () => {
  expect(wordLists(/\.state$/).filter(([, words]) => words === null)).toEqual([]);
});
