/**
 * Raised whenever the same view would print other bytes: a change of layout, words, fonts or of the printing
 * libraries. `tests/reports/renderer.long.test.ts` fails until it is.
 */
export const RENDERER_VERSION = 5;

/**
 * What printed a file, kept with it. The compressor is part of it: another one writes other bytes for the same
 * pages.
 */
export function rendererName(): string {
  return `${RENDERER_VERSION}, zlib ${process.versions.zlib}`;
}
