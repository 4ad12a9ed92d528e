/**
 * The hardest background of each theme for a coloured text: `--sunk` on paper, `--sheet` in the dark theme
 * of `app/globals.css`.
 */
export const PAPER = "#f1ece0";
export const NIGHT = "#1f1d19";

/** WCAG 2.2 success criterion 1.4.3 asks 4.5 to 1 of text; the rest is room for the tints behind it. */
const ACCENT_CONTRAST = 5.2;

const LIGHT_TEXT = "#fffdf8";
const DARK_TEXT = "#171613";

type Rgb = readonly [number, number, number];

/** What the product does with a company's colour. */
export type AccentContrast = {
  /** The company's colour, as `#rrggbb`. */
  readonly brand: string;
  /** Contrast of the company's colour on paper, 1 to 21. */
  readonly brandOnPaperRatio: number;
  /** True when the colour as given is too weak on paper, so a darker shade is shown there. */
  readonly adjustedOnPaper: boolean;
  readonly onPaper: AccentShade;
  readonly onNight: AccentShade;
};

/** A shade that can be read on its background, and the text to set on it. */
export type AccentShade = {
  readonly color: string;
  readonly ratio: number;
  readonly text: string;
  readonly textRatio: number;
};

/**
 * Derives readable shades of a company's colour for paper and for the dark theme.
 * Returns `null` when the text is not a colour of the form `#rgb` or `#rrggbb`.
 *
 * @see WCAG 2.2, 1.4.3 Contrast (Minimum) and the definitions of contrast ratio and relative luminance [published].
 */
export function accentContrast(color: string): AccentContrast | null {
  const brand = parseHex(color);
  if (brand === null) return null;
  const brandOnPaperRatio = contrastRatio(toHex(brand), PAPER);
  return {
    brand: toHex(brand),
    brandOnPaperRatio,
    adjustedOnPaper: brandOnPaperRatio < ACCENT_CONTRAST,
    onPaper: shadeFor(brand, PAPER, [0, 0, 0]),
    onNight: shadeFor(brand, NIGHT, [255, 255, 255]),
  };
}

/**
 * Contrast ratio of two colours, 1 to 21.
 *
 * @throws {RangeError} when either is not `#rgb` or `#rrggbb`.
 */
export function contrastRatio(first: string, second: string): number {
  const a = relativeLuminance(first);
  const b = relativeLuminance(second);
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** Moves the colour towards black or white in 2 % steps until text in it can be read on the background. */
function shadeFor(brand: Rgb, background: string, towards: Rgb): AccentShade {
  let color = toHex(brand);
  for (let step = 0; step <= 50 && contrastRatio(color, background) < ACCENT_CONTRAST; step += 1) {
    color = toHex(mix(brand, towards, step / 50));
  }
  const light = contrastRatio(color, LIGHT_TEXT);
  const dark = contrastRatio(color, DARK_TEXT);
  return {
    color,
    ratio: contrastRatio(color, background),
    text: light >= dark ? LIGHT_TEXT : DARK_TEXT,
    textRatio: Math.max(light, dark),
  };
}

function mix(from: Rgb, to: Rgb, share: number): Rgb {
  const at = (a: number, b: number) => Math.round(a + (b - a) * share);
  return [at(from[0], to[0]), at(from[1], to[1]), at(from[2], to[2])];
}

function relativeLuminance(color: string): number {
  const rgb = parseHex(color);
  if (rgb === null) throw new RangeError(`Not a colour of the form #rrggbb: ${color}`);
  const linear = (channel: number) => {
    const c = channel / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * linear(rgb[0]) + 0.7152 * linear(rgb[1]) + 0.0722 * linear(rgb[2]);
}

function parseHex(color: string): Rgb | null {
  const digits = /^#([0-9a-f]{3}|[0-9a-f]{6})$/i.exec(color.trim())?.[1];
  if (digits === undefined) return null;
  const six = digits.length === 3 ? digits.replace(/./g, "$&$&") : digits;
  const at = (start: number) => Number.parseInt(six.slice(start, start + 2), 16);
  return [at(0), at(2), at(4)];
}

function toHex(rgb: Rgb): string {
  return `#${rgb.map((channel) => channel.toString(16).padStart(2, "0")).join("")}`;
}
