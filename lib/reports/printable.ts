/**
 * Text as paper can carry it. What a person typed or pasted may hold control characters, marks that turn the
 * reading direction, or letters the font has no shape for; each becomes something visible or nothing, so that
 * it can never disturb the text around it.
 */
export function printable(text: string, canPrint: (codePoint: number) => boolean): string {
  // A number stays with its sign and its unit on one line.
  const plain = text
    .normalize("NFC")
    .replaceAll(/\r\n?|[\u2028\u2029\u0085\v\f]/g, "\n")
    .replaceAll(/\t/g, " ")
    // Controls, invisible format marks (among them every direction mark), private use and broken surrogates.
    .replaceAll(/(?!\n)[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Cn}]/gu, "")
    .replaceAll(
      /(\d|±) (?=\d|%|°|(?:cfm|Btu|lb|gal|gr|in|ft|psi|psig|kW|W|V|A|min|h|s|tons?)\b)/g,
      "$1\u00a0",
    )
    .replaceAll(/[≤≥≈≠→←]/gu, (symbol) => SPELLED[symbol] ?? symbol);
  return plain.replaceAll(RUN, (run) => printableRun(run, canPrint));
}

const SPELLED: Readonly<Record<string, string>> = {
  "≤": "<=",
  "≥": ">=",
  "≈": "~",
  "≠": "not equal to",
  "→": "–",
  "←": "–",
};

const SCRIPTS = [
  "Arabic",
  "Hebrew",
  "Han",
  "Hiragana",
  "Katakana",
  "Hangul",
  "Thai",
  "Devanagari",
  "Bengali",
  "Tamil",
  "Telugu",
  "Gujarati",
  "Gurmukhi",
  "Khmer",
  "Ethiopic",
  "Armenian",
  "Georgian",
] as const;

/** Everything but ASCII and line ends, in runs that may span the spaces and marks inside a foreign phrase. */
const RUN = /[^\n\x20-\x7e](?:[^\n\x21-\x7e]*[^\n\x20-\x7e])?/gu;

function printableRun(run: string, canPrint: (codePoint: number) => boolean): string {
  let out = "";
  let missing = "";
  for (const character of run) {
    if (canPrint(character.codePointAt(0) ?? 0)) {
      if (missing !== "" && character !== " ") {
        out += named(missing);
        missing = "";
      }
      if (missing === "") out += character;
      else missing += character;
    } else missing += character;
  }
  return missing === "" ? out : out + named(missing);
}

/** `[Arabic]` in place of a phrase in a script the font lacks: honest, and it keeps the line's direction. */
function named(missing: string): string {
  const script = SCRIPTS.find((name) => new RegExp(`\\p{Script=${name}}`, "u").test(missing));
  const trailingSpace = missing.endsWith(" ") ? " " : "";
  return `[${script ?? "symbol"}]${trailingSpace}`;
}

/** Path data and addresses are read by machines and stay as they are. */
const NOT_TEXT: ReadonlySet<string> = new Set(["d", "href"]);

/** Applies `change` to every text inside plain data, with the name it stands under; bytes are left as they are. */
export function mapTexts<T>(value: T, change: (text: string, name: string) => string, name = ""): T {
  if (typeof value === "string") return NOT_TEXT.has(name) ? value : (change(value, name) as T);
  if (Array.isArray(value)) return value.map((item) => mapTexts(item, change, name)) as T;
  if (value === null || typeof value !== "object" || ArrayBuffer.isView(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, item]) => [key, mapTexts(item, change, key)]),
  ) as T;
}
