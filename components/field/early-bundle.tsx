import { EARLY_BUNDLE_SCRIPT } from "@/lib/offline/early-bundle";

/** Asks for the jobs while the page's script is still on its way. Drawn by the server, before everything else of the page. */
export function EarlyBundle() {
  // biome-ignore lint/security/noDangerouslySetInnerHtml: a fixed text of ours, the same for everybody
  return <script dangerouslySetInnerHTML={{ __html: EARLY_BUNDLE_SCRIPT }} />;
}
