import { Notice } from "@/components/ui/notice";

/** Says that what is shown may be old. */
export function StaleNotice() {
  return (
    <Notice kind="information" title="Not up to date">
      The server does not answer just now. This shows the last it said; it is asked again by itself.
    </Notice>
  );
}
