import type { Metadata } from "next";
import { EarlyBundle } from "@/components/field/early-bundle";
import { FieldApp } from "@/components/field/field-app";
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
      <EarlyBundle />
      <FieldApp />
    </>
  );
}
