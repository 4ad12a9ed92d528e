/**
 * Names statements that come again and again, so that PostgreSQL reads and plans each once a connection. A text that came
 * once or twice stays nameless, and so does everything beyond `most`.
 *
 * A text that asks for a list of keys stays nameless too. A plan that is kept is made for the company that asks just then:
 * in a small one reading all rows and comparing is cheaper than a look-up a key, and the next, with a million jobs, would
 * read them all the same way.
 */
export function statementNames(most: number): (statement: { readonly sql: string }) => string {
  const seen = new Map<string, number>();
  const names = new Map<string, string>();
  return ({ sql }) => {
    if (A_LIST.test(sql)) return NAMELESS;
    const known = names.get(sql);
    if (known !== undefined) return known;
    if (names.size >= most) return NAMELESS;
    const count = (seen.get(sql) ?? 0) + 1;
    if (count < OFTEN) {
      // Texts seen so far are forgotten rather than kept without bound.
      if (seen.size >= 10 * most) seen.clear();
      seen.set(sql, count);
      return NAMELESS;
    }
    seen.delete(sql);
    const name = `dw${names.size}`;
    names.set(sql, name);
    return name;
  };
}

const A_LIST = /\bIN \(\$\d+,/;
const NAMELESS = "";
const OFTEN = 5;
