import type { Metadata } from "next";
import { FieldApp } from "@/components/field/field-app";
import { EARLY_BUNDLE_SCRIPT } from "@/lib/offline/early-bundle";
import { pageScope } from "@/lib/server/page";

export const metadata: Metadata = {
  title: "Today",
  appleWebApp: { capable: true, title: "Dewledger", statusBarStyle: "default" },
};

/**
 * The field screens in one page that holds nobody's data, because a phone keeps it: what is shown comes from the
 * phone's own store and the routes that fill it, each of which asks who is there.
 */
export default async function TodayPage() {
  await pageScope("startup.fill");
  return (
    <>
      {/* biome-ignore lint/security/noDangerouslySetInnerHtml: a fixed text of ours, the same for everybody */}
      <script dangerouslySetInnerHTML={{ __html: EARLY_BUNDLE_SCRIPT }} />
      <FieldApp />
    </>
  );
}
