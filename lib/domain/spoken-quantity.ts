const SMALL: Readonly<Record<string, number>> = Object.fromEntries(
  "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen"
    .split(" ")
    .map((word, value) => [word, value]),
);
const TENS: Readonly<Record<string, number>> = Object.fromEntries(
  "twenty thirty forty fifty sixty seventy eighty ninety".split(" ").map((word, at) => [word, 20 + at * 10]),
);
const FRACTIONS: Readonly<Record<string, string>> = {
  half: ".5",
  "one half": ".5",
  quarter: ".25",
  "one quarter": ".25",
  "three quarters": ".75",
  "one eighth": ".125",
  "three eighths": ".375",
  "five eighths": ".625",
  "seven eighths": ".875",
};
const SIGNS: Readonly<Record<string, string>> = { "½": ".5", "¼": ".25", "¾": ".75", "⅛": ".125" };
const MINUS = /^(?:minus|negative)\b/;
const WORD = /^(?:oh|o|hundred|thousand|and|point|a|an)$/;

/**
 * Turns what a phone's dictation wrote for a spoken reading into what a hand would have typed: “fifty two point
 * five degrees” → `52.5 degrees`, “minus four” → `-4`, “eight hundred fifty two cfm” → `852 cfm`, “a half inch” →
 * `0.5 inch`. What holds no number words comes back as it was, so that a typed text passes unharmed.
 */
export function spokenToTyped(text: string): string {
  const plain = withFractions(text.normalize("NFC").replaceAll("−", "-").trim().toLowerCase());
  const isNegative = MINUS.test(plain);
  const words = plain
    .replace(MINUS, "")
    .replaceAll(/(?<=[a-z])-(?=[a-z])/g, " ")
    .trim()
    .split(/\s+/u);
  const count = words.findIndex((word) => !isNumberWord(word));
  const said = count === -1 ? words : words.slice(0, count);
  const rest = (count === -1 ? [] : words.slice(count)).join(" ");
  if (!said.some((word) => word in SMALL || word in TENS || /\d/.test(word))) return text;
  const value = readNumber(said);
  if (value === null || (said.length === 1 && /\d/.test(said[0] ?? "") && plain === text.toLowerCase()))
    return text;
  return `${isNegative ? "-" : ""}${value}${rest === "" ? "" : ` ${rest}`}`;
}

/** Fractions become decimals that stand on their own or behind a whole number: `7 and a half` → `7.5`. */
function withFractions(text: string): string {
  let read = text.replaceAll(/[½¼¾⅛]/gu, (sign) => SIGNS[sign] ?? sign).replaceAll(/(\d) +(\.\d)/g, "$1$2");
  const names = Object.keys(FRACTIONS).toSorted((one, other) => other.length - one.length);
  for (const name of names) {
    const decimals = FRACTIONS[name] ?? "";
    read = read
      .replace(new RegExp(`\\b(?:and )?(?:a )?${name}\\b(?: of)?(?: an?)?`), ` point ${decimals.slice(1)} `)
      .trim();
  }
  return read
    .replace(/^\.(?=\d)/, "0.")
    .replace(/^point/, "zero point")
    .replace(/^(minus|negative) point/, "$1 zero point");
}

function isNumberWord(word: string): boolean {
  return word in SMALL || word in TENS || WORD.test(word) || /^[+-]?[\d,]*\.?\d*$/.test(word);
}

/** The digits as text, so that `52.50` keeps its digits; `null` when the words make no number. */
function readNumber(words: readonly string[]): string | null {
  const at = words.indexOf("point");
  const whole = readWhole(at === -1 ? words : words.slice(0, at));
  if (whole === null || at === -1) return whole;
  if (whole.includes(".")) return null;
  const digits = readDigits(words.slice(at + 1));
  return digits === null ? null : `${whole}.${digits}`;
}

function readWhole(words: readonly string[]): string | null {
  const [only] = words;
  if (words.length === 1 && only !== undefined && /\d/.test(only)) return only.replaceAll(",", "");
  let total = 0;
  let group = 0;
  /** What comes next must be smaller than this, as ones are behind tens. */
  let room = 1_000;
  for (const word of words) {
    if (word === "and" || word === "a" || word === "an") continue;
    const value = SMALL[word] ?? TENS[word] ?? (/^\d+$/.test(word) ? Number(word) : null);
    if (word === "hundred" || word === "thousand") {
      const scale = word === "hundred" ? 100 : 1_000;
      const scaled = (group === 0 ? 1 : group) * scale;
      group = word === "hundred" ? scaled : 0;
      total += word === "hundred" ? 0 : scaled;
      room = scale;
    } else if (value === null) return null;
    else if (value < room) {
      group += value;
      room = word in TENS ? 10 : 0;
    } else if (room === 0 && group > 0 && group < 10 && value >= 10 && value < 100) {
      // “eight fifty two” is how 852 is said; “two forty” is 240.
      group = group * 100 + value;
      room = word in TENS ? 10 : 0;
    } else return null;
  }
  return String(total + group);
}

function readDigits(words: readonly string[]): string | null {
  let digits = "";
  for (const word of words) {
    if (word === "oh" || word === "o") digits += "0";
    else if (word in SMALL) digits += String(SMALL[word]);
    else if (word in TENS) digits += String(TENS[word]);
    else if (/^\d+$/.test(word)) digits += word;
    else return null;
  }
  // “point twenty five” is 0.25: the ten takes the one that follows it.
  const [first, second] = words;
  if (
    words.length === 2 &&
    first !== undefined &&
    second !== undefined &&
    first in TENS &&
    (SMALL[second] ?? 10) < 10
  )
    return String((TENS[first] ?? 0) + (SMALL[second] ?? 0));
  return digits === "" ? null : digits;
}
