import { createSerwistRoute } from "@serwist/turbopack";
import { fieldFiles } from "../field-files";

/** The service worker of the field screens, with the list of what it must keep, made once at build. */
export const { dynamic, dynamicParams, revalidate, generateStaticParams, GET } = createSerwistRoute({
  swSrc: "lib/offline/worker.ts",
  useNativeEsbuild: true,
  globPatterns: [...fieldFiles()],
  // The page itself: it holds no data, and its text changes with every build.
  additionalPrecacheEntries: [{ url: "/today", revision: crypto.randomUUID() }],
});
