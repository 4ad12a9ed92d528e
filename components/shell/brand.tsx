import { accentContrast } from "@/lib/charts/accent-contrast";

export type BrandLook = {
  readonly name: string;
  /** The company's colour, `#rrggbb`; `null` for the product's own. */
  readonly accent: string | null;
  /** Address of the logo in this application; `null` shows the first letter. */
  readonly logoHref: string | null;
};

/** Gives the page the company's colour, in shades that can be read on paper and in the dark theme. */
export function BrandStyle({ accent }: { readonly accent: string | null }) {
  const shades = accent === null ? null : accentContrast(accent);
  if (shades === null) return null;
  const { onPaper, onNight } = shades;
  const css = `:root{--accent-on-paper:${onPaper.color};--text-on-paper-accent:${onPaper.text};--accent-on-night:${onNight.color};--text-on-night-accent:${onNight.text}}`;
  return <style>{css}</style>;
}

/** The company's mark and name. */
export function BrandMark({ brand }: { readonly brand: BrandLook }) {
  return (
    <span className="flex min-w-0 items-center gap-2.5">
      {brand.logoHref === null ? (
        <span
          aria-hidden="true"
          className="grid size-9 shrink-0 place-items-center bg-accent text-lg font-bold text-accent-text"
        >
          {brand.name.trim().charAt(0).toUpperCase()}
        </span>
      ) : (
        // biome-ignore lint/performance/noImgElement: a company's own small file, served as it is
        <img src={brand.logoHref} alt="" className="size-9 shrink-0 bg-white object-contain p-0.5" />
      )}
      <span className="min-w-0 leading-tight font-semibold text-balance">{brand.name}</span>
    </span>
  );
}
